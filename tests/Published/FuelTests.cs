using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Published;

/// <summary>Federal Register 27 February 2006: prices by unit and by MMBtu on EIA heating values; 40 CFR 98 table C-1.</summary>
public class FuelTests
{
    public static TheoryData<FuelKind, string, double, double> PerMmbtu => new()
    {
        { FuelKind.NaturalGas, "therm", 1.415, 14.15 }, { FuelKind.FuelOil, "gal", 2.27, 16.37 }, { FuelKind.Propane, "gal", 1.95, 21.35 }, { FuelKind.Electricity, "kWh", 0.0981, 28.75 },
    };

    [Theory, MemberData(nameof(PerMmbtu))]
    public void Price_by_MMBtu(FuelKind fuel, string unit, double price, double expected)
    {
        var actual = price / HeatingValues.KwhPerUnit(fuel, unit)!.Value * Us.MmbtuKwh;
        Assert.True(Math.Abs(actual - expected) <= 0.006, $"{fuel}, {price} a {unit}: expected {expected}, reckoned {actual}, tolerance 0.006");
    }

    [Theory]
    [InlineData(FuelKind.NaturalGas, 53.06)]
    [InlineData(FuelKind.Propane, 62.87)]
    [InlineData(FuelKind.FuelOil, 73.96)]
    public void Emission_by_MMBtu(FuelKind fuel, double kg) => Assert.Equal(kg, HeatingValues.Co2KgPerKwh(fuel) * Us.MmbtuKwh, 1e-9);
}
