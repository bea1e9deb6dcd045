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
public sealed record Distribution(
    double Mean, double HalfWidth, double P5, double P10, double P25, double P50, double P75, double P90, double P95, double MeanOfWorst5Pct, Histogram? Histogram = null)
{
    private const int Bins = 64;
    private static readonly double[] Levels = [0.05, 0.10, 0.25, 0.50, 0.75, 0.90, 0.95];

    /// <summary>The distribution of values given path by path, replicate after replicate.</summary>
    /// <param name="values">One value a path; reordered.</param>
    /// <param name="replicates">Equal replicates, at least 2.</param>
    /// <param name="worstIsHigh">Whether the worst are the highest (a cost) or the lowest (a saving).</param>
    /// <param name="histogram">Whether to count bins.</param>
    /// <returns>The distribution.</returns>
    public static Distribution Of(Span<double> values, int replicates, bool worstIsHigh = false, bool histogram = false)
    {
        var n = values.Length;
        var means = new double[replicates];
        var each = n / replicates;
        for (var r = 0; r < replicates; r++)
        {
            means[r] = Mean0(values.Slice(r * each, each));
        }

        var tail = Math.Max(1, (int)Math.Round(0.05 * n));
        Span<int> ranks = stackalloc int[2 * Levels.Length + 1];
        for (var i = 0; i < Levels.Length; i++)
        {
            var at = Levels[i] * (n - 1);
            ranks[2 * i] = (int)at;
            ranks[2 * i + 1] = Math.Min(n - 1, (int)at + 1);
        }

        ranks[^1] = worstIsHigh ? n - tail : tail - 1;
        ranks.Sort();
        MultiSelect.Partition(values, ranks);
        Span<double> q = stackalloc double[Levels.Length];
        for (var i = 0; i < Levels.Length; i++)
        {
            var at = Levels[i] * (n - 1);
            var low = (int)at;
            q[i] = values[low] + (at - low) * (values[Math.Min(n - 1, low + 1)] - values[low]);
        }

        var worst = Mean0(worstIsHigh ? values[(n - tail)..] : values[..tail]);
        return new(Mean0(means), HalfWidthOf(means), q[0], q[1], q[2], q[3], q[4], q[5], q[6], worst, histogram ? Count(values) : null);
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

        var mean = Mean0(replicateMeans);
        var sum = 0.0;
        foreach (var m in replicateMeans)
        {
            sum += (m - mean) * (m - mean);
        }

        return StudentT975(n - 1) * Math.Sqrt(sum / (n - 1) / n);
    }

    private static double StudentT975(int degrees) => MathNet.Numerics.Distributions.StudentT.InvCDF(0, 1, degrees, 0.975);

    private static double Mean0(ReadOnlySpan<double> values)
    {
        var sum = 0.0;
        foreach (var v in values)
        {
            sum += v;
        }

        return sum / values.Length;
    }

    private static Histogram Count(ReadOnlySpan<double> values)
    {
        var (low, high) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (var v in values)
        {
            (low, high) = (Math.Min(low, v), Math.Max(high, v));
        }

        high = high > low ? high : low + 1;
        var counts = new int[Bins];
        foreach (var v in values)
        {
            counts[Math.Min(Bins - 1, (int)((v - low) / (high - low) * Bins))]++;
        }

        return new(low, high, counts);
    }
}
