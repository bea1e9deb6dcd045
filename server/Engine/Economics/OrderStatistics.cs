using System.Buffers;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace FarmPortfolio.Engine.Economics;

/// <summary>
/// Exact order statistics without sorting: values are counted into even buckets, and only the buckets that hold a wanted rank are sorted.
/// The same bits on every machine: sums run in the order of the values over eight fixed lanes.
/// </summary>
internal static class OrderStatistics
{
    /// <summary>Buckets; a whole number of times the bins of a histogram.</summary>
    public const int Buckets = 2048;

    /// <summary>Finds what a sort would put at each rank.</summary>
    /// <param name="values">Values without NaN, at least one.</param>
    /// <param name="ranks">Wanted ranks, 0 = the smallest.</param>
    /// <param name="found">What stands at each rank.</param>
    /// <param name="tail">How many of the extreme values to add up; 0 = none.</param>
    /// <param name="high">Whether the tail is the highest or the lowest.</param>
    /// <param name="bins">Counts of even bins between least and most; empty = not wanted; its length divides <see cref="Buckets"/>.</param>
    /// <returns>Least, most, and the sum of the tail.</returns>
    public static (double Least, double Most, double TailSum) Find(
        ReadOnlySpan<double> values, ReadOnlySpan<int> ranks, Span<double> found, int tail, bool high, Span<int> bins)
    {
        var (least, most) = Range(values);
        if (!(most > least))
        {
            found.Fill(least);
            bins.Clear();
            if (bins.Length > 0)
            {
                bins[0] = values.Length;
            }

            return (least, most, tail * least);
        }

        var scale = Buckets / (most - least);
        Span<int> starts = stackalloc int[Buckets + 1];
        starts.Clear();
        foreach (var v in values)
        {
            starts[Bucket(v, least, scale) + 1]++;
        }

        for (var i = 0; i < bins.Length; i++)
        {
            var (sum, each) = (0, Buckets / bins.Length);
            for (var b = 0; b < each; b++)
            {
                sum += starts[i * each + b + 1];
            }

            bins[i] = sum;
        }

        for (var b = 0; b < Buckets; b++)
        {
            starts[b + 1] += starts[b];
        }

        var edge = tail == 0 ? -1 : high ? values.Length - tail : tail - 1;
        return (least, most, Pick(values, least, scale, starts, ranks, found, edge, high));
    }

    /// <summary>Sum over eight fixed lanes.</summary>
    /// <param name="values">Values.</param>
    /// <returns>The sum.</returns>
    public static double Sum(ReadOnlySpan<double> values)
    {
        var wide = MemoryMarshal.Cast<double, Vector256<double>>(values[..(values.Length & ~7)]);
        var (a, b) = (Vector256<double>.Zero, Vector256<double>.Zero);
        for (var i = 0; i < wide.Length; i += 2)
        {
            a += wide[i];
            b += wide[i + 1];
        }

        a += b;
        var sum = a[0] + a[1] + (a[2] + a[3]);
        foreach (var v in values[(values.Length & ~7)..])
        {
            sum += v;
        }

        return sum;
    }

    private static double Pick(
        ReadOnlySpan<double> values, double least, double scale, ReadOnlySpan<int> starts, ReadOnlySpan<int> ranks, Span<double> found, int edge, bool high)
    {
        Span<int> places = stackalloc int[Buckets];
        places.Fill(-1);
        var size = 0;
        var edgeBucket = edge < 0 ? -1 : BucketOf(edge, starts);
        foreach (var rank in ranks)
        {
            size = Mark(BucketOf(rank, starts), starts, places, size);
        }

        if (edge >= 0)
        {
            size = Mark(edgeBucket, starts, places, size);
        }

        var rented = ArrayPool<double>.Shared.Rent(size);
        Span<int> filled = stackalloc int[Buckets];
        filled.Clear();
        var sum = 0.0;
        foreach (var v in values)
        {
            var b = Bucket(v, least, scale);
            if (places[b] >= 0)
            {
                rented[places[b] + filled[b]++] = v;
            }

            if (edge >= 0 && (high ? b > edgeBucket : b < edgeBucket))
            {
                sum += v;
            }
        }

        for (var b = 0; b < Buckets; b++)
        {
            if (filled[b] > 1)
            {
                rented.AsSpan(places[b], filled[b]).Sort();
            }
        }

        for (var i = 0; i < ranks.Length; i++)
        {
            var b = BucketOf(ranks[i], starts);
            found[i] = rented[places[b] + ranks[i] - starts[b]];
        }

        for (var r = edge; edge >= 0 && (high ? r < starts[edgeBucket + 1] : r >= starts[edgeBucket]); r += high ? 1 : -1)
        {
            sum += rented[places[edgeBucket] + r - starts[edgeBucket]];
        }

        ArrayPool<double>.Shared.Return(rented);
        return sum;
    }

    private static int Mark(int bucket, ReadOnlySpan<int> starts, Span<int> places, int size)
    {
        if (places[bucket] >= 0)
        {
            return size;
        }

        places[bucket] = size;
        return size + starts[bucket + 1] - starts[bucket];
    }

    /// <summary>The bucket that holds a rank.</summary>
    private static int BucketOf(int rank, ReadOnlySpan<int> starts)
    {
        var (low, high) = (0, Buckets - 1);
        while (low < high)
        {
            var mid = (low + high) / 2;
            (low, high) = starts[mid + 1] > rank ? (low, mid) : (mid + 1, high);
        }

        return low;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static int Bucket(double value, double least, double scale) => Math.Min(Buckets - 1, (int)((value - least) * scale));

    private static (double Least, double Most) Range(ReadOnlySpan<double> values)
    {
        var wide = MemoryMarshal.Cast<double, Vector256<double>>(values);
        var (low, high) = (Vector256.Create(values[0]), Vector256.Create(values[0]));
        foreach (var v in wide)
        {
            (low, high) = (Vector256.Min(low, v), Vector256.Max(high, v));
        }

        var (least, most) = (values[0], values[0]);
        for (var i = 0; i < 4; i++)
        {
            (least, most) = (Math.Min(least, low[i]), Math.Max(most, high[i]));
        }

        foreach (var v in values[(4 * wide.Length)..])
        {
            (least, most) = (Math.Min(least, v), Math.Max(most, v));
        }

        return (least, most);
    }
}
