using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace FarmPortfolio.Engine.Economics;

/// <summary>Range of some values, and how far they spread.</summary>
/// <param name="Least">The least; exact.</param>
/// <param name="Most">The most; exact.</param>
/// <param name="Mean">Mean, to rounding.</param>
/// <param name="Sd">Standard deviation, to rounding.</param>
internal readonly record struct ValueSpread(double Least, double Most, double Mean, double Sd)
{
    /// <summary>The spread of values given in equal parts, and the mean of each part, summed over eight fixed lanes as <see cref="OrderStatistics.Sum"/> does.</summary>
    /// <param name="values">Values without NaN, at least one a part.</param>
    /// <param name="means">Filled, one a part.</param>
    /// <returns>The spread.</returns>
    public static ValueSpread Of(ReadOnlySpan<double> values, Span<double> means)
    {
        var each = values.Length / means.Length;
        var from = values[0];
        var (low, high, square, total) = (Vector256.Create(from), Vector256.Create(from), Vector256<double>.Zero, 0.0);
        var (low1, high1, square1) = (low, high, square);
        var (least, most, squares) = (from, from, 0.0);
        var origin = Vector256.Create(from);
        for (var part = 0; part < means.Length; part++)
        {
            var row = values.Slice(part * each, each);
            var wide = MemoryMarshal.Cast<double, Vector256<double>>(row[..(each & ~7)]);
            var (a, b) = (Vector256<double>.Zero, Vector256<double>.Zero);
            for (var i = 0; i < wide.Length; i += 2)
            {
                var (x, y) = (wide[i], wide[i + 1]);
                (a, b) = (a + x, b + y);
                (low, high) = (Vector256.MinNative(low, x), Vector256.MaxNative(high, x));
                (low1, high1) = (Vector256.MinNative(low1, y), Vector256.MaxNative(high1, y));
                (x, y) = (x - origin, y - origin);
                (square, square1) = (Vector256.FusedMultiplyAdd(x, x, square), Vector256.FusedMultiplyAdd(y, y, square1));
            }

            a += b;
            var sum = a[0] + a[1] + (a[2] + a[3]);
            foreach (var v in row[(each & ~7)..])
            {
                (sum, least, most, squares) = (sum + v, Math.Min(least, v), Math.Max(most, v), squares + (v - from) * (v - from));
            }

            (means[part], total) = (sum / each, total + sum);
        }

        (low, high) = (Vector256.MinNative(low, low1), Vector256.MaxNative(high, high1));
        for (var i = 0; i < 4; i++)
        {
            (least, most) = (Math.Min(least, low[i]), Math.Max(most, high[i]));
        }

        var (n, mean) = (each * means.Length, total / (each * means.Length));
        var variance = (Vector256.Sum(square + square1) + squares) / n - (mean - from) * (mean - from);
        return new(least, most, mean, Math.Sqrt(Math.Max(0, variance)));
    }
}
