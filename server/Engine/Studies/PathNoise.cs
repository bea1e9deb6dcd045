using System.Collections.Concurrent;
using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Engine.Studies;

/// <summary>
/// Normal draws a path, drawn once and kept: errors that all houses share, or one house's own. Plain paths draw each by its counter. With Sobol points the
/// errors that all houses share take the dimensions after those of the prices, and a house's own are spread evenly: over all paths, and along an order of them.
/// </summary>
/// <param name="set">Assumptions.</param>
internal sealed class PathNoise(ScenarioSetFacts set)
{
    /// <summary>Retrofits whose common error of the saving has a dimension of its own; those of others are spread evenly over all paths.</summary>
    private static readonly long[] CommonCodes =
        [.. new[] { "foam", "curtain", "irfilm", "seal", "kneewall", "endwalls", "perimeter", "openlater", "condensing", "service" }.Select(Noise.Key)];

    private readonly ConcurrentDictionary<(NoisePurpose Purpose, long Key), Lazy<double[]>> drawn = new();

    /// <summary>Standard normal draws by path.</summary>
    /// <param name="purpose">What for.</param>
    /// <param name="key">Whose; always asked for with the same order.</param>
    /// <param name="order">Gives the order along which a house's own draws are spread, asked when they are first drawn; null = that of the paths.</param>
    /// <returns>One a path; not to be written to.</returns>
    public double[] Of(NoisePurpose purpose, long key, Func<PathOrder?>? order = null) => drawn.GetOrAdd((purpose, key), k => new(() => Draw(k.Purpose, k.Key, order?.Invoke()))).Value;

    private double[] Draw(NoisePurpose purpose, long key, PathOrder? order)
    {
        var normals = new double[set.ReplicateCount * set.PathCount];
        if (set.Sampling == PathSampling.Plain)
        {
            Noise.Normals(set.Seed, purpose, key, normals);
            return normals;
        }

        var dimension = Dimension(purpose, key);
        for (var r = 0; r < set.ReplicateCount; r++)
        {
            var row = normals.AsSpan(r * set.PathCount, set.PathCount);
            if (dimension is { } d)
            {
                SobolPoints.Fill(set.Seed, r, d, row);
                NormalQuantile.Replace(row);
            }
            else
            {
                EvenNormals.Fill(set.Seed, purpose, key, r, order is null ? PathOrder.AsDrawn(set.PathCount) : order.Of(r), row);
            }
        }

        return normals;
    }

    private int? Dimension(NoisePurpose purpose, long key) => purpose switch
    {
        NoisePurpose.OutlayCommon when key == set.FirstSeason => SobolPlan.FirstSharedError,
        NoisePurpose.SavingCommon when Array.IndexOf(CommonCodes, key) is >= 0 and var at => SobolPlan.FirstSharedError + 1 + at,
        _ => null,
    };
}
