using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace FarmPortfolio.Engine.Scenarios;

/// <summary>
/// Exponential and logarithm of our own, so that futures have the same bits on every machine: the runtime's differ between processors and versions. Only
/// + - x /, fused steps and bit moves, in a fixed order. Error against the true value below 1 unit in the last place; tests hold both to 2 of the runtime's.
/// </summary>
public static class Elementary
{
    private const double Log2E = 1.44269504088896338700;
    private const double LnHigh = 6.93147180369123816490e-01;
    private const double LnLow = 1.90821492927058770002e-10;
    private const double Magic = 6755399441055744.0;
    private const double TwoTo52 = 4503599627370496.0;

    /// <summary>1 / n!, from n = 13 down to 2: the remainder on half of ln 2 is below 4e-18.</summary>
    private static readonly double[] Factorials = [1.0 / 6227020800, 1.0 / 479001600, 1.0 / 39916800, 1.0 / 3628800, 1.0 / 362880, 1.0 / 40320, 1.0 / 5040, 1.0 / 720, 1.0 / 120, 1.0 / 24, 1.0 / 6, 1.0 / 2];

    /// <summary>e to the x; 0 far below, infinity far above, NaN for NaN.</summary>
    /// <param name="x">Any number.</param>
    /// <returns>Exponential.</returns>
    public static double Exp(double x) => Exp(Vector256.Create(x)).ToScalar();

    /// <summary>Natural logarithm of a normal number above 0.</summary>
    /// <param name="x">2.3e-308 or more, finite.</param>
    /// <returns>Logarithm.</returns>
    public static double Log(double x) => Log(Vector256.Create(x)).ToScalar();

    /// <summary>e to each number, in its place.</summary>
    /// <param name="values">Any numbers; replaced.</param>
    public static void Exp(Span<double> values)
    {
        var whole = values.Length & ~3;
        for (var i = 0; i < whole; i += 4)
        {
            Exp(Vector256.Create<double>(values.Slice(i, 4))).CopyTo(values[i..]);
        }

        for (var i = whole; i < values.Length; i++)
        {
            values[i] = Exp(values[i]);
        }
    }

    /// <summary>e to the x, four at once: x = k ln 2 + r, Taylor's series of e to the r, scaled by 2 to the k in two halves.</summary>
    /// <param name="x">Any numbers.</param>
    /// <returns>Exponentials, each with the bits of <see cref="Exp(double)"/>.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<double> Exp(Vector256<double> x)
    {
        var bounded = Vector256.Min(Vector256.Max(x, Vector256.Create(-800.0)), Vector256.Create(800.0));
        var shifted = Vector256.FusedMultiplyAdd(bounded, Vector256.Create(Log2E), Vector256.Create(Magic));
        var k = shifted - Vector256.Create(Magic);
        var r = Vector256.FusedMultiplyAdd(k, Vector256.Create(-LnHigh), bounded);
        r = Vector256.FusedMultiplyAdd(k, Vector256.Create(-LnLow), r);
        ref var f = ref Factorials[0];
        var sum = Vector256.Create(f);
        for (var i = 1; i < 12; i++)
        {
            sum = Vector256.FusedMultiplyAdd(sum, r, Vector256.Create(Unsafe.Add(ref f, i)));
        }

        sum = Vector256.FusedMultiplyAdd(sum * r, r, r) + Vector256<double>.One;
        var whole = shifted.AsInt64() - Vector256.Create(Magic).AsInt64();
        var half = Vector256.ShiftRightLogical(whole + Vector256.Create(4096L), 1) - Vector256.Create(2048L);
        var first = half + Vector256.Create(1023L);
        var second = whole - half + Vector256.Create(1023L);
        return sum * Vector256.ShiftLeft(first, 52).AsDouble() * Vector256.ShiftLeft(second, 52).AsDouble();
    }

    /// <summary>
    /// Natural logarithm, four at once: x = 2^k (1 + f) with 1 + f between the root of a half and that of two, s = f / (2 + f),
    /// ln(1 + f) by an odd polynomial in s; the form and coefficients of the freely distributable mathematical library's e_log.
    /// </summary>
    /// <param name="x">Normal numbers above 0.</param>
    /// <returns>Logarithms, each with the bits of <see cref="Log(double)"/>.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<double> Log(Vector256<double> x)
    {
        // the root of a half as bits: what lies above it in a binade is halved
        var bits = x.AsInt64() + Vector256.Create(0x3FF0000000000000L - 0x3FE6A09E667F3BCDL);
        var exponent = Vector256.ShiftRightLogical(bits, 52);
        var k = (exponent | Vector256.Create(TwoTo52).AsInt64()).AsDouble() - Vector256.Create(TwoTo52 + 1023);
        var f = ((bits & Vector256.Create(0x000FFFFFFFFFFFFFL)) + Vector256.Create(0x3FE6A09E667F3BCDL)).AsDouble() - Vector256<double>.One;
        var s = f / (f + Vector256.Create(2.0));
        var z = s * s;
        var r = Vector256.Create(1.479819860511658591e-01);
        r = Vector256.FusedMultiplyAdd(r, z, Vector256.Create(1.531383769920937332e-01));
        r = Vector256.FusedMultiplyAdd(r, z, Vector256.Create(1.818357216161805012e-01));
        r = Vector256.FusedMultiplyAdd(r, z, Vector256.Create(2.222219843214978396e-01));
        r = Vector256.FusedMultiplyAdd(r, z, Vector256.Create(2.857142874366239149e-01));
        r = Vector256.FusedMultiplyAdd(r, z, Vector256.Create(3.999999999940941908e-01));
        r = Vector256.FusedMultiplyAdd(r, z, Vector256.Create(6.666666666666735130e-01));
        r *= z;
        var halfSquare = f * f * Vector256.Create(0.5);
        var inner = halfSquare - Vector256.FusedMultiplyAdd(s, halfSquare + r, k * Vector256.Create(LnLow));
        return k * Vector256.Create(LnHigh) - (inner - f);
    }
}
