using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Published.Fuels;

/// <summary>EPA, GHG emission factors hub 2024 (copy, read): gas 0.05444 kg CO2 a standard cubic foot; wood 93.80 kg a MMBtu at 17.48 MMBtu a short ton.</summary>
public class EpaHub2024Tests
{
    private static readonly EmissionSet Set = FuelSets.EmissionsInUse;
    private static readonly HeatingValueSet Values = FuelSets.HeatingValues.Single(s => s.Name == "40 CFR 98");

    [Fact]
    public void Gas_by_the_cubic_foot()
    {
        var kg = Set.KgPerUnit(FuelKind.NaturalGas, "mcf", Values)!.Value / 1000;
        Assert.Equal(0.0544396, kg, 5e-8);
        Assert.Equal(0.05444, kg, 5e-6);
    }

    [Fact]
    public void Wood_by_the_MMBtu_and_ton()
    {
        Assert.Equal(93.80, Set.KgPerMmbtu(FuelKind.WoodPellets));
        Assert.Equal(93.80 * 17.48, Set.KgPerUnit(FuelKind.WoodPellets, "ton", Values)!.Value, 0.005);
    }
}
