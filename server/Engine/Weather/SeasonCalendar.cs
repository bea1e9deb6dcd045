namespace FarmPortfolio.Engine.Weather;

/// <summary>Days and months of a season, 1 July to 30 June. Month 0 is July, 11 is June.</summary>
public static class SeasonCalendar
{
    /// <summary>Days of a season.</summary>
    /// <param name="season">Year of its July.</param>
    /// <returns>365 or 366.</returns>
    public static int Days(int season) => DateTime.IsLeapYear(season + 1) ? 366 : 365;

    /// <summary>First day of a season.</summary>
    /// <param name="season">Year of its July.</param>
    /// <returns>1 July.</returns>
    public static DateOnly FirstDay(int season) => new(season, 7, 1);

    /// <summary>The season a day belongs to.</summary>
    /// <param name="day">The day.</param>
    /// <returns>Year of its July.</returns>
    public static int SeasonOf(DateOnly day) => day.Month >= 7 ? day.Year : day.Year - 1;

    /// <summary>Index of a day in its season.</summary>
    /// <param name="day">The day.</param>
    /// <returns>0 on 1 July.</returns>
    public static int DayIndex(DateOnly day) => day.DayNumber - FirstDay(SeasonOf(day)).DayNumber;

    /// <summary>Month index of a calendar month.</summary>
    /// <param name="calendarMonth">1 = January.</param>
    /// <returns>0 = July.</returns>
    public static int MonthIndex(int calendarMonth) => (calendarMonth + 5) % 12;

    /// <summary>Calendar month of a month index.</summary>
    /// <param name="monthIndex">0 = July.</param>
    /// <returns>1 = January.</returns>
    public static int CalendarMonth(int monthIndex) => (monthIndex + 6) % 12 + 1;

    /// <summary>How people write a season.</summary>
    /// <param name="season">Year of its July.</param>
    /// <returns>2013-14.</returns>
    public static string Name(int season) => FormattableString.Invariant($"{season}-{(season + 1) % 100:00}");

    /// <summary>First hour of each month and the hour after the last.</summary>
    /// <param name="season">Year of its July.</param>
    /// <returns>13 hours.</returns>
    public static int[] MonthStartHours(int season)
    {
        var starts = new int[13];
        for (var m = 0; m < 12; m++)
        {
            var calendar = CalendarMonth(m);
            starts[m + 1] = starts[m] + 24 * DateTime.DaysInMonth(calendar >= 7 ? season : season + 1, calendar);
        }

        return starts;
    }
}
