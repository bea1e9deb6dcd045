using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace FarmPortfolio.Engine.Scenarios;

/// <summary>
/// The inverse of the normal distribution function. Wichura (1988), algorithm AS 241, PPND16: relative error about 1e-16.
/// Only + - x /, fused steps, and one square root and <see cref="Elementary.Log(double)"/> in the tails, in a fixed order.
/// </summary>
public static class NormalQuantile
{
    private static readonly double[] A = [3.3871328727963666080, 133.14166789178437745, 1971.5909503065514427, 13731.693765509461125, 45921.953931549871457, 67265.770927008700853, 33430.575583588128105, 2509.0809287301226727];
    private static readonly double[] B = [1.0, 42.313330701600911252, 687.18700749205790830, 5394.1960214247511077, 21213.794301586595867, 39307.895800092710610, 28729.085735721942674, 5226.4952788528545610];
    private static readonly double[] C = [1.42343711074968357734, 4.63033784615654529590, 5.76949722146069140550, 3.64784832476320460504, 1.27045825245236838258, 0.241780725177450611770, 0.0227238449892691845833, 0.000774545014278341407640];
    private static readonly double[] D = [1.0, 2.05319162663775882187, 1.67638483018380384940, 0.689767334985100004550, 0.148103976427480074590, 0.0151986665636164571966, 0.000547593808499534494600, 1.05075007164441684324e-9];
    private static readonly double[] E = [6.65790464350110377720, 5.46378491116411436990, 1.78482653991729133580, 0.296560571828504891230, 0.0265321895265761230930, 0.00124266094738807843860, 2.71155556874348757815e-5, 2.01033439929228813265e-7];
    private static readonly double[] F = [1.0, 0.599832206555887937690, 0.136929880922735805310, 0.0148753612908506148525, 0.000786869131145613259100, 1.84631831751005468180e-5, 1.42151175831644588870e-7, 2.04426310338993978564e-15];

    /// <summary>The normal deviate below which a share p lies.</summary>
    /// <param name="p">Share, strictly between 0 and 1.</param>
    /// <returns>Deviate.</returns>
    /// <exception cref="ArgumentOutOfRangeException">p is not strictly between 0 and 1.</exception>
    public static double At(double p) => p > 0 && p < 1 ? At(Vector256.Create(p)).ToScalar() : throw new ArgumentOutOfRangeException(nameof(p), p, "a share strictly between 0 and 1 is needed");

    /// <summary>Four deviates at once, each with the bits of <see cref="At(double)"/>.</summary>
    /// <param name="p">Shares, strictly between 0 and 1.</param>
    /// <returns>Deviates.</returns>
    internal static Vector256<double> At(Vector256<double> p)
    {
        var q = p - Vector256.Create(0.5);
        var middle = Vector256.LessThanOrEqual(Vector256.Abs(q), Vector256.Create(0.425));
        var central = q * Ratio(A, B, Vector256.Create(0.180625) - q * q);
        if (middle.AsInt64() == Vector256<long>.AllBitsSet)
        {
            return central;
        }

        var t = Vector256.Sqrt(-Elementary.Log(Vector256.Min(p, Vector256<double>.One - p)));
        var tail = Ratio(C, D, t - Vector256.Create(1.6));
        var far = Vector256.GreaterThan(t, Vector256.Create(5.0));
        if (far.AsInt64() != Vector256<long>.Zero)
        {
            tail = Vector256.ConditionalSelect(far, Ratio(E, F, t - Vector256.Create(5.0)), tail);
        }

        var sign = q & Vector256.Create(-0.0);
        return Vector256.ConditionalSelect(middle, central, tail | sign);
    }

    /// <summary>Puts the deviate of each share in its place.</summary>
    /// <param name="shares">Shares, strictly between 0 and 1.</param>
    internal static void Replace(Span<double> shares)
    {
        var whole = shares.Length & ~3;
        for (var i = 0; i < whole; i += 4)
        {
            At(Vector256.Create<double>(shares.Slice(i, 4))).CopyTo(shares[i..]);
        }

        for (var i = whole; i < shares.Length; i++)
        {
            shares[i] = At(shares[i]);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Ratio(double[] top, double[] bottom, Vector256<double> r)
    {
        ref var a = ref top[0];
        ref var b = ref bottom[0];
        var (n, d) = (Vector256.Create(Unsafe.Add(ref a, 7)), Vector256.Create(Unsafe.Add(ref b, 7)));
        for (var i = 6; i >= 0; i--)
        {
            n = Vector256.FusedMultiplyAdd(n, r, Vector256.Create(Unsafe.Add(ref a, i)));
            d = Vector256.FusedMultiplyAdd(d, r, Vector256.Create(Unsafe.Add(ref b, i)));
        }

        return n / d;
    }
}
