using System.Diagnostics;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Studies;

namespace FarmPortfolio.Benchmarks;

/// <summary>
/// Whole studies, heat balance and distributions in them: 10 x 1,024 futures, 15 seasons, 16 winters. <c>study 50 1000</c> times so many houses; <c>study table</c>
/// the cost of an option from 100 options to 100,000 at 2 x 256 futures; <c>study</c> alone 50 houses and their rate against the bare loop's.
/// </summary>
internal static class StudyBenchmark
{
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
            ShareBenchmark.Run(50);
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

    public static (double Seconds, StudyOutcome Outcome) Study(Portfolio portfolio)
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
        var once = Once(2, 256);
        Console.WriteLine(FormattableString.Invariant($"{once:0.00} s of it draw the futures and lay them out, whatever the number of options"));
        var points = new[] { 13, 125, 1250, 12500 }.Select(h => Time(h, 2, 256)).Select(t => (X: Math.Log(t.Options), Y: Math.Log(t.Seconds / t.Options), Z: Math.Log(Math.Max(1e-9, t.Seconds - once) / t.Options))).ToList();
        var x = points.Average(p => p.X);
        double Slope(Func<(double X, double Y, double Z), double> of) => points.Sum(p => (p.X - x) * of(p)) / points.Sum(p => (p.X - x) * (p.X - x));
        Console.WriteLine(FormattableString.Invariant($"slope of the cost of an option {Slope(p => p.Y):0.000}, without the futures {Slope(p => p.Z):0.000}"));
    }

    /// <summary>What a study does once: winters read, futures drawn and laid out for the four fuels.</summary>
    private static double Once(int replicates, int paths)
    {
        var portfolio = BenchPortfolio.Of(13, replicates, paths, PathSampling.Sobol);
        var clock = Stopwatch.StartNew();
        foreach (var layout in StudyFutures.Of(portfolio).Futures!.Layouts(Environment.ProcessorCount, CancellationToken.None))
        {
            foreach (var fuel in portfolio.Prices.Keys)
            {
                layout.Index(fuel);
            }
        }

        return clock.Elapsed.TotalSeconds;
    }
}
