using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace FarmPortfolio.Engine.Economics;

/// <summary>Even buckets between two values: a larger value never falls into a lower bucket, whatever rounding does at an edge.</summary>
internal static class ValueBuckets
{
    /// <summary>Buckets.</summary>
    public const int Count = 1024;

    /// <summary>Buckets of values are read so many at a time: room that an array of them needs at its end.</summary>
    public const int Stride = 32;

    private const ushort None = ushort.MaxValue;
    private const double TwoTo52 = 4503599627370496.0;

    /// <summary>The bucket of every value, and how many values each bucket holds.</summary>
    /// <param name="values">Values without NaN.</param>
    /// <param name="from">Lower end of the first bucket; what is below falls into it.</param>
    /// <param name="to">Upper end of the last bucket; what is above falls into it.</param>
    /// <param name="buckets">Filled, a <see cref="Stride"/> longer than the values; what is beyond them belongs to none.</param>
    /// <param name="counts">Filled, one a bucket.</param>
    public static void Fill(ReadOnlySpan<double> values, double from, double to, ushort[] buckets, Span<int> counts)
    {
        counts.Clear();
        var scale = Count / (to - from);
        var (factor, shift) = (Vector256.Create(scale), Vector256.Create(-from * scale));
        ref var v = ref MemoryMarshal.GetReference(values);
        ref var id = ref MemoryMarshal.GetArrayDataReference(buckets);
        ref var count = ref MemoryMarshal.GetReference(counts);
        var whole = values.Length & ~15;
        for (var i = 0; i < whole; i += 16)
        {
            ref var at = ref Unsafe.Add(ref v, i);
            Vector256.Create(Eight(ref at, factor, shift), Eight(ref Unsafe.Add(ref at, 8), factor, shift)).StoreUnsafe(ref id, (nuint)i);
            for (var j = i; j < i + 16; j += 4)
            {
                var four = Unsafe.ReadUnaligned<ulong>(ref Unsafe.As<ushort, byte>(ref Unsafe.Add(ref id, j)));
                Unsafe.Add(ref count, (nuint)(four & 0xFFFF))++;
                Unsafe.Add(ref count, (nuint)((four >> 16) & 0xFFFF))++;
                Unsafe.Add(ref count, (nuint)((four >> 32) & 0xFFFF))++;
                Unsafe.Add(ref count, (nuint)(four >> 48))++;
            }
        }

        for (var i = whole; i < values.Length; i++)
        {
            counts[buckets[i] = (ushort)Four(Vector256.Create(values[i]), factor, shift)[0]]++;
        }

        buckets.AsSpan(values.Length, Stride).Fill(None);
    }

    /// <summary>The bucket that holds a rank, and how many values stand before it.</summary>
    /// <param name="rank">Rank, 0 = the smallest.</param>
    /// <param name="counts">Values by bucket.</param>
    /// <param name="bucket">A bucket to look from, not beyond the one sought.</param>
    /// <param name="start">Values before that.</param>
    /// <returns>Bucket and values before it.</returns>
    public static (int Bucket, int Start) Holding(int rank, ReadOnlySpan<int> counts, int bucket, int start)
    {
        // eight buckets at a time while the rank is beyond them all
        while (bucket + 8 <= counts.Length && Vector256.Sum(Vector256.LoadUnsafe(in counts[bucket])) is var eight && start + eight <= rank)
        {
            (bucket, start) = (bucket + 8, start + eight);
        }

        while (start + counts[bucket] <= rank)
        {
            start += counts[bucket++];
        }

        return (bucket, start);
    }

    /// <summary>Buckets of eight values.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector128<ushort> Eight(ref double at, Vector256<double> factor, Vector256<double> shift)
    {
        var (a, b) = (Vector256.LoadUnsafe(ref at), Vector256.LoadUnsafe(ref at, 4));
        if (!Avx.IsSupported)
        {
            var narrow = Vector256.Narrow(Four(a, factor, shift), Four(b, factor, shift)).AsUInt32();
            return Vector128.Narrow(narrow.GetLower(), narrow.GetUpper());
        }

        // whole numbers below 0 are packed as 0
        var most = Vector256.Create(Count - 1.0);
        a = Vector256.MinNative(Vector256.FusedMultiplyAdd(a, factor, shift), most);
        b = Vector256.MinNative(Vector256.FusedMultiplyAdd(b, factor, shift), most);
        return Sse41.PackUnsignedSaturate(Avx.ConvertToVector128Int32WithTruncation(a), Avx.ConvertToVector128Int32WithTruncation(b));
    }

    /// <summary>Bucket in the lowest 32 bits of each lane.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<long> Four(Vector256<double> value, Vector256<double> factor, Vector256<double> shift)
    {
        var at = Vector256.MinNative(Vector256.FusedMultiplyAdd(value, factor, shift), Vector256.Create(Count - 1.0));
        return (Vector256.Floor(Vector256.MaxNative(at, Vector256<double>.Zero)) + Vector256.Create(TwoTo52)).AsInt64();
    }
}
