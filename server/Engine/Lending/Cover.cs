using FarmPortfolio.Engine.Economics;

namespace FarmPortfolio.Engine.Lending;

/// <summary>A cover ratio over all futures. It is always one of two, the project's or the farm's, and never stands without its name.</summary>
/// <param name="BySeason">By season of the loan; null where nothing is due.</param>
/// <param name="Worst">The least cover of any season, by path.</param>
/// <param name="UnderOneShare">Share of futures in which some season is under 1.0.</param>
/// <param name="UnderOneHalfWidth">Half of its 95 % interval, from the replicates.</param>
/// <param name="UnderRequiredShare">Share in which some season is under what is asked.</param>
/// <param name="UnderRequiredHalfWidth">Half of its 95 % interval.</param>
/// <param name="LongestRunShare">Share of futures by the most seasons in a row under 1.0: 0, 1, 2 and so on.</param>
/// <param name="UnderOneShareBySeason">Share of futures under 1.0 by season of the loan.</param>
public sealed record Cover(
    IReadOnlyList<Distribution?> BySeason, Distribution Worst, double UnderOneShare, double UnderOneHalfWidth, double UnderRequiredShare, double UnderRequiredHalfWidth, IReadOnlyList<double> LongestRunShare,
    IReadOnlyList<double> UnderOneShareBySeason)
{
    /// <summary>The cover that money gives a service.</summary>
    /// <param name="usd">Money for the service, season by season a row of paths.</param>
    /// <param name="serviceUsd">Service due by season; 0 = nothing is due.</param>
    /// <param name="required">Cover asked.</param>
    /// <param name="replicates">Equal replicates.</param>
    /// <returns>The cover.</returns>
    internal static Cover Of(double[] usd, IReadOnlyList<double> serviceUsd, double required, int replicates)
    {
        var paths = usd.Length / serviceUsd.Count;
        var (worst, run, longest) = (new double[paths], new int[paths], new int[paths]);
        var (bySeason, under) = (new Distribution?[serviceUsd.Count], new double[serviceUsd.Count]);
        Array.Fill(worst, double.MaxValue);
        var row = new double[paths];
        for (var t = 0; t < serviceUsd.Count; t++)
        {
            if (serviceUsd[t] <= 0)
            {
                continue;
            }

            for (var p = 0; p < paths; p++)
            {
                row[p] = usd[t * paths + p] / serviceUsd[t];
                worst[p] = Math.Min(worst[p], row[p]);
                run[p] = row[p] < 1 ? run[p] + 1 : 0;
                longest[p] = Math.Max(longest[p], run[p]);
                under[t] += row[p] < 1 ? 1.0 / paths : 0;
            }

            bySeason[t] = Distribution.Of(row, replicates);
        }

        var (one, oneWidth) = Shares.Of(paths, replicates, p => worst[p] < 1);
        var (asked, askedWidth) = Shares.Of(paths, replicates, p => worst[p] < required);
        var runs = new double[longest.Max() + 1];
        foreach (var seasons in longest)
        {
            runs[seasons] += 1.0 / paths;
        }

        return new(bySeason, Distribution.Of(worst, replicates), one, oneWidth, asked, askedWidth, runs, under);
    }
}

/// <summary>Shares of futures with their error of computing.</summary>
internal static class Shares
{
    /// <summary>Share of the paths for which something holds, and half of its 95 % interval from the replicates.</summary>
    /// <param name="paths">Paths of all replicates.</param>
    /// <param name="replicates">Equal replicates.</param>
    /// <param name="holds">What holds on a path.</param>
    /// <returns>Both, 0 to 1.</returns>
    internal static (double Share, double HalfWidth) Of(int paths, int replicates, Func<int, bool> holds)
    {
        var (each, shares) = (paths / replicates, new double[replicates]);
        for (var r = 0; r < replicates; r++)
        {
            var count = 0;
            for (var p = r * each; p < (r + 1) * each; p++)
            {
                count += holds(p) ? 1 : 0;
            }

            shares[r] = (double)count / each;
        }

        return (shares.Sum() / replicates, Distribution.HalfWidthOf(shares));
    }

    /// <summary>A quantile by sorting (Hyndman and Fan 1996, type 7), and half of its 95 % interval from the replicates.</summary>
    /// <param name="values">One a path, replicate after replicate.</param>
    /// <param name="replicates">Equal replicates.</param>
    /// <param name="level">0 to 1.</param>
    /// <returns>Both.</returns>
    internal static (double Value, double HalfWidth) Quantile(double[] values, int replicates, double level)
    {
        var each = values.Length / replicates;
        var own = new double[replicates];
        for (var r = 0; r < replicates; r++)
        {
            own[r] = Sorted(values.AsSpan(r * each, each), level);
        }

        return (Sorted(values, level), Distribution.HalfWidthOf(own));
    }

    private static double Sorted(ReadOnlySpan<double> values, double level)
    {
        var sorted = values.ToArray();
        Array.Sort(sorted);
        var at = level * (sorted.Length - 1);
        var low = (int)at;
        return low + 1 < sorted.Length ? sorted[low] + (at - low) * (sorted[low + 1] - sorted[low]) : sorted[low];
    }
}
