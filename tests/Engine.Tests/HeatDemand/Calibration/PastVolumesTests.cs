using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.HeatDemand.Calibration;
using FarmPortfolio.Engine.Units;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.Tests.HeatDemand.Calibration;

/// <summary>What tickets and bills make of a past season's months, by hand.</summary>
public class PastVolumesTests
{
    [Fact]
    public void Tickets_count_in_the_month_of_their_date_and_keep_their_tenths()
    {
        var past = Of(FuelKind.Propane, Ticket("2022-12-03", 412.3, 95_000), Ticket("2022-12-28", 198.45, 44_000), Ticket("2023-01-20", 398.7, null), Ticket("2023-07-02", 300, 60_000));
        Assert.Equal("gal", past.Unit);
        Assert.Equal([2023, 2022], past.Seasons.Select(s => s.Season));
        var winter = past.Seasons[1].Months;
        Assert.Equal((610.75m, 2, 139_000L), (winter[5].Units, winter[5].Deliveries, winter[5].PaidCents!.Value));
        Assert.Equal((398.7m, 1, null as long?), (winter[6].Units, winter[6].Deliveries, winter[6].PaidCents));
        Assert.Empty(past.Notes);
    }

    [Fact]
    public void A_bill_is_spread_over_its_days_and_its_months_add_up_to_it()
    {
        // 18 January to 16 February 2023: 14 and 16 of 30 days; 501.1 therm are 233.8 (233.847) and 267.3, $400.01 are $186.67 and $213.34
        var past = Of(FuelKind.NaturalGas, new FuelEntry(FuelEntryKind.Bill, new(2023, 1, 18), new(2023, 2, 16), 501.1, "therm", 0, 40_001, ReadKind.Actual));
        var months = Assert.Single(past.Seasons).Months;
        Assert.Equal((233.8m, 267.3m), (months[6].Units, months[7].Units));
        Assert.Equal((18_667L, 21_334L), (months[6].PaidCents!.Value, months[7].PaidCents!.Value));
        Assert.Equal(0, months.Sum(m => m.Deliveries));
        Assert.Contains("spread over its days", Assert.Single(past.Notes), StringComparison.Ordinal);
    }

    [Fact]
    public void A_long_total_is_spread_by_the_weather_or_said_to_be_rough()
    {
        var total = new FuelEntry(FuelEntryKind.Total, new(2012, 10, 1), new(2013, 4, 30), 3000, "gal", 0);
        var rough = Of(FuelKind.Propane, total);
        Assert.Contains("rough", Assert.Single(rough.Notes), StringComparison.Ordinal);
        Assert.Equal(3000m, rough.Seasons[0].Months.Sum(m => m.Units));
        var weighed = PastVolumes.Of(Group(FuelKind.Propane), new() { SupplyGroupId = "g", Entries = [total] }, MadeBills.Behind, MadeBills.Winters);
        Assert.Equal(3000m, weighed.Seasons[0].Months.Sum(m => m.Units));
        Assert.True(weighed.Seasons[0].Months[6].Units > 2 * weighed.Seasons[0].Months[9].Units, string.Join(" ", weighed.Seasons[0].Months.Select(m => m.Units)));
    }

    [Fact]
    public void A_held_line_and_a_replaced_bill_are_not_bought()
    {
        var past = Of(FuelKind.NaturalGas,
            new FuelEntry(FuelEntryKind.Bill, new(2023, 1, 1), new(2023, 1, 31), 500, "therm", 0, IssuedOn: new(2023, 2, 3)),
            new FuelEntry(FuelEntryKind.Bill, new(2023, 1, 1), new(2023, 1, 31), 450, "therm", 0, IssuedOn: new(2023, 3, 3)),
            new FuelEntry(FuelEntryKind.Bill, new(2023, 2, 1), new(2023, 2, 28), 400, "therm", 0, Held: "not ours"));
        Assert.Equal(450m, Assert.Single(past.Seasons).Months.Sum(m => m.Units));
    }

    private static FuelEntry Ticket(string on, double gallons, long? cents) =>
        new(FuelEntryKind.Delivery, DateOnly.Parse(on, System.Globalization.CultureInfo.InvariantCulture), DateOnly.Parse(on, System.Globalization.CultureInfo.InvariantCulture), gallons, "gal", 0, cents, ReadKind.Full);

    private static PastVolumes Of(FuelKind fuel, params FuelEntry[] entries) => PastVolumes.Of(Group(fuel), new() { SupplyGroupId = "g", Entries = entries }, [], new Dictionary<int, WeatherYear>());

    private static SupplyGroupFacts Group(FuelKind fuel) => new() { FarmId = "f", Fuel = fuel, Kind = fuel == FuelKind.Propane ? SupplyKind.Tank : SupplyKind.Meter, TankSizeL = 1000 * Us.GallonL };
}
