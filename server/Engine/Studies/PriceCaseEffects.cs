using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Engine.Studies;

/// <summary>What an option comes to under one price case.</summary>
/// <param name="Kind">Case.</param>
/// <param name="End">Net worth and payback.</param>
public sealed record PriceCaseEffect(PriceCaseKind Kind, SensitivityEnd End);

/// <summary>
/// One option under each named price case beside the futures without any. The house is run alone, as for what moves an option most: fewer futures than a
/// study's, the same for all runs, so that the differences are the case's and not the draw's.
/// </summary>
/// <param name="Base">Without a case.</param>
/// <param name="Cases">In the order of <see cref="PriceCases.All"/>.</param>
public sealed record PriceCaseEffects(SensitivityEnd Base, IReadOnlyList<PriceCaseEffect> Cases)
{
    /// <summary>Runs one option of one house under each case.</summary>
    /// <param name="portfolio">All a study read.</param>
    /// <param name="houseId">House.</param>
    /// <param name="optionKey">Option.</param>
    /// <param name="firstSeason">Season of the study that every case begins in, from 0 and within the horizon.</param>
    /// <param name="threads">Threads, 1 or more; the figures do not depend on them.</param>
    /// <param name="cancel">Stops it.</param>
    /// <returns>The effects; null where the option cannot be run.</returns>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static PriceCaseEffects? Of(Portfolio portfolio, string houseId, string optionKey, int firstSeason, int threads, CancellationToken cancel)
    {
        return SetTrials.Of(portfolio, houseId, optionKey, Sets(portfolio.Set, firstSeason), threads, cancel) is { } ends ? From(ends) : null;
    }

    /// <summary>The assumptions without a case, then with each.</summary>
    /// <param name="set">Assumptions.</param>
    /// <param name="firstSeason">Season of the study that every case begins in, from 0 and within the horizon.</param>
    /// <returns>Sets to run.</returns>
    public static IReadOnlyList<ScenarioSetFacts> Sets(ScenarioSetFacts set, int firstSeason) =>
        [set with { PriceCase = null }, .. PriceCases.All.Select(k => set with { PriceCase = new(k, firstSeason) })];

    /// <summary>The effects from the ends of <see cref="Sets"/>.</summary>
    /// <param name="ends">One end a set.</param>
    /// <returns>The effects.</returns>
    public static PriceCaseEffects From(IReadOnlyList<SensitivityEnd> ends) =>
        new(ends[0] with { Words = "no case" }, [.. PriceCases.All.Select((k, i) => new PriceCaseEffect(k, ends[i + 1]))]);
}

/// <summary>One option of one house, run alone under several sets of assumptions on the same draws.</summary>
public static class SetTrials
{
    /// <summary>Runs the option under each set.</summary>
    /// <param name="portfolio">All a study read.</param>
    /// <param name="houseId">House.</param>
    /// <param name="optionKey">Option.</param>
    /// <param name="sets">Sets of assumptions; their counts of paths and replicates are not used.</param>
    /// <param name="threads">Threads, 1 or more; the figures do not depend on them.</param>
    /// <param name="cancel">Stops it.</param>
    /// <returns>One end a set, in order; null where the option cannot be run under one of them.</returns>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static IReadOnlyList<SensitivityEnd>? Of(Portfolio portfolio, string houseId, string optionKey, IReadOnlyList<ScenarioSetFacts> sets, int threads, CancellationToken cancel)
    {
        if (!portfolio.Houses.ContainsKey(houseId) || portfolio.Options.GetValueOrDefault(houseId)?.FirstOrDefault(o => o.Key == optionKey) is not { } option)
        {
            return null;
        }

        var ends = new SensitivityEnd?[sets.Count];
        Parallel.For(0, sets.Count, new ParallelOptions { MaxDegreeOfParallelism = threads, CancellationToken = cancel }, i =>
        {
            if (Sensitivity.Run(Sensitivity.Alone(portfolio with { Set = sets[i] }, houseId, option), cancel) is { } result)
            {
                ends[i] = Sensitivity.End(sets[i].PriceCase?.Kind.ToString() ?? string.Empty, result);
            }
        });
        return ends.Any(e => e is null) ? null : [.. ends.OfType<SensitivityEnd>()];
    }
}
