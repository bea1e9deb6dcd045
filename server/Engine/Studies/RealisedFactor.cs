using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Scenarios;
using static System.Math;

namespace FarmPortfolio.Engine.Studies;

/// <summary>
/// True saving over modelled saving, ONE factor for a combination: the parts' factors weighted by what each would save alone in the pool's middle winter.
/// Half the variance (by default) is common to all houses with the retrofit, the rest is the house's own.
/// </summary>
internal sealed class RealisedFactor
{
    private readonly double common;
    private readonly (double Weight, double Sd, string Code)[] parts;
    private readonly double[] bySeason;

    /// <summary>The factor of an option.</summary>
    /// <param name="catalogue">Catalogue.</param>
    /// <param name="option">Option.</param>
    /// <param name="set">Assumptions.</param>
    /// <param name="alone">What a part saves alone, by code; asked only for combinations.</param>
    public RealisedFactor(Catalogue catalogue, OptionFacts option, ScenarioSetFacts set, Func<string, double> alone)
    {
        double N(string code, string name, double otherwise = 0) =>
            option.Overrides is { } own && own.Physics.TryGetValue(code + "." + name, out var mine) ? mine : catalogue.Value(CatalogueKind.Retrofit, code, name, otherwise);
        var weights = Weights(option, alone);
        common = set.CommonShare;
        parts = [.. option.Parts.Select((code, i) => (weights[i], N(code, "factorSd"), code))];
        Mean = option.Parts.Select((code, i) => weights[i] * N(code, "factorMean", 1)).Sum();
        Sd = Sqrt(parts.Sum(p => p.Weight * p.Weight * p.Sd * p.Sd));
        bySeason = [.. Enumerable.Range(0, set.SeasonCount).Select(s => option.Parts.Select((code, i) =>
            weights[i] * (s == 0 ? N(code, "factorFirstSeason", 1) : 1) * Pow(1 - N(code, "fadePerYear"), s)).Sum())];
    }

    /// <summary>Mean factor.</summary>
    public double Mean { get; }

    /// <summary>Its standard deviation before the cut at zero.</summary>
    public double Sd { get; }

    /// <summary>Multiplies a value a path by the factor of the path, 0 or more.</summary>
    /// <param name="values">One a path.</param>
    /// <param name="factor">Overwritten by the factors; one a path.</param>
    /// <param name="shared">Draws that all houses share.</param>
    /// <param name="own">The house's own draws.</param>
    /// <param name="drawKey">Key of the house.</param>
    /// <param name="order">Order along which the house's own draws of a retrofit are spread, by its code.</param>
    public void Multiply(double[] values, Span<double> factor, PathNoise shared, PathNoise own, long drawKey, Func<string, PathOrder?> order)
    {
        var draws = parts.Select(p => (p.Weight * p.Sd * Sqrt(common), p.Weight * p.Sd * Sqrt(1 - common),
            shared.Of(NoisePurpose.SavingCommon, Noise.Key(p.Code)), own.Of(NoisePurpose.SavingOwn, drawKey ^ Noise.Key("own " + p.Code), () => order(p.Code)))).ToArray();
        factor.Fill(Mean);
        foreach (var (ofAll, ofHouse, all, house) in draws)
        {
            Rows.AddTwo(factor, ofAll, all, ofHouse, house);
        }

        Rows.TimesAboveZero(values, factor);
    }

    /// <summary>First-season and fading factor, s seasons after installation.</summary>
    /// <param name="s">Seasons since it was built.</param>
    /// <returns>Factor; 0 before it is built.</returns>
    public double Season(int s) => s < 0 ? 0 : bySeason[s];

    private static double[] Weights(OptionFacts option, Func<string, double> alone)
    {
        if (option.Parts.Count <= 1)
        {
            return [.. option.Parts.Select(_ => 1.0)];
        }

        var saved = option.Parts.Select(code => Max(0, alone(code))).ToArray();
        var sum = saved.Sum();
        return sum > 0 ? [.. saved.Select(a => a / sum)] : [.. saved.Select(_ => 1.0 / saved.Length)];
    }
}

/// <summary>What single retrofits save on one house in the pool's middle winter, each reckoned once, those of the house's combinations side by side.</summary>
/// <param name="house">House.</param>
internal sealed class PartsAlone(StudyHouse house)
{
    private readonly Dictionary<string, double> saved = new(StringComparer.Ordinal);
    private double? standing;

    /// <summary>Fuel a retrofit saves alone.</summary>
    /// <param name="code">Retrofit.</param>
    /// <returns>kWh; 0 where it does not fit the house alone.</returns>
    public double KwhOf(string code)
    {
        if (standing is null)
        {
            Reckon(house.Options.Where(o => o.Parts.Count > 1).SelectMany(o => o.Parts).Where(c => FuelSwitch.FuelOf(c) is null));
        }

        if (FuelSwitch.FuelOf(code) is not null)
        {
            // all of it moves to the other fuel
            return standing!.Value;
        }

        if (!saved.ContainsKey(code))
        {
            Reckon([code]);
        }

        return saved[code];
    }

    private void Reckon(IEnumerable<string> codes)
    {
        var alone = codes.Distinct().Select(code => (Code: code, Model: OptionModels.Of(house.Model, new("alone", [code])).Model)).ToList();
        OptionModel[] models = [OptionModels.AsItStands(house.Model), .. alone.Select(a => a.Model).OfType<OptionModel>()];
        var kwh = DemandTables.SeasonKwh(models, house.Middling);
        var asItStands = kwh[0] / models[0].Efficiency;
        standing = asItStands;
        var next = 1;
        foreach (var (code, model) in alone)
        {
            saved[code] = model is null ? 0 : Max(0, asItStands - kwh[next] / model.Efficiency);
            next += model is null ? 0 : 1;
        }
    }
}
