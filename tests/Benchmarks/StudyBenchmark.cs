using System.Diagnostics;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Studies;

namespace FarmPortfolio.Benchmarks;

/// <summary>
/// Whole studies, heat balance and distributions in them: 10 x 1,024 futures, 15 seasons, 16 winters. <c>study 50 1000</c> times so many houses; <c>study table</c>
/// the cost of an option from 100 options to 100,000 at 2 x 256 futures; <c>study</c> alone 50 houses and their rate against the bare loop's.
/// </summary>
internal static class StudyBenchmark
{
    private const int Seasons = 15;

    public static void Run(IEnumerable<string> arguments)
    {
        var asked = arguments.ToList();
        if (asked is ["table"])
        {
            Table();
            return;
        }

        foreach (var houses in asked.Select(int.Parse))
        {
            Time(houses);
        }

        if (asked.Count == 0)
        {
            Share(50);
        }
    }

    private static (double Seconds, int Options) Time(int houses, int replicates = 10, int paths = 1024)
    {
        var portfolio = BenchPortfolio.Of(houses, replicates, paths, PathSampling.Sobol);
        var (seconds, outcome) = Study(portfolio);
        using var process = Process.GetCurrentProcess();
        var options = outcome.Result.Options.Count;
        Console.WriteLine(FormattableString.Invariant($"{houses,5} houses, {options,6} options, {replicates} x {paths} futures: {seconds:0.00} s, {1e3 * seconds / options:0.000} ms an option, peak memory {process.PeakWorkingSet64 / 1048576.0:0} MiB, processor {process.TotalProcessorTime.TotalSeconds:0.0} s, result {outcome.Result.ResultSha256[..12]}"));
        return (seconds, options);
    }

    private static (double Seconds, StudyOutcome Outcome) Study(Portfolio portfolio)
    {
        var clock = Stopwatch.StartNew();
        var (outcome, faults) = StudyRun.Run(portfolio, new StudyMeans(Environment.ProcessorCount), null, CancellationToken.None);
        var seconds = clock.Elapsed.TotalSeconds;
        return outcome is null || outcome.Result.LeftOut.Count > 0
            ? throw new InvalidOperationException(string.Join("; ", faults.Concat(outcome?.Result.LeftOut.Select(l => l.Fault) ?? []).Select(f => f.Message).Distinct()))
            : (seconds, outcome);
    }

    /// <summary>Cost per option over a thousandfold range; the slope is that of log cost per option on log options: 0 = constant.</summary>
    private static void Table()
    {
        Time(13, 2, 256);
        var points = new[] { 13, 125, 1250, 12500 }.Select(h => Time(h, 2, 256)).Select(t => (X: Math.Log(t.Options), Y: Math.Log(t.Seconds / t.Options))).ToList();
        var (x, y) = (points.Average(p => p.X), points.Average(p => p.Y));
        Console.WriteLine(FormattableString.Invariant($"slope of the cost of an option {points.Sum(p => (p.X - x) * (p.Y - y)) / points.Sum(p => (p.X - x) * (p.X - x)):0.000}"));
    }

    /// <summary>The study's rate of fused terms (options and the house as it stands, months heated, three coefficients) over the bare loop's with an offset, medians of five pairs.</summary>
    private static void Share(int houses)
    {
        var portfolio = BenchPortfolio.Of(houses, sampling: PathSampling.Sobol);
        var terms = Terms(portfolio);
        var bare = new BareProblem(512, 10_240, Seasons);
        var (blocks, result) = (BareLayout.Of(bare, BareLoop.Group), new BareResult(bare));
        var (study, loop) = (new double[5], new double[5]);
        for (var i = -1; i < study.Length; i++)
        {
            var clock = Stopwatch.StartNew();
            BareLoop.Run(bare, blocks, result, true, Environment.ProcessorCount);
            var (ofLoop, ofStudy) = (clock.Elapsed.TotalSeconds, Study(portfolio).Seconds);
            if (i >= 0)
            {
                (loop[i], study[i]) = (3 * bare.OptionMonths / ofLoop, terms / ofStudy);
            }
        }

        Array.Sort(study);
        Array.Sort(loop);
        Console.WriteLine(FormattableString.Invariant($"{houses} houses, {terms:0.00e0} terms in {terms / study[2]:0.00} s: {study[2]:0.00e0} terms a second, the bare loop {loop[2]:0.00e0}"));
        Console.WriteLine(FormattableString.Invariant($"RATIO study-share {study[2] / loop[2]:0.000}"));
    }

    private static double Terms(Portfolio portfolio)
    {
        var futures = StudyFutures.Of(portfolio).Futures!;
        return StudyUnits.Of(portfolio, futures, []).SelectMany(u => u.Houses).Sum(house =>
        {
            OptionModel[] models = [OptionModels.AsItStands(house.Model), .. house.Options.Select(o => OptionModels.Of(house.Model, o).Model!)];
            return 3.0 * models.Length * CostKernel.HeatedMonths(DemandTables.Of(models, house.Pool)).Length * futures.Paths * Seasons;
        });
    }
}
