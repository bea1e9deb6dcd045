using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace FarmPortfolio.Engine.Scenarios;

/// <summary>Four Philox draws side by side, one a path or a step: the words of <see cref="Philox"/>, each in the low half of a lane.</summary>
internal static class PhiloxLanes
{
    private static readonly Vector256<ulong> Low = Vector256.Create(0xFFFFFFFFUL);

    /// <summary>Two uniforms for each of four counters.</summary>
    /// <param name="a">First word of the counters.</param>
    /// <param name="b">Second word of the counters.</param>
    /// <param name="purpose">Third word.</param>
    /// <param name="key">Key.</param>
    /// <returns>Uniforms of the words A, B and of C, D.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static (Vector256<double> First, Vector256<double> Second) Uniforms(Vector256<ulong> a, Vector256<ulong> b, uint purpose, ulong key)
    {
        var (c, d) = (Vector256.Create((ulong)purpose), Vector256<ulong>.Zero);
        var (key0, key1) = ((uint)key, (uint)(key >> 32));
        for (var r = 0; r < 10; r++)
        {
            var p0 = Product(a, 0xD2511F53);
            var p1 = Product(c, 0xCD9E8D57);
            a = Vector256.ShiftRightLogical(p1, 32) ^ b ^ Vector256.Create((ulong)key0);
            b = p1 & Low;
            c = Vector256.ShiftRightLogical(p0, 32) ^ d ^ Vector256.Create((ulong)key1);
            d = p0 & Low;
            unchecked
            {
                key0 += 0x9E3779B9;
                key1 += 0xBB67AE85;
            }
        }

        return (Uniform(a, b), Uniform(c, d));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<ulong> Product(Vector256<ulong> words, uint factor) =>
        Avx2.IsSupported ? Avx2.Multiply(words.AsUInt32(), Vector256.Create((ulong)factor).AsUInt32()) : words * Vector256.Create((ulong)factor);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Uniform(Vector256<ulong> high, Vector256<ulong> low) =>
        (Vector256.ConvertToDouble(Vector256.ShiftLeft(high, 21) ^ Vector256.ShiftRightLogical(low, 11)) + Vector256.Create(0.5)) * Vector256.Create(1.0 / 9007199254740992.0);
}
