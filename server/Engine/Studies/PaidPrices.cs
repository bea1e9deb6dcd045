using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;
using FarmPortfolio.Engine.Fuel;

namespace FarmPortfolio.Engine.Studies;

/// <summary>What a line pays in the months heated of all seasons, as functions of the index side by side: each to the bits of <see cref="PaidMonth.At"/>.</summary>
internal sealed class PaidPrices
{
    private readonly int[] months;
    private readonly int stride;
    private readonly double[] constant;
    private readonly double[] slope;
    private readonly Held[] held;

    /// <summary>Makes the prices of a line ready.</summary>
    /// <param name="terms">Terms whose every price is a month's.</param>
    /// <param name="months">Months heated, July = 0, rising.</param>
    /// <param name="seasons">Seasons.</param>
    public PaidPrices(SupplyTerms terms, int[] months, int seasons)
    {
        (this.months, stride) = (months, ReplicateLayout.StrideOf(seasons));
        var length = months.Length * stride;
        (constant, slope) = (new double[length], new double[length]);
        held = [.. Enumerable.Range(0, Enumerable.Range(0, 12 * seasons).Max(m => terms.PriceOf(m).Held.Count)).Select(_ => new Held(length))];
        for (var i = 0; i < length; i++)
        {
            if (i % stride < seasons)
            {
                var price = terms.PriceOf(12 * (i % stride) + months[i / stride]);
                (constant[i], slope[i]) = (price.Constant, price.Slope);
                for (var h = 0; h < price.Held.Count; h++)
                {
                    held[h].Set(i, price.Held[h]);
                }
            }
        }
    }

    /// <summary>Numbers a path: months heated x seasons made up to whole vectors.</summary>
    public int Length => constant.Length;

    /// <summary>The prices of a path.</summary>
    /// <param name="index">The path's twelve rows of <see cref="ReplicateLayout.Index"/>.</param>
    /// <param name="paid">Filled, month heated by month heated; <see cref="Length"/> numbers.</param>
    public void Pay(ReadOnlySpan<double> index, Span<double> paid)
    {
        ref var from = ref MemoryMarshal.GetReference(index[..(12 * stride)]);
        ref var to = ref MemoryMarshal.GetReference(paid[..Length]);
        ref var fixedPart = ref MemoryMarshal.GetArrayDataReference(constant);
        ref var ofIndex = ref MemoryMarshal.GetArrayDataReference(slope);
        nuint at = 0;
        foreach (var m in months)
        {
            var end = at + (nuint)stride;
            for (var x = (nuint)(m * stride); at < end; at += 4, x += 4)
            {
                var price = Vector256.FusedMultiplyAdd(Vector256.LoadUnsafe(ref ofIndex, at), Vector256.LoadUnsafe(ref from, x), Vector256.LoadUnsafe(ref fixedPart, at));
                price.StoreUnsafe(ref to, at);
            }
        }

        if (held.Length > 0)
        {
            AddHeld(index, paid);
        }
    }

    /// <summary>Asks the memory for a path's index before it is read: what a house reads of a replicate lies in short stretches far apart.</summary>
    /// <param name="index">The path's twelve rows of <see cref="ReplicateLayout.Index"/>.</param>
    public unsafe void Prefetch(ReadOnlySpan<double> index)
    {
        if (!Sse.IsSupported)
        {
            return;
        }

        foreach (var m in months)
        {
            for (var s = m * stride; s < (m + 1) * stride; s += 8)
            {
                Sse.Prefetch0(Unsafe.AsPointer(ref Unsafe.AsRef(in index[s])));
            }
        }
    }

    private void AddHeld(ReadOnlySpan<double> index, Span<double> paid)
    {
        foreach (var part in held)
        {
            for (var at = 0; at < Length; at += 4)
            {
                ref var price = ref paid[at];
                part.Add(at, Vector256.LoadUnsafe(in index[months[at / stride] * stride + at % stride]), Vector256.LoadUnsafe(ref price)).StoreUnsafe(ref price);
            }
        }
    }

    /// <summary>A part held between a floor and a cap; where a month has none its weight is nothing.</summary>
    private sealed class Held(int length)
    {
        private readonly double[] weight = new double[length];
        private readonly double[] share = new double[length];
        private readonly double[] adder = new double[length];
        private readonly double[] low = new double[length];
        private readonly double[] high = new double[length];

        public void Set(int at, HeldPart part) => (weight[at], share[at], adder[at], low[at], high[at]) = (part.Weight, part.Share, part.Adder, part.Low, part.High);

        public Vector256<double> Add(int at, Vector256<double> index, Vector256<double> price)
        {
            var bounded = Vector256.FusedMultiplyAdd(Vector256.LoadUnsafe(ref share[at]), index, Vector256.LoadUnsafe(ref adder[at]));
            bounded = Vector256.Min(Vector256.LoadUnsafe(ref high[at]), Vector256.Max(Vector256.LoadUnsafe(ref low[at]), bounded));
            return Vector256.FusedMultiplyAdd(Vector256.LoadUnsafe(ref weight[at]), bounded, price);
        }
    }
}
