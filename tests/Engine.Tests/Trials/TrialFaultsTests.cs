using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Trials;

namespace FarmPortfolio.Engine.Tests.Trials;

public class TrialFaultsTests
{
    private static readonly SimulatedTrial Trial = new();

    private static TrialReport Report(IEnumerable<TrialReading> readings, TrialFacts? facts = null) => TrialAnalysis.Of(facts ?? Trial.Facts, [.. readings], Trial.Years, Catalogue.BuiltIn, new());

    [Fact]
    public void A_control_that_used_no_fuel_is_named()
    {
        var fault = Assert.Single(Report(Trial.Readings(0).Select(r => r.House == 0 ? r with { Value = 100 } : r)).Faults);
        Assert.Equal(("NO_FUEL", "control"), (fault.Code, fault.Field));
        Assert.Contains("used no fuel", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Time_that_runs_backwards_is_named()
    {
        var readings = Trial.Readings(0);
        (readings[20], readings[24]) = (readings[24], readings[20]);
        Assert.Contains(Report(readings).Faults, f => f.Code == "TIME_BACKWARDS" && f.Message.Contains("House A", StringComparison.Ordinal));
    }

    [Fact]
    public void A_reading_that_falls_starts_a_segment_and_is_said()
    {
        var readings = Trial.Readings(0).Select(r => r.House == 1 && r.At.Month is 1 or 2 or 3 ? r with { Value = r.Value - 880 } : r).ToList();
        var c = Assert.Single(Report(readings).Comparisons);
        Assert.Contains(c.Words, w => w.Contains("reads less than before", StringComparison.Ordinal));
        Assert.Equal(1, c.Pairs.Count(p => p.LeftOut is not null));
        Assert.Equal(Assert.Single(Trial.Report(0).Comparisons).Saving.Value, c.Saving.Value, 0.01);
    }

    [Fact]
    public void Missed_days_make_longer_intervals_and_lose_no_heat()
    {
        var readings = Trial.Readings(0);
        var missing = readings.Where(r => !(r.House == 1 && r.At.Day is 9 or 10)).ToList();
        var (all, some) = (Assert.Single(Report(readings).Comparisons), Assert.Single(Report(missing).Comparisons));
        Assert.Equal(all.Pairs.Sum(p => p.TreatedKwh), some.Pairs.Sum(p => p.TreatedKwh), 6);
        Assert.Contains(some.Words, w => w.Contains("missed day", StringComparison.Ordinal));
    }

    [Fact]
    public void Broken_nights_stay_in()
    {
        var readings = Trial.Readings(0).Select(r => r.House == 1 && r.At.Month == 1 && r.State == RetrofitState.InUse ? r with { State = RetrofitState.Broken } : r).ToList();
        var c = Assert.Single(Report(readings).Comparisons);
        Assert.True(c.NightsBroken > 10);
        Assert.Equal(Assert.Single(Trial.Report(0).Comparisons).Saving.Value, c.Saving.Value, 12);
        Assert.Contains(c.Words, w => w.Contains("stay in", StringComparison.Ordinal));
    }

    [Fact]
    public void Nights_set_aside_need_a_reason_and_show_it()
    {
        TrialFacts With(string reason) => Trial.Facts with { Exclusions = [new("B", new(2012, 12, 24), new(2012, 12, 26), reason)] };
        Assert.Contains(Report(Trial.Readings(0), With(" ")).Faults, f => f.Code == "REASON_NEEDED");
        var c = Assert.Single(Report(Trial.Readings(0), With("door left open for a delivery")).Comparisons);
        Assert.Contains(c.Words, w => w.Contains("door left open", StringComparison.Ordinal));
        Assert.Equal(3, c.Pairs.Count(p => p.LeftOut is not null));
    }

    [Fact]
    public void Inside_and_outside_swapped_is_named() =>
        Assert.Contains(Report(Trial.Readings(0).Select(r => r with { InsideC = r.OutsideC, OutsideC = r.InsideC })).Faults, f => f.Code == "INSIDE_COLDER");

    [Fact]
    public void A_trial_without_control_or_of_a_week_is_refused()
    {
        Assert.Contains(Report([], Trial.Facts with { Houses = [Trial.Facts.Houses[1]] }).Faults, f => f.Code == "NO_CONTROL");
        Assert.Contains(Report(Trial.Readings(0).Take(16)).Faults, f => f.Code == "TOO_SHORT");
    }

    [Fact]
    public void A_nameplate_rate_widens_the_answer_only_where_no_idle_night_cancels_it()
    {
        var hours = Trial.Facts with { Houses = [.. Trial.Facts.Houses.Select(h => h with { Measure = TrialMeasure.BurnerHours, RateClocked = false })] };
        Assert.Equal(Trial.Report(0).Comparisons[0].Saving.Sd, Report(Trial.Readings(0), hours).Comparisons[0].Saving.Sd, 12);
        var noIdle = new SimulatedTrial { IdleNights = false };
        Assert.True(Report(noIdle.Readings(0), hours).Comparisons[0].Saving.Sd > 1.2 * noIdle.Report(0).Comparisons[0].Saving.Sd);
    }

    [Fact]
    public void Readings_laid_out_as_numbers_come_back()
    {
        var readings = Trial.Readings(0);
        readings[3] = readings[3] with { Value = double.NaN, NewSegment = true };
        Assert.Equal(readings, TrialReadings.Unpack(TrialReadings.Pack(readings)));
    }
}
