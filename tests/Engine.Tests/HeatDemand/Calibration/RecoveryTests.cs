using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.HeatDemand.Calibration;

namespace FarmPortfolio.Engine.Tests.HeatDemand.Calibration;

/// <summary>Bills made with a known truth give the truth back, and 90 per cent intervals hold it in 90 of 100 cases: 200 replications, within 4 points.</summary>
public class RecoveryTests
{
    private const int Replications = 200;

    [Theory]
    [InlineData(24, 1.25, 60, 40, 0)]
    [InlineData(24, 0.80, 60, 0, 0.10)]
    [InlineData(12, 1.00, 120, 60, 0)]
    [InlineData(24, 1.25, 60, 0, 0.05)]
    [InlineData(10, 1.10, 60, 40, 0)]
    public void Intervals_hold_the_truth_at_their_stated_rate(int months, double multiplier, double basePerDay, double rootDays, double share)
    {
        var (slopeIn, baseIn, baseTold, sum) = (0, 0, 0, 0.0);
        for (var r = 0; r < Replications; r++)
        {
            var fit = Calibrations.Of(MadeBills.Meter, MadeBills.Bills(months, multiplier, basePerDay, MadeBills.Noise(r), rootDays, share), MadeBills.Behind, MadeBills.Winters);
            var m = fit.Multiplier!;
            slopeIn += m.Low <= multiplier && multiplier <= m.High ? 1 : 0;
            sum += m.Value / Replications;
            if (fit is { BaseIsFitted: true, BaseKwhPerDay: { } b })
            {
                baseTold++;
                baseIn += b.Low <= basePerDay && basePerDay <= b.High ? 1 : 0;
            }
        }

        var said = $"{months} bills, truth {multiplier} and {basePerDay} kWh a day, noise {rootDays} kWh a root day and {100 * share} %: mean {sum}, multiplier held in {slopeIn}, base in {baseIn} of {baseTold}";
        Assert.True(Math.Abs(sum - multiplier) < 0.01 * multiplier, said);
        Assert.True(Math.Abs(slopeIn / 2.0 - 90) <= 4, said);
        if (basePerDay > 0)
        {
            Assert.True(baseTold == Replications && Math.Abs(baseIn / 2.0 - 90) <= 4, said);
        }

        TestContext.Current.SendDiagnosticMessage(said);
    }

    [Theory]
    [InlineData(1.3, 0)]
    [InlineData(0.7, 40)]
    public void Tickets_between_full_fills_give_the_truth_back_exactly(double multiplier, double basePerDay)
    {
        var fit = Calibrations.Of(MadeBills.Tank, MadeBills.Tickets(multiplier, basePerDay), MadeBills.Behind, MadeBills.Winters);
        Near(multiplier, fit.Multiplier!.Value, 1e-6, "multiplier");
        Near(basePerDay, fit.BaseKwhPerDay!.Value, 1e-3, "base");
        Assert.Equal(DataGrade.A, fit.Grade);
        Assert.Equal(Calibrations.LeastSd, fit.Sd);
    }

    [Fact]
    public void A_few_bills_tell_the_multiplier_with_the_base_that_was_told()
    {
        var bills = MadeBills.Bills(24, 1.2, 60, _ => 0);
        var four = bills with { Entries = [.. bills.Entries.Skip(5).Take(4)] };
        var fit = Calibrations.Of(MadeBills.Meter with { BaseUseKwhPerDay = 60 }, four, MadeBills.Behind, MadeBills.Winters);
        Near(1.2, fit.Multiplier!.Value, 1e-9, "multiplier");
        Assert.False(fit.BaseIsFitted);
        Assert.Equal(DataGrade.B, fit.Grade);
        Assert.Contains(fit.Raise, r => r.StartsWith("5 intervals", StringComparison.Ordinal));
    }

    [Fact]
    public void A_multiplier_out_of_bounds_is_asked_about_and_changes_nothing()
    {
        var fit = Calibrations.Of(MadeBills.Meter, MadeBills.Bills(24, 2.1, 0, _ => 0), MadeBills.Behind, MadeBills.Winters);
        Near(2.1, fit.Multiplier!.Value, 1e-6, "multiplier");
        Assert.False(fit.Believed);
        Assert.Equal(DataGrade.B, fit.Grade);
        Assert.Contains("not believed", fit.Verdict, StringComparison.Ordinal);
        Assert.Equal("other uses on the tank or meter", fit.Checks[0]);
        Assert.Equal(new LossFit(1, 0.15, 0.10, DataGrade.B, "g"), Calibrations.House(fit, "g", 3));
    }

    [Theory]
    [InlineData(1.0, "these bills agree with the house as described")]
    [InlineData(1.3, "the house burns 30 % more than described")]
    [InlineData(0.75, "the house burns 25 % less than described")]
    public void The_verdict_is_a_sentence(double multiplier, string verdict)
    {
        var fit = Calibrations.Of(MadeBills.Meter, MadeBills.Bills(24, multiplier, 0, MadeBills.Noise(1), 5), MadeBills.Behind, MadeBills.Winters);
        Assert.Equal(verdict, fit.Verdict);
        var check = fit.Check!;
        Near(multiplier, check.BilledKwh / check.ReckonedKwh, 0.02, "back-check");
        Assert.True(check.SeasonShare > 0.95, $"{check.SeasonShare} of the season");
    }

    [Fact]
    public void Leaks_and_films_are_kept_apart()
    {
        var fit = Calibrations.Of(MadeBills.Meter, MadeBills.Bills(24, 1.2, 0, _ => 0), MadeBills.Behind, MadeBills.Winters);
        var reasons = LeaksAndFilms.Of(MadeBills.Behind, MadeBills.Winters, fit)!;
        Assert.True(reasons.AirChangesFactor is > 1.5 and < 5, $"air changes x {reasons.AirChangesFactor}");
        Assert.True(reasons.FilmFactor is > 1.1 and < 1.35, $"films x {reasons.FilmFactor}");
        var leaky = MadeBills.House with { AirChangesPerHour = MadeBills.House.AirChangesPerHour * reasons.AirChangesFactor!.Value };
        var again = Calibrations.Of(MadeBills.Meter, MadeBills.Bills(24, 1.2, 0, _ => 0), [new("h", leaky)], MadeBills.Winters);
        Near(1, again.Multiplier!.Value, 0.02, "multiplier of the leaky house");
    }

    [Fact]
    public void A_year_of_bills_weighs_more_than_its_own_spread_where_houses_share_a_meter()
    {
        var fit = Calibrations.Of(MadeBills.Meter, MadeBills.Bills(24, 1.2, 30, MadeBills.Noise(3), 20), [new("a", MadeBills.House, 0, 0.5), new("b", MadeBills.House, 0, 0.5)], MadeBills.Winters);
        var (alone, shared) = (Calibrations.House(fit, "g", 1), Calibrations.House(fit, "g", 2));
        Near(fit.Sd, alone.Sd, 1e-12, "one house");
        Near(Math.Sqrt(fit.Sd * fit.Sd + 0.01), shared.Sd, 1e-12, "two houses");
        Near(1.2, shared.Mean, 0.02, "mean");
    }

    [Fact]
    public void No_record_is_grade_C_and_says_what_would_help()
    {
        var fit = Calibrations.Of(MadeBills.Meter, null, MadeBills.Behind, MadeBills.Winters);
        Assert.Equal(DataGrade.C, fit.Grade);
        Assert.Equal(0.30, fit.Sd);
        Assert.NotEmpty(fit.Raise);
        var late = Calibrations.Of(MadeBills.Meter, new() { SupplyGroupId = "g", Entries = [new(FuelEntryKind.Bill, new(2024, 1, 3), new(2024, 2, 2), 100, "therm", 0)] }, MadeBills.Behind, MadeBills.Winters);
        Assert.Equal("the station's record does not reach the days billed", late.Verdict);
        Assert.Equal(1, late.WithoutWeather);
    }

    private static void Near(double expected, double actual, double tolerance, string what) => Assert.True(Math.Abs(expected - actual) <= tolerance, $"{what}: {actual}, not {expected} within {tolerance}");
}
