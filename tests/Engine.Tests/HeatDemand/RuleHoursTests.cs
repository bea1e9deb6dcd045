using FarmPortfolio.Engine.HeatDemand;

namespace FarmPortfolio.Engine.Tests.HeatDemand;

public class RuleHoursTests
{
    private static readonly double[] Evening = [.. Enumerable.Repeat(17.5, 12)];
    private static readonly double[] Morning = [.. Enumerable.Repeat(6.25, 12)];

    [Fact]
    public void A_time_switch_runs_over_midnight_in_parts_of_hours()
    {
        var clock = new ClockHours(Evening, Morning);
        Assert.Equal(0, clock.Share(0, 16));
        Assert.Equal(0.5, clock.Share(0, 17));
        Assert.Equal(1, clock.Share(0, 23));
        Assert.Equal(1, clock.Share(0, 5));
        Assert.Equal(0.25, clock.Share(0, 6));
        Assert.Equal(0, clock.Share(0, 7));
        Assert.Equal(12.75, Enumerable.Range(0, 24).Sum(h => clock.Share(3, h)), 1e-12);
    }

    [Fact]
    public void Dark_alone_is_the_time_without_sun()
    {
        var year = TestHouse.Winters[0];
        var rule = RuleHours.Of(new(), year);
        Assert.Equal(year.SunUp.Sum(u => 1 - u), rule.Due.Sum(), 1e-9);
        Assert.False(rule.ShadesSun);
    }

    [Fact]
    public void People_close_in_the_dark_and_inside_their_hours()
    {
        var year = TestHouse.Winters[0];
        var (dark, clock) = (RuleHours.Of(new(), year), RuleHours.Of(new(ClosingKind.Clock, Clock: new(Evening, Morning)), year));
        var staff = RuleHours.Of(new(ClosingKind.Staff, Clock: new(Evening, Morning)), year);
        for (var h = 0; h < year.Hours; h++)
        {
            Assert.Equal(Math.Min(dark.Due[h], clock.Due[h]), staff.Due[h], 1e-12);
        }

        Assert.True(clock.ShadesSun);
        Assert.False(staff.ShadesSun);
    }

    [Fact]
    public void A_delay_is_lost_once_a_night()
    {
        var year = TestHouse.Winters[0];
        var (dark, late) = (RuleHours.Of(new(), year), RuleHours.Of(new(DelayHours: 0.5), year));
        var nights = Enumerable.Range(1, year.Hours - 1).Count(h => dark.Due[h] > 0 && dark.Due[h - 1] <= 0);
        Assert.Equal(0.5 * nights, dark.Due.Sum() - late.Due.Sum(), 1e-9);
    }

    [Fact]
    public void A_photocell_closes_under_its_threshold()
    {
        var year = TestHouse.Winters[0];
        var rule = RuleHours.Of(new(BelowWPerM2: 50), year);
        for (var h = 0; h < year.Hours; h++)
        {
            Assert.Equal(year.RadiationWPerM2[h] < 50 ? 1 : 1 - year.SunUp[h], rule.Due[h], 1e-12);
        }
    }

    [Fact]
    public void Cold_keeps_it_in_place_by_day_while_the_sun_is_weak()
    {
        var rule = new OperationRule(2, -7, 300, 0.6);
        var hours = new RuleHours([1, 0, 0, 0], [0, 0, 0, 0]);
        Assert.Equal((1.0, 1.0), rule.At(hours, 1.9, 0, 0));
        Assert.Equal((0.0, 1.0), rule.At(hours, 2.1, 0, 0));
        Assert.Equal((0.0, 1.0), rule.At(hours, -6, 100, 1));
        Assert.Equal((1.0, 0.6), rule.At(hours, -8, 100, 2));
        Assert.Equal((0.0, 1.0), rule.At(hours, -8, 301, 3));
    }
}
