using FarmPortfolio.Engine.Farms;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>Changes of running: opening later, lower nights, a closed house, a steadier thermostat.</summary>
internal static class RunningChanges
{
    private static readonly int[] CommonDays = DayKeys(2001);
    private static readonly int[] LeapDays = DayKeys(2003);

    internal static IReadOnlyList<HeatingPeriod> Of(IReadOnlyList<HeatingPeriod> periods, HashSet<string> codes, Func<string, string, double> number)
    {
        var changed = periods;
        if (codes.Contains("openlater"))
        {
            changed = StartLater(changed, (int)number("openlater", "startLaterDays"));
        }

        if (codes.Contains("setback"))
        {
            var lower = number("setback", "nightLowerK");
            changed = [.. changed.Select(p => p with { NightC = p.NightC - lower })];
        }

        if (codes.Contains("service"))
        {
            var swing = number("service", "swingK");
            changed = [.. changed.Select(p => p with { NightC = p.NightC - swing, DayC = p.DayC - swing })];
        }

        return codes.Contains("closehouse") ? Without(changed, (int)number("closehouse", "closedFromMonth"), (int)number("closehouse", "closedToMonth")) : changed;
    }

    /// <summary>Days of the season (July first) on which each day is heated, by period; -1 = not.</summary>
    internal static int[] PeriodOfDay(IReadOnlyList<HeatingPeriod> periods, int season)
    {
        var keys = Weather.SeasonCalendar.Days(season) == LeapDays.Length ? LeapDays : CommonDays;
        var of = new int[keys.Length];
        Array.Fill(of, -1);
        for (var p = periods.Count - 1; p >= 0; p--)
        {
            // the first period that holds a day is written last
            var (from, to) = (100 * periods[p].From.Month + periods[p].From.Day, 100 * periods[p].To.Month + periods[p].To.Day);
            for (var d = 0; d < keys.Length; d++)
            {
                of[d] = (from <= to ? keys[d] >= from && keys[d] <= to : keys[d] >= from || keys[d] <= to) ? p : of[d];
            }
        }

        return of;
    }

    /// <summary>Hundred times the month plus the day, of each day of a season.</summary>
    private static int[] DayKeys(int season) =>
        [.. Enumerable.Range(0, Weather.SeasonCalendar.Days(season)).Select(d => Weather.SeasonCalendar.FirstDay(season).AddDays(d)).Select(day => 100 * day.Month + day.Day)];

    /// <summary>The first heated stretch after an unheated one begins later by so many days.</summary>
    private static List<HeatingPeriod> StartLater(IReadOnlyList<HeatingPeriod> periods, int days)
    {
        const int CommonSeason = 2001;
        var of = PeriodOfDay(periods, CommonSeason);
        var start = LongestGapEnd(of);
        var result = new List<HeatingPeriod>();
        var first = Weather.SeasonCalendar.FirstDay(CommonSeason);
        for (var i = days; i < of.Length; i++)
        {
            var d = (start + i) % of.Length;
            if (of[d] < 0)
            {
                continue;
            }

            var day = first.AddDays(d);
            var here = new MonthDay(day.Month, day.Day);
            var period = periods[of[d]];
            if (result.Count > 0 && i > days && of[(start + i - 1) % of.Length] == of[d])
            {
                result[^1] = result[^1] with { To = here };
            }
            else
            {
                result.Add(period with { From = here, To = here });
            }
        }

        return result;
    }

    private static int LongestGapEnd(int[] of)
    {
        var (best, bestEnd, run) = (0, 0, 0);
        for (var i = 0; i < 2 * of.Length; i++)
        {
            if (of[i % of.Length] < 0)
            {
                run++;
            }
            else
            {
                if (run > best)
                {
                    (best, bestEnd) = (run, i % of.Length);
                }

                run = 0;
            }
        }

        return bestEnd;
    }

    private static List<HeatingPeriod> Without(IReadOnlyList<HeatingPeriod> periods, int fromMonth, int toMonth)
    {
        const int CommonSeason = 2001;
        bool Closed(int month) => fromMonth <= toMonth ? month >= fromMonth && month <= toMonth : month >= fromMonth || month <= toMonth;
        var of = PeriodOfDay(periods, CommonSeason);
        var first = Weather.SeasonCalendar.FirstDay(CommonSeason);
        var result = new List<HeatingPeriod>();
        var last = -2;
        for (var d = 0; d < of.Length; d++)
        {
            var day = first.AddDays(d);
            if (of[d] < 0 || Closed(day.Month))
            {
                last = -2;
                continue;
            }

            var here = new MonthDay(day.Month, day.Day);
            if (last == of[d])
            {
                result[^1] = result[^1] with { To = here };
            }
            else
            {
                result.Add(periods[of[d]] with { From = here, To = here });
            }

            last = of[d];
        }

        return result;
    }
}
