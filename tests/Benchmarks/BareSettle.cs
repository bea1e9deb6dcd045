using System.Runtime.Intrinsics;

namespace FarmPortfolio.Benchmarks;

/// <summary>
/// What <see cref="BareLoop"/> does with a block's savings: cumulates and discounts them, four paths at a time, and counts season by season the paths that are still below zero. It stands twice
/// for the reason told there.
/// </summary>
internal static unsafe class BareSettle
{
    public static void Narrow(BareProblem p, double* saving, int paths, double* outlay, double* discount, double* present, int* counts)
    {
        var (path, step) = (0, BareLoop.NarrowLanes * p.Seasons);
        var (outlay0, outlay1) = (-Vector256.Load(outlay), -Vector256.Load(outlay + 4));
        var (total0, total1) = (Vector256.Load(present), Vector256.Load(present + 4));
        var due = stackalloc long[BareLoop.NarrowLanes * p.Seasons];
        new Span<long>(due, BareLoop.NarrowLanes * p.Seasons).Clear();
        for (; path + 4 <= paths; path += 4)
        {
            var (a0, b0, a1, b1) = (outlay0, outlay1, outlay0, outlay1);
            var (a2, b2, a3, b3) = (outlay0, outlay1, outlay0, outlay1);
            var from = saving + path * step;
            for (var s = 0; s < p.Seasons; s++)
            {
                var (x0, x1, x2, x3) = (Vector256.Load(from), Vector256.Load(from + step), Vector256.Load(from + 2 * step), Vector256.Load(from + 3 * step));
                var (y0, y1, y2, y3) = (Vector256.Load(from + 4), Vector256.Load(from + step + 4), Vector256.Load(from + 2 * step + 4), Vector256.Load(from + 3 * step + 4));
                (a0, a1, a2, a3) = (a0 + x0, a1 + x1, a2 + x2, a3 + x3);
                (b0, b1, b2, b3) = (b0 + y0, b1 + y1, b2 + y2, b3 + y3);
                var d = Vector256.Create(discount[s]);
                total0 = Vector256.FusedMultiplyAdd(d, x0 + x1 + (x2 + x3), total0);
                total1 = Vector256.FusedMultiplyAdd(d, y0 + y1 + (y2 + y3), total1);
                var (due0, due1) = (Vector256.Load(due + BareLoop.NarrowLanes * s), Vector256.Load(due + BareLoop.NarrowLanes * s + 4));
                due0 -= Below(a0) + Below(a1) + (Below(a2) + Below(a3));
                due1 -= Below(b0) + Below(b1) + (Below(b2) + Below(b3));
                due0.Store(due + BareLoop.NarrowLanes * s);
                due1.Store(due + BareLoop.NarrowLanes * s + 4);
                from += BareLoop.NarrowLanes;
            }
        }

        for (; path < paths; path++)
        {
            var (cum0, cum1) = (outlay0, outlay1);
            var from = saving + path * step;
            for (var s = 0; s < p.Seasons; s++)
            {
                var (x, y, d) = (Vector256.Load(from), Vector256.Load(from + 4), Vector256.Create(discount[s]));
                (cum0, cum1) = (cum0 + x, cum1 + y);
                (total0, total1) = (Vector256.FusedMultiplyAdd(x, d, total0), Vector256.FusedMultiplyAdd(y, d, total1));
                (Vector256.Load(due + BareLoop.NarrowLanes * s) - Below(cum0)).Store(due + BareLoop.NarrowLanes * s);
                (Vector256.Load(due + BareLoop.NarrowLanes * s + 4) - Below(cum1)).Store(due + BareLoop.NarrowLanes * s + 4);
                from += BareLoop.NarrowLanes;
            }
        }

        total0.Store(present);
        total1.Store(present + 4);
        Count(p, due, BareLoop.NarrowLanes, paths, counts);
    }

    public static void Wide(BareProblem p, double* saving, int paths, double* outlay, double* discount, double* present, int* counts)
    {
        var (path, step) = (0, BareLoop.WideLanes * p.Seasons);
        var (outlay0, outlay1) = (-Vector512.Load(outlay), -Vector512.Load(outlay + 8));
        var (total0, total1) = (Vector512.Load(present), Vector512.Load(present + 8));
        var due = stackalloc long[BareLoop.WideLanes * p.Seasons];
        new Span<long>(due, BareLoop.WideLanes * p.Seasons).Clear();
        for (; path + 4 <= paths; path += 4)
        {
            var (a0, b0, a1, b1) = (outlay0, outlay1, outlay0, outlay1);
            var (a2, b2, a3, b3) = (outlay0, outlay1, outlay0, outlay1);
            var from = saving + path * step;
            for (var s = 0; s < p.Seasons; s++)
            {
                var (x0, x1, x2, x3) = (Vector512.Load(from), Vector512.Load(from + step), Vector512.Load(from + 2 * step), Vector512.Load(from + 3 * step));
                var (y0, y1, y2, y3) = (Vector512.Load(from + 8), Vector512.Load(from + step + 8), Vector512.Load(from + 2 * step + 8), Vector512.Load(from + 3 * step + 8));
                (a0, a1, a2, a3) = (a0 + x0, a1 + x1, a2 + x2, a3 + x3);
                (b0, b1, b2, b3) = (b0 + y0, b1 + y1, b2 + y2, b3 + y3);
                var d = Vector512.Create(discount[s]);
                total0 = Vector512.FusedMultiplyAdd(d, x0 + x1 + (x2 + x3), total0);
                total1 = Vector512.FusedMultiplyAdd(d, y0 + y1 + (y2 + y3), total1);
                var (due0, due1) = (Vector512.Load(due + BareLoop.WideLanes * s), Vector512.Load(due + BareLoop.WideLanes * s + 8));
                due0 -= Below(a0) + Below(a1) + (Below(a2) + Below(a3));
                due1 -= Below(b0) + Below(b1) + (Below(b2) + Below(b3));
                due0.Store(due + BareLoop.WideLanes * s);
                due1.Store(due + BareLoop.WideLanes * s + 8);
                from += BareLoop.WideLanes;
            }
        }

        for (; path < paths; path++)
        {
            var (cum0, cum1) = (outlay0, outlay1);
            var from = saving + path * step;
            for (var s = 0; s < p.Seasons; s++)
            {
                var (x, y, d) = (Vector512.Load(from), Vector512.Load(from + 8), Vector512.Create(discount[s]));
                (cum0, cum1) = (cum0 + x, cum1 + y);
                (total0, total1) = (Vector512.FusedMultiplyAdd(x, d, total0), Vector512.FusedMultiplyAdd(y, d, total1));
                (Vector512.Load(due + BareLoop.WideLanes * s) - Below(cum0)).Store(due + BareLoop.WideLanes * s);
                (Vector512.Load(due + BareLoop.WideLanes * s + 8) - Below(cum1)).Store(due + BareLoop.WideLanes * s + 8);
                from += BareLoop.WideLanes;
            }
        }

        total0.Store(present);
        total1.Store(present + 8);
        Count(p, due, BareLoop.WideLanes, paths, counts);
    }

    /// <summary>Of the paths that were below zero in the season before, those that no longer are have paid back in this one.</summary>
    private static void Count(BareProblem p, long* due, int lanes, int paths, int* counts)
    {
        for (var l = 0; l < lanes; l++)
        {
            var before = (long)paths;
            for (var s = 0; s < p.Seasons; s++)
            {
                var still = due[lanes * s + l];
                counts[l * (p.Seasons + 1) + s + 1] += (int)(before - still);
                before = still;
            }

            counts[l * (p.Seasons + 1)] += (int)before;
        }
    }

    private static Vector256<long> Below(Vector256<double> cumulated) => Vector256.LessThan(cumulated, Vector256<double>.Zero).AsInt64();

    private static Vector512<long> Below(Vector512<double> cumulated) => Vector512.LessThan(cumulated, Vector512<double>.Zero).AsInt64();
}
