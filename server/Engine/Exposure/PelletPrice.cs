using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Exposure;

/// <summary>
/// Prices by fuel of a replicate. No public monthly record of wood pellets ships, so they have no futures: their price is the level in the assumptions, or the usual
/// one, growing by its trend and the same on every path. Their spread is therefore the winter's alone.
/// </summary>
public static class PelletPrice
{
    /// <summary>Delivered price of a short ton where the assumptions tell none, US dollars; common practice, no source.</summary>
    public const double UsualUsdPerTon = 290;

    /// <summary>Prices of any fuel.</summary>
    /// <param name="set">Assumptions.</param>
    /// <returns>By replicate and fuel: path, season and month, US dollars a kWh of fuel.</returns>
    public static Func<FuturesBlock, FuelKind, double[]> Of(ScenarioSetFacts set)
    {
        double[]? pellets = null;
        return (block, fuel) => fuel != FuelKind.WoodPellets ? block.Price(fuel) : pellets ??= Flat(set, block);
    }

    private static double[] Flat(ScenarioSetFacts set, FuturesBlock block)
    {
        var own = set.Prices.FirstOrDefault(p => p.Fuel == FuelKind.WoodPellets);
        var (level, growth) = ((own?.LevelUsdPerUnit ?? UsualUsdPerTon) / HeatingValues.KwhPerUnit(FuelKind.WoodPellets, "ton")!.Value, own?.GrowthPerYear ?? PriceClassDefaults.Of(PriceClass.RetailFuel).GrowthPerYear);
        var months = 12 * block.Seasons;
        return [.. Enumerable.Range(0, block.Paths * months).Select(i => level * Math.Exp(growth * (i % months / 12)))];
    }
}
