using FarmPortfolio.Engine.Economics;

namespace FarmPortfolio.Engine.Studies;

/// <summary>
/// Runs a study unit by unit. The result does not depend on the number of threads, nor on which units were at hand: every unit is reckoned by itself on the
/// same futures, and sums are whole micro-dollars.
/// </summary>
public static class StudyRun
{
    /// <summary>Raised by any change that can move a bit of a result.</summary>
    public const int NumbersVersion = 5;

    /// <summary>Runs a study over a portfolio.</summary>
    /// <param name="portfolio">All it reads.</param>
    /// <param name="threads">Threads, 1 or more.</param>
    /// <param name="progress">Told how far it is; null = nobody.</param>
    /// <param name="cancel">Stops it within a second.</param>
    /// <returns>The result, null when a fault stops all, and the faults.</returns>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static (StudyResult? Result, IReadOnlyList<Fault> Faults) Run(Portfolio portfolio, int threads, IProgress<StudyProgress>? progress, CancellationToken cancel)
    {
        var (outcome, faults) = Run(portfolio, new StudyMeans(threads, Paths: new(long.MaxValue)), progress, cancel);
        return (outcome?.Result, faults);
    }

    /// <summary>Runs a study, using what is at hand.</summary>
    /// <param name="portfolio">All it reads.</param>
    /// <param name="means">Threads, memo, an earlier study, futures already drawn.</param>
    /// <param name="progress">Told how far it is; null = nobody.</param>
    /// <param name="cancel">Stops it within a second.</param>
    /// <returns>The result with its sums, null when a fault stops all, and the faults.</returns>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static (StudyOutcome? Outcome, IReadOnlyList<Fault> Faults) Run(Portfolio portfolio, StudyMeans means, IProgress<StudyProgress>? progress, CancellationToken cancel)
    {
        progress?.Report(new(0, "reading the winters", 0, 0));
        var (futures, faults) = StudyFutures.Of(portfolio);
        if (futures is null)
        {
            return (null, faults);
        }

        futures.WithDrawsOf(means.Futures);
        progress?.Report(new(0.02, "drawing the futures", 0, 0));
        var context = new StudyContext(portfolio, futures, futures.Layouts(means.Threads, cancel));
        var left = new List<(string, Fault)>();
        var units = StudyUnits.Of(portfolio, futures, left, threads: means.Threads);
        var work = new StudyWork(context, futures, means, progress, cancel);
        var (results, sums, reckoned) = work.Do(units);
        left.AddRange(results.SelectMany(r => r.LeftOut));
        var result = Whole(context, units, results, sums) with { LeftOut = left, FuturesSha256 = futures.Sha256, UnitsKnown = units.Count - reckoned };
        result = result with { SavingByPath = Singles(units, result.Options.Count, means.Paths) };
        return (new(result with { ResultSha256 = ResultHash.Of(result, results, sums) }, sums, futures, results), []);
    }

    private static StudyResult Whole(StudyContext context, List<StudyUnit> units, UnitResult[] results, StudySums sums)
    {
        var houses = units.SelectMany(u => u.Houses).ToList();
        var row = new double[context.Paths];
        Distribution Season(int s, Func<int, double> usd)
        {
            for (var p = 0; p < row.Length; p++)
            {
                row[p] = usd(s * row.Length + p);
            }

            return Distribution.Of(row, context.Replicates, worstIsHigh: true);
        }

        return new()
        {
            Options = [.. results.SelectMany(r => r.Options)],
            LeftOut = [],
            CostBySeason = [.. Enumerable.Range(0, context.Seasons).Select(s => Season(s, sums.Usd))],
            CostByFuel = [.. houses.Select(h => h.Fuel).Distinct().Order().Select(f => (f, Season(0, c => sums.Usd(f, c)), houses.Count(h => h.Fuel == f)))],
            CostByUnit = [.. results.Where(r => r.FirstSeasonUsd is not null).Select(r => new UnitCost(r.HouseIds, r.FirstSeasonUsd!))],
            OnePath = MiddlePath(context, sums),
            FirstSeason = context.Set.FirstSeason,
            DiscountRate = context.Set.DiscountRate,
            Replicates = context.Replicates,
            Futures = context.Paths,
            Houses = houses.Count,
            FloorM2 = houses.Sum(h => h.Model.Geometry.FloorM2),
            FuturesSha256 = string.Empty,
            UnitSha256s = [.. units.Select(u => u.Sha256)],
        };
    }

    /// <summary>Single futures of all options, where all of them are at hand.</summary>
    private static List<float[]> Singles(List<StudyUnit> units, int options, PathStore? paths)
    {
        var found = units.SelectMany(u => paths?.Find(u.Sha256) ?? []).Select(p => p.SavingUsd).ToList();
        return found.Count == options ? found : [];
    }

    /// <summary>The single future whose sum over the horizon is the middle one: an example that is neither calm nor wild.</summary>
    private static double[] MiddlePath(StudyContext context, StudySums sums)
    {
        var totals = new double[context.Paths];
        for (var s = 0; s < context.Seasons; s++)
        {
            for (var p = 0; p < totals.Length; p++)
            {
                totals[p] += sums.Usd(s * context.Paths + p);
            }
        }

        var middle = Enumerable.Range(0, totals.Length).OrderBy(p => totals[p]).ThenBy(p => p).ElementAt(totals.Length / 2);
        return [.. Enumerable.Range(0, context.Seasons).Select(s => sums.Usd(s * context.Paths + middle))];
    }
}

/// <summary>What a study may use.</summary>
/// <param name="Threads">Threads, 1 or more.</param>
/// <param name="Memo">Units between studies; null = none.</param>
/// <param name="Earlier">An earlier study to start from; null = none.</param>
/// <param name="Futures">Futures already drawn; used where they are the study's; null = none.</param>
/// <param name="Paths">Takes the single futures of the options reckoned; null = they are not kept.</param>
public sealed record StudyMeans(int Threads, IUnitMemo? Memo = null, EarlierStudy? Earlier = null, StudyFutures? Futures = null, PathStore? Paths = null);

/// <summary>A study's result with what can be reckoned on from it.</summary>
/// <param name="Result">Result.</param>
/// <param name="Sums">Sums over houses.</param>
/// <param name="Futures">Its futures, drawn.</param>
/// <param name="Units">Its units, in order.</param>
public sealed record StudyOutcome(StudyResult Result, StudySums Sums, StudyFutures Futures, IReadOnlyList<UnitResult> Units);
