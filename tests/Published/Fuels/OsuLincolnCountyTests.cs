using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Published.Fuels;

/// <summary>
/// OSU Extension, Lincoln County, heating fuels compared (copy, read): Btu a unit, efficiency, useful Btu a unit. Its heating-oil row (190,900 at 83 %) is a misprint and is not used;
/// propane and diesel are on heating values of its own.
/// </summary>
public class OsuLincolnCountyTests
{
    [Theory]
    [InlineData(FuelKind.NaturalGas, "therm", 100_000, 0.78, 78_000)]
    [InlineData(FuelKind.Propane, "gal", 91_000, 0.75, 68_250)]
    [InlineData(FuelKind.FuelOil, "gal", 139_900, 0.75, 104_925)]
    [InlineData(FuelKind.WoodPellets, "ton", 16_500_000, 0.80, 13_200_000)]
    public void Useful_heat_of_a_unit(FuelKind fuel, string unit, double btu, double efficiency, double useful)
    {
        var set = FuelSets.HeatingInUse with { PropaneBtuPerGallon = 91_000, OilBtuPerGallon = 139_900 };
        var kwh = HeatingValues.KwhPerUnit(fuel, unit, set)!.Value;
        Assert.Equal(btu, kwh / Us.BtuKwh, 1e-6 * btu);
        Assert.Equal(useful, efficiency * kwh / Us.BtuKwh, 1e-6 * useful);
    }

    [Fact]
    public void Pellets_in_use_are_its_own() => Assert.Equal(16_500_000, FuelSets.HeatingInUse.PelletsBtuPerTon);
}
