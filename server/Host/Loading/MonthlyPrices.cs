using System.Globalization;
using FarmPortfolio.Engine;

namespace FarmPortfolio.Host.Loading;

/// <summary>A monthly price record.</summary>
/// <param name="FirstMonthOn">First month.</param>
/// <param name="Prices">One a month; null = missing.</param>
public sealed record MonthlyRecord(DateOnly FirstMonthOn, IReadOnlyList<double?> Prices);

/// <summary>Reads monthly prices: date and value in any usual form (EIA), or Year, Period M01..M12 and Value (BLS).</summary>
public static class MonthlyPrices
{
    private static readonly string[] Formats = ["yyyy-MM", "yyyy-MM-dd", "MMM-yyyy", "MMM yyyy", "MM/yyyy", "M/d/yyyy", "yyyyMM", "MMM-yy"];

    /// <summary>Reads a record.</summary>
    /// <param name="text">Text.</param>
    /// <param name="file">Name of the file, for the faults.</param>
    /// <returns>The record and its faults.</returns>
    public static Loaded<MonthlyRecord> Read(TextReader text, string file)
    {
        var faults = new List<Fault>();
        var months = new SortedDictionary<DateOnly, double>();
        var (year, period, date, value, rows, lead) = (-1, -1, -1, -1, 0, 0);
        foreach (var (line, cells) in CsvText.Rows(text))
        {
            if (value < 0)
            {
                (year, period, value) = (CsvText.Find(cells, "year"), CsvText.Find(cells, "period"), CsvText.Find(cells, "value"));
                date = CsvText.Find(cells, "month", "date");
                value = value >= 0 ? value : Array.FindIndex(cells, (c) => c.Contains("price", StringComparison.OrdinalIgnoreCase) || c.Contains("dollars", StringComparison.OrdinalIgnoreCase));
                if (value >= 0 && (date >= 0 || (year >= 0 && period >= 0)))
                {
                    continue;
                }

                value = -1;
                if (cells.Length == 2 && Month(cells[0]) is not null)
                {
                    (date, value) = (0, 1);
                }
                else if (++lead > 20)
                {
                    break;
                }
                else
                {
                    continue;
                }
            }

            rows++;
            var at = date >= 0 ? date : period;
            var month = date >= 0 ? Month(cells.ElementAtOrDefault(date)) : Month($"{cells.ElementAtOrDefault(year)}-{cells.ElementAtOrDefault(period)?.TrimStart('M')}");
            if (month is not { } m)
            {
                faults.Add(new("NOT_A_MONTH", "month", $"\"{cells.ElementAtOrDefault(at)}\" is no month.", "Write months as 2024-01.", file, line, at + 1));
                continue;
            }

            var cell = cells.ElementAtOrDefault(value);
            if (!double.TryParse(cell?.TrimStart('$'), NumberStyles.Float, CultureInfo.InvariantCulture, out var price))
            {
                faults.Add(new("NOT_A_NUMBER", "price", $"\"{cell}\" is no price.", "Give dollars a unit, such as 2.35.", file, line, value + 1));
            }
            else if (!(price > 0))
            {
                faults.Add(new("NOT_POSITIVE", "price", $"The price of {m:yyyy-MM} is {cell}.", "A price paid a month is above 0; leave the month out if it is not known.", file, line, value + 1));
            }
            else if (!months.TryAdd(m, price))
            {
                faults.Add(new("DOUBLED", "month", $"{m:yyyy-MM} stands in the file twice.", "Keep one price a month.", file, line, at + 1));
            }
        }

        if (months.Count == 0)
        {
            return new(null, rows, [.. faults, new("NO_HEAD", null, "No month with a price was found.", "Give two columns, month and price, or BLS's Year, Period and Value.", file, 1, 1)]);
        }

        var (first, last) = (months.Keys.First(), months.Keys.Last());
        var count = 12 * (last.Year - first.Year) + last.Month - first.Month + 1;
        if (months.Count < 24)
        {
            faults.Add(new("SHORT", null, $"The record has {months.Count} months.", "It is taken, but under 24 months only its last price counts; the rest is the class's default.", file));
        }

        return new(new(first, [.. Enumerable.Range(0, count).Select(i => months.TryGetValue(first.AddMonths(i), out var v) ? v : (double?)null)]), rows, faults);
    }

    private static DateOnly? Month(string? cell) =>
        DateOnly.TryParseExact(cell, Formats, CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? new(day.Year, day.Month, 1) : null;
}
