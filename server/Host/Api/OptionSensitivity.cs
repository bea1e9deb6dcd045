using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Host.Studies;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>What an option comes to with one input at one end.</summary>
[Name("SensitivityEnd")]
public sealed record SensitivityEndView(string Words, double NpvUsd, int? PaybackSeason, double NeverShare)
{
    /// <summary>From the engine's end.</summary>
    internal static SensitivityEndView Of(SensitivityEnd e) => new(e.Words, e.NpvUsd, e.PaybackSeason, e.NeverShare);
}

/// <summary>One input moved to its one-in-ten ends.</summary>
[Name("SensitivityBar")]
public sealed record SensitivityBarView(string Field, string Title, SensitivityEndView Low, SensitivityEndView High);

/// <summary>What moves an option most, the widest swing first.</summary>
[Name("Sensitivity")]
public sealed record SensitivityView(SensitivityEndView Base, IEnumerable<SensitivityBarView> Bars);

/// <summary>What moves an option.</summary>
public sealed partial class OptionView
{
    /// <summary>The house run alone with one input at a time at its one-in-ten ends, on the inputs of the newest done study; null where it has no result there.</summary>
    public SensitivityView? Sensitivity([FromServices] SensitivityRuns runs, CancellationToken cancellationToken = default) =>
        register.Newest is { } study && runs.Of(register.Viewer, study, house.Id, option.Key, cancellationToken) is { } s
            ? new(SensitivityEndView.Of(s.Base), s.Bars.Select(b => new SensitivityBarView(b.Field, b.Title, SensitivityEndView.Of(b.Low), SensitivityEndView.Of(b.High))))
            : null;
}
