using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.HeatDemand.Calibration;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.Tests.HeatDemand.Calibration;

/// <summary>Records that tell a season's total only: the total is met whole by what the houses need on its days, never spread evenly over them.</summary>
public class SeasonTotalsTests
{
    private static readonly HouseModel Spring = TestHouse.Model(TestHouse.Facts with { HeatingPlanCode = null, HeatingPeriods = [new(new(2, 15), new(5, 31), 15, 18)] });

    [Theory]
    [InlineData(2012, 7, 1, 2013, 6, 30)]
    [InlineData(2012, 10, 1, 2013, 5, 31)]
    [InlineData(2012, 1, 1, 2012, 12, 31)]
    [InlineData(2013, 2, 15, 2013, 5, 31)]
    public void An_exact_total_gives_the_true_loss_whatever_its_days(int y1, int m1, int d1, int y2, int m2, int d2)
    {
        var (from, to) = (new DateOnly(y1, m1, d1), new DateOnly(y2, m2, d2));
        foreach (var (house, multiplier, basePerDay) in new[] { (MadeBills.House, 1.25, 60.0), (Spring, 0.80, 60.0), (Spring, 1.40, 0.0) })
        {
            var fit = Fit(house, basePerDay, Total(house, from, to, multiplier, basePerDay));
            var said = $"{from:yyyy-MM-dd} to {to:yyyy-MM-dd}, truth {multiplier}";
            Near(multiplier, fit.Multiplier!.Value, 1e-9, said);
            Assert.Equal((DataGrade.B, 0.15), (fit.Grade, fit.Sd));
            Near(multiplier, (fit.Check!.BilledKwh - basePerDay * fit.Intervals[0].Use.Days) / (fit.Check.ReckonedKwh - basePerDay * fit.Intervals[0].Use.Days), 1e-9, said + ", back-check");
        }
    }

    [Fact]
    public void A_total_of_a_year_scatters_by_its_heated_days()
    {
        var whole = Fit(Spring, 0, Total(Spring, new(2012, 7, 1), new(2013, 6, 30), 1.1, 0));
        var part = Fit(Spring, 0, Total(Spring, new(2013, 2, 15), new(2013, 5, 31), 1.1, 0));
        Assert.Equal(365, whole.Intervals[0].Use.Days);
        Assert.Equal(part.Intervals[0].ScatterDays, whole.Intervals[0].ScatterDays);
        Assert.InRange(whole.Intervals[0].ScatterDays, 60, 106);
    }

    [Fact]
    public void Bills_beside_totals_count_alike_whether_a_total_names_the_season_or_the_year()
    {
        // a winter's bills at 1.3, two totals at 1.1: months without heating, written into the totals, hardly move the fit
        var bills = Enumerable.Range(2, 4).Select(m => Bill(Spring, new(2012, m, 1), new DateOnly(2012, m, 1).AddMonths(1).AddDays(-1), 1.3)).ToArray();
        var years = Fit(Spring, 0, [.. bills, Total(Spring, new(2012, 7, 1), new(2013, 6, 30), 1.1, 0), Total(Spring, new(2013, 7, 1), new(2014, 6, 30), 1.1, 0)]);
        var seasons = Fit(Spring, 0, [.. bills, Total(Spring, new(2013, 2, 15), new(2013, 5, 31), 1.1, 0), Total(Spring, new(2014, 2, 15), new(2014, 5, 31), 1.1, 0)]);
        Assert.Equal(6, years.Intervals.Count);
        Assert.False(years.BaseIsFitted && years.BaseKwhPerDay!.Value > 1, $"base {years.BaseKwhPerDay}");
        Near(seasons.Multiplier!.Value, years.Multiplier!.Value, 0.01, "multiplier");
        Assert.InRange(years.Multiplier.Value, 1.1, 1.3);
    }

    [Fact]
    public void A_total_over_days_that_bills_tell_is_held_and_the_bills_count()
    {
        var bills = MadeBills.Bills(24, 1.2, 0, _ => 0);
        var total = new FuelEntry(FuelEntryKind.Total, new(2011, 7, 1), new(2012, 6, 30), 1, "kWh", 1);
        var fit = Calibrations.Of(MadeBills.Meter, bills with { Entries = [total, .. bills.Entries] }, MadeBills.Behind, MadeBills.Winters);
        Near(1.2, fit.Multiplier!.Value, 1e-6, "multiplier");
        Assert.Equal(24, fit.Intervals.Count);
        var fault = Assert.Single(fit.Use.Faults);
        Assert.Equal(("OVERLAP", 0, true), (fault.Fault.Code, fault.No, fault.Holds));
        Assert.Contains("lines 2, 3", fault.Fault.Message, StringComparison.Ordinal);
    }

    private static GroupFit Fit(HouseModel house, double basePerDay, params FuelEntry[] entries) =>
        Calibrations.Of(MadeBills.Meter with { BaseUseKwhPerDay = basePerDay }, new() { SupplyGroupId = "g", Entries = entries }, [new("h", house)], MadeBills.Winters);

    private static FuelEntry Total(HouseModel house, DateOnly from, DateOnly to, double multiplier, double basePerDay) => Entry(FuelEntryKind.Total, house, from, to, multiplier, basePerDay);

    private static FuelEntry Bill(HouseModel house, DateOnly from, DateOnly to, double multiplier) => Entry(FuelEntryKind.Bill, house, from, to, multiplier, 0);

    private static FuelEntry Entry(FuelEntryKind kind, HouseModel house, DateOnly from, DateOnly to, double multiplier, double basePerDay)
    {
        var kwh = multiplier * Enumerable.Range(0, to.DayNumber - from.DayNumber + 1).Select(from.AddDays).Sum(d => Needed(house, d)) + basePerDay * (to.DayNumber - from.DayNumber + 1);
        return new(kind, from, to, kwh, "kWh", kwh, null, kind == FuelEntryKind.Bill ? ReadKind.Actual : ReadKind.Unknown);
    }

    private static readonly Dictionary<(HouseModel House, int Season), double[]> Days = [];

    private static double Needed(HouseModel house, DateOnly day)
    {
        var season = SeasonCalendar.SeasonOf(day);
        if (!Days.TryGetValue((house, season), out var days))
        {
            Days[(house, season)] = days = DailyHeat.Of(OptionModels.AsItStands(house), MadeBills.Winters[season]);
        }

        return days[SeasonCalendar.DayIndex(day)] / house.Heaters[0].Efficiency;
    }

    private static void Near(double expected, double actual, double tolerance, string what) => Assert.True(Math.Abs(expected - actual) <= tolerance, $"{what}: {actual}, not {expected} within {tolerance}");
}
