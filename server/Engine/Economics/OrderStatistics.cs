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

    private const int NotWanted = -1;
    private const int InTail = -2;
    private const double TwoTo52 = 4503599627370496.0;

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
        bins.Clear();
        var scale = Buckets / (most - least);
        if (!(most > least) || !double.IsFinite(scale))
        {
            found.Fill(least);
            if (bins.Length > 0)
            {
                bins[0] = values.Length;
            }

            return (least, most, tail * least);
        }

        var buckets = ArrayPool<int>.Shared.Rent(values.Length);
        Span<int> starts = stackalloc int[Buckets + 1];
        Count(values, least, scale, buckets, starts);
        for (var b = 0; b < Buckets && bins.Length > 0; b++)
        {
            bins[b / (Buckets / bins.Length)] += starts[b + 1];
        }

        for (var b = 0; b < Buckets; b++)
        {
            starts[b + 1] += starts[b];
        }

        var edge = tail == 0 ? -1 : high ? values.Length - tail : tail - 1;
        var sum = Pick(values, buckets, starts, ranks, found, edge, high);
        ArrayPool<int>.Shared.Return(buckets);
        return (least, most, sum);
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

    /// <summary>The bucket of every value, and how many each holds: at starts[bucket + 1].</summary>
    private static void Count(ReadOnlySpan<double> values, double least, double scale, int[] buckets, Span<int> starts)
    {
        Span<int> odd = stackalloc int[Buckets];
        odd.Clear();
        starts.Clear();
        ref var v = ref MemoryMarshal.GetReference(values);
        var whole = values.Length & ~7;
        for (var i = 0; i < whole; i += 8)
        {
            Vector256.Narrow(Bucket(Vector256.LoadUnsafe(ref v, (nuint)i), least, scale), Bucket(Vector256.LoadUnsafe(ref v, (nuint)i + 4), least, scale)).StoreUnsafe(ref buckets[0], (nuint)i);
        }

        for (var i = whole; i < values.Length; i++)
        {
            buckets[i] = (int)Bucket(Vector256.Create(values[i]), least, scale)[0];
        }

        for (var i = 0; i + 1 < values.Length; i += 2)
        {
            starts[buckets[i] + 1]++;
            odd[buckets[i + 1]]++;
        }

        if (values.Length % 2 == 1)
        {
            starts[buckets[values.Length - 1] + 1]++;
        }

        for (var b = 0; b < Buckets; b++)
        {
            starts[b + 1] += odd[b];
        }
    }

    private static double Pick(ReadOnlySpan<double> values, int[] buckets, ReadOnlySpan<int> starts, ReadOnlySpan<int> ranks, Span<double> found, int edge, bool high)
    {
        Span<int> places = stackalloc int[Buckets];
        Span<int> wanted = stackalloc int[ranks.Length + 1];
        places.Fill(NotWanted);
        var (size, count) = (0, 0);
        var edgeBucket = edge < 0 ? -1 : BucketOf(edge, starts);
        if (edge >= 0)
        {
            (high ? places[(edgeBucket + 1)..] : places[..edgeBucket]).Fill(InTail);
            Mark(edgeBucket, places, starts, wanted, ref count, ref size);
        }

        foreach (var rank in ranks)
        {
            Mark(BucketOf(rank, starts), places, starts, wanted, ref count, ref size);
        }

        var rented = ArrayPool<double>.Shared.Rent(size);
        var sum = 0.0;
        for (var i = 0; i < values.Length; i++)
        {
            ref var place = ref places[buckets[i]];
            if (place != NotWanted)
            {
                if (place >= 0)
                {
                    rented[place++] = values[i];
                }

                sum += edge >= 0 && (high ? buckets[i] > edgeBucket : buckets[i] < edgeBucket) ? values[i] : 0;
            }
        }

        for (var w = 0; w < count; w++)
        {
            var held = starts[wanted[w] + 1] - starts[wanted[w]];
            places[wanted[w]] -= held;
            rented.AsSpan(places[wanted[w]], held).Sort();
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

    private static void Mark(int bucket, Span<int> places, ReadOnlySpan<int> starts, Span<int> wanted, ref int count, ref int size)
    {
        if (places[bucket] >= 0)
        {
            return;
        }

        wanted[count++] = bucket;
        places[bucket] = size;
        size += starts[bucket + 1] - starts[bucket];
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

    /// <summary>Whole part of (value - least) x scale, at most the last bucket; a value on an edge may fall to either side, alike on every machine.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<long> Bucket(Vector256<double> value, double least, double scale)
    {
        var at = (value - Vector256.Create(least)) * Vector256.Create(scale) - Vector256.Create(0.5);
        at = Vector256.MinNative(Vector256.MaxNative(at, Vector256<double>.Zero), Vector256.Create(Buckets - 1.0));
        return (at + Vector256.Create(TwoTo52)).AsInt64() & Vector256.Create(0xFFFFFL);
    }

    private static (double Least, double Most) Range(ReadOnlySpan<double> values)
    {
        var wide = MemoryMarshal.Cast<double, Vector256<double>>(values[..(values.Length & ~7)]);
        var (low, high) = (Vector256.Create(values[0]), Vector256.Create(values[0]));
        var (low1, high1) = (low, high);
        for (var i = 0; i < wide.Length; i += 2)
        {
            (low, high) = (Vector256.MinNative(low, wide[i]), Vector256.MaxNative(high, wide[i]));
            (low1, high1) = (Vector256.MinNative(low1, wide[i + 1]), Vector256.MaxNative(high1, wide[i + 1]));
        }

        (low, high) = (Vector256.MinNative(low, low1), Vector256.MaxNative(high, high1));
        var (least, most) = (values[0], values[0]);
        for (var i = 0; i < 4; i++)
        {
            (least, most) = (Math.Min(least, low[i]), Math.Max(most, high[i]));
        }

        foreach (var v in values[(values.Length & ~7)..])
        {
            (least, most) = (Math.Min(least, v), Math.Max(most, v));
        }

        return (least, most);
    }
}
