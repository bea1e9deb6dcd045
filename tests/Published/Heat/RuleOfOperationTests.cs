using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Published.Heat;

/// <summary>
/// What a rule of operation does to foam's saving by the outside temperature. Expected: an independent script with the same inputs, its days shaped by a cosine, which is
/// 1 to 2 F warmer by night: rows on temperature thresholds are met on that shape (2 points, hours 6 %), the others on the engine's own shape too.
/// </summary>
public class RuleOfOperationTests
{
    /// <summary>Daily means from, to, F; saving with foam in the dark alone, north November to April.</summary>
    public static TheoryData<double, double, double> InTheDark => new() { { 45, 60, 42 }, { 25, 35, 36 }, { -100, 5, 34 } };

    /// <summary>The same where foam is used in the dark below 35 F, and kept below 20 F while the sun gives under 300 W/m2 (two fifths of the light lost).</summary>
    public static TheoryData<double, double, double> KeptByCold => new() { { 35, 45, 19 }, { 25, 35, 33 }, { 15, 25, 42 }, { -100, 15, 50 } };

    /// <summary>T_on in F; saving and hours north November to April; saving and hours New York February to May.</summary>
    public static TheoryData<double, double, double, double, double> OnBelow => new() { { 45, 35, 2380, 31, 679 }, { 40, 34, 2168, 25, 474 }, { 35, 30, 1838, 17, 296 } };

    [Theory, MemberData(nameof(InTheDark))]
    public void Colder_outside_lowers_the_share_of_foam_used_in_the_dark(double fromF, double toF, double expected) =>
        Expect.Near(expected, SavingOnDays(new(), new SemicircleHouse().With("foam"), fromF, toF), 2, $"days of {fromF} to {toF} F");

    [Theory, MemberData(nameof(KeptByCold))]
    public void A_rule_kept_by_cold_turns_that_round(double fromF, double toF, double expected)
    {
        var standing = new SemicircleHouse { Cosine = true };
        Expect.Near(expected, SavingOnDays(standing, Kept(standing), fromF, toF), 2, $"days of {fromF} to {toF} F");
    }

    [Fact]
    public void A_rule_kept_by_cold_over_the_season()
    {
        Expect.Near(35, Kept(new()).SavingPct(), 1.5, "north, November to April");
        Expect.Near(31, Kept(new() { Plan = "spring" }).SavingPct(), 1.5, "north, February to May");
    }

    [Theory, MemberData(nameof(OnBelow))]
    public void Used_only_below_a_temperature(double onF, double north, double northHours, double nyc, double nycHours)
    {
        var rule = ("foam.onBelowC", Us.C(onF));
        var cold = (new SemicircleHouse { Cosine = true }).With("foam", rule);
        Expect.Near(north, cold.SavingPct(), 2, $"north below {onF} F");
        Expect.Near(northHours, cold.Seasons().Average(s => s.HoursInPlace.Sum()), 0.06 * northHours, $"hours north below {onF} F");
        var mild = cold with { Place = "nyc", Plan = "spring" };
        Expect.Near(nyc, mild.SavingPct(), 2, $"New York below {onF} F");
        Expect.Near(nycHours, mild.Seasons().Average(s => s.HoursInPlace.Sum()), 0.06 * nycHours, $"hours New York below {onF} F");
    }

    [Theory]
    [InlineData("north", "winter-long", 35)]
    [InlineData("north", "spring", 34)]
    [InlineData("nyc", "winter-long", 33)]
    public void Below_45_F_and_half_an_hour_late(string place, string plan, double expected) =>
        Expect.Near(expected, (new SemicircleHouse { Place = place, Plan = plan }).With("foam", ("foam.onBelowC", Us.C(45)), ("foam.delayHours", 0.5)).SavingPct(), 1, $"{place} {plan}");

    private static SemicircleHouse Kept(SemicircleHouse house) =>
        house.With("foam", ("foam.onBelowC", Us.C(35)), ("foam.keepBelowC", Us.C(20)), ("foam.keepSunBelowWPerM2", 300), ("foam.sunThrough", 0.6));

    /// <summary>Saving on the days of the record whose mean lies in a range, per cent.</summary>
    private static double SavingOnDays(SemicircleHouse standing, SemicircleHouse improved, double fromF, double toF)
    {
        var (before, after) = (standing.Option(), improved.Option());
        var (a, b) = (0.0, 0.0);
        foreach (var year in standing.Years)
        {
            var season = SeasonHours.Of(year);
            var (x, y) = (new HourState(before, season), new HourState(after, season));
            var periodOf = RunningChanges.PeriodOfDay(before.Periods, year.Season);
            for (var d = 0; d < periodOf.Length; d++)
            {
                if (periodOf[d] < 0)
                {
                    continue;
                }

                var mean = Us.F(year.TempC[(24 * d)..(24 * d + 24)].Average());
                for (var h = 24 * d; h < 24 * d + 24; h++)
                {
                    x.Step(before.Periods[periodOf[d]], season, h, 0);
                    y.Step(after.Periods[periodOf[d]], season, h, 0);
                    a += mean >= fromF && mean < toF ? x.DemandW : 0;
                    b += mean >= fromF && mean < toF ? y.DemandW : 0;
                }
            }
        }

        return 100 * (1 - b / a);
    }
}
