using System.Runtime.CompilerServices;

namespace FarmPortfolio.Engine.Scenarios;

/// <summary>Four random words.</summary>
/// <param name="A">First.</param>
/// <param name="B">Second.</param>
/// <param name="C">Third.</param>
/// <param name="D">Fourth.</param>
public readonly record struct Words(uint A, uint B, uint C, uint D);

/// <summary>
/// Philox4x32-10, a random number by counter: any draw can be made anywhere, in any order, with the same bits.
/// Salmon, Moraes, Dror and Shaw (2011), Parallel random numbers: as easy as 1, 2, 3.
/// </summary>
public static class Philox
{
    private const uint M0 = 0xD2511F53;
    private const uint M1 = 0xCD9E8D57;
    private const uint W0 = 0x9E3779B9;
    private const uint W1 = 0xBB67AE85;

    /// <summary>The words of a counter under a key.</summary>
    /// <param name="counter">Counter.</param>
    /// <param name="key0">Low word of the key.</param>
    /// <param name="key1">High word of the key.</param>
    /// <param name="rounds">Rounds, 10 by default.</param>
    /// <returns>Four words.</returns>
    public static Words Draw(Words counter, uint key0, uint key1, int rounds = 10)
    {
        var (a, b, c, d) = (counter.A, counter.B, counter.C, counter.D);
        for (var r = 0; r < rounds; r++)
        {
            var p0 = (ulong)M0 * a;
            var p1 = (ulong)M1 * c;
            (a, b, c, d) = ((uint)(p1 >> 32) ^ b ^ key0, (uint)p1, (uint)(p0 >> 32) ^ d ^ key1, (uint)p0);
            unchecked
            {
                key0 += W0;
                key1 += W1;
            }
        }

        return new(a, b, c, d);
    }

    /// <summary>A number strictly between 0 and 1 from two words, 53 bits.</summary>
    /// <param name="high">High word.</param>
    /// <param name="low">Low word.</param>
    /// <returns>(k + 1/2) / 2^53.</returns>
    public static double Uniform(uint high, uint low) => ((((ulong)high << 21) ^ (low >> 11)) + 0.5) * (1.0 / 9007199254740992.0);

    /// <summary>Mixes a 64-bit value well: the finaliser of SplitMix64.</summary>
    /// <param name="value">Any value.</param>
    /// <returns>A mixed value.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ulong Mix(ulong value)
    {
        unchecked
        {
            value += 0x9E3779B97F4A7C15UL;
            value = (value ^ (value >> 30)) * 0xBF58476D1CE4E5B9UL;
            value = (value ^ (value >> 27)) * 0x94D049BB133111EBUL;
            return value ^ (value >> 31);
        }
    }
}
