using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Published.Fuels;

/// <summary>Federal Register, 27 February 2006, average unit costs of energy: dollars a unit and a MMBtu (read in a quoting page, reckoned again). Kerosene, no fuel here, left out.</summary>
public class FederalRegister2006Tests
{
    public static TheoryData<FuelKind, string, double, double> PerMmbtu => new()
    {
        { FuelKind.NaturalGas, "therm", 1.415, 14.15 }, { FuelKind.FuelOil, "gal", 2.27, 16.37 }, { FuelKind.Propane, "gal", 1.95, 21.35 }, { FuelKind.Electricity, "kWh", 0.0981, 28.75 },
    };

    /// <summary>Price over heat content times a million, without the heater's efficiency: EIA, frequently asked question 987 (read).</summary>
    [Theory, MemberData(nameof(PerMmbtu))]
    public void Dollars_a_MMBtu(FuelKind fuel, string unit, double price, double expected)
    {
        var actual = price / HeatingValues.KwhPerUnit(fuel, unit)!.Value * Us.MmbtuKwh;
        Assert.True(Math.Abs(actual - expected) <= 0.0051, $"{fuel}, {price} a {unit}: expected {expected}, reckoned {actual}, tolerance 0.005 and the rounding of 3,412 Btu");
    }

    [Fact]
    public void Gas_by_the_thousand_cubic_feet_at_1031_Btu()
    {
        // reckoned again it is 14.132, and the table prints 14.15
        var actual = 14.57 / HeatingValues.KwhPerUnit(FuelKind.NaturalGas, "mcf", FuelSets.HeatingInUse with { GasBtuPerCubicFoot = 1031 })!.Value * Us.MmbtuKwh;
        Assert.Equal(14.132, actual, 5e-4);
        Assert.Equal(14.15, actual, 0.02);
    }
}
