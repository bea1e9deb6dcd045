using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Published.Fuels;

/// <summary>
/// EIA, carbon dioxide emissions coefficients, 2 February 2016 (read): pounds and kilograms CO2 a unit and a MMBtu. It differs from 40 CFR 98, so it is a set of its own and never mixed with it.
/// </summary>
public class EiaCo2Coefficients2016Tests
{
    private const double PoundKg = 0.45359237;
    private static readonly EmissionSet Set = FuelSets.Emissions.Single(s => s.Name == "EIA 2016");

    [Theory]
    [InlineData(FuelKind.Propane, 139.05, 63.07)]
    [InlineData(FuelKind.FuelOil, 161.30, 73.16)]
    [InlineData(FuelKind.NaturalGas, 117.00, 53.07)]
    public void A_MMBtu_in_pounds_and_kilograms(FuelKind fuel, double pounds, double kg)
    {
        Assert.Equal(kg, Set.KgPerMmbtu(fuel));
        Assert.Equal(pounds * PoundKg, Set.KgPerMmbtu(fuel)!.Value, 0.01);
    }

    [Fact]
    public void A_gallon_of_propane_at_EIAs_own_heating_value()
    {
        // 12.70 lb, 5.76 kg
        Assert.Equal(5.76, Set.KgPerUnit(FuelKind.Propane, "gal", FuelSets.HeatingInUse)!.Value, 0.01);
        Assert.Equal(12.70 * PoundKg, Set.KgPerUnit(FuelKind.Propane, "gal", FuelSets.HeatingInUse)!.Value, 0.01);
    }

    [Fact]
    public void A_gallon_of_oil_and_a_thousand_feet_of_gas_imply_their_own_heating_values()
    {
        // 22.40 lb = 10.16 kg a gallon: 138,870 Btu; 117.10 lb = 53.12 kg a thousand cubic feet: 1,001 Btu a cubic foot, dry at 60 F
        var set = FuelSets.HeatingInUse with { OilBtuPerGallon = 138_870, GasBtuPerCubicFoot = 1001 };
        Assert.Equal(10.16, Set.KgPerUnit(FuelKind.FuelOil, "gal", set)!.Value, 0.01);
        Assert.Equal(53.12, Set.KgPerUnit(FuelKind.NaturalGas, "mcf", set)!.Value, 0.01);
    }

    [Fact]
    public void It_has_no_wood_and_no_electricity() => Assert.Equal((null, null), (Set.KgPerMmbtu(FuelKind.WoodPellets), Set.KgPerMmbtu(FuelKind.Electricity)));
}
