using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Weather;
using FarmPortfolio.Host.Storage.Items;
using FarmPortfolio.Host.Studies;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>Factors that a price case lays on one fuel.</summary>
[Name("CaseFactors")]
public sealed record CaseFactorsView(FuelKind Fuel, IEnumerable<double> BySeason);

/// <summary>A named course of prices that can be laid over the futures.</summary>
[Name("PriceCase")]
public sealed record PriceCaseView(PriceCaseKind Kind, string Title, string Words, string Source, bool InUse, IEnumerable<CaseFactorsView> Factors);

/// <summary>The price case laid over the futures.</summary>
[Name("ChosenPriceCase")]
public sealed record ChosenPriceCaseView(PriceCaseKind Kind, string Title, int FirstSeason, string SeasonName);

/// <summary>What an option comes to under one price case.</summary>
[Name("PriceCaseEffect")]
public sealed record PriceCaseEffectView(PriceCaseKind Kind, SensitivityEndView End);

/// <summary>What an option comes to under every price case, and without any.</summary>
[Name("PriceCaseEffects")]
public sealed record PriceCaseEffectsView(SensitivityEndView Base, IEnumerable<PriceCaseEffectView> Cases)
{
    /// <summary>From the engine's effects.</summary>
    internal static PriceCaseEffectsView Of(Engine.Studies.PriceCaseEffects e) => new(SensitivityEndView.Of(e.Base), e.Cases.Select(c => new PriceCaseEffectView(c.Kind, SensitivityEndView.Of(c.End))));
}

/// <summary>A price case to lay over the futures; no kind = none.</summary>
public sealed record ChoosePriceCaseInput([property: Id] string SetId, int ExpectedRevision, [property: Id] string RequestId, PriceCaseKind? Kind, int? FirstSeason);

/// <summary>Price cases of a co-op.</summary>
public sealed partial class CoopView
{
    /// <summary>The named price cases with the factors they would lay on the futures from a season of the study on (0 = the first; null = that of the case in use). Empty where the futures cannot be drawn.</summary>
    /// <exception cref="ExecutionError">The season is none of the assumptions.</exception>
    public IEnumerable<PriceCaseView> PriceCases(int? firstSeason = null)
    {
        var set = register.SetFacts with { PriceCase = null, Shapes = [] };
        var first = firstSeason is { } asked ? AskedRange.Season(nameof(firstSeason), asked, set.SeasonCount) : register.SetFacts.PriceCase is { } chosen && chosen.FirstSeason < set.SeasonCount ? chosen.FirstSeason : 0;
        var (spec, _) = FuturesSpec.Of(set, register.Now.Prices, [0, 1], [new double[12], new double[12]]);
        return spec is null ? [] : Engine.Scenarios.PriceCases.All.Select(kind =>
        {
            var shapes = Engine.Scenarios.PriceCases.Shapes(new(kind, first), set, spec.Fuels);
            var (title, words, source) = PriceCaseWords.Of(kind);
            return new PriceCaseView(kind, title, words, source, register.SetFacts.PriceCase?.Kind == kind, spec.Fuels
                .Select(f => new CaseFactorsView(f.Fuel, [.. Enumerable.Range(0, set.SeasonCount).Select(s => Engine.Scenarios.PriceCases.Factor(shapes, f.Fuel, s))]))
                .Where(f => f.BySeason.Any(v => v != 1)));
        });
    }
}

/// <summary>Price case of a set of assumptions.</summary>
public sealed partial class ScenarioSetView
{
    /// <summary>The price case laid over the futures; null = none.</summary>
    public ChosenPriceCaseView? PriceCase => item.Facts.PriceCase is { } c ? new(c.Kind, PriceCaseWords.Of(c.Kind).Title, c.FirstSeason, SeasonCalendar.Name(item.Facts.FirstSeason + c.FirstSeason)) : null;
}

/// <summary>An option under price cases.</summary>
public sealed partial class OptionView
{
    /// <summary>The house run alone under each price case beginning in a season, on the houses of the newest done study and the assumptions as they are now; null where it has no result there.</summary>
    /// <exception cref="ExecutionError">The season is none of the assumptions.</exception>
    public PriceCaseEffectsView? PriceCaseEffects([FromServices] PriceTrialRuns runs, int firstSeason = 0, CancellationToken cancellationToken = default)
    {
        var sets = Engine.Studies.PriceCaseEffects.Sets(register.SetFacts, AskedRange.Season(nameof(firstSeason), firstSeason, register.SetFacts.SeasonCount));
        return register.Newest is { } study && runs.Of(register.Viewer, study, register.Now.Prices, house.Id, option.Key, sets, cancellationToken) is { } ends
            ? PriceCaseEffectsView.Of(Engine.Studies.PriceCaseEffects.From(ends))
            : null;
    }
}

/// <summary>Choosing a price case.</summary>
public sealed partial class Mutation
{
    /// <summary>Lays a price case over the futures of the assumptions in use, or takes it off.</summary>
    public static SavePayload ChoosePriceCase([FromServices] Register register, ChoosePriceCaseInput input)
    {
        if (register.Set is not { } set || set.Id != input.SetId)
        {
            return Missing("set of assumptions");
        }

        var facts = set.Facts with { PriceCase = input.Kind is { } kind ? new(kind, input.FirstSeason ?? 0) : null };
        var faults = ScenarioChecks.Of(facts);
        return faults.Count > 0
            ? new(null, false, faults.Select(FaultView.Of))
            : Saved(register.Items.Save(register.Viewer, register.Coop.Id, input.Kind is { } named ? $"futures take the price case \"{PriceCaseWords.Of(named).Title}\"" : "futures take no price case",
                input.RequestId, [new(ItemKind.ScenarioSet, set.Id, input.ExpectedRevision, facts, set.Remarks)]));
    }
}
