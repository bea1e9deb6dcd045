using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using FarmPortfolio.Engine.HeatDemand;

namespace FarmPortfolio.Engine.Studies;

/// <summary>
/// The inner loop of a study: for every path and season the sum over months of price x max(0, a + b o + c o^2), option by option. Lanes are paths that meet the
/// same winter, so an option's row of demand is loaded once for many of them; every fused step is explicit and no lane looks at another, so vectors of any width
/// give the same bits.
/// </summary>
internal static class CostKernel
{
    /// <summary>Cost of the heat of one replicate as if the heater were perfect, US dollars.</summary>
    /// <param name="tables">Demand by option, over one pool.</param>
    /// <param name="months">Months in which any of them needs heat, July = 0, rising.</param>
    /// <param name="order">The replicate.</param>
    /// <param name="paid">Price paid, laid out as <see cref="WinterOrder.Index"/>; read in <paramref name="months"/> alone.</param>
    /// <param name="paths">Paths of all replicates: the length of a season's row in <paramref name="into"/>.</param>
    /// <param name="into">By option: season by season a row of paths.</param>
    public static void Run(ReadOnlySpan<DemandTable> tables, int[] months, WinterOrder order, double[] paid, int paths, ReadOnlySpan<double[]> into)
    {
        var groups = order.Groups.AsSpan();
        while (!groups.IsEmpty)
        {
            // a season at a time, so that an option's row stays in the nearest cache while its cells are written across it
            var season = groups[0].Season;
            var count = 0;
            while (count < groups.Length && groups[count].Season == season)
            {
                count++;
            }

            for (var o = 0; o < tables.Length; o++)
            {
                var row = into[o].AsSpan(season * paths + order.FirstPath, order.Paths);
                foreach (var g in groups[..count])
                {
                    Group(tables[o].Coefficients.Slice(36 * g.Winter, 36), months, paid.AsSpan(12 * g.From, 12 * g.Count), order.OffsetK.AsSpan(g.From, g.Count), order.Path.AsSpan(g.From, g.Count), row);
                }
            }

            groups = groups[count..];
        }
    }

    /// <summary>Months in which any of some tables needs heat.</summary>
    /// <param name="tables">Demand by option.</param>
    /// <returns>Months, July = 0, rising.</returns>
    public static int[] HeatedMonths(IReadOnlyList<DemandTable> tables) => [.. Enumerable.Range(0, 12).Where(m => tables.Any(t => Heats(t, m)))];

    private static bool Heats(DemandTable table, int month)
    {
        for (var w = 0; w < table.Winters; w++)
        {
            if (table.Coefficients.Slice(3 * (12 * w + month), 3).ContainsAnyExcept(0.0))
            {
                return true;
            }
        }

        return false;
    }

    [SkipLocalsInit]
    private static void Group(ReadOnlySpan<double> abc, int[] months, ReadOnlySpan<double> prices, ReadOnlySpan<double> offsets, ReadOnlySpan<int> path, Span<double> row)
    {
        Span<double> sums = stackalloc double[32];
        for (var from = 0; from < path.Length; from += 32)
        {
            var count = Math.Min(32, path.Length - from);
            if (Vector512.IsHardwareAccelerated)
            {
                Wide(in abc[0], months, in prices[from], path.Length, in offsets[from], count, ref sums[0]);
            }
            else
            {
                Narrow(in abc[0], months, in prices[from], path.Length, in offsets[from], count, ref sums[0]);
            }

            // paths are those of the layout, always inside the row
            ref var to = ref MemoryMarshal.GetReference(row);
            ref var places = ref Unsafe.Add(ref MemoryMarshal.GetReference(path), from);
            ref var sum = ref sums[0];
            for (var i = 0; i < count; i += 8)
            {
                Unsafe.Add(ref to, Unsafe.Add(ref places, i)) = Unsafe.Add(ref sum, i);
                Unsafe.Add(ref to, Unsafe.Add(ref places, i + 1)) = Unsafe.Add(ref sum, i + 1);
                Unsafe.Add(ref to, Unsafe.Add(ref places, i + 2)) = Unsafe.Add(ref sum, i + 2);
                Unsafe.Add(ref to, Unsafe.Add(ref places, i + 3)) = Unsafe.Add(ref sum, i + 3);
                Unsafe.Add(ref to, Unsafe.Add(ref places, i + 4)) = Unsafe.Add(ref sum, i + 4);
                Unsafe.Add(ref to, Unsafe.Add(ref places, i + 5)) = Unsafe.Add(ref sum, i + 5);
                Unsafe.Add(ref to, Unsafe.Add(ref places, i + 6)) = Unsafe.Add(ref sum, i + 6);
                Unsafe.Add(ref to, Unsafe.Add(ref places, i + 7)) = Unsafe.Add(ref sum, i + 7);
            }
        }
    }

    /// <summary>Up to 32 cells in vectors of eight; what is beyond the count repeats the first vector and is not read.</summary>
    private static void Wide(in double abc, int[] months, in double prices, int stride, in double offsets, int count, ref double sums)
    {
        var (i1, i2, i3) = (count > 8 ? (nuint)8 : 0, count > 16 ? (nuint)16 : 0, count > 24 ? (nuint)24 : 0);
        var (o0, o1, o2, o3) = (Vector512.LoadUnsafe(in offsets), Vector512.LoadUnsafe(in offsets, i1), Vector512.LoadUnsafe(in offsets, i2), Vector512.LoadUnsafe(in offsets, i3));
        var (s0, s1, s2, s3) = (Vector512<double>.Zero, Vector512<double>.Zero, Vector512<double>.Zero, Vector512<double>.Zero);
        foreach (var m in months)
        {
            ref readonly var row = ref Unsafe.Add(ref Unsafe.AsRef(in abc), 3 * m);
            var (a, b, c) = (Vector512.Create(row), Vector512.Create(Unsafe.Add(ref Unsafe.AsRef(in row), 1)), Vector512.Create(Unsafe.Add(ref Unsafe.AsRef(in row), 2)));
            ref readonly var p = ref Unsafe.Add(ref Unsafe.AsRef(in prices), m * stride);
            s0 = Vector512.FusedMultiplyAdd(Vector512.LoadUnsafe(in p), Demand(a, b, c, o0), s0);
            s1 = Vector512.FusedMultiplyAdd(Vector512.LoadUnsafe(in p, i1), Demand(a, b, c, o1), s1);
            s2 = Vector512.FusedMultiplyAdd(Vector512.LoadUnsafe(in p, i2), Demand(a, b, c, o2), s2);
            s3 = Vector512.FusedMultiplyAdd(Vector512.LoadUnsafe(in p, i3), Demand(a, b, c, o3), s3);
        }

        s0.StoreUnsafe(ref sums);
        s1.StoreUnsafe(ref sums, 8);
        s2.StoreUnsafe(ref sums, 16);
        s3.StoreUnsafe(ref sums, 24);
    }

    /// <summary>Up to 32 cells in vectors of four, sixteen at a time; what is beyond the count repeats the first half and is not read.</summary>
    private static void Narrow(in double abc, int[] months, in double prices, int stride, in double offsets, int count, ref double sums)
    {
        for (var from = 0; from < count; from += 16)
        {
            var (i0, i1, far) = ((nuint)from, (nuint)from + 4, from + 8 < count ? (nuint)8 : 0);
            var (i2, i3) = (i0 + far, i1 + far);
            var (o0, o1, o2, o3) = (Vector256.LoadUnsafe(in offsets, i0), Vector256.LoadUnsafe(in offsets, i1), Vector256.LoadUnsafe(in offsets, i2), Vector256.LoadUnsafe(in offsets, i3));
            var (s0, s1, s2, s3) = (Vector256<double>.Zero, Vector256<double>.Zero, Vector256<double>.Zero, Vector256<double>.Zero);
            foreach (var m in months)
            {
                ref readonly var row = ref Unsafe.Add(ref Unsafe.AsRef(in abc), 3 * m);
                var (a, b, c) = (Vector256.Create(row), Vector256.Create(Unsafe.Add(ref Unsafe.AsRef(in row), 1)), Vector256.Create(Unsafe.Add(ref Unsafe.AsRef(in row), 2)));
                ref readonly var p = ref Unsafe.Add(ref Unsafe.AsRef(in prices), m * stride);
                s0 = Vector256.FusedMultiplyAdd(Vector256.LoadUnsafe(in p, i0), Demand(a, b, c, o0), s0);
                s1 = Vector256.FusedMultiplyAdd(Vector256.LoadUnsafe(in p, i1), Demand(a, b, c, o1), s1);
                s2 = Vector256.FusedMultiplyAdd(Vector256.LoadUnsafe(in p, i2), Demand(a, b, c, o2), s2);
                s3 = Vector256.FusedMultiplyAdd(Vector256.LoadUnsafe(in p, i3), Demand(a, b, c, o3), s3);
            }

            s2.StoreUnsafe(ref sums, i2);
            s3.StoreUnsafe(ref sums, i3);
            s0.StoreUnsafe(ref sums, i0);
            s1.StoreUnsafe(ref sums, i1);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> Demand(Vector512<double> a, Vector512<double> b, Vector512<double> c, Vector512<double> o) =>
        Vector512.MaxNative(Vector512.FusedMultiplyAdd(o, Vector512.FusedMultiplyAdd(o, c, b), a), Vector512<double>.Zero);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Demand(Vector256<double> a, Vector256<double> b, Vector256<double> c, Vector256<double> o) =>
        Vector256.MaxNative(Vector256.FusedMultiplyAdd(o, Vector256.FusedMultiplyAdd(o, c, b), a), Vector256<double>.Zero);
}
