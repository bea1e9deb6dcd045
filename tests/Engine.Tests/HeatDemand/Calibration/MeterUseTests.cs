using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.HeatDemand.Calibration;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Tests.HeatDemand.Calibration;

/// <summary>Rules of trade practice for utility bills, case by case, in therms.</summary>
public class MeterUseTests
{
    private static readonly double Therm = HeatingValues.KwhPerUnit(FuelKind.NaturalGas, "therm")!.Value;

    [Fact]
    public void A_bill_is_an_interval_of_its_own_days()
    {
        var use = Of(Bill("2024-01-18", "2024-02-16", 500), Bill("2024-02-17", "2024-03-18", 400));
        Assert.Equal([(new DateOnly(2024, 1, 18), new DateOnly(2024, 2, 16), 500.0), (new(2024, 2, 17), new(2024, 3, 18), 400.0)], Therms(use));
        Assert.Equal([30, 31], use.Intervals.Select(i => i.Days));
    }

    [Fact]
    public void Estimated_reads_wait_for_the_actual_one_and_are_merged_with_it()
    {
        var use = Of(Bill("2024-01-01", "2024-01-31", 500, ReadKind.Estimated), Bill("2024-02-01", "2024-02-29", 450, ReadKind.Estimated), Bill("2024-03-01", "2024-03-31", 250), Bill("2024-04-01", "2024-04-30", 90, ReadKind.Estimated));
        Assert.Equal([(new DateOnly(2024, 1, 1), new DateOnly(2024, 3, 31), 1200.0)], Therms(use));
        Assert.Equal(EntryUse.Waiting, use.Entries[3].Use);
        Assert.Contains("2 estimated", use.Intervals[0].Note, StringComparison.Ordinal);
    }

    [Fact]
    public void A_small_gap_is_taken_in_a_larger_one_breaks_and_a_day_billed_twice_is_mended()
    {
        var use = Of(Bill("2024-01-01", "2024-01-31", 500), Bill("2024-01-31", "2024-02-28", 450), Bill("2024-03-03", "2024-03-31", 250), Bill("2024-04-06", "2024-05-02", 90));
        Assert.Equal([new(2024, 1, 1), new(2024, 2, 1), new(2024, 2, 29), new DateOnly(2024, 4, 6)], use.Intervals.Select(i => i.FromOn));
        Assert.Empty(use.Faults);
        var broken = Of(Bill("2024-01-01", "2024-01-31", 500, ReadKind.Estimated), Bill("2024-02-06", "2024-02-28", 450));
        Assert.Equal(EntryUse.Waiting, broken.Entries[0].Use);
        Assert.Equal([450], Therms(broken).Select(t => t.Therms));
    }

    [Fact]
    public void Bills_that_overlap_are_both_held_until_one_is_right()
    {
        var use = Of(Bill("2024-01-01", "2024-01-31", 500), Bill("2024-01-25", "2024-02-28", 450), Bill("2024-03-01", "2024-03-31", 250));
        Assert.Equal([250], Therms(use).Select(t => t.Therms));
        Assert.Equal([EntryUse.Held, EntryUse.Held, EntryUse.Used], use.Entries.Select(e => e.Use));
        Assert.All(use.Faults, f => Assert.Equal("OVERLAP", f.Fault.Code));
        Assert.Contains("7 days", use.Faults[0].Fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_newer_bill_for_the_same_days_wins_and_the_old_one_stays_in_sight()
    {
        var use = Of(Bill("2024-01-01", "2024-01-31", 480) with { IssuedOn = new(2024, 4, 2) }, Bill("2024-01-01", "2024-01-31", 500) with { IssuedOn = new(2024, 2, 2) });
        Assert.Equal([480], Therms(use).Select(t => t.Therms));
        Assert.Equal((EntryUse.Replaced, "Line 1 is a newer bill for the same days."), (use.Entries[1].Use, use.Entries[1].Why));
        var covered = Of(Bill("2024-01-01", "2024-01-31", 500, ReadKind.Estimated), Bill("2024-02-01", "2024-02-29", 450, ReadKind.Estimated), Bill("2024-01-01", "2024-02-29", 800));
        Assert.Equal([800], Therms(covered).Select(t => t.Therms));
        Assert.Equal([EntryUse.Replaced, EntryUse.Replaced, EntryUse.Used], covered.Entries.Select(e => e.Use));
    }

    [Fact]
    public void A_bill_that_runs_backwards_is_asked_about()
    {
        var use = Of(Bill("2024-02-01", "2024-01-02", 500));
        Assert.Equal(("BACKWARDS", "toOn", 1), (use.Faults[0].Fault.Code, use.Faults[0].Fault.Field, use.Faults[0].Fault.Line));
        Assert.Empty(use.Intervals);
    }

    [Fact]
    public void A_long_period_stays_one_interval()
    {
        var use = Of(Bill("2024-01-01", "2024-03-31", 1200));
        Assert.Equal("91 days on one bill", use.Intervals.Single().Note);
    }

    [Fact]
    public void A_bill_in_Ccf_takes_its_own_therm_factor_and_the_published_one_where_it_tells_none()
    {
        var own = Of(Bill("2024-01-01", "2024-01-31", 100) with { Unit = "ccf", ThermsPerCcf = 1.041 });
        Assert.Equal([104.1], Therms(own).Select(t => t.Therms));
        Assert.Empty(own.Notes);
        var published = Of(Bill("2024-01-01", "2024-01-31", 100) with { Unit = "ccf" });
        Assert.Equal([102.6], Therms(published).Select(t => t.Therms));
        Assert.Contains("1.026", Assert.Single(published.Notes), StringComparison.Ordinal);
    }

    private static FuelEntry Bill(string from, string to, double quantity, ReadKind read = ReadKind.Actual) => new(FuelEntryKind.Bill, Day(from), Day(to), quantity, "therm", 0, null, read);

    private static DateOnly Day(string day) => DateOnly.ParseExact(day, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);

    private static FuelUse Of(params FuelEntry[] entries) => FuelUses.Of(MadeBills.Meter, new() { SupplyGroupId = "g", Entries = entries });

    private static List<(DateOnly From, DateOnly To, double Therms)> Therms(FuelUse use) => [.. use.Intervals.Select(i => (i.FromOn, i.ToOn, Math.Round(i.KwhFuel / Therm, 6)))];
}
