using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Engine.Weather;
using FarmPortfolio.Host.Storage;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>How far a study is; early figures go by the stream of progress alone and are marked as such.</summary>
[Name("StudyProgress")]
public sealed record ProgressView([property: Id] string StudyId, string State, double Share, string Words, int OptionsDone, int OptionsTotal, IReadOnlyList<EarlyFigureView> EarlyFigures);

/// <summary>Fuel cost of a kind of fuel.</summary>
[Name("FuelCost")]
public sealed record FuelCostView(FuelKind Fuel, DistributionView FirstSeasonUsd, int HouseCount);

/// <summary>Something left out, and why.</summary>
[Name("LeftOut")]
public sealed record LeftOutView([property: Id] string ItemId, string Message, string Remedy);

/// <summary>One computation over the co-op.</summary>
[Name("Study")]
public sealed partial class StudyView(Register register, StudyRow row)
{
    private readonly Lazy<StudyResult?> result = new(() => register.Jobs.Result(register.Viewer, row.Id));

    /// <summary>Identifier.</summary>
    [Id] public string Id => row.Id;

    /// <summary>Number within the co-op.</summary>
    public int Number => (int)row.Number;

    /// <summary>queued, running, done, failed, cancelled.</summary>
    public string State => row.State;

    /// <summary>Who asked.</summary>
    public string AskedBy => row.AskedBy;

    /// <summary>When.</summary>
    public string AskedAt => row.AskedUtc;

    /// <summary>Seconds it took.</summary>
    public double? Seconds => row.Seconds;

    /// <summary>Whether its single futures are at hand, so that an order is answered at once; after a restart they are reckoned again, which futuresProgress follows.</summary>
    public bool FuturesAtHand => register.Jobs.AtHand(row.Id);

    /// <summary>Hash of its inputs.</summary>
    public string InputSha256 => row.InputSha256;

    /// <summary>Hash of its results.</summary>
    public string? ResultSha256 => row.ResultSha256;

    /// <summary>Name of its futures.</summary>
    public string? FuturesSha256 => row.FuturesSha256;

    /// <summary>Version of the program.</summary>
    public string ProgramVersion => row.ProgramVersion;

    /// <summary>Why it failed.</summary>
    public string? Failure => row.Failure;

    /// <summary>Futures drawn.</summary>
    public int FuturesCount => result.Value?.Futures ?? 0;

    /// <summary>Names of the seasons reckoned.</summary>
    public IEnumerable<string> SeasonNames => Enumerable.Range(result.Value?.FirstSeason ?? 0, result.Value?.CostBySeason.Count ?? 0).Select(SeasonCalendar.Name);

    /// <summary>How far it is.</summary>
    public ProgressView? Progress => register.Jobs.Progress(row.Id) is { } p ? new(row.Id, row.State, p.Share, p.Words, p.Done, p.Total, []) : null;

    /// <summary>Houses reckoned.</summary>
    public int HouseCount => result.Value?.Houses ?? 0;

    /// <summary>Options reckoned.</summary>
    public int OptionCount => result.Value?.Options.Count ?? 0;

    /// <summary>Fuel of all houses as they stand by season.</summary>
    public IEnumerable<DistributionView> CostUsdBySeason => result.Value?.CostBySeason.Select(DistributionView.Of) ?? [];

    /// <summary>One single future of that cost.</summary>
    public IEnumerable<double> OnePathUsdBySeason => result.Value?.OnePath ?? [];

    /// <summary>First season's fuel by kind.</summary>
    public IEnumerable<FuelCostView> CostByFuel => result.Value?.CostByFuel.Select(c => new FuelCostView(c.Fuel, DistributionView.Of(c.FirstSeasonUsd), c.Houses)) ?? [];

    /// <summary>Houses and options left out.</summary>
    public IEnumerable<LeftOutView> LeftOut => result.Value?.LeftOut.Select(l => new LeftOutView(l.ItemId, l.Fault.Message, l.Fault.Remedy)) ?? [];
}
