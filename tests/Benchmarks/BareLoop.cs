using System.Runtime.Intrinsics;

namespace FarmPortfolio.Benchmarks;

/// <summary>
/// The bare problem in vectors: lanes are options. A block of 128 paths is taken at a time; its path-seasons are sorted by winter, so that a row of loads held in
/// registers serves a whole group of them, whose sums are named locals; the block's savings, a path's seasons beside each other, stay in the second-level cache until
/// they are cumulated, four paths at a time. Paths still below zero are counted season by season: savings here are never negative, so the rest has paid back. The yardstick of <c>study-share</c>, with and without an offset. The loops
/// stand twice, for 256 and 512 bits: a group is as many sums as there are registers, 6 path-seasons or 12, and each sum must be a local of its own: a
/// structure of two vectors, tried on the heat balance, is kept in memory by the compiler and was four times as slow.
/// </summary>
internal static unsafe class BareLoop
{
    private const int Chunk = 256;
    internal const int NarrowLanes = 8;
    internal const int WideLanes = 16;

    /// <summary>Path-seasons a group: as many as the registers hold.</summary>
    public static int Group => Vector512.IsHardwareAccelerated ? 12 : 6;

    /// <summary>Runs over all options.</summary>
    public static void Run(BareProblem p, BareLayout[] blocks, BareResult result, bool withOffset, int threads)
    {
        result.Clear();
        Parallel.For(0, (p.Options + Chunk - 1) / Chunk, new ParallelOptions { MaxDegreeOfParallelism = threads }, c => Options(p, blocks, result, withOffset, c * Chunk, Math.Min(p.Options, (c + 1) * Chunk)));
    }

    private static void Options(BareProblem p, BareLayout[] blocks, BareResult result, bool withOffset, int from, int to)
    {
        var wide = Vector512.IsHardwareAccelerated;
        var (lanes, group) = (wide ? WideLanes : NarrowLanes, Group);
        var rows = (withOffset ? 3 : 1) * BareProblem.Months;
        var buffer = GC.AllocateUninitializedArray<double>(lanes * BareLayout.Block * p.Seasons, pinned: true);
        var side = GC.AllocateUninitializedArray<double>(lanes * BareProblem.Winters * rows, pinned: true);
        fixed (double* loads = withOffset ? p.Quadratic : p.Load, outlay = p.Outlay, discount = p.Discount, present = result.PresentUsd, saving = buffer, first = side)
        fixed (int* counts = result.Counts)
        {
            foreach (var block in blocks)
            {
                fixed (double* price = block.Price, offset = block.Offset)
                fixed (int* cell = block.Cell)
                {
                    for (var o = from; o < to; o += lanes)
                    {
                        SideBySide(loads + (long)(o / BareProblem.Tile) * BareProblem.Winters * rows * BareProblem.Tile + o % BareProblem.Tile, BareProblem.Winters * rows, first, lanes);
                        for (var g = 0; g < block.GroupWinter.Length; g++)
                        {
                            var load = first + block.GroupWinter[g] * rows * lanes;
                            var paid = price + g * group * BareProblem.Months;
                            var at = offset + g * group;
                            var cells = cell + g * group;
                            if (wide && withOffset)
                            {
                                WideQuadratic(load, paid, at, cells, saving);
                                WideQuadratic(load + 8, paid, at, cells, saving + 8);
                            }
                            else if (wide)
                            {
                                Wide(load, paid, cells, saving);
                            }
                            else if (withOffset)
                            {
                                NarrowQuadratic(load, paid, at, cells, saving);
                                NarrowQuadratic(load + 4, paid, at, cells, saving + 4);
                            }
                            else
                            {
                                Narrow(load, paid, cells, saving);
                            }
                        }

                        if (wide)
                        {
                            BareSettle.Wide(p, saving, block.Paths, outlay + o, discount, present + o, counts + o * (p.Seasons + 1));
                        }
                        else
                        {
                            BareSettle.Narrow(p, saving, block.Paths, outlay + o, discount, present + o, counts + o * (p.Seasons + 1));
                        }
                    }
                }
            }
        }
    }

    /// <summary>The rows of some lanes beside each other: in the tile they lie 512 bytes apart, which fills a few sets of the nearest cache and leaves the others empty.</summary>
    private static void SideBySide(double* from, int rows, double* to, int lanes)
    {
        for (var row = 0; row < rows; row++)
        {
            for (var l = 0; l < lanes; l += 4)
            {
                Vector256.Load(from + row * BareProblem.Tile + l).Store(to + row * lanes + l);
            }
        }
    }

    private static void Narrow(double* load, double* price, int* cell, double* saving)
    {
        Vector256<double> a0 = Vector256<double>.Zero, b0 = Vector256<double>.Zero;
        Vector256<double> a1 = Vector256<double>.Zero, b1 = Vector256<double>.Zero;
        Vector256<double> a2 = Vector256<double>.Zero, b2 = Vector256<double>.Zero;
        Vector256<double> a3 = Vector256<double>.Zero, b3 = Vector256<double>.Zero;
        Vector256<double> a4 = Vector256<double>.Zero, b4 = Vector256<double>.Zero;
        Vector256<double> a5 = Vector256<double>.Zero, b5 = Vector256<double>.Zero;
        for (var m = 0; m < BareProblem.Months; m++)
        {
            var (x, y) = (Vector256.Load(load), Vector256.Load(load + 4));
            load += NarrowLanes;
            var p0 = Vector256.Create(price[0]);
            a0 = Vector256.FusedMultiplyAdd(x, p0, a0);
            b0 = Vector256.FusedMultiplyAdd(y, p0, b0);
            var p1 = Vector256.Create(price[1]);
            a1 = Vector256.FusedMultiplyAdd(x, p1, a1);
            b1 = Vector256.FusedMultiplyAdd(y, p1, b1);
            var p2 = Vector256.Create(price[2]);
            a2 = Vector256.FusedMultiplyAdd(x, p2, a2);
            b2 = Vector256.FusedMultiplyAdd(y, p2, b2);
            var p3 = Vector256.Create(price[3]);
            a3 = Vector256.FusedMultiplyAdd(x, p3, a3);
            b3 = Vector256.FusedMultiplyAdd(y, p3, b3);
            var p4 = Vector256.Create(price[4]);
            a4 = Vector256.FusedMultiplyAdd(x, p4, a4);
            b4 = Vector256.FusedMultiplyAdd(y, p4, b4);
            var p5 = Vector256.Create(price[5]);
            a5 = Vector256.FusedMultiplyAdd(x, p5, a5);
            b5 = Vector256.FusedMultiplyAdd(y, p5, b5);
            price += 6;
        }

        a0.Store(saving + 8 * cell[0]);
        b0.Store(saving + 8 * cell[0] + 4);
        a1.Store(saving + 8 * cell[1]);
        b1.Store(saving + 8 * cell[1] + 4);
        a2.Store(saving + 8 * cell[2]);
        b2.Store(saving + 8 * cell[2] + 4);
        a3.Store(saving + 8 * cell[3]);
        b3.Store(saving + 8 * cell[3] + 4);
        a4.Store(saving + 8 * cell[4]);
        b4.Store(saving + 8 * cell[4] + 4);
        a5.Store(saving + 8 * cell[5]);
        b5.Store(saving + 8 * cell[5] + 4);
    }

    private static void Wide(double* load, double* price, int* cell, double* saving)
    {
        Vector512<double> a0 = Vector512<double>.Zero, b0 = Vector512<double>.Zero;
        Vector512<double> a1 = Vector512<double>.Zero, b1 = Vector512<double>.Zero;
        Vector512<double> a2 = Vector512<double>.Zero, b2 = Vector512<double>.Zero;
        Vector512<double> a3 = Vector512<double>.Zero, b3 = Vector512<double>.Zero;
        Vector512<double> a4 = Vector512<double>.Zero, b4 = Vector512<double>.Zero;
        Vector512<double> a5 = Vector512<double>.Zero, b5 = Vector512<double>.Zero;
        Vector512<double> a6 = Vector512<double>.Zero, b6 = Vector512<double>.Zero;
        Vector512<double> a7 = Vector512<double>.Zero, b7 = Vector512<double>.Zero;
        Vector512<double> a8 = Vector512<double>.Zero, b8 = Vector512<double>.Zero;
        Vector512<double> a9 = Vector512<double>.Zero, b9 = Vector512<double>.Zero;
        Vector512<double> a10 = Vector512<double>.Zero, b10 = Vector512<double>.Zero;
        Vector512<double> a11 = Vector512<double>.Zero, b11 = Vector512<double>.Zero;
        for (var m = 0; m < BareProblem.Months; m++)
        {
            var (x, y) = (Vector512.Load(load), Vector512.Load(load + 8));
            load += WideLanes;
            var p0 = Vector512.Create(price[0]);
            a0 = Vector512.FusedMultiplyAdd(x, p0, a0);
            b0 = Vector512.FusedMultiplyAdd(y, p0, b0);
            var p1 = Vector512.Create(price[1]);
            a1 = Vector512.FusedMultiplyAdd(x, p1, a1);
            b1 = Vector512.FusedMultiplyAdd(y, p1, b1);
            var p2 = Vector512.Create(price[2]);
            a2 = Vector512.FusedMultiplyAdd(x, p2, a2);
            b2 = Vector512.FusedMultiplyAdd(y, p2, b2);
            var p3 = Vector512.Create(price[3]);
            a3 = Vector512.FusedMultiplyAdd(x, p3, a3);
            b3 = Vector512.FusedMultiplyAdd(y, p3, b3);
            var p4 = Vector512.Create(price[4]);
            a4 = Vector512.FusedMultiplyAdd(x, p4, a4);
            b4 = Vector512.FusedMultiplyAdd(y, p4, b4);
            var p5 = Vector512.Create(price[5]);
            a5 = Vector512.FusedMultiplyAdd(x, p5, a5);
            b5 = Vector512.FusedMultiplyAdd(y, p5, b5);
            var p6 = Vector512.Create(price[6]);
            a6 = Vector512.FusedMultiplyAdd(x, p6, a6);
            b6 = Vector512.FusedMultiplyAdd(y, p6, b6);
            var p7 = Vector512.Create(price[7]);
            a7 = Vector512.FusedMultiplyAdd(x, p7, a7);
            b7 = Vector512.FusedMultiplyAdd(y, p7, b7);
            var p8 = Vector512.Create(price[8]);
            a8 = Vector512.FusedMultiplyAdd(x, p8, a8);
            b8 = Vector512.FusedMultiplyAdd(y, p8, b8);
            var p9 = Vector512.Create(price[9]);
            a9 = Vector512.FusedMultiplyAdd(x, p9, a9);
            b9 = Vector512.FusedMultiplyAdd(y, p9, b9);
            var p10 = Vector512.Create(price[10]);
            a10 = Vector512.FusedMultiplyAdd(x, p10, a10);
            b10 = Vector512.FusedMultiplyAdd(y, p10, b10);
            var p11 = Vector512.Create(price[11]);
            a11 = Vector512.FusedMultiplyAdd(x, p11, a11);
            b11 = Vector512.FusedMultiplyAdd(y, p11, b11);
            price += 12;
        }

        a0.Store(saving + 16 * cell[0]);
        b0.Store(saving + 16 * cell[0] + 8);
        a1.Store(saving + 16 * cell[1]);
        b1.Store(saving + 16 * cell[1] + 8);
        a2.Store(saving + 16 * cell[2]);
        b2.Store(saving + 16 * cell[2] + 8);
        a3.Store(saving + 16 * cell[3]);
        b3.Store(saving + 16 * cell[3] + 8);
        a4.Store(saving + 16 * cell[4]);
        b4.Store(saving + 16 * cell[4] + 8);
        a5.Store(saving + 16 * cell[5]);
        b5.Store(saving + 16 * cell[5] + 8);
        a6.Store(saving + 16 * cell[6]);
        b6.Store(saving + 16 * cell[6] + 8);
        a7.Store(saving + 16 * cell[7]);
        b7.Store(saving + 16 * cell[7] + 8);
        a8.Store(saving + 16 * cell[8]);
        b8.Store(saving + 16 * cell[8] + 8);
        a9.Store(saving + 16 * cell[9]);
        b9.Store(saving + 16 * cell[9] + 8);
        a10.Store(saving + 16 * cell[10]);
        b10.Store(saving + 16 * cell[10] + 8);
        a11.Store(saving + 16 * cell[11]);
        b11.Store(saving + 16 * cell[11] + 8);
    }

    private static void NarrowQuadratic(double* load, double* price, double* offset, int* cell, double* saving)
    {
        var (o0, s0) = (Vector256.Create(offset[0]), Vector256<double>.Zero);
        var (o1, s1) = (Vector256.Create(offset[1]), Vector256<double>.Zero);
        var (o2, s2) = (Vector256.Create(offset[2]), Vector256<double>.Zero);
        var (o3, s3) = (Vector256.Create(offset[3]), Vector256<double>.Zero);
        var (o4, s4) = (Vector256.Create(offset[4]), Vector256<double>.Zero);
        var (o5, s5) = (Vector256.Create(offset[5]), Vector256<double>.Zero);
        for (var m = 0; m < BareProblem.Months; m++)
        {
            var (x, y, z) = (Vector256.Load(load), Vector256.Load(load + NarrowLanes), Vector256.Load(load + 2 * NarrowLanes));
            load += 3 * NarrowLanes;
            s0 = Vector256.FusedMultiplyAdd(Vector256.MaxNative(Vector256.FusedMultiplyAdd(o0, Vector256.FusedMultiplyAdd(o0, z, y), x), Vector256<double>.Zero), Vector256.Create(price[0]), s0);
            s1 = Vector256.FusedMultiplyAdd(Vector256.MaxNative(Vector256.FusedMultiplyAdd(o1, Vector256.FusedMultiplyAdd(o1, z, y), x), Vector256<double>.Zero), Vector256.Create(price[1]), s1);
            s2 = Vector256.FusedMultiplyAdd(Vector256.MaxNative(Vector256.FusedMultiplyAdd(o2, Vector256.FusedMultiplyAdd(o2, z, y), x), Vector256<double>.Zero), Vector256.Create(price[2]), s2);
            s3 = Vector256.FusedMultiplyAdd(Vector256.MaxNative(Vector256.FusedMultiplyAdd(o3, Vector256.FusedMultiplyAdd(o3, z, y), x), Vector256<double>.Zero), Vector256.Create(price[3]), s3);
            s4 = Vector256.FusedMultiplyAdd(Vector256.MaxNative(Vector256.FusedMultiplyAdd(o4, Vector256.FusedMultiplyAdd(o4, z, y), x), Vector256<double>.Zero), Vector256.Create(price[4]), s4);
            s5 = Vector256.FusedMultiplyAdd(Vector256.MaxNative(Vector256.FusedMultiplyAdd(o5, Vector256.FusedMultiplyAdd(o5, z, y), x), Vector256<double>.Zero), Vector256.Create(price[5]), s5);
            price += 6;
        }

        s0.Store(saving + 8 * cell[0]);
        s1.Store(saving + 8 * cell[1]);
        s2.Store(saving + 8 * cell[2]);
        s3.Store(saving + 8 * cell[3]);
        s4.Store(saving + 8 * cell[4]);
        s5.Store(saving + 8 * cell[5]);
    }

    private static void WideQuadratic(double* load, double* price, double* offset, int* cell, double* saving)
    {
        var (o0, s0) = (Vector512.Create(offset[0]), Vector512<double>.Zero);
        var (o1, s1) = (Vector512.Create(offset[1]), Vector512<double>.Zero);
        var (o2, s2) = (Vector512.Create(offset[2]), Vector512<double>.Zero);
        var (o3, s3) = (Vector512.Create(offset[3]), Vector512<double>.Zero);
        var (o4, s4) = (Vector512.Create(offset[4]), Vector512<double>.Zero);
        var (o5, s5) = (Vector512.Create(offset[5]), Vector512<double>.Zero);
        var (o6, s6) = (Vector512.Create(offset[6]), Vector512<double>.Zero);
        var (o7, s7) = (Vector512.Create(offset[7]), Vector512<double>.Zero);
        var (o8, s8) = (Vector512.Create(offset[8]), Vector512<double>.Zero);
        var (o9, s9) = (Vector512.Create(offset[9]), Vector512<double>.Zero);
        var (o10, s10) = (Vector512.Create(offset[10]), Vector512<double>.Zero);
        var (o11, s11) = (Vector512.Create(offset[11]), Vector512<double>.Zero);
        for (var m = 0; m < BareProblem.Months; m++)
        {
            var (x, y, z) = (Vector512.Load(load), Vector512.Load(load + WideLanes), Vector512.Load(load + 2 * WideLanes));
            load += 3 * WideLanes;
            s0 = Vector512.FusedMultiplyAdd(Vector512.MaxNative(Vector512.FusedMultiplyAdd(o0, Vector512.FusedMultiplyAdd(o0, z, y), x), Vector512<double>.Zero), Vector512.Create(price[0]), s0);
            s1 = Vector512.FusedMultiplyAdd(Vector512.MaxNative(Vector512.FusedMultiplyAdd(o1, Vector512.FusedMultiplyAdd(o1, z, y), x), Vector512<double>.Zero), Vector512.Create(price[1]), s1);
            s2 = Vector512.FusedMultiplyAdd(Vector512.MaxNative(Vector512.FusedMultiplyAdd(o2, Vector512.FusedMultiplyAdd(o2, z, y), x), Vector512<double>.Zero), Vector512.Create(price[2]), s2);
            s3 = Vector512.FusedMultiplyAdd(Vector512.MaxNative(Vector512.FusedMultiplyAdd(o3, Vector512.FusedMultiplyAdd(o3, z, y), x), Vector512<double>.Zero), Vector512.Create(price[3]), s3);
            s4 = Vector512.FusedMultiplyAdd(Vector512.MaxNative(Vector512.FusedMultiplyAdd(o4, Vector512.FusedMultiplyAdd(o4, z, y), x), Vector512<double>.Zero), Vector512.Create(price[4]), s4);
            s5 = Vector512.FusedMultiplyAdd(Vector512.MaxNative(Vector512.FusedMultiplyAdd(o5, Vector512.FusedMultiplyAdd(o5, z, y), x), Vector512<double>.Zero), Vector512.Create(price[5]), s5);
            s6 = Vector512.FusedMultiplyAdd(Vector512.MaxNative(Vector512.FusedMultiplyAdd(o6, Vector512.FusedMultiplyAdd(o6, z, y), x), Vector512<double>.Zero), Vector512.Create(price[6]), s6);
            s7 = Vector512.FusedMultiplyAdd(Vector512.MaxNative(Vector512.FusedMultiplyAdd(o7, Vector512.FusedMultiplyAdd(o7, z, y), x), Vector512<double>.Zero), Vector512.Create(price[7]), s7);
            s8 = Vector512.FusedMultiplyAdd(Vector512.MaxNative(Vector512.FusedMultiplyAdd(o8, Vector512.FusedMultiplyAdd(o8, z, y), x), Vector512<double>.Zero), Vector512.Create(price[8]), s8);
            s9 = Vector512.FusedMultiplyAdd(Vector512.MaxNative(Vector512.FusedMultiplyAdd(o9, Vector512.FusedMultiplyAdd(o9, z, y), x), Vector512<double>.Zero), Vector512.Create(price[9]), s9);
            s10 = Vector512.FusedMultiplyAdd(Vector512.MaxNative(Vector512.FusedMultiplyAdd(o10, Vector512.FusedMultiplyAdd(o10, z, y), x), Vector512<double>.Zero), Vector512.Create(price[10]), s10);
            s11 = Vector512.FusedMultiplyAdd(Vector512.MaxNative(Vector512.FusedMultiplyAdd(o11, Vector512.FusedMultiplyAdd(o11, z, y), x), Vector512<double>.Zero), Vector512.Create(price[11]), s11);
            price += 12;
        }

        s0.Store(saving + 16 * cell[0]);
        s1.Store(saving + 16 * cell[1]);
        s2.Store(saving + 16 * cell[2]);
        s3.Store(saving + 16 * cell[3]);
        s4.Store(saving + 16 * cell[4]);
        s5.Store(saving + 16 * cell[5]);
        s6.Store(saving + 16 * cell[6]);
        s7.Store(saving + 16 * cell[7]);
        s8.Store(saving + 16 * cell[8]);
        s9.Store(saving + 16 * cell[9]);
        s10.Store(saving + 16 * cell[10]);
        s11.Store(saving + 16 * cell[11]);
    }
}
