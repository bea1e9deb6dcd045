using FarmPortfolio.Engine.Fuel;

namespace FarmPortfolio.Engine.Scenarios;

/// <summary>
/// Draws what own prices lie off their lines on the index by, path by path, by counter. A series: e of a month = carry x e of the month before + sd x sqrt(1 - carry^2) x a
/// standard normal draw, its first month drawn from the long run. Tickets: one draw a season, sd x a standard normal one.
/// </summary>
public sealed class OwnPriceNoise
{
    private readonly ScenarioSetFacts set;
    private readonly IReadOnlyList<PriceScatter> scatter;
    private readonly double[] normals;

    private OwnPriceNoise(ScenarioSetFacts set, IReadOnlyList<PriceScatter> scatter) => (this.set, this.scatter, normals) = (set, scatter, new double[12 * set.SeasonCount]);

    /// <summary>Numbers a season: twelve months of each scatter.</summary>
    public int SeasonLength => 12 * scatter.Count;

    /// <summary>Numbers a path: all seasons.</summary>
    public int Length => SeasonLength * set.SeasonCount;

    /// <summary>Makes ready to draw; for one thread.</summary>
    /// <param name="set">Assumptions: seed, first season, seasons.</param>
    /// <param name="scatter">Scatters of a tank's or meter's terms.</param>
    /// <returns>The noise; null where nothing is drawn.</returns>
    public static OwnPriceNoise? Of(ScenarioSetFacts set, IReadOnlyList<PriceScatter> scatter) => scatter.Count == 0 ? null : new(set, scatter);

    /// <summary>Draws a path.</summary>
    /// <param name="path">Path over all replicates.</param>
    /// <param name="usdPerKwh">Filled, <see cref="Length"/> numbers: season by season twelve months (July first) of each scatter, US dollars a kWh of fuel.</param>
    public void Fill(int path, Span<double> usdPerKwh)
    {
        for (var k = 0; k < scatter.Count; k++)
        {
            var (one, key) = (scatter[k], Noise.Key(scatter[k].Key));
            if (one.BySeason)
            {
                for (var s = 0; s < set.SeasonCount; s++)
                {
                    usdPerKwh.Slice(s * SeasonLength + 12 * k, 12).Fill(one.SdUsdPerKwh * Noise.Normal(set.Seed, NoisePurpose.OwnPrice, key, path, set.FirstSeason + s));
                }

                continue;
            }

            Noise.NormalPairs(set.Seed, NoisePurpose.OwnPrice, key, path, 12 * set.FirstSeason + 6, normals, []);
            var (residual, step) = (one.SdUsdPerKwh * normals[0], one.SdUsdPerKwh * Math.Sqrt(1 - one.Carry * one.Carry));
            for (var m = 0; m < normals.Length; m++)
            {
                residual = m == 0 ? residual : one.Carry * residual + step * normals[m];
                usdPerKwh[m / 12 * SeasonLength + 12 * k + m % 12] = residual;
            }
        }
    }
}
