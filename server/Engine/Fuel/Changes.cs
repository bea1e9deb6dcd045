using static System.Math;

namespace FarmPortfolio.Engine.Fuel;

/// <summary>What a row of changes looks like: how fat its tails are, whether one carries on into the next, which stand out.</summary>
internal static class Changes
{
    /// <summary>Robust standard deviations from the middle change that make a jump; a normal month reaches them once in 15,000.</summary>
    private const double Jump = 4;

    /// <summary>Differences over some months.</summary>
    internal static double[] Over(IReadOnlyList<double> logs, int months) => [.. Enumerable.Range(0, Max(0, logs.Count - months)).Select(t => logs[t + months] - logs[t])];

    /// <summary>Fourth moment over the squared second, less 3.</summary>
    internal static double ExcessKurtosis(IReadOnlyList<double> values)
    {
        var mean = values.Average();
        var second = values.Average(v => (v - mean) * (v - mean));
        return second > 0 ? values.Average(v => Pow(v - mean, 4)) / (second * second) - 3 : 0;
    }

    /// <summary>Correlation of a value with the one before.</summary>
    internal static double Lag(IReadOnlyList<double> values)
    {
        var mean = values.Average();
        var square = values.Sum(v => (v - mean) * (v - mean));
        return square > 0 ? Enumerable.Range(1, values.Count - 1).Sum(i => (values[i] - mean) * (values[i - 1] - mean)) / square : 0;
    }

    /// <summary>Changes that stand out from the middle one, the largest first: place and change.</summary>
    internal static IReadOnlyList<(int Index, double Change)> Jumps(IReadOnlyList<double> changes)
    {
        var middle = Middle(changes);
        var spread = 1.4826 * Middle([.. changes.Select(c => Abs(c - middle))]);
        return [.. changes.Select((c, i) => (i, c)).Where(x => spread > 0 && Abs(x.c - middle) > Jump * spread).OrderByDescending(x => Abs(x.c)).ThenBy(x => x.i)];
    }

    private static double Middle(IReadOnlyList<double> values)
    {
        var sorted = values.Order().ToArray();
        return sorted.Length == 0 ? 0 : (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }
}
