using System.Globalization;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Host.Loading;

/// <summary>Days as they are read, in whatever order, then checked and laid out by season.</summary>
/// <param name="faults">Where to say what is wrong.</param>
internal sealed class DailyTable(FaultList faults)
{
    private readonly SortedDictionary<DateOnly, Reading> days = [];
    private DateOnly last;

    /// <summary>Unit named by the head; null = none.</summary>
    public string? Told { get; set; }

    /// <summary>Line and column of the head's unit.</summary>
    public (int? Line, int? Column) ToldAt { get; set; }

    /// <summary>Number of days met.</summary>
    public int Count => days.Count;

    /// <summary>Adds a value; NaN marks the day as met without it.</summary>
    public void Add(DateOnly day, bool isMax, double value, int line, int column)
    {
        var known = days.TryGetValue(day, out var r) ? r : new(double.NaN, double.NaN, line, 0, 0);
        if (isMax ? known.MaxColumn > 0 : known.MinColumn > 0)
        {
            faults.Add("DOUBLED", isMax ? "TMAX" : "TMIN", $"{day:yyyy-MM-dd} stands in the file twice, first in line {known.Line}.", "Keep one value a day; the first is taken.", line, column);
            return;
        }

        days[day] = isMax ? known with { Max = value, MaxColumn = column } : known with { Min = value, MinColumn = column };
    }

    /// <summary>Adds a row of both values.</summary>
    public void Add(DateOnly day, double min, double max, int line, (int Date, int Min, int Max) columns)
    {
        if (days.TryGetValue(day, out var known))
        {
            faults.Add("DOUBLED", "DATE", $"{day:yyyy-MM-dd} stands in the file twice, first in line {known.Line}.", "Keep one row a day; the first is taken.", line, columns.Date);
            return;
        }

        if (day < last)
        {
            faults.Add("OUT_OF_ORDER", "DATE", $"{day:yyyy-MM-dd} comes after {last:yyyy-MM-dd}.", "Sort the rows by date; the day is taken where it belongs.", line, columns.Date);
        }

        last = day;
        days[day] = new(min, max, line, columns.Min, columns.Max);
    }

    /// <summary>Checks the days and lays them out.</summary>
    /// <param name="layout">Layout in words.</param>
    /// <param name="asked">The user's word for the unit.</param>
    /// <param name="byLayout">Unit that the layout fixes; null = none.</param>
    /// <param name="place">Where.</param>
    /// <returns>The record; null where the unit is in doubt.</returns>
    public WeatherRecord? Finish(string layout, string? asked, string? byLayout, StationPlace place)
    {
        var highs = days.Where(d => !double.IsNaN(d.Value.Max)).Select(d => (d.Key, d.Value.Max)).ToList();
        var chosen = byLayout is not null && TemperatureUnits.Of(asked) is null
            ? (byLayout, TemperatureUnits.Words(byLayout) + ", by the layout")
            : TemperatureUnits.Choose(asked, Told, highs, faults, ToldAt);
        if (chosen is not { } sure)
        {
            return null;
        }

        var (unit, words) = sure;
        Gaps();
        Strayed(unit);
        var seasons = new SortedDictionary<int, double[]>();
        foreach (var (day, r) in days)
        {
            var season = SeasonCalendar.SeasonOf(day);
            if (!seasons.TryGetValue(season, out var values))
            {
                seasons[season] = values = new double[2 * SeasonCalendar.Days(season)];
                Array.Fill(values, double.NaN);
            }

            (values[2 * SeasonCalendar.DayIndex(day)], values[2 * SeasonCalendar.DayIndex(day) + 1]) = Checked(day, r, unit);
        }

        var laid = seasons.Select(s => new SeasonValues(s.Key, s.Value, Enumerable.Range(0, s.Value.Length / 2).Count(d => double.IsNaN(s.Value[2 * d] + s.Value[2 * d + 1])))).ToList();
        return new(layout, RecordStep.Daily, laid, laid.Sum(s => s.Days - s.MissingDays), days.Keys.First(), days.Keys.Last(), words, place);
    }

    private (double Low, double High) Checked(DateOnly day, Reading r, string unit)
    {
        var (low, high) = (TemperatureUnits.ToC(r.Min, unit), TemperatureUnits.ToC(r.Max, unit));
        if (low > high)
        {
            faults.Add("MIN_ABOVE_MAX", "TMIN", string.Create(CultureInfo.InvariantCulture, $"On {day:yyyy-MM-dd} the lowest temperature, {r.Min:0.#}, is above the highest, {r.Max:0.#}."),
                "Check whether the two are exchanged; the day counts as missing.", r.Line, r.MinColumn);
            return (double.NaN, double.NaN);
        }

        var lowIsWrong = !(double.IsNaN(low) || TemperatureUnits.Believable(low));
        if (lowIsWrong || !(double.IsNaN(high) || TemperatureUnits.Believable(high)))
        {
            faults.Add("OUT_OF_RANGE", lowIsWrong ? "TMIN" : "TMAX", string.Create(CultureInfo.InvariantCulture, $"On {day:yyyy-MM-dd} {r.Min:0.#} to {r.Max:0.#}, read in {TemperatureUnits.Words(unit)}, cannot be."),
                "A day lies between -60 and 57 C (-76 and 135 F); check the value and the unit. The day counts as missing.", r.Line, lowIsWrong ? r.MinColumn : r.MaxColumn);
            return (double.NaN, double.NaN);
        }

        return (low, high);
    }

    /// <summary>Months in the other unit: one fault a run, its days count as missing.</summary>
    private void Strayed(string unit)
    {
        var months = days.Where(d => !double.IsNaN(d.Value.Min + d.Value.Max)).GroupBy(d => (d.Key.Year, d.Key.Month)).Where(g => g.Count() >= 15)
            .Select(g => (g.Key.Year, g.Key.Month, Mean: g.Average(d => (d.Value.Min + d.Value.Max) / 2))).ToList();
        var usual = months.GroupBy(m => m.Month).Where(g => g.Count() >= 3).ToDictionary(g => g.Key, g => g.Select(m => m.Mean).Order().ElementAt(g.Count() / 2));
        var run = default(DateOnly?);
        foreach (var (year, month, mean) in months)
        {
            var stray = usual.TryGetValue(month, out var middle) ? TemperatureUnits.Strayed(mean, middle, unit) : null;
            if (stray is null)
            {
                run = null;
                continue;
            }

            foreach (var day in days.Keys.Where(d => d.Year == year && d.Month == month).ToList())
            {
                if (run is null)
                {
                    faults.Add("MIXED_UNIT", "TMAX", string.Create(CultureInfo.InvariantCulture, $"From {day:yyyy-MM-dd} the values look like {TemperatureUnits.Words(stray)} in a {TemperatureUnits.Words(unit)} column: the month's mean is {mean:0.#}, that of other years {middle:0.#}."),
                        "Bring the whole column to one unit; these days count as missing.", days[day].Line, days[day].MaxColumn);
                    run = day;
                }

                days[day] = days[day] with { Min = double.NaN, Max = double.NaN };
            }
        }
    }

    private void Gaps()
    {
        var before = default(DateOnly?);
        foreach (var (day, r) in days.Where(d => !double.IsNaN(d.Value.Min + d.Value.Max)))
        {
            if (before is { } b && day.DayNumber - b.DayNumber - 1 is > 0 and var missing)
            {
                var span = missing == 1 ? $"{b.AddDays(1):yyyy-MM-dd} is missing" : $"{missing} days from {b.AddDays(1):yyyy-MM-dd} to {day.AddDays(-1):yyyy-MM-dd} are missing";
                faults.Add("GAP", "DATE", span + ".", $"Add them if you can. Gaps of up to {WeatherYears.LongestFilledDays} days are filled between their neighbours; a season that lacks more is not used.", r.Line);
            }

            before = day;
        }
    }

    private sealed record Reading(double Min, double Max, int Line, int MinColumn, int MaxColumn);
}
