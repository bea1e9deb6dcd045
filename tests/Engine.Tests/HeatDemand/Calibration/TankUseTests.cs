using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.HeatDemand.Calibration;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Tests.HeatDemand.Calibration;

/// <summary>Rules of trade practice for delivery tickets, case by case, in gallons of a 1,000 gal propane tank.</summary>
public class TankUseTests
{
    private static readonly double Gallon = HeatingValues.KwhPerUnit(FuelKind.Propane, "gal")!.Value;
    private static readonly SupplyGroupFacts Tank = MadeBills.Tank;

    [Fact]
    public void Use_between_two_full_fills_is_what_came_after_the_first_up_to_and_including_the_second()
    {
        var use = Of(Full("2024-01-02", 300), Part("2024-01-20", 200), Full("2024-02-10", 350), Full("2024-03-15", 400));
        Assert.Equal([(new DateOnly(2024, 1, 3), new DateOnly(2024, 2, 10), 550.0), (new(2024, 2, 11), new(2024, 3, 15), 400.0)], Gallons(use));
        Assert.Equal([EntryUse.Opens, EntryUse.Used, EntryUse.Used, EntryUse.Used], use.Entries.Select(e => e.Use));
        Assert.All(use.Intervals, i => Assert.True(i.Metered && i.SdKwh == 0));
        Assert.Empty(use.Faults);
    }

    [Fact]
    public void A_gauge_tells_the_level_where_a_fill_was_not_full()
    {
        var use = Of(Part("2024-01-02", 300) with { GaugeBeforePct = 20, GaugeAfterPct = 50 }, Part("2024-02-10", 400) with { GaugeBeforePct = 15, GaugeAfterPct = 55 }, Full("2024-03-15", 500));
        // delivered 400 less 5 % of the tank gained; then delivered 500 less 25 % gained, a full propane tank holding 80 %
        Assert.Equal([350, 250], Gallons(use).Select(g => Math.Round(g.Gal, 6)));
        Near(0.02 * Math.Sqrt(2) * 1000, use.Intervals[0].SdKwh / Gallon, 1e-6);
    }

    [Fact]
    public void An_unknown_fill_is_full_on_automatic_delivery_or_from_half_the_usable_volume_and_adds_its_spread()
    {
        FuelEntry[] entries = [Unknown("2024-01-02", 450), Unknown("2024-02-10", 350), Unknown("2024-03-15", 450)];
        var (own, automatic) = (Of(entries), FuelUses.Of(Tank, new() { SupplyGroupId = "g", Entries = entries, AutomaticDelivery = true }));
        Assert.Equal([800], Gallons(own).Select(g => Math.Round(g.Gal, 6)));
        Assert.Equal([350, 450], Gallons(automatic).Select(g => Math.Round(g.Gal, 6)));
        Near(0.15 * Math.Sqrt(2) * 1000, own.Intervals[0].SdKwh / Gallon, 1e-6);
    }

    [Fact]
    public void A_total_far_from_any_price_is_asked_about_and_the_quantity_kept()
    {
        var use = Of(Full("2024-01-02", 300) with { TotalCents = 600_00 }, Full("2024-02-10", 350) with { TotalCents = 22_00 }, Full("2024-03-15", 400) with { TotalCents = 6000_00 });
        Assert.Equal([350, 400], Gallons(use).Select(g => g.Gal));
        Assert.Equal([("PRICE_FAR_OFF", 1), ("PRICE_FAR_OFF", 2)], use.Faults.Select(f => (f.Fault.Code, f.No)));
        Assert.Contains("$22.00 for 350 gal makes $0.063 a gal", use.Faults[0].Fault.Message, StringComparison.Ordinal);
        Assert.Empty(Of(Full("2024-01-02", 300), Full("2024-02-10", 350) with { TotalCents = 22_00, Confirmed = true }).Faults);
    }

    [Fact]
    public void Intervals_under_a_fortnight_are_merged()
    {
        var use = Of(Full("2024-01-02", 300), Full("2024-01-12", 200), Full("2024-01-25", 250), Full("2024-03-01", 500), Full("2024-03-08", 90));
        Assert.Equal([(new DateOnly(2024, 1, 3), new DateOnly(2024, 1, 25), 450.0), (new(2024, 1, 26), new(2024, 3, 8), 590.0)], Gallons(use));
    }

    [Fact]
    public void The_same_ticket_twice_is_held_and_stays_in_sight()
    {
        var use = Of(Full("2024-01-02", 300), Full("2024-02-10", 350), Full("2024-02-10", 350));
        Assert.Equal([350], Gallons(use).Select(g => g.Gal));
        Assert.Equal(EntryUse.Held, use.Entries[2].Use);
        Assert.Equal("DOUBLED", Assert.Single(use.Faults).Fault.Code);
        Assert.Equal([700], Gallons(Of(Full("2024-01-02", 300), Full("2024-02-10", 350), Full("2024-02-10", 350) with { Confirmed = true })).Select(g => g.Gal));
    }

    [Theory]
    [InlineData(40_000, "over 85 % of the 1,000 gal tank")]
    [InlineData(851, "over 85 % of the 1,000 gal tank")]
    public void More_than_a_tank_takes_is_asked_about_and_the_interval_waits(double gallons, string words)
    {
        var use = Of(Full("2024-01-02", 300), Full("2024-02-10", gallons), Full("2024-03-15", 400));
        var fault = Assert.Single(use.Faults);
        Assert.Equal(("TOO_MUCH", true, 2), (fault.Fault.Code, fault.Holds, fault.Fault.Line));
        Assert.Contains(words, fault.Fault.Message, StringComparison.Ordinal);
        Assert.Empty(use.Intervals);
        Assert.Equal(EntryUse.Waiting, use.Entries[2].Use);
        Assert.Contains("line 2", use.Entries[2].Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Forty_thousand_gallons_are_asked_about_where_the_tank_is_not_known()
    {
        var use = FuelUses.Of(Tank with { TankSizeL = null }, new() { SupplyGroupId = "g", Entries = [Full("2024-01-02", 300), Full("2024-02-10", 40_000)] });
        Assert.Equal("TOO_MUCH", Assert.Single(use.Faults).Fault.Code);
    }

    [Fact]
    public void A_credit_note_nets_its_ticket_within_sixty_days_and_is_asked_about_otherwise()
    {
        var met = Of(Full("2024-01-02", 300), Full("2024-02-10", 350), Part("2024-02-20", -350), Full("2024-03-15", 420));
        Assert.Equal([420], Gallons(met).Select(g => g.Gal));
        Assert.Equal([EntryUse.Replaced, EntryUse.Replaced], [met.Entries[1].Use, met.Entries[2].Use]);
        var late = Of(Full("2024-01-02", 300), Full("2024-02-10", 350), Part("2024-04-20", -350), Full("2024-05-15", 420));
        Assert.Equal("CREDIT", Assert.Single(late.Faults).Fault.Code);
        Assert.Equal([350], Gallons(late).Select(g => g.Gal));
    }

    [Fact]
    public void Money_that_does_not_add_up_is_asked_about_and_the_quantity_kept()
    {
        var use = Of(Full("2024-01-02", 300), Full("2024-02-10", 350) with { PriceUsdPerUnit = 2.00, FeesCents = 1000, TotalCents = 73_000 });
        Assert.Equal(("TOTAL_DIFFERS", false), (Assert.Single(use.Faults).Fault.Code, use.Faults[0].Holds));
        Assert.Equal([350], Gallons(use).Select(g => g.Gal));
        Assert.Empty(Of(Full("2024-01-02", 300), Full("2024-02-10", 350) with { PriceUsdPerUnit = 2.00, FeesCents = 1000, TotalCents = 71_000 }).Faults);
    }

    [Fact]
    public void Only_dollars_become_gallons_by_the_price_with_a_tenth_of_spread()
    {
        var use = Of(Full("2024-01-02", 300), Full("2024-02-10", 0) with { OnlyDollars = true, PriceUsdPerUnit = 2.00, TotalCents = 70_000 });
        Assert.Equal([350], Gallons(use).Select(g => g.Gal));
        Near(35, use.Intervals[0].SdKwh / Gallon, 1e-9);
        Assert.Equal("NO_QUANTITY", Assert.Single(Of(Full("2024-01-02", 300), Full("2024-02-10", 0) with { OnlyDollars = true, TotalCents = 70_000 }).Faults).Fault.Code);
    }

    [Fact]
    public void Pounds_of_propane_are_gallons_by_4_24()
    {
        var use = Of(Full("2024-01-02", 300), Full("2024-02-10", 424) with { Unit = "lb" });
        Near(100, Gallons(use).Single().Gal, 1e-9);
        Assert.Equal("UNKNOWN_UNIT", Assert.Single(Of(Full("2024-01-02", 300) with { Unit = "therm" }).Faults).Fault.Code);
    }

    [Fact]
    public void Tickets_without_a_known_level_give_a_season_total_where_they_cover_the_season()
    {
        var bills = MadeBills.Tickets(1.1, 0, ReadKind.Part);
        var kept = bills.Entries.Where(e => e.ToOn < new DateOnly(2012, 5, 20)).ToList();
        var rest = 1.1 * MadeBills.Modelled(kept[^1].ToOn.AddDays(1), new(2012, 5, 20)) / Gallon;
        var season = bills with { Entries = [.. kept, Part("2012-05-20", rest)] };
        var fit = Calibrations.Of(Tank, season, MadeBills.Behind, MadeBills.Winters);
        var interval = Assert.Single(fit.Intervals);
        Assert.False(interval.Use.Metered);
        Assert.True(interval.Use.SdKwh > 0);
        Assert.Equal(DataGrade.B, fit.Grade);
        Near(1.1, fit.Multiplier!.Value, 1e-6);
        var half = season with { Entries = [.. season.Entries.Where(e => e.ToOn < new DateOnly(2012, 2, 1))] };
        Assert.Empty(Calibrations.Of(Tank, half, MadeBills.Behind, MadeBills.Winters).Intervals);
    }

    private static FuelEntry Full(string on, double quantity) => Ticket(on, quantity, ReadKind.Full);

    private static FuelEntry Part(string on, double quantity) => Ticket(on, quantity, ReadKind.Part);

    private static FuelEntry Unknown(string on, double quantity) => Ticket(on, quantity, ReadKind.Unknown);

    private static FuelEntry Ticket(string on, double quantity, ReadKind read)
    {
        var day = DateOnly.ParseExact(on, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
        return new(FuelEntryKind.Delivery, day, day, quantity, "gal", 0, null, read);
    }

    private static FuelUse Of(params FuelEntry[] entries) => FuelUses.Of(Tank, new() { SupplyGroupId = "g", Entries = entries });

    private static List<(DateOnly From, DateOnly To, double Gal)> Gallons(FuelUse use) => [.. use.Intervals.Select(i => (i.FromOn, i.ToOn, Math.Round(i.KwhFuel / Gallon, 9)))];

    private static void Near(double expected, double actual, double tolerance) => Assert.True(Math.Abs(expected - actual) <= tolerance, $"{actual}, not {expected} within {tolerance}");
}
