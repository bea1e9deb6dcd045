namespace FarmPortfolio.Engine.Economics;

/// <summary>Counts of equal bins between two ends.</summary>
/// <param name="From">Lower end of the first bin.</param>
/// <param name="To">Upper end of the last bin.</param>
/// <param name="Counts">Count by bin.</param>
public sealed record Histogram(double From, double To, int[] Counts);

/// <summary>
/// A distribution over all futures. Quantiles interpolate between order statistics (Hyndman and Fan 1996, type 7). Half-width: 95 % interval of the mean
/// from the replicates, t(n-1; 97.5 %) x sd / sqrt n; it is error of computing only.
/// </summary>
/// <param name="Mean">Mean.</param>
/// <param name="HalfWidth">Half of the 95 % interval of the mean.</param>
/// <param name="P5">One in twenty is lower.</param>
/// <param name="P10">One in ten is lower.</param>
/// <param name="P25">One in four is lower.</param>
/// <param name="P50">Middle.</param>
/// <param name="P75">One in four is higher.</param>
/// <param name="P90">One in ten is higher.</param>
/// <param name="P95">One in twenty is higher.</param>
/// <param name="MeanOfWorst5Pct">Mean of the worst twentieth: the lowest, or the highest of a cost.</param>
/// <param name="Histogram">64 bins, where wanted.</param>
public sealed record Distribution(
    double Mean, double HalfWidth, double P5, double P10, double P25, double P50, double P75, double P90, double P95, double MeanOfWorst5Pct, Histogram? Histogram = null)
{
    private const int Bins = 64;
    private static readonly double[] Levels = [0.05, 0.10, 0.25, 0.50, 0.75, 0.90, 0.95];

    /// <summary>The distribution of values given path by path, replicate after replicate.</summary>
    /// <param name="values">One value a path, at least one a replicate.</param>
    /// <param name="replicates">Equal replicates, at least 1.</param>
    /// <param name="worstIsHigh">Whether the worst are the highest (a cost) or the lowest (a saving).</param>
    /// <param name="histogram">Whether to count bins.</param>
    /// <returns>The distribution.</returns>
    public static Distribution Of(ReadOnlySpan<double> values, int replicates, bool worstIsHigh = false, bool histogram = false)
    {
        var n = values.Length;
        Span<double> means = stackalloc double[replicates];
        var spread = ValueSpread.Of(values, means);
        var tail = Math.Max(1, (int)Math.Round(0.05 * n));
        var edge = worstIsHigh ? n - tail : tail - 1;

        // the edge of the tail stands beside the outermost level: the ranks rise where it is put first or last
        Span<int> ranks = stackalloc int[2 * Levels.Length + 1];
        var first = worstIsHigh ? 0 : 1;
        ranks[worstIsHigh ? ^1 : 0] = edge;
        for (var i = 0; i < Levels.Length; i++)
        {
            var low = (int)(Levels[i] * (n - 1));
            (ranks[first + 2 * i], ranks[first + 2 * i + 1]) = (low, Math.Min(n - 1, low + 1));
        }

        Span<double> at = stackalloc double[ranks.Length];
        OrderStatistics.Find(values, spread, ranks, at);
        Span<double> q = stackalloc double[Levels.Length];
        for (var i = 0; i < Levels.Length; i++)
        {
            var (low, high, within) = (at[first + 2 * i], at[first + 2 * i + 1], Levels[i] * (n - 1) - ranks[first + 2 * i]);
            q[i] = low + within * (high - low);
        }

        var worst = OrderStatistics.Tail(values, worstIsHigh ? at[^1] : at[0], tail, worstIsHigh) / tail;
        return new(OrderStatistics.Sum(means) / replicates, HalfWidthOf(means), q[0], q[1], q[2], q[3], q[4], q[5], q[6], worst, histogram ? Bars(values, spread) : null);
    }

    /// <summary>Counts values into even bins from the least to the most; one on an edge may fall to either side, alike on every machine.</summary>
    private static Histogram Bars(ReadOnlySpan<double> values, ValueSpread spread)
    {
        var (least, most, counts) = (spread.Least, spread.Most, new int[Bins]);
        var scale = Bins / (most - least);
        foreach (var value in values)
        {
            counts[double.IsFinite(scale) ? Math.Min(Bins - 1, (int)((value - least) * scale)) : 0]++;
        }

        return new(least, most > least ? most : least + 1, counts);
    }

    /// <summary>Half of the 95 % interval of a mean of replicates.</summary>
    /// <param name="replicateMeans">One figure a replicate.</param>
    /// <returns>Half-width; 0 for fewer than 2.</returns>
    public static double HalfWidthOf(ReadOnlySpan<double> replicateMeans)
    {
        var n = replicateMeans.Length;
        if (n < 2)
        {
            return 0;
        }

        var mean = OrderStatistics.Sum(replicateMeans) / n;
        var sum = 0.0;
        foreach (var m in replicateMeans)
        {
            sum += (m - mean) * (m - mean);
        }

        return StudentT.Upper975(n - 1) * Math.Sqrt(sum / (n - 1) / n);
    }
}
