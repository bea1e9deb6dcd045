using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Published.Fuels;

/// <summary>40 CFR 98, table C-1 (text of December 2016) and table NN-1 (read): kg CO2 a MMBtu and MMBtu a unit; their products by the gallon as EPA's hub prints them (from memory).</summary>
public class Cfr98Tests
{
    private static readonly EmissionSet Set = FuelSets.Emissions.Single(s => s.Name == "40 CFR 98");
    private static readonly HeatingValueSet Values = FuelSets.HeatingValues.Single(s => s.Name == "40 CFR 98");

    [Theory]
    [InlineData(FuelKind.NaturalGas, 53.06)]
    [InlineData(FuelKind.Propane, 62.87)]
    [InlineData(FuelKind.FuelOil, 73.96)]
    public void Emission_of_a_MMBtu_and_it_is_the_set_in_use(FuelKind fuel, double kg)
    {
        Assert.Equal(kg, Set.KgPerMmbtu(fuel));
        Assert.Equal(kg, HeatingValues.Co2KgPerKwh(fuel) * Us.MmbtuKwh, 1e-9);
    }

    [Theory]
    [InlineData(FuelKind.Propane, 0.091)]
    [InlineData(FuelKind.FuelOil, 0.138)]
    public void Heat_of_a_gallon(FuelKind fuel, double mmbtu) => Assert.Equal(mmbtu, HeatingValues.KwhPerUnit(fuel, "gal", Values)!.Value / Us.MmbtuKwh, 1e-12);

    [Fact]
    public void Heat_of_a_cubic_foot_of_gas() => Assert.Equal(1.026e-3, HeatingValues.KwhPerUnit(FuelKind.NaturalGas, "mcf", Values)!.Value / Us.MmbtuKwh / 1000, 1e-12);

    [Theory]
    [InlineData(FuelKind.Propane, 5.72117, 5.72)]
    [InlineData(FuelKind.FuelOil, 10.20648, 10.21)]
    public void Emission_of_a_gallon(FuelKind fuel, double product, double printed)
    {
        var kg = Set.KgPerUnit(fuel, "gal", Values)!.Value;
        Assert.Equal(product, kg, 1e-5);
        Assert.Equal(printed, kg, 0.005);
    }
}
