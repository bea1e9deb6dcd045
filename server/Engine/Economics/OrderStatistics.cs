using System.Buffers;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace FarmPortfolio.Engine.Economics;

/// <summary>
/// Exact order statistics without sorting: values are counted into even buckets, and only the buckets that hold a wanted rank are sorted.
/// The same bits on every machine: sums run in the order of the values over eight fixed lanes.
/// </summary>
internal static class OrderStatistics
{
    /// <summary>Buckets; a whole number of times the bins of a histogram.</summary>
    public const int Buckets = 2048;

    private const int Stretches = 64;
    private const int StretchBuckets = Buckets / Stretches;
    private const byte NotWanted = 255;
    private const double TwoTo52 = 4503599627370496.0;

    /// <summary>Finds what a sort would put at each rank.</summary>
    /// <param name="values">Values without NaN, at least one.</param>
    /// <param name="ranks">Wanted ranks, 0 = the smallest; fewer than 255.</param>
    /// <param name="found">What stands at each rank.</param>
    /// <param name="tail">How many of the extreme values to add up; 0 = none.</param>
    /// <param name="high">Whether the tail is the highest or the lowest.</param>
    /// <param name="bins">Counts of even bins between least and most; empty = not wanted; its length divides <see cref="Buckets"/>.</param>
    /// <returns>Least, most, and the sum of the tail.</returns>
    [SkipLocalsInit]
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

        var buckets = ArrayPool<ushort>.Shared.Rent(values.Length + 16);
        Span<int> counts = stackalloc int[Buckets];
        Count(values, least, scale, buckets, counts);
        for (var b = 0; b < Buckets && bins.Length > 0; b++)
        {
            bins[b / (Buckets / bins.Length)] += counts[b];
        }

        var edge = tail == 0 ? -1 : high ? values.Length - tail : tail - 1;
        var sum = Pick(values, buckets, counts, ranks, found, edge, high);
        ArrayPool<ushort>.Shared.Return(buckets);
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

    /// <summary>The bucket of every value, and how many values each bucket holds.</summary>
    [SkipLocalsInit]
    private static void Count(ReadOnlySpan<double> values, double least, double scale, ushort[] buckets, Span<int> counts)
    {
        Span<int> odd = stackalloc int[Buckets];
        odd.Clear();
        counts.Clear();
        ref var v = ref MemoryMarshal.GetReference(values);
        ref var to = ref MemoryMarshal.GetArrayDataReference(buckets);
        var whole = values.Length & ~15;
        for (var i = 0; i < whole; i += 16)
        {
            ref var at = ref Unsafe.Add(ref v, i);
            Vector256.Create(Eight(ref at, least, scale), Eight(ref Unsafe.Add(ref at, 8), least, scale)).StoreUnsafe(ref to, (nuint)i);
        }

        for (var i = whole; i < values.Length; i++)
        {
            buckets[i] = (ushort)Bucket(Vector256.Create(values[i]), least, scale)[0];
        }

        // neighbours are often in one bucket: two sets of counts keep them apart; every bucket is below their length
        ref var one = ref MemoryMarshal.GetReference(counts);
        ref var other = ref MemoryMarshal.GetReference(odd);
        for (var i = 0; i < whole; i += 4)
        {
            var four = Unsafe.ReadUnaligned<ulong>(ref Unsafe.As<ushort, byte>(ref Unsafe.Add(ref to, i)));
            Unsafe.Add(ref one, (nuint)(four & 0xFFFF))++;
            Unsafe.Add(ref other, (nuint)((four >> 16) & 0xFFFF))++;
            Unsafe.Add(ref one, (nuint)((four >> 32) & 0xFFFF))++;
            Unsafe.Add(ref other, (nuint)(four >> 48))++;
        }

        for (var i = whole; i < values.Length; i++)
        {
            counts[buckets[i]]++;
        }

        for (var b = 0; b < Buckets; b += 8)
        {
            (Vector256.LoadUnsafe(ref one, (nuint)b) + Vector256.LoadUnsafe(ref other, (nuint)b)).StoreUnsafe(ref one, (nuint)b);
        }
    }

    /// <summary>Sorts the buckets that hold a wanted rank, and adds up the tail in the order of the values, then of the ranks in the bucket at its edge.</summary>
    [SkipLocalsInit]
    private static double Pick(ReadOnlySpan<double> values, ushort[] buckets, ReadOnlySpan<int> counts, ReadOnlySpan<int> ranks, Span<double> found, int edge, bool high)
    {
        Span<int> starts = stackalloc int[Stretches];
        Stretch(counts, starts);
        Span<byte> read = stackalloc byte[Buckets];
        Span<byte> slots = stackalloc byte[Buckets];
        Span<WantedBucket> wanted = stackalloc WantedBucket[ranks.Length + 1];
        Span<byte> slotOf = stackalloc byte[ranks.Length + 1];
        read.Clear();
        slots.Fill(NotWanted);
        var (size, count, edgeBucket) = (0, 0, -1);
        for (var i = edge < 0 ? 1 : 0; i <= ranks.Length; i++)
        {
            var (bucket, start) = BucketOf(i == 0 ? edge : ranks[i - 1], counts, starts);
            if (slots[bucket] == NotWanted)
            {
                (slots[bucket], read[bucket], wanted[count]) = ((byte)count, 1, new(start, size, size));
                (size, count) = (size + counts[bucket], count + 1);
            }

            (slotOf[i], edgeBucket) = (slots[bucket], i == 0 ? bucket : edgeBucket);
        }

        if (edge >= 0)
        {
            (high ? read[(edgeBucket + 1)..] : read[..edgeBucket]).Fill(1);
        }

        var places = ArrayPool<int>.Shared.Rent(values.Length + 1);
        var rented = ArrayPool<double>.Shared.Rent(size);
        var sum = 0.0;
        foreach (var i in places.AsSpan(0, Places(buckets, values.Length, read, places)))
        {
            var (bucket, value) = (buckets[i], values[i]);
            if (slots[bucket] != NotWanted)
            {
                rented[wanted[slots[bucket]].Next++] = value;
            }

            sum += edge >= 0 && (high ? bucket > edgeBucket : bucket < edgeBucket) ? value : 0;
        }

        foreach (var w in wanted[..count])
        {
            rented.AsSpan(w.From, w.Next - w.From).Sort();
        }

        for (var i = 0; i < ranks.Length; i++)
        {
            ref var w = ref wanted[slotOf[i + 1]];
            found[i] = rented[w.From + ranks[i] - w.Start];
        }

        if (edge >= 0)
        {
            ref var w = ref wanted[slotOf[0]];
            for (var r = edge; high ? r < w.Start + w.Next - w.From : r >= w.Start; r += high ? 1 : -1)
            {
                sum += rented[w.From + r - w.Start];
            }
        }

        ArrayPool<int>.Shared.Return(places);
        ArrayPool<double>.Shared.Return(rented);
        return sum;
    }

    /// <summary>Numbers of the values whose bucket is to be read, in order: every number is written, and the next place moves on only past a wanted one.</summary>
    private static int Places(ushort[] buckets, int length, ReadOnlySpan<byte> read, int[] places)
    {
        ref var bucket = ref MemoryMarshal.GetArrayDataReference(buckets);
        ref var isRead = ref MemoryMarshal.GetReference(read);
        ref var place = ref MemoryMarshal.GetArrayDataReference(places);
        nuint count = 0;
        var i = 0;
        for (; i + 4 <= length; i += 4)
        {
            var four = Unsafe.ReadUnaligned<ulong>(ref Unsafe.As<ushort, byte>(ref Unsafe.Add(ref bucket, i)));
            Unsafe.Add(ref place, count) = i;
            count += Unsafe.Add(ref isRead, (nuint)(four & 0xFFFF));
            Unsafe.Add(ref place, count) = i + 1;
            count += Unsafe.Add(ref isRead, (nuint)((four >> 16) & 0xFFFF));
            Unsafe.Add(ref place, count) = i + 2;
            count += Unsafe.Add(ref isRead, (nuint)((four >> 32) & 0xFFFF));
            Unsafe.Add(ref place, count) = i + 3;
            count += Unsafe.Add(ref isRead, (nuint)(four >> 48));
        }

        for (; i < length; i++)
        {
            Unsafe.Add(ref place, count) = i;
            count += read[buckets[i]];
        }

        return (int)count;
    }

    /// <summary>How many values stand before each stretch of buckets.</summary>
    private static void Stretch(ReadOnlySpan<int> counts, Span<int> starts)
    {
        var before = 0;
        for (var s = 0; s < Stretches; s++)
        {
            starts[s] = before;
            var held = Vector256<int>.Zero;
            for (var b = 0; b < StretchBuckets; b += 8)
            {
                held += Vector256.LoadUnsafe(in counts[s * StretchBuckets], (nuint)b);
            }

            before += Vector256.Sum(held);
        }
    }

    /// <summary>The bucket that holds a rank, and how many values stand before it.</summary>
    private static (int Bucket, int Start) BucketOf(int rank, ReadOnlySpan<int> counts, ReadOnlySpan<int> starts)
    {
        var (low, high) = (0, Stretches - 1);
        while (low < high)
        {
            var mid = (low + high + 1) / 2;
            (low, high) = starts[mid] <= rank ? (mid, high) : (low, mid - 1);
        }

        var (bucket, start) = (low * StretchBuckets, starts[low]);
        while (start + counts[bucket] <= rank)
        {
            start += counts[bucket++];
        }

        return (bucket, start);
    }

    /// <summary>Buckets of eight values.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector128<ushort> Eight(ref double at, double least, double scale)
    {
        var (a, b) = (Vector256.LoadUnsafe(ref at), Vector256.LoadUnsafe(ref at, 4));
        if (!Avx.IsSupported)
        {
            var narrow = Vector256.Narrow(Bucket(a, least, scale), Bucket(b, least, scale)).AsUInt32();
            return Vector128.Narrow(narrow.GetLower(), narrow.GetUpper());
        }

        // the instruction rounds to the nearest whole number, ties to the even one, as adding 2 to the 52 does
        var (low, factor, half, most) = (Vector256.Create(least), Vector256.Create(scale), Vector256.Create(0.5), Vector256.Create(Buckets - 1.0));
        a = Vector256.MinNative((a - low) * factor - half, most);
        b = Vector256.MinNative((b - low) * factor - half, most);
        return Sse41.PackUnsignedSaturate(Avx.ConvertToVector128Int32(a), Avx.ConvertToVector128Int32(b));
    }

    /// <summary>Whole part of (value - least) x scale, at most the last bucket, in the lowest 32 bits; a value on an edge may fall to either side, alike on every machine.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<long> Bucket(Vector256<double> value, double least, double scale)
    {
        var at = (value - Vector256.Create(least)) * Vector256.Create(scale) - Vector256.Create(0.5);
        at = Vector256.MinNative(Vector256.MaxNative(at, Vector256<double>.Zero), Vector256.Create(Buckets - 1.0));
        return (at + Vector256.Create(TwoTo52)).AsInt64();
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

    /// <summary>A bucket that holds a wanted rank: the rank of its first value, and where its values are kept.</summary>
    private struct WantedBucket(int start, int from, int next)
    {
        public readonly int Start = start;
        public readonly int From = from;
        public int Next = next;
    }
}
