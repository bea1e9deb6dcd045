using System.Numerics;
using System.Runtime.CompilerServices;

namespace FarmPortfolio.Engine.Scenarios;

/// <summary>
/// Normal draws of a replicate spread evenly: one in each of n stretches of equal probability (Latin hypercube; McKay, Beckman and Conover 1979), and, along a
/// given order of the paths, evenly spread within each run of about sqrt n neighbours too (Owen 1992, orthogonal arrays). Each path's draw is standard normal
/// and independent of the order; keys give independent draws.
/// </summary>
internal static class EvenNormals
{
    private const ulong Golden = 0x9E3779B97F4A7C15UL;

    /// <summary>Draws for the paths of one replicate.</summary>
    /// <param name="seed">Seed of the scenario set.</param>
    /// <param name="purpose">What for.</param>
    /// <param name="key">Whose.</param>
    /// <param name="replicate">Replicate.</param>
    /// <param name="order">Paths of the replicate, a power of two, each once: neighbours are to meet unlike draws.</param>
    /// <param name="normals">Filled, one a path.</param>
    public static void Fill(long seed, NoisePurpose purpose, long key, int replicate, ReadOnlySpan<int> order, Span<double> normals)
    {
        var n = order.Length;
        var runs = 1 << (BitOperations.Log2((uint)n) / 2);
        var each = n / runs;
        var state = Philox.Mix(unchecked(Noise.KeyOf(seed, purpose, key) + (ulong)replicate));
        var (fine, coarse) = (new int[n], new int[each]);
        for (var stretch = 0; stretch < each; stretch++)
        {
            Shuffle(fine.AsSpan(stretch * runs, runs), ref state);
        }

        for (var run = 0; run < runs; run++)
        {
            Shuffle(coarse, ref state);
            for (var i = 0; i < each; i++)
            {
                var within = ((Next(ref state) >> 11) + 0.5) * (1.0 / 9007199254740992.0);
                normals[order[run * each + i]] = (coarse[i] * runs + fine[coarse[i] * runs + run] + within) / n;
            }
        }

        NormalQuantile.Replace(normals);
    }

    /// <summary>0 to length - 1 in a random order.</summary>
    private static void Shuffle(Span<int> numbers, ref ulong state)
    {
        for (var i = 0; i < numbers.Length; i++)
        {
            var j = (int)(((Next(ref state) >> 32) * (ulong)(i + 1)) >> 32);
            (numbers[i], numbers[j]) = (numbers[j], i);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static ulong Next(ref ulong state) => Philox.Mix(unchecked(state += Golden));
}
