using System.Globalization;
using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Units;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Host.Loading;

/// <summary>A daily record by season.</summary>
/// <param name="Seasons">Tmin and Tmax of each day in turn by season year, C, NaN = missing.</param>
/// <param name="Days">Days with both values.</param>
/// <param name="FirstOn">First day.</param>
/// <param name="LastOn">Last day.</param>
/// <param name="UnitWords">The unit and how it was told.</param>
public sealed record DailyRecord(IReadOnlyDictionary<int, double[]> Seasons, int Days, DateOnly FirstOn, DateOnly LastOn, string UnitWords);

/// <summary>Reads NOAA daily records: the CSV with a head, and the by-station layout without one (ID, date, element, value; tenths of a degree Celsius).</summary>
public static class DailyWeather
{
    private const double ColdestC = -60;
    private const double HottestC = 57;

    /// <summary>Reads a record.</summary>
    /// <param name="text">Text.</param>
    /// <param name="file">Name of the file, for the faults.</param>
    /// <param name="unit">F, C or tenths; null = told by the layout, or by the range.</param>
    /// <returns>The record and its faults.</returns>
    public static Loaded<DailyRecord> Read(TextReader text, string file, string? unit = null)
    {
        var faults = new List<Fault>();
        var days = new SortedDictionary<DateOnly, (double Min, double Max)>();
        (int Date, int Max, int Min)? head = null;
        var (byStation, rows, characters) = (false, 0, 0);
        foreach (var (line, cells) in CsvText.Rows(text))
        {
            if (head is null && !byStation)
            {
                var (date, max, min) = (CsvText.Find(cells, "date"), CsvText.Find(cells, "tmax", "tmax(f)", "tmax(c)"), CsvText.Find(cells, "tmin", "tmin(f)", "tmin(c)"));
                if (date >= 0 && max >= 0 && min >= 0)
                {
                    head = (date, max, min);
                    continue;
                }

                byStation = cells.Length >= 4 && cells[0].Length == 11 && cells[1].Length == 8 && cells[2].Length == 4;
                characters += cells.Sum(c => c.Length + 1);
                if (!byStation && (rows++ > 20 || characters > CsvText.HeadBytes))
                {
                    break;
                }

                if (!byStation)
                {
                    continue;
                }
            }

            rows++;
            if (byStation)
            {
                Station(cells, line);
            }
            else
            {
                Headed(cells, line, head!.Value);
            }
        }

        if (head is null && !byStation)
        {
            return new(null, 0, [new("NO_HEAD", null, "No row with DATE, TMAX and TMIN was found, and the rows are not a station's.", "Give a CSV whose head names DATE, TMAX and TMIN, or NOAA's by-station rows: ID, date, element, value.", file, 1, 1)]);
        }

        return days.Count == 0 ? new(null, rows, [.. faults, new("EMPTY", null, "The file holds no day.", "Give at least one season of days.", file)]) : Finish();

        void Headed(string[] cells, int line, (int Date, int Max, int Min) at)
        {
            if (Day(cells.ElementAtOrDefault(at.Date), "yyyy-MM-dd", line, at.Date) is not { } day)
            {
                return;
            }

            var (min, max) = (Number(cells.ElementAtOrDefault(at.Min), "TMIN", line, at.Min), Number(cells.ElementAtOrDefault(at.Max), "TMAX", line, at.Max));
            if (!days.TryAdd(day, (min, max)))
            {
                faults.Add(new("DOUBLED", "DATE", $"{day:yyyy-MM-dd} stands in the file twice.", "Keep one row a day; the first is taken.", file, line, at.Date + 1));
            }
        }

        void Station(string[] cells, int line)
        {
            var element = cells.ElementAtOrDefault(2);
            if (element is not ("TMAX" or "TMIN") || Day(cells.ElementAtOrDefault(1), "yyyyMMdd", line, 1) is not { } day)
            {
                return;
            }

            // a value that failed NOAA's quality check carries a flag in the sixth column
            var value = string.IsNullOrEmpty(cells.ElementAtOrDefault(5)) ? Number(cells.ElementAtOrDefault(3), element, line, 3) : double.NaN;
            var known = days.TryGetValue(day, out var v) ? v : (double.NaN, double.NaN);
            days[day] = element == "TMIN" ? (value, known.Item2) : (known.Item1, value);
        }

        DateOnly? Day(string? cell, string format, int line, int column)
        {
            if (DateOnly.TryParseExact(cell, format, CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
            {
                return day;
            }

            faults.Add(new("NOT_A_DATE", "DATE", $"\"{cell}\" is no date.", $"Write dates as {format}.", file, line, column + 1));
            return null;
        }

        double Number(string? cell, string field, int line, int column)
        {
            if (string.IsNullOrWhiteSpace(cell) || cell is "-9999" or "9999")
            {
                return double.NaN;
            }

            if (double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value))
            {
                return value;
            }

            faults.Add(new("NOT_A_NUMBER", field, $"\"{cell}\" is no temperature.", "Give a number, or leave the cell empty where nothing was read.", file, line, column + 1));
            return double.NaN;
        }

        Loaded<DailyRecord> Finish()
        {
            var (used, words) = Unit(days.Values, byStation, unit);
            double ToC(double v) => used switch { "F" => Us.C(v), "tenths" => v / 10, _ => v };
            var seasons = new SortedDictionary<int, double[]>();
            var count = 0;
            foreach (var (day, (min, max)) in days)
            {
                var (low, high) = (ToC(min), ToC(max));
                if (low > high)
                {
                    faults.Add(new("MIN_ABOVE_MAX", "TMIN", $"On {day:yyyy-MM-dd} the lowest temperature is above the highest.", "Check whether the columns are exchanged; the day counts as missing.", file));
                    (low, high) = (double.NaN, double.NaN);
                }

                if (low < ColdestC || high > HottestC)
                {
                    faults.Add(new("OUT_OF_RANGE", "TMAX", $"On {day:yyyy-MM-dd} {low:0.#} to {high:0.#} C was read in {used}.", "Check the unit of the file; the day counts as missing.", file));
                    (low, high) = (double.NaN, double.NaN);
                }

                var season = SeasonCalendar.SeasonOf(day);
                if (!seasons.TryGetValue(season, out var values))
                {
                    seasons[season] = values = new double[2 * SeasonCalendar.Days(season)];
                    Array.Fill(values, double.NaN);
                }

                values[2 * SeasonCalendar.DayIndex(day)] = low;
                values[2 * SeasonCalendar.DayIndex(day) + 1] = high;
                count += double.IsNaN(low + high) ? 0 : 1;
            }

            return new(new(seasons, count, days.Keys.First(), days.Keys.Last(), words), rows, faults);
        }
    }

    /// <summary>By-station rows are in tenths of C by their layout; a head's unit is asked, or told by the range: a yearly span of 35 and more with highs over 45 is Fahrenheit.</summary>
    private static (string Unit, string Words) Unit(IEnumerable<(double Min, double Max)> days, bool byStation, string? asked)
    {
        if (asked is "F" or "C" or "tenths")
        {
            return (asked, $"{asked}, as you said");
        }

        if (byStation)
        {
            return ("tenths", "tenths of a degree Celsius, by the layout");
        }

        var high = days.Where(d => !double.IsNaN(d.Max)).Select(d => d.Max).DefaultIfEmpty(0).Max();
        return high > 150 ? ("tenths", "tenths of a degree Celsius, by the range") : high > 48 ? ("F", "Fahrenheit, by the range of the highs") : ("C", "Celsius, by the range of the highs");
    }
}
