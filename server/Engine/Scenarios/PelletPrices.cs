using FarmPortfolio.Engine.Fuel;
using static System.Math;

namespace FarmPortfolio.Engine.Scenarios;

/// <summary>
/// Wood pellets in the futures. No public monthly record of them ships: an imported one is fitted like any retail fuel; without one the level of the assumptions,
/// or the usual one, grows by the trend (flat in real money) and wanders slowly, independent of the other fuels but for the unrest of a path.
/// Level, spread and independence are common practice, no source.
/// </summary>
public static class PelletPrices
{
    /// <summary>Delivered price of a short ton where the assumptions tell none, US dollars.</summary>
    public const double UsualUsdPerTon = 290;

    /// <summary>Volatility a year where the assumptions tell none.</summary>
    public const double UsualVolatility = 0.10;

    /// <summary>Return to the level a year where the assumptions tell none.</summary>
    public const double UsualReversion = 0.05;

    /// <summary>Pellets as the futures draw them.</summary>
    /// <param name="set">Assumptions.</param>
    /// <param name="series">An imported record; null = none.</param>
    /// <param name="faults">Takes what is wrong with the record.</param>
    /// <returns>The fuel; null with a fault.</returns>
    internal static FuelSpec? Of(ScenarioSetFacts set, PriceSeriesFacts? series, List<Fault> faults)
    {
        var own = set.Prices.FirstOrDefault(p => p.Fuel == FuelKind.WoodPellets);
        if (series is null)
        {
            return new(FuelKind.WoodPellets, Usual(own, new DateOnly(set.FirstSeason, 6, 1)), false, null, "ton", [UsualUsdPerTon, UsualUsdPerTon, UsualUsdPerTon]);
        }

        var (record, wrong) = PriceRecord.Of(series);
        faults.AddRange(wrong);
        return record is null ? null
            : new(FuelKind.WoodPellets, PriceFit.Of(record, PriceClass.RetailFuel, own), false, null, series.Unit, [.. Enumerable.Range(0, 3).Select(i => Exp(record.LogPrices[Max(0, record.LogPrices.Length - 1 - i)]))]);
    }

    /// <summary>How pellets move where no record of them is.</summary>
    /// <param name="own">Assumptions; null = the usual ones.</param>
    /// <param name="before">Month before the first season.</param>
    /// <returns>The model, level in US dollars a short ton.</returns>
    public static PriceModel Usual(FuelPriceAssumption? own, DateOnly before)
    {
        var volatility = own?.VolatilityPerYear ?? UsualVolatility;
        return new()
        {
            ShortReversion = 0,
            LongReversion = own?.LongReversionPerYear ?? UsualReversion,
            LongVolatility = volatility,
            ShortVolatility = 0,
            Growth = own?.GrowthPerYear ?? PriceClassDefaults.Of(PriceClass.RetailFuel).GrowthPerYear,
            Level = Log(UsualUsdPerTon),
            Gap = 0,
            LevelVariance = 0,
            Shape = new double[12],
            RawVolatility = double.NaN,
            Volatility = volatility,
            PriorWeight = 1,
            Months = 0,
            LastMonthOn = before,
        };
    }
}
