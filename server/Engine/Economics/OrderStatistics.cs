using System.Buffers;
using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace FarmPortfolio.Engine.Economics;

/// <summary>
/// Exact order statistics without sorting: values are counted into even buckets over the middle of their range, and only the buckets that hold a wanted rank are
/// sorted. Where the buckets lie moves no result, so machines may place them as they like; sums run in the order of the values over eight fixed lanes.
/// </summary>
internal static class OrderStatistics
{
    /// <summary>Standard deviations to either side of the mean that the buckets span; what lies beyond falls into the first and the last.</summary>
    private const double Reach = 2.5;

    /// <summary>Finds what a sort would put at each rank.</summary>
    /// <param name="values">Values without NaN, at least one.</param>
    /// <param name="spread">Their range and spread.</param>
    /// <param name="ranks">Wanted ranks, rising, 0 = the smallest; fewer than 255.</param>
    /// <param name="found">What stands at each rank.</param>
    public static void Find(ReadOnlySpan<double> values, ValueSpread spread, ReadOnlySpan<int> ranks, Span<double> found)
    {
        if (spread.Least == spread.Most)
        {
            found.Fill(spread.Least);
            return;
        }

        var (from, to) = (Math.Max(spread.Least, spread.Mean - Reach * spread.Sd), Math.Min(spread.Most, spread.Mean + Reach * spread.Sd));
        if (double.IsFinite(ValueBuckets.Count / (to - from)) && to > from)
        {
            Pick(values, from, to, ranks, found);
            return;
        }

        // infinite values, or a range too narrow to be divided
        var sorted = values.ToArray();
        Array.Sort(sorted);
        for (var i = 0; i < ranks.Length; i++)
        {
            found[i] = sorted[ranks[i]];
        }
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

    /// <summary>Sum of the extreme values: those beyond the edge over eight fixed lanes in the order of the values, then the edge as often as is left.</summary>
    /// <param name="values">Values.</param>
    /// <param name="edge">The innermost of them: what stands at its rank.</param>
    /// <param name="count">How many they are.</param>
    /// <param name="high">Whether they are the highest or the lowest.</param>
    /// <returns>The sum.</returns>
    public static double Tail(ReadOnlySpan<double> values, double edge, int count, bool high)
    {
        var wide = MemoryMarshal.Cast<double, Vector256<double>>(values[..(values.Length & ~7)]);
        var (limit, a, b) = (Vector256.Create(edge), Vector256<double>.Zero, Vector256<double>.Zero);
        var (beyond, beyond1) = (Vector256<long>.Zero, Vector256<long>.Zero);
        for (var i = 0; i < wide.Length; i += 2)
        {
            var (x, y) = high ? (Vector256.GreaterThan(wide[i], limit), Vector256.GreaterThan(wide[i + 1], limit)) : (Vector256.LessThan(wide[i], limit), Vector256.LessThan(wide[i + 1], limit));
            (a, b) = (a + (x & wide[i]), b + (y & wide[i + 1]));
            (beyond, beyond1) = (beyond + x.AsInt64(), beyond1 + y.AsInt64());
        }

        a += b;
        var (sum, counted) = (a[0] + a[1] + (a[2] + a[3]), -Vector256.Sum(beyond + beyond1));
        foreach (var v in values[(values.Length & ~7)..])
        {
            var isBeyond = high ? v > edge : v < edge;
            (sum, counted) = (sum + (isBeyond ? v : 0), counted + (isBeyond ? 1 : 0));
        }

        return sum + (count - counted) * edge;
    }

    /// <summary>Collects and sorts the buckets that hold a wanted rank.</summary>
    [SkipLocalsInit]
    private static void Pick(ReadOnlySpan<double> values, double from, double to, ReadOnlySpan<int> ranks, Span<double> found)
    {
        var buckets = ArrayPool<ushort>.Shared.Rent(values.Length + ValueBuckets.Stride);
        Span<int> counts = stackalloc int[ValueBuckets.Count];
        ValueBuckets.Fill(values, from, to, buckets, counts);
        Span<WantedBucket> wanted = stackalloc WantedBucket[ranks.Length];
        Span<byte> slots = stackalloc byte[ValueBuckets.Count];
        Span<byte> slotOf = stackalloc byte[ranks.Length];
        var (bucket, start, size, count) = (0, 0, 0, 0);
        for (var i = 0; i < ranks.Length; i++)
        {
            (bucket, start) = ValueBuckets.Holding(ranks[i], counts, bucket, start);
            if (count == 0 || wanted[count - 1].Bucket != bucket)
            {
                (slots[bucket], wanted[count]) = ((byte)count, new((ushort)bucket, start, size));
                (size, count) = (size + counts[bucket], count + 1);
            }

            slotOf[i] = (byte)(count - 1);
        }

        var rented = ArrayPool<double>.Shared.Rent(size);
        Collect(values, buckets, wanted[..count], slots, rented);
        foreach (var w in wanted[..count])
        {
            rented.AsSpan(w.From, w.Next - w.From).Sort();
        }

        for (var i = 0; i < ranks.Length; i++)
        {
            ref var w = ref wanted[slotOf[i]];
            found[i] = rented[w.From + ranks[i] - w.Start];
        }

        ArrayPool<ushort>.Shared.Return(buckets);
        ArrayPool<double>.Shared.Return(rented);
    }

    /// <summary>Lays the values of the wanted buckets side by side, sixteen compared at once: few are wanted.</summary>
    [SkipLocalsInit]
    private static void Collect(ReadOnlySpan<double> values, ushort[] buckets, Span<WantedBucket> wanted, ReadOnlySpan<byte> slots, double[] into)
    {
        Span<Vector256<ushort>> ids = stackalloc Vector256<ushort>[wanted.Length];
        for (var w = 0; w < wanted.Length; w++)
        {
            ids[w] = Vector256.Create(wanted[w].Bucket);
        }

        ref var at = ref MemoryMarshal.GetArrayDataReference(buckets);
        for (var i = 0; i < values.Length; i += ValueBuckets.Stride)
        {
            var (a, b) = (Vector256.LoadUnsafe(ref at, (nuint)i), Vector256.LoadUnsafe(ref at, (nuint)i + 16));
            var (isA, isB) = (Vector256<ushort>.Zero, Vector256<ushort>.Zero);
            foreach (var id in ids)
            {
                isA |= Vector256.Equals(a, id);
                isB |= Vector256.Equals(b, id);
            }

            for (var hits = Vector256.Narrow(isA, isB).ExtractMostSignificantBits(); hits != 0; hits &= hits - 1)
            {
                var place = i + BitOperations.TrailingZeroCount(hits);
                into[wanted[slots[buckets[place]]].Next++] = values[place];
            }
        }
    }

    /// <summary>A bucket that holds a wanted rank: the rank of its first value, and where its values are kept.</summary>
    private struct WantedBucket(ushort bucket, int start, int from)
    {
        public readonly ushort Bucket = bucket;
        public readonly int Start = start;
        public readonly int From = from;
        public int Next = from;
    }
}
