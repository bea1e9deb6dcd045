using FarmPortfolio.Engine.HeatDemand;

namespace FarmPortfolio.Engine.Tests.HeatDemand;

/// <summary>Fuel and its cost over all heaters of a house, by hand.</summary>
public class FuelShareTests
{
    private static readonly Dictionary<FuelKind, double> Prices = new() { [FuelKind.NaturalGas] = 0.03, [FuelKind.Propane] = 0.08 };

    [Fact]
    public void A_house_on_two_fuels_burns_and_pays_for_both()
    {
        var house = TestHouse.Model(TestHouse.Facts with
        {
            Heaters = [new("power", FuelKind.NaturalGas, 50, 0.80), new("condensing", FuelKind.Propane, 30, 0.92)],
            Supplies = [new("gas", 0, 0.7), new("tank", 1, 0.3)],
        });
        var parts = FuelShare.Of(house);
        Assert.Equal([FuelKind.NaturalGas, FuelKind.Propane], parts.Select(p => p.Fuel));

        // 100,000 kWh of heat: 70,000 / 0.80 = 87,500 kWh of gas and 30,000 / 0.92 = 32,608.7 of propane; $2,625 and $2,608.70
        Assert.Equal(87_500, parts[0].FuelKwh(100_000), 1e-6);
        Assert.Equal(32_608.695652, parts[1].FuelKwh(100_000), 1e-5);
        Assert.Equal(5_233.695652, FuelShare.CostUsd(house, 100_000, Prices), 1e-5);
    }

    [Fact]
    public void A_heater_on_two_tanks_counts_both_and_one_on_none_all()
    {
        var two = TestHouse.Model(TestHouse.Facts with { Heaters = [new("power", FuelKind.Propane, 50, 0.80)], Supplies = [new("a", 0, 0.25), new("b", 0, 0.75)] });
        Assert.Equal(10_000, FuelShare.CostUsd(two, 100_000, Prices), 1e-6);
        var none = TestHouse.Model(TestHouse.Facts with { Heaters = [new("power", FuelKind.Propane, 50, 0.80)] });
        Assert.Equal(1, Assert.Single(FuelShare.Of(none)).Share);
        Assert.Equal(0, FuelShare.CostUsd(none, 100_000, new Dictionary<FuelKind, double>()));
    }
}
