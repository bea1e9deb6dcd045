using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;

namespace FarmPortfolio.Engine.Tests.HeatDemand;

/// <summary>Days that no calendar has, periods that share days, tanks that give another fuel: each named with its field and what would be right.</summary>
public class PeriodAndSupplyChecksTests
{
    [Theory]
    [InlineData(2, 31, "1 to 29")]
    [InlineData(4, 31, "1 to 30")]
    [InlineData(2, 0, "1 to 29")]
    [InlineData(13, 1, "1 to 12")]
    public void A_day_that_no_calendar_has_is_named(int month, int day, string remedy)
    {
        var fault = Assert.Single(Of(new HeatingPeriod(new(1, 1), new(month, day), 10, 12)));
        Assert.Equal(("OUT_OF_RANGE", "heatingPeriods"), (fault.Code, fault.Field));
        Assert.Contains(remedy, fault.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void The_29_of_February_is_a_day() => Assert.Empty(Of(new HeatingPeriod(new(2, 1), new(2, 29), 10, 12)));

    [Fact]
    public void Periods_that_share_a_day_are_named_over_New_Year_too()
    {
        Assert.Empty(Of(new(new(11, 1), new(1, 31), 10, 12), new(new(2, 1), new(4, 30), 12, 15)));
        var fault = Assert.Single(Of(new(new(2, 1), new(4, 30), 12, 15), new(new(11, 1), new(2, 1), 10, 12)));
        Assert.Equal(("OVERLAP", "heatingPeriods"), (fault.Code, fault.Field));
        Assert.Contains("periods 1 and 2 both hold 1 Feb", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_plans_that_ship_have_no_such_fault() =>
        Assert.All(Catalogue.BuiltIn.Entries.Where(e => e.Kind == CatalogueKind.HeatingPlan), p => Assert.Empty(Of([.. TestHouse.Model(TestHouse.Facts with { HeatingPlanCode = p.Code }).Periods])));

    [Fact]
    public void A_tank_that_gives_another_fuel_than_the_heater_burns_is_named()
    {
        FuelKind? Fuel(string id) => id switch { "oil" => FuelKind.FuelOil, "gas" => FuelKind.NaturalGas, _ => null };
        string[] Codes(HouseFacts house) => [.. SupplyChecks.Of(house, Fuel).Select(f => f.Code)];
        var house = TestHouse.Facts with { Heaters = [new("oilfurnace", FuelKind.FuelOil), new("power", FuelKind.NaturalGas)], Supplies = [new("oil", 0, 0.6), new("gas", 1, 0.4)] };
        Assert.Empty(Codes(house));
        var wrong = Assert.Single(SupplyChecks.Of(house with { Supplies = [new("gas", 0, 0.6), new("gas", 1, 0.4)] }, Fuel));
        Assert.Equal(("FUEL_MISMATCH", "supplies"), (wrong.Code, wrong.Field));
        Assert.Contains("Heater 1 burns FuelOil", wrong.Message, StringComparison.Ordinal);
        Assert.Equal(["NO_SUPPLY"], Codes(house with { Supplies = [new("else")] }));
        Assert.Equal(["DOUBLED"], Codes(house with { Supplies = [new("oil", 0, 0.5), new("oil", 0, 0.5)] }));
        Assert.Equal(["OUT_OF_RANGE", "OUT_OF_RANGE"], Codes(house with { Supplies = [new("oil", 0, 1.4), new("gas", 1, -0.4)] }));
        Assert.Equal(["FUEL_MISMATCH"], Codes(house with { Heaters = [], Supplies = [new("oil", 0, 0.5), new("gas", 0, 0.5)] }));
    }

    private static IReadOnlyList<Fault> Of(params HeatingPeriod[] periods) => HouseChecks.Of(TestHouse.Facts with { HeatingPeriods = periods }, Catalogue.BuiltIn, 2026);
}
