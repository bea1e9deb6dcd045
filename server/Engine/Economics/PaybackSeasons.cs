using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace FarmPortfolio.Engine.Economics;

/// <summary>
/// Paybacks and present value of one option over many paths at once: <see cref="PaybackOf"/>, four paths side by side. Seasons count from installation,
/// 1 = the first, 0 = never.
/// </summary>
/// <param name="paths">Paths, a multiple of four or not.</param>
internal sealed class PaybackSeasons(int paths)
{
    private const int BlockPaths = 64;
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
        var wide = paths & ~3;
        Span<double> discount = stackalloc double[seasons];
        var factor = 1.0;
        for (var s = start; s < seasons; s++)
        {
            discount[s] = factor /= 1 + rate;
        }

        // rows lie a multiple of the cache's stride apart, so a block of each is laid side by side first
        Span<double> block = stackalloc double[BlockPaths * seasons];
        for (var from = 0; from < wide; from += BlockPaths)
        {
            var count = Math.Min(BlockPaths, wide - from);
            for (var s = start; s < seasons; s++)
            {
                net.Slice(s * paths + from, count).CopyTo(block[(s * BlockPaths)..]);
            }

            for (var p = 0; p < count; p += 4)
            {
                var lines = new Lines(Load(outlay, from + p));
                for (var s = start; s < seasons; s++)
                {
                    lines.Add(Load(block, s * BlockPaths + p), discount[s], s - start + 1);
                }

                lines.Store(this, from + p);
            }
        }

        for (var p = wide; p < paths; p++)
        {
            var lines = new Lines(Vector256.Create(outlay[p]));
            for (var s = start; s < seasons; s++)
            {
                lines.Add(Vector256.Create(net[s * paths + p]), discount[s], s - start + 1);
            }

            lines.StoreOne(this, p);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Load(ReadOnlySpan<double> values, int at) => Vector256.LoadUnsafe(in MemoryMarshal.GetReference(values), (nuint)at);

    /// <summary>Four paths.</summary>
    private ref struct Lines(Vector256<double> outlay)
    {
        private Vector256<double> sum;
        private Vector256<double> present;
        private Vector256<double> worst = Vector256.Create(double.PositiveInfinity);
        private Vector256<double> lasting;
        private Vector256<double> first;
        private Vector256<double> lastingDiscounted;
        private Vector256<double> firstDiscounted;

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public void Add(Vector256<double> net, double discount, int season)
        {
            var now = Vector256.Create((double)season);
            sum += net;
            present = Vector256.FusedMultiplyAdd(net, Vector256.Create(discount), present);
            worst = Vector256.Min(worst, net);
            (first, lasting) = Seen(Vector256.GreaterThanOrEqual(sum, outlay), now, first, lasting);
            (firstDiscounted, lastingDiscounted) = Seen(Vector256.GreaterThanOrEqual(present, outlay), now, firstDiscounted, lastingDiscounted);
        }

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public readonly void Store(PaybackSeasons to, int p)
        {
            present.StoreUnsafe(ref to.PresentUsd[p]);
            sum.StoreUnsafe(ref to.SumUsd[p]);
            worst.StoreUnsafe(ref to.WorstUsd[p]);

            // all four seasons of a path in one whole number, a byte each
            var seasons = lasting + first * Vector256.Create(256.0) + lastingDiscounted * Vector256.Create(65536.0) + firstDiscounted * Vector256.Create(16777216.0);
            var bytes = (seasons + Vector256.Create(TwoTo52)).AsInt64();
            for (var i = 0; i < 4; i++)
            {
                var four = bytes[i];
                to.Lasting[p + i] = (byte)four;
                to.First[p + i] = (byte)(four >> 8);
                to.LastingDiscounted[p + i] = (byte)(four >> 16);
                to.FirstDiscounted[p + i] = (byte)(four >> 24);
            }
        }

        public readonly void StoreOne(PaybackSeasons to, int p)
        {
            (to.PresentUsd[p], to.SumUsd[p], to.WorstUsd[p]) = (present[0], sum[0], worst[0]);
            (to.Lasting[p], to.First[p]) = ((byte)lasting[0], (byte)first[0]);
            (to.LastingDiscounted[p], to.FirstDiscounted[p]) = ((byte)lastingDiscounted[0], (byte)firstDiscounted[0]);
        }

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        private static (Vector256<double> First, Vector256<double> Lasting) Seen(
            Vector256<double> covered, Vector256<double> now, Vector256<double> first, Vector256<double> lasting)
        {
            var begun = Vector256.Equals(lasting, Vector256<double>.Zero);
            var since = Vector256.ConditionalSelect(begun, now, lasting);
            var fresh = covered & Vector256.Equals(first, Vector256<double>.Zero);
            return (Vector256.ConditionalSelect(fresh, now, first), since & covered);
        }
    }
}
