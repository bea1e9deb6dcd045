using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Published.Fuels;

/// <summary>EIA, Btu conversion factors: the averages of 2012 and later values, as printed (read; propane of the later set on a secondary page). The values move by year.</summary>
public class EiaBtuFactorsTests
{
    private static HeatingValueSet Set(string name) => FuelSets.HeatingValues.Single(s => s.Name == name);

    [Fact]
    public void The_averages_of_2012_are_as_printed()
    {
        var set = Set("EIA 2012");
        Assert.Equal((2012, 1025.0, 91_333.0, 138_690.0), (set.Year, set.GasBtuPerCubicFoot, set.PropaneBtuPerGallon, set.OilBtuPerGallon));
        double Btu(FuelKind fuel, string unit) => HeatingValues.KwhPerUnit(fuel, unit, set)!.Value / Us.BtuKwh;
        Assert.Equal(100_000, Btu(FuelKind.NaturalGas, "therm"), 1e-6);
        Assert.Equal(1_025_000, Btu(FuelKind.NaturalGas, "mcf"), 1e-6);
        Assert.Equal(91_333, Btu(FuelKind.Propane, "gal"), 1e-8);
        Assert.Equal(138_690, Btu(FuelKind.FuelOil, "gal"), 1e-8);
        // printed without decimals: 3,412
        Assert.Equal(3412, Btu(FuelKind.Electricity, "kWh"), 0.5);
    }

    [Fact]
    public void Later_values_are_a_set_of_their_own()
    {
        var set = Set("EIA 2022");
        Assert.Equal((1036.0, 91_452.0, 137_381.0), (set.GasBtuPerCubicFoot, set.PropaneBtuPerGallon, set.OilBtuPerGallon));
        Assert.All(FuelSets.HeatingValues, s => Assert.NotEmpty(s.Source));
        Assert.Same(Set("EIA 2012"), FuelSets.HeatingInUse);
    }
}
