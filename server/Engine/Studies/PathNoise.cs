using System.Collections.Concurrent;
using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Engine.Studies;

/// <summary>Normal draws a path, drawn once and kept: errors that all houses share, or one house's own.</summary>
/// <param name="seed">Seed of the scenario set.</param>
/// <param name="paths">Paths of all replicates.</param>
internal sealed class PathNoise(long seed, int paths)
{
    private readonly ConcurrentDictionary<(NoisePurpose Purpose, long Key), Lazy<double[]>> drawn = new();

    /// <summary>Standard normal draws by path.</summary>
    /// <param name="purpose">What for.</param>
    /// <param name="key">Whose.</param>
    /// <returns>One a path; not to be written to.</returns>
    public double[] Of(NoisePurpose purpose, long key) => drawn.GetOrAdd((purpose, key), k => new(() => Draw(k.Purpose, k.Key))).Value;

    private double[] Draw(NoisePurpose purpose, long key)
    {
        var normals = new double[paths];
        Noise.Normals(seed, purpose, key, normals);
        return normals;
    }
}
