using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace FarmPortfolio.Engine.Economics;

/// <summary>
/// Paybacks and present value of one option over many paths at once, four paths side by side. First: ASTM E1121. Lasting: from then on the cumulated saving never
/// falls below the outlay again. Seasons count from installation, 1 = the first, 0 = never.
/// </summary>
/// <param name="paths">Paths, a multiple of four or not.</param>
internal sealed class PaybackSeasons(int paths)
{
    private const double TwoTo52 = 4503599627370496.0;

    /// <summary>Season from which the cumulated saving never falls below the outlay again.</summary>
    public byte[] Lasting { get; } = new byte[paths];

    /// <summary>First season in which the cumulated saving covers the outlay.</summary>
    public byte[] First { get; } = new byte[paths];

    /// <summary>The lasting one, discounted.</summary>
    public byte[] LastingDiscounted { get; } = new byte[paths];

    /// <summary>The first one, discounted.</summary>
    public byte[] FirstDiscounted { get; } = new byte[paths];

    /// <summary>Present value of the savings at installation, residual worth not in it.</summary>
    public double[] PresentUsd { get; } = new double[paths];

    /// <summary>Sum of the savings.</summary>
    public double[] SumUsd { get; } = new double[paths];

    /// <summary>Least saving of any season from installation on.</summary>
    public double[] WorstUsd { get; } = new double[paths];

    /// <summary>Counts all paths.</summary>
    /// <param name="net">Net saving, season by season a row of paths.</param>
    /// <param name="start">Season before which it is installed, from 0.</param>
    /// <param name="seasons">Seasons.</param>
    /// <param name="outlay">Outlay by path at installation.</param>
    /// <param name="rate">Discount rate a year.</param>
    [SkipLocalsInit]
    public void Count(ReadOnlySpan<double> net, int start, int seasons, ReadOnlySpan<double> outlay, double rate)
    {
        // rows lie a multiple of the cache's stride apart, so a stretch of each is laid side by side first
        const int Stretch = 64;
        Span<double> rows = stackalloc double[Stretch * seasons];
        for (var first = 0; first < paths; first += Stretch)
        {
            var count = Math.Min(Stretch, paths - first);
            for (var s = start; s < seasons; s++)
            {
                net.Slice(s * paths + first, count).CopyTo(rows[(s * Stretch)..]);
            }

            Count(rows, Stretch, first, count, start, seasons, outlay, rate);
        }
    }

    /// <summary>Counts a stretch of paths.</summary>
    /// <param name="net">Net saving, season by season a row of the stretch.</param>
    /// <param name="stride">Numbers a row, a multiple of four; what is beyond the paths is read and not used.</param>
    /// <param name="first">First path of the stretch.</param>
    /// <param name="count">Paths of the stretch.</param>
    /// <param name="start">Season before which it is installed, from 0.</param>
    /// <param name="seasons">Seasons.</param>
    /// <param name="outlay">Outlay by path at installation, all paths.</param>
    /// <param name="rate">Discount rate a year.</param>
    [SkipLocalsInit]
    public void Count(ReadOnlySpan<double> net, int stride, int first, int count, int start, int seasons, ReadOnlySpan<double> outlay, double rate)
    {
        Span<double> discount = stackalloc double[seasons];
        var factor = 1.0;
        for (var s = start; s < seasons; s++)
        {
            discount[s] = factor /= 1 + rate;
        }

        Span<double> four = stackalloc double[4];
        for (var p = 0; p < count; p += 4)
        {
            var here = Math.Min(4, count - p);
            outlay.Slice(first + p, here).CopyTo(four);
            var lines = new Lines(Vector256.LoadUnsafe(ref four[0]));
            for (var s = start; s < seasons; s++)
            {
                lines.Add(Vector256.LoadUnsafe(in net[s * stride + p]), Vector256.Create(discount[s]));
            }

            lines.Store(this, first + p, here, seasons - start);
        }
    }

    /// <summary>Four paths.</summary>
    private ref struct Lines(Vector256<double> outlay)
    {
        private Vector256<double> season;
        private Vector256<double> sum;
        private Vector256<double> present;
        private Vector256<double> worst = Vector256.Create(double.PositiveInfinity);
        private Line simple = new();
        private Line discounted = new();

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public void Add(Vector256<double> net, Vector256<double> discount)
        {
            season += Vector256<double>.One;
            sum += net;
            present = Vector256.FusedMultiplyAdd(net, discount, present);
            worst = Vector256.ConditionalSelect(Vector256.LessThan(net, worst), net, worst);
            simple.Add(Vector256.LessThan(sum, outlay), season);
            discounted.Add(Vector256.LessThan(present, outlay), season);
        }

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public readonly void Store(PaybackSeasons to, int p, int count, int seasons)
        {
            // all four seasons of a path in one whole number, a byte each
            var never = Vector256.Create((double)seasons);
            var all = simple.Lasting(never) + simple.First(never) * Vector256.Create(256.0) + discounted.Lasting(never) * Vector256.Create(65536.0) + discounted.First(never) * Vector256.Create(16777216.0);
            var bytes = (all + Vector256.Create(TwoTo52)).AsInt64();
            for (var i = 0; i < count; i++)
            {
                var four = bytes[i];
                (to.PresentUsd[p + i], to.SumUsd[p + i], to.WorstUsd[p + i]) = (present[i], sum[i], worst[i]);
                to.Lasting[p + i] = (byte)four;
                to.First[p + i] = (byte)(four >> 8);
                to.LastingDiscounted[p + i] = (byte)(four >> 16);
                to.FirstDiscounted[p + i] = (byte)(four >> 24);
            }
        }
    }

    /// <summary>The last season in which a sum lies below the outlay, and the last before it first covers it; the payback is the season after.</summary>
    private struct Line()
    {
        private Vector256<double> last;
        private Vector256<double> lastAtFirst;
        private Vector256<double> open = Vector256<double>.AllBitsSet;

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public void Add(Vector256<double> below, Vector256<double> season)
        {
            last = Vector256.ConditionalSelect(below, season, last);
            open &= below;
            lastAtFirst = Vector256.ConditionalSelect(open, season, lastAtFirst);
        }

        public readonly Vector256<double> Lasting(Vector256<double> never) => After(last, never);

        public readonly Vector256<double> First(Vector256<double> never) => After(lastAtFirst, never);

        private static Vector256<double> After(Vector256<double> season, Vector256<double> never) => Vector256.AndNot(season + Vector256<double>.One, Vector256.Equals(season, never));
    }
}
