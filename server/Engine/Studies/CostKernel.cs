using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;
using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Engine.Studies;

/// <summary>
/// The inner loop of a study: for every path and season the sum over months of price x max(0, a + b o + c o^2). Lanes are options, so a path's price, winter and
/// offset are read once for all of them, and paths stay in their order; every fused step is explicit and no lane looks at another, so vectors of any width give
/// the same bits. Four paths run side by side and are turned, so that an option's costs lie in rows of paths.
/// </summary>
internal static class CostKernel
{
    /// <summary>Paths a stretch: what a stretch of all seasons and lanes needs stays in the second-level cache until its money is counted.</summary>
    public const int Stretch = 64;

    /// <summary>Cost of the heat of a stretch of paths as if the heater were perfect, US dollars.</summary>
    /// <param name="tables">Demand by lane.</param>
    /// <param name="prices">What the line pays, of the same months.</param>
    /// <param name="index">Index of its fuel, as <see cref="ReplicateLayout.Index"/> lays it out.</param>
    /// <param name="block">The replicate.</param>
    /// <param name="from">First path of the stretch within it.</param>
    /// <param name="count">Paths, 1 to <see cref="Stretch"/>.</param>
    /// <param name="paid">Room for the prices of four paths.</param>
    /// <param name="into">By lane: season by season a row of <see cref="Stretch"/> paths; beyond the count, to a multiple of four, the last path again.</param>
    public static void Run(LaneTables tables, PaidPrices prices, double[] index, FuturesBlock block, int from, int count, Span<double> paid, double[] into)
    {
        var perPath = 12 * ReplicateLayout.StrideOf(block.Seasons);
        Span<int> paths = stackalloc int[4];
        for (var p = 0; p < count; p += 4)
        {
            for (var i = 0; i < 4; i++)
            {
                paths[i] = from + Math.Min(p + i, count - 1);
                prices.Pay(index.AsSpan(paths[i] * perPath, perPath), paid.Slice(i * prices.Length, prices.Length));
                if (paths[i] + 4 < block.Paths)
                {
                    prices.Prefetch(index.AsSpan((paths[i] + 4) * perPath, perPath));
                }
            }

            Four(tables, paths, block, paid[..(4 * prices.Length)], ref into[p]);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Four(LaneTables tables, ReadOnlySpan<int> paths, FuturesBlock block, ReadOnlySpan<double> paid, ref double into)
    {
        var (seasons, apart) = (block.Seasons, (nuint)(block.Seasons * Stretch));
        var (stride, end) = ((nuint)ReplicateLayout.StrideOf(seasons), (nuint)tables.PerWinter);
        ref var p0 = ref MemoryMarshal.GetReference(paid);
        ref var p1 = ref Unsafe.Add(ref p0, paid.Length / 4);
        ref var p2 = ref Unsafe.Add(ref p0, paid.Length / 2);
        ref var p3 = ref Unsafe.Add(ref p0, 3 * (paid.Length / 4));
        var (c0, c1, c2, c3) = (paths[0] * seasons, paths[1] * seasons, paths[2] * seasons, paths[3] * seasons);
        for (var s = 0; s < seasons; s++)
        {
            var (w0, w1) = ((nuint)(block.Winter[c0 + s] * tables.PerWinter), (nuint)(block.Winter[c1 + s] * tables.PerWinter));
            var (w2, w3) = ((nuint)(block.Winter[c2 + s] * tables.PerWinter), (nuint)(block.Winter[c3 + s] * tables.PerWinter));
            var (o0, o1) = (Vector256.Create(block.OffsetK[c0 + s]), Vector256.Create(block.OffsetK[c1 + s]));
            var (o2, o3) = (Vector256.Create(block.OffsetK[c2 + s]), Vector256.Create(block.OffsetK[c3 + s]));
            for (var lane = 0; lane < tables.Lanes; lane += 4)
            {
                ref var first = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(tables.Coefficients), lane / 4 * tables.PerVector);
                ref var a0 = ref Unsafe.Add(ref first, w0);
                ref var a1 = ref Unsafe.Add(ref first, w1);
                ref var a2 = ref Unsafe.Add(ref first, w2);
                ref var a3 = ref Unsafe.Add(ref first, w3);
                var (s0, s1, s2, s3) = (Vector256<double>.Zero, Vector256<double>.Zero, Vector256<double>.Zero, Vector256<double>.Zero);
                var price = (nuint)s;
                for (nuint at = 0; at < end; at += 12)
                {
                    s0 = Vector256.FusedMultiplyAdd(Demand(ref a0, at, o0), Vector256.Create(Unsafe.Add(ref p0, price)), s0);
                    s1 = Vector256.FusedMultiplyAdd(Demand(ref a1, at, o1), Vector256.Create(Unsafe.Add(ref p1, price)), s1);
                    s2 = Vector256.FusedMultiplyAdd(Demand(ref a2, at, o2), Vector256.Create(Unsafe.Add(ref p2, price)), s2);
                    s3 = Vector256.FusedMultiplyAdd(Demand(ref a3, at, o3), Vector256.Create(Unsafe.Add(ref p3, price)), s3);
                    price += stride;
                }

                Turn(s0, s1, s2, s3, ref Unsafe.Add(ref into, (nuint)lane * apart + (nuint)(s * Stretch)), apart);
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Demand(ref double a, nuint at, Vector256<double> o)
    {
        var quadratic = Vector256.FusedMultiplyAdd(o, Vector256.LoadUnsafe(ref a, at + 8), Vector256.LoadUnsafe(ref a, at + 4));
        return Vector256.MaxNative(Vector256.FusedMultiplyAdd(o, quadratic, Vector256.LoadUnsafe(ref a, at)), Vector256<double>.Zero);
    }

    /// <summary>Four paths of four lanes into four lanes of four paths.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Turn(Vector256<double> s0, Vector256<double> s1, Vector256<double> s2, Vector256<double> s3, ref double to, nuint apart)
    {
        if (Avx.IsSupported)
        {
            var (even, odd) = (Avx.UnpackLow(s0, s1), Avx.UnpackHigh(s0, s1));
            var (even1, odd1) = (Avx.UnpackLow(s2, s3), Avx.UnpackHigh(s2, s3));
            Avx.Permute2x128(even, even1, 0x20).StoreUnsafe(ref to);
            Avx.Permute2x128(odd, odd1, 0x20).StoreUnsafe(ref to, apart);
            Avx.Permute2x128(even, even1, 0x31).StoreUnsafe(ref to, 2 * apart);
            Avx.Permute2x128(odd, odd1, 0x31).StoreUnsafe(ref to, 3 * apart);
            return;
        }

        for (var lane = 0; lane < 4; lane++)
        {
            Vector256.Create(s0[lane], s1[lane], s2[lane], s3[lane]).StoreUnsafe(ref to, (nuint)lane * apart);
        }
    }
}
