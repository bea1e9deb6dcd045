using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Scenarios;

/// <summary>What of a scenario set cannot be.</summary>
public static class ScenarioChecks
{
    /// <summary>All that is wrong with a set of assumptions.</summary>
    /// <param name="set">The set.</param>
    /// <returns>Faults; empty = usable.</returns>
    public static IReadOnlyList<Fault> Of(ScenarioSetFacts set)
    {
        var faults = new List<Fault>();
        Range("firstSeason", set.FirstSeason, 1950, 2100, "first season");
        Range("seasonCount", set.SeasonCount, 1, 30, "number of seasons");
        Range("replicateCount", set.ReplicateCount, 2, 40, "number of replicates");
        Range("pathCount", set.PathCount, 64, 16384, "number of paths a replicate");
        Range("offsetK", set.OffsetK, -6, 6, "temperature offset (K)");
        Range("offsetTrendKPerYear", set.OffsetTrendKPerYear, -0.3, 0.3, "trend of the offset (K a year)");
        Range("offsetSdK", set.OffsetSdK, 0, 4, "spread of the offset (K)");
        Range("discountRate", set.DiscountRate, -0.02, 0.4, "discount rate");
        Range("upkeepGrowth", set.UpkeepGrowth, -0.1, 0.3, "growth of upkeep");
        Range("replacementGrowth", set.ReplacementGrowth, -0.1, 0.3, "growth of replacement costs");
        Range("wageUsdPerHour", set.WageUsdPerHour, 0, 500, "wage ($ an hour)");
        Range("electricityUsdPerKwh", set.ElectricityUsdPerKwh, 0, 5, "price of electricity ($ a kWh)");
        Range("takeBackShare", set.TakeBackShare, 0, 0.5, "share taken back");
        Range("commonShare", set.CommonShare, 0, 1, "common share of the errors");
        Range("carryOver", set.CarryOver, 0, 1, "carry-over");
        Range("purgeVolumesPerDay", set.PurgeVolumesPerDay, 0, 48, "volumes vented a day");
        Range("lossLevel", set.LossLevel, 0.3, 3, "loss level");
        if (set.Sampling == PathSampling.Sobol && set.PathCount > 0 && !System.Numerics.BitOperations.IsPow2(set.PathCount))
        {
            faults.Add(new("NOT_EVEN", "pathCount", $"{set.PathCount} paths a replicate cannot be spread evenly: Sobol points are even in powers of two.", "Give 512, 1,024, 2,048 or another power of two, or choose plain paths."));
        }

        if (set.SamplingWeights is { } weights && (weights.Count != Correlation.Fuels || !weights.All(w => w >= 0 && double.IsFinite(w)) || weights.Sum() <= 0))
        {
            faults.Add(new("NOT_WEIGHTS", "samplingWeights", $"{string.Join(", ", weights)} are no weights of four fuels.", "Give four numbers of 0 or more for gas, propane, oil and electricity, not all 0."));
        }

        foreach (var p in set.Prices)
        {
            Optional("levelUsdPerUnit", p.LevelUsdPerUnit, 1e-4, 1e4, "price level");
            Optional("growthPerYear", p.GrowthPerYear, -0.2, 0.2, "growth of prices");
            Optional("shortReversionPerYear", p.ShortReversionPerYear, 0, 20, "short-term reversion");
            Optional("longReversionPerYear", p.LongReversionPerYear, 0, 2, "long-term reversion");
            Optional("longShare", p.LongShare, 0, 1, "share of the long-term factor");
            Optional("volatilityPerYear", p.VolatilityPerYear, 0, 2, "volatility");
            Optional("retailAdderUsdPerUnit", p.RetailAdderUsdPerUnit, -100, 100, "adder from index to delivered");
        }

        foreach (var s in set.Shapes)
        {
            Range("shapes", s.FirstSeason, 0, set.SeasonCount - 1, "first season of a price shape");
            foreach (var f in s.SeasonFactors)
            {
                Range("shapes", f, 0.05, 20, "factor of a price shape");
            }
        }

        if (set.PriceCase is { } named)
        {
            Range("priceCase", named.FirstSeason, 0, set.SeasonCount - 1, "first season of the price case");
        }

        if (set.ShortCorrelations is { } z1)
        {
            faults.AddRange(Correlation.Check(z1, "shortCorrelations"));
        }

        if (set.LongCorrelations is { } z2)
        {
            faults.AddRange(Correlation.Check(z2, "longCorrelations"));
        }

        if (set.EmissionSet is { } emissions && Units.FuelSets.EmissionsNamed(emissions) is null)
        {
            faults.Add(new("UNKNOWN_SET", "emissionSet", $"There is no set of emission factors \"{emissions}\".", $"Choose one of {string.Join(", ", Units.FuelSets.Emissions.Select(e => e.Name))}."));
        }

        if (set.HeatingValueSet is { } heating && Units.FuelSets.HeatingNamed(heating) is null)
        {
            faults.Add(new("UNKNOWN_SET", "heatingValueSet", $"There is no set of heating values \"{heating}\".", $"Choose one of {string.Join(", ", Units.FuelSets.HeatingValues.Select(h => h.Name))}."));
        }

        return faults;

        void Optional(string field, double? value, double low, double high, string what)
        {
            if (value is { } v)
            {
                Range(field, v, low, high, what);
            }
        }

        void Range(string field, double value, double low, double high, string what)
        {
            if (!(value >= low && value <= high))
            {
                faults.Add(new("OUT_OF_RANGE", field, $"The {what} of {ShortFigure.Of(value, "0.####")} is outside {low:0.####} to {high:0.####}.", $"Give a {what} between {low:0.####} and {high:0.####}."));
            }
        }
    }
}
