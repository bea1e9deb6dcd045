using System.Diagnostics;
using FarmPortfolio.Engine.Studies;

namespace FarmPortfolio.Benchmarks;

/// <summary>Whole studies, heat balance and distributions in them: 10 x 1,024 futures, 15 seasons, 16 winters.</summary>
internal static class StudyBenchmark
{
    public static void Run(IEnumerable<string> houses)
    {
        foreach (var count in houses.Select(int.Parse).DefaultIfEmpty(50))
        {
            Time(count);
        }
    }

    private static void Time(int houses)
    {
        var portfolio = BenchPortfolio.Of(houses);
        var clock = Stopwatch.StartNew();
        var (outcome, faults) = StudyRun.Run(portfolio, new StudyMeans(Environment.ProcessorCount), null, CancellationToken.None);
        var seconds = clock.Elapsed.TotalSeconds;
        if (outcome is null || outcome.Result.LeftOut.Count > 0)
        {
            throw new InvalidOperationException(string.Join("; ", faults.Concat(outcome?.Result.LeftOut.Select(l => l.Fault) ?? []).Select(f => f.Message).Distinct()));
        }

        using var process = Process.GetCurrentProcess();
        Console.WriteLine(FormattableString.Invariant($"{houses,5} houses, {outcome.Result.Options.Count,5} options: {seconds:0.00} s, peak memory {process.PeakWorkingSet64 / 1048576.0:0} MiB"));
    }
}
