using System.Diagnostics;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Studies;

namespace FarmPortfolio.Benchmarks;

/// <summary>
/// A study's rate of fused terms (options and the house as it stands, months heated, three coefficients a path and season) as a share of the bare loop's with an
/// offset: whole, hourly heat balance and futures in it, and its futures part alone. That is all the study does with prices and paths, contracts, offsets,
/// outlay, errors of the saving, paybacks and distributions in it, on heat tables that are at hand: a house's heat costs the same for ten futures or ten million.
/// </summary>
internal static class ShareBenchmark
{
    private const int Seasons = 15;
    private const int Pairs = 5;
    private const int BareTerms = 36;

    public static void Run(int houses)
    {
        var portfolio = BenchPortfolio.Of(houses, sampling: PathSampling.Sobol);
        var part = new FuturesPart(portfolio);
        var bare = new BareProblem(512, 10_240, Seasons);
        var (blocks, result) = (BareLayout.Of(bare, BareLoop.Group), new BareResult(bare));
        var (whole, futures, loop) = (new double[Pairs], new double[Pairs], new double[Pairs]);
        for (var i = -1; i < Pairs; i++)
        {
            var clock = Stopwatch.StartNew();
            BareLoop.Run(bare, blocks, result, true, Environment.ProcessorCount);
            var (ofLoop, ofStudy, ofPart) = (clock.Elapsed.TotalSeconds, StudyBenchmark.Study(portfolio).Seconds, part.Seconds(Environment.ProcessorCount));
            if (i >= 0)
            {
                (whole[i], futures[i], loop[i]) = (part.Terms / ofStudy, part.Terms / ofPart, 3 * bare.OptionMonths / ofLoop);
            }
        }

        Array.Sort(whole);
        Array.Sort(futures);
        Array.Sort(loop);
        var (w, f, l) = (whole[Pairs / 2], futures[Pairs / 2], loop[Pairs / 2]);
        Console.WriteLine(FormattableString.Invariant($"{houses} houses, {part.Terms:0.00e0} terms, {part.Terms / part.Cells:0.0} a path, season and option: whole {part.Terms / w:0.00} s, futures part {part.Terms / f:0.00} s; the bare loop, 36 terms, {l:0.00e0} a second"));
        Console.WriteLine(FormattableString.Invariant($"RATIO study-share-whole {w / l:0.000}"));
        Console.WriteLine(FormattableString.Invariant($"RATIO study-share {f / l:0.000}"));

        // the study leaves out months that are not heated, the bare loop reckons all twelve: the same paths, seasons and options a second, whatever each skips
        Console.WriteLine(FormattableString.Invariant($"RATIO study-share-paths {f / l * BareTerms * part.Cells / part.Terms:0.000}"));
    }
}

/// <summary>The futures part of a study: its units reckoned by the study's own code on heat tables made beforehand.</summary>
internal sealed class FuturesPart
{
    private readonly StudyContext context;
    private readonly List<StudyUnit> units;
    private readonly Dictionary<string, HouseHeat> heat;

    public FuturesPart(Portfolio portfolio)
    {
        var futures = StudyFutures.Of(portfolio).Futures!;
        context = new(portfolio, futures, futures.Layouts(Environment.ProcessorCount, CancellationToken.None));
        units = StudyUnits.Of(portfolio, futures, []);
        heat = units.SelectMany(u => u.Houses).ToDictionary(h => h.Id, h => new HouseHeat(h, h.Options));
        Cells = heat.Values.Sum(h => (double)h.Models.Length) * context.Paths * context.Seasons;
        Terms = heat.Values.Sum(h => 3.0 * h.Models.Length * h.Months.Length) * context.Paths * context.Seasons;
    }

    /// <summary>Paths x seasons of all options and of the houses as they stand.</summary>
    public double Cells { get; }

    /// <summary>Fused terms in them: three a month heated.</summary>
    public double Terms { get; }

    public double Seconds(int threads)
    {
        var clock = Stopwatch.StartNew();
        Parallel.ForEach(units, new ParallelOptions { MaxDegreeOfParallelism = threads }, () => (Run: new UnitRun(context, new(context.Paths, context.Seasons)) { HeatOf = h => heat[h.Id] }, Sums: new StudySums(context.Paths * context.Seasons)), (unit, _, local) =>
        {
            UnitResult.Write(local.Run.Whole(unit, local.Sums, null, () => { }, CancellationToken.None));
            return local;
        }, _ => { });
        return clock.Elapsed.TotalSeconds;
    }
}
