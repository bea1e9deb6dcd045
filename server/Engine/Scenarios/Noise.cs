using System.Runtime.Intrinsics;

namespace FarmPortfolio.Engine.Scenarios;

/// <summary>What a draw is for; a part of its counter, so that no two purposes share a number.</summary>
public enum NoisePurpose
{
    /// <summary>Unrest of a path.</summary>
    Unrest = 1,

    /// <summary>Short-term price factor of a month.</summary>
    ShortFactor = 2,

    /// <summary>Long-term price factor of a month.</summary>
    LongFactor = 3,

    /// <summary>Place of a path among the winters of a season.</summary>
    WinterOrder = 4,

    /// <summary>Place inside the winter's stratum.</summary>
    WinterPlace = 5,

    /// <summary>Temperature offset of a season.</summary>
    Offset = 6,

    /// <summary>Error of a retrofit's saving common to all houses; key: the retrofit.</summary>
    SavingCommon = 7,

    /// <summary>A house's own error of a saving; key: house and retrofit.</summary>
    SavingOwn = 8,

    /// <summary>Error of the outlay common to a year's quotes; key: the year.</summary>
    OutlayCommon = 9,

    /// <summary>An option's own error of the outlay; key: house.</summary>
    OutlayOwn = 10,

    /// <summary>A house's loss multiplier; key: house.</summary>
    LossOwn = 11,

    /// <summary>A supply group's loss multiplier; key: group.</summary>
    LossGroup = 12,

    /// <summary>Residual of a retail price over its wholesale price; key: fuel.</summary>
    RetailResidual = 13,

    /// <summary>Slow factor of the price of wood pellets.</summary>
    PelletFactor = 14,

    /// <summary>A house's air changes over those described; key: house.</summary>
    AirOwn = 15,

    /// <summary>Permutations of a replicate's Sobol points; key: the replicate.</summary>
    SobolScramble = 16,

    /// <summary>Margin of a season's sales, common to all farms.</summary>
    MarginCommon = 17,

    /// <summary>A farm's own margin of a season's sales; key: the farm.</summary>
    MarginOwn = 18,

    /// <summary>What an own price lies off its line on the index by; key: the price series, or the tank or meter.</summary>
    OwnPrice = 19,
}

/// <summary>Normal draws by counter: (seed, purpose, key, path, step). Nothing depends on order or threads.</summary>
public static class Noise
{
    /// <summary>A standard normal draw.</summary>
    /// <param name="seed">Seed of the scenario set.</param>
    /// <param name="purpose">What for.</param>
    /// <param name="key">Whose: a house's draw key, a hash of a code; 0 = nobody's.</param>
    /// <param name="path">Path over all replicates.</param>
    /// <param name="step">Month, season or component.</param>
    /// <returns>Standard normal.</returns>
    public static double Normal(long seed, NoisePurpose purpose, long key, int path, int step) => NormalQuantile.At(Uniform(seed, purpose, key, path, step));

    /// <summary>Standard normal draws of all paths at step 0: the same as <see cref="Normal"/> path by path.</summary>
    /// <param name="seed">Seed of the scenario set.</param>
    /// <param name="purpose">What for.</param>
    /// <param name="key">Whose.</param>
    /// <param name="normals">Filled, one a path.</param>
    public static void Normals(long seed, NoisePurpose purpose, long key, Span<double> normals)
    {
        Normals(seed, purpose, key, 0, 0, normals);
    }

    /// <summary>Standard normal draws of a stretch of paths: the same as <see cref="Normal"/> path by path.</summary>
    /// <param name="seed">Seed of the scenario set.</param>
    /// <param name="purpose">What for.</param>
    /// <param name="key">Whose.</param>
    /// <param name="fromPath">First path.</param>
    /// <param name="step">Month, season or component.</param>
    /// <param name="normals">Filled, one a path.</param>
    internal static void Normals(long seed, NoisePurpose purpose, long key, int fromPath, int step, Span<double> normals)
    {
        var k = KeyOf(seed, purpose, key);
        var lanes = Vector256.Create((ulong)fromPath) + Vector256.Create(0UL, 1, 2, 3);
        var whole = normals.Length & ~3;
        for (var i = 0; i < whole; i += 4)
        {
            NormalQuantile.At(PhiloxLanes.Uniforms(lanes, Vector256.Create((ulong)step), (uint)purpose, k).First).CopyTo(normals[i..]);
            lanes += Vector256.Create(4UL);
        }

        for (var i = whole; i < normals.Length; i++)
        {
            normals[i] = Normal(seed, purpose, key, fromPath + i, step);
        }
    }

    /// <summary>Two standard normal draws a step, from the words A, B and the words C, D of one counter.</summary>
    /// <param name="seed">Seed of the scenario set.</param>
    /// <param name="purpose">What for.</param>
    /// <param name="key">Whose.</param>
    /// <param name="path">Path over all replicates.</param>
    /// <param name="fromStep">First step.</param>
    /// <param name="first">Filled, one a step.</param>
    /// <param name="second">Filled, one a step; empty = not wanted.</param>
    internal static void NormalPairs(long seed, NoisePurpose purpose, long key, int path, int fromStep, Span<double> first, Span<double> second)
    {
        var k = KeyOf(seed, purpose, key);
        var steps = Vector256.Create((ulong)fromStep) + Vector256.Create(0UL, 1, 2, 3);
        var whole = first.Length & ~3;
        for (var i = 0; i < whole; i += 4)
        {
            var u = PhiloxLanes.Uniforms(Vector256.Create((ulong)path), steps, (uint)purpose, k);
            NormalQuantile.At(u.First).CopyTo(first[i..]);
            if (!second.IsEmpty)
            {
                NormalQuantile.At(u.Second).CopyTo(second[i..]);
            }

            steps += Vector256.Create(4UL);
        }

        for (var i = whole; i < first.Length; i++)
        {
            var words = Words(seed, purpose, key, path, fromStep + i);
            first[i] = NormalQuantile.At(Philox.Uniform(words.A, words.B));
            if (!second.IsEmpty)
            {
                second[i] = NormalQuantile.At(Philox.Uniform(words.C, words.D));
            }
        }
    }

    /// <summary>A uniform draw strictly between 0 and 1.</summary>
    /// <param name="seed">Seed of the scenario set.</param>
    /// <param name="purpose">What for.</param>
    /// <param name="key">Whose.</param>
    /// <param name="path">Path over all replicates.</param>
    /// <param name="step">Month, season or component.</param>
    /// <returns>Uniform.</returns>
    public static double Uniform(long seed, NoisePurpose purpose, long key, int path, int step)
    {
        var words = Words(seed, purpose, key, path, step);
        return Philox.Uniform(words.A, words.B);
    }

    /// <summary>A key from text, the same everywhere: FNV-1a over UTF-8, mixed.</summary>
    /// <param name="text">Text.</param>
    /// <returns>Key.</returns>
    public static long Key(string text)
    {
        var hash = 0xCBF29CE484222325UL;
        foreach (var b in System.Text.Encoding.UTF8.GetBytes(text))
        {
            hash = unchecked((hash ^ b) * 0x100000001B3UL);
        }

        return unchecked((long)Philox.Mix(hash));
    }

    internal static Words Words(long seed, NoisePurpose purpose, long key, int path, int step)
    {
        var k = KeyOf(seed, purpose, key);
        return Philox.Draw(new((uint)path, (uint)step, (uint)purpose, 0), (uint)k, (uint)(k >> 32));
    }

    internal static ulong KeyOf(long seed, NoisePurpose purpose, long key) => Philox.Mix(unchecked((ulong)seed) ^ Philox.Mix(unchecked((ulong)key) + (ulong)purpose));
}
