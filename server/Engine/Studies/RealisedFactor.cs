using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Weather;
using static System.Math;

namespace FarmPortfolio.Engine.Studies;

/// <summary>
/// True saving over modelled saving, ONE factor for a combination: the parts' factors weighted by what each would save alone in the pool's middle winter.
/// Half the variance (by default) is common to all houses with the retrofit, the rest is the house's own.
/// </summary>
internal sealed class RealisedFactor
{
    private readonly ScenarioSetFacts set;
    private readonly (double Weight, double Sd, long Common, long Own)[] parts;
    private readonly double[] bySeason;

    public RealisedFactor(HouseModel house, OptionFacts option, IReadOnlyList<WeatherYear> pool, ScenarioSetFacts set)
    {
        this.set = set;
        double N(string code, string name, double otherwise = 0) => house.Catalogue.Value(CatalogueKind.Retrofit, code, name, otherwise);
        var weights = Weights(house, option, pool);
        parts = [.. option.Parts.Select((code, i) => (weights[i], N(code, "factorSd"), Noise.Key(code), Noise.Key("own " + code)))];
        Mean = option.Parts.Select((code, i) => weights[i] * N(code, "factorMean", 1)).Sum();
        bySeason = [.. Enumerable.Range(0, set.SeasonCount).Select(s => option.Parts.Select((code, i) =>
            weights[i] * (s == 0 ? N(code, "factorFirstSeason", 1) : 1) * Pow(1 - N(code, "fadePerYear"), s)).Sum())];
    }

    /// <summary>Mean factor.</summary>
    public double Mean { get; }

    /// <summary>Factor on a path, 0 or more.</summary>
    public double OnPath(int path, long drawKey)
    {
        var factor = Mean;
        foreach (var (weight, sd, common, own) in parts)
        {
            factor += weight * sd * (Sqrt(set.CommonShare) * Noise.Normal(set.Seed, NoisePurpose.SavingCommon, common, path, 0) +
                Sqrt(1 - set.CommonShare) * Noise.Normal(set.Seed, NoisePurpose.SavingOwn, drawKey ^ own, path, 0));
        }

        return Max(0, factor);
    }

    /// <summary>First-season and fading factor, s seasons after installation.</summary>
    public double Season(int s) => s < 0 ? 0 : bySeason[s];

    private static double[] Weights(HouseModel house, OptionFacts option, IReadOnlyList<WeatherYear> pool)
    {
        if (option.Parts.Count <= 1)
        {
            return [.. option.Parts.Select(_ => 1.0)];
        }

        var winter = pool.OrderBy(y => y.DegreeDaysK(15)).ElementAt(pool.Count / 2);
        double Fuel(OptionModel m) => HeatBalance.Season(m, winter).TotalKwh / m.Efficiency;
        var standing = Fuel(OptionModels.AsItStands(house));
        var alone = option.Parts.Select(code => OptionModels.Of(house, new("alone", [code])).Model is { } m ? Max(0, standing - Fuel(m)) : 0).ToArray();
        var sum = alone.Sum();
        return sum > 0 ? [.. alone.Select(a => a / sum)] : [.. alone.Select(_ => 1.0 / alone.Length)];
    }
}
