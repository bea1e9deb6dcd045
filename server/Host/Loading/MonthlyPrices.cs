using System.Globalization;
using FarmPortfolio.Engine;

namespace FarmPortfolio.Host.Loading;

/// <summary>
/// Reads monthly prices: month and price in any usual form, with lines before the head and units beside it as EIA writes them; Year, Period M01..M12 and
/// Value as BLS writes them; a row a year with a column a month; or two columns without a head.
/// </summary>
public static class MonthlyPrices
{
    private static readonly string[] Formats = ["yyyy-MM", "yyyy-MM-dd", "MMM-yyyy", "MMM yyyy", "MMMM yyyy", "MM/yyyy", "M/yyyy", "M/d/yyyy", "yyyyMM", "yyyyMMdd", "MMM-yy", "yyyy MMM", "yyyy/MM", "MMM dd, yyyy"];
    private static readonly string[] DateNames = ["month", "date", "period", "year month", "time"];
    private static readonly string[] MonthNames = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];

    /// <summary>Reads a record.</summary>
    /// <param name="text">Text.</param>
    /// <param name="column">Which price column is meant, by its name, where there are several; null = not said.</param>
    /// <param name="fuel">Fuel the price is said to be for; null = not said.</param>
    /// <returns>The record, null when there is none, and its faults.</returns>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static Loaded<MonthlyRecord> Read(SourceText text, string? column = null, FuelKind? fuel = null)
    {
        var (faults, rows, width, dates) = (new FaultList(text.File), 0, int.MaxValue, new SlashDates());
        var table = new PriceTable(faults, fuel);
        Layout? at = null;
        (string Unit, double ToUsd)? unit = null;
        string? series = null;
        var before = new List<string>();
        foreach (var (line, cells) in TableRows.Of(text, faults))
        {
            if (at is null)
            {
                at = Layout.Of(cells, column, line, faults);
                if (at is null && faults.Has("WHICH_COLUMN"))
                {
                    return new(null, 0, faults.All);
                }

                if (at is null)
                {
                    before.AddRange(cells);
                    continue;
                }

                text.HeadFound();
                width = at.Head ? cells.Length : int.MaxValue;
                if (at.Head)
                {
                    SheetHead.Doubled([.. cells.Select(c => HeadCell.Of(c, _ => false).Name)], [at.Date, at.Year, at.Unit, .. at.Values.Select(v => v.Column)], line, faults);
                }

                unit = at.Values.Count == 1 && at.Head ? PriceWords.Unit(cells[at.Values[0].Column]) : null;
                table.Told(PriceCurrency.Named(at.Values.Count == 1 && at.Head ? cells[at.Values[0].Column] : null) ?? PriceCurrency.Named(string.Join(' ', before)), line);
                before.AddRange(at.Head ? cells : []);
                if (at.Head)
                {
                    continue;
                }
            }

            rows++;
            if (SheetHead.TooLong(cells, width, line, faults))
            {
                continue;
            }

            if (at.Unit >= 0 && cells.ElementAtOrDefault(at.Unit) is { } sold && !string.IsNullOrWhiteSpace(sold) && PriceWords.Unit(sold) is null && PriceCurrency.Named(sold) is null)
            {
                faults.Add("UNKNOWN_UNIT", "unit", $"The price is for \"{WeatherCells.Short(sold)}\", and no fuel is sold by that here.", $"Give prices by the {PriceWords.Known}; the row is left out.", line, at.Unit + 1);
                continue;
            }

            if (at.Unit >= 0 && PriceWords.Unit(cells.ElementAtOrDefault(at.Unit)) is { } named)
            {
                unit ??= named;
                if (named != unit)
                {
                    faults.Add("TWO_UNITS", "unit", $"The price is for a {named.Unit}{(named.ToUsd < 1 ? " in cents" : string.Empty)}, the rows before are for a {unit.Value.Unit}.", "Give one unit a file; the row is left out.", line, at.Unit + 1);
                    continue;
                }
            }

            if (at.Series >= 0 && cells.ElementAtOrDefault(at.Series) is { Length: > 0 } name)
            {
                series ??= name;
                if (name != series)
                {
                    faults.Add("TWO_SERIES", "series", $"Series {WeatherCells.Short(name)} stands in the file of {WeatherCells.Short(series)}.", "Give one series a file; the row is left out.", line, at.Series + 1);
                    continue;
                }
            }

            if (at.Currency >= 0 && cells.ElementAtOrDefault(at.Currency) is { Length: > 0 } money && !table.InOneCurrency(PriceCurrency.Named(money) ?? money.Trim(), line, at.Currency + 1))
            {
                continue;
            }

            dates.See(cells.ElementAtOrDefault(at.Date), line, at.Date + 1);
            Row(cells, line, at, unit?.ToUsd ?? 1, table, faults);
        }

        if (dates.InDoubt(faults) || dates.FirstsOfMonths(faults))
        {
            return new(null, rows, faults.All);
        }

        if (faults.Has("TOO_LARGE") || table.Count == 0 || table.IsForeign())
        {
            if (table.Count == 0 && text.Refusal is null && faults.Count == 0)
            {
                faults.Add("NO_HEAD", null, "No month with a price was found in the first 64 kB.", "Give two columns, month and price, or BLS's Year, Period and Value.", 1, 1);
            }

            return new(null, rows, faults.All);
        }

        var (first, prices) = table.Finish();
        var words = string.Join(' ', before) + " " + series;
        return new(new(first, prices, at!.Words, (unit ?? PriceWords.Unit(words))?.Unit, PriceWords.Fuel(words)), rows, faults.All);
    }

    /// <summary>Reads a record from a text at hand.</summary>
    /// <param name="text">Text.</param>
    /// <param name="file">Name of the file.</param>
    /// <param name="column">Which price column is meant; null = not said.</param>
    /// <returns>The record and its faults.</returns>
    public static Loaded<MonthlyRecord> Read(TextReader text, string file, string? column = null)
    {
        using var source = new SourceText(text, file);
        return Read(source, column);
    }

    private static void Row(string[] cells, int line, Layout at, double toUsd, PriceTable table, FaultList faults)
    {
        var told = cells.ElementAtOrDefault(at.Date)?.Trim();
        foreach (var (value, monthNumber) in at.Values)
        {
            var words = monthNumber > 0 ? $"{told}-{monthNumber:00}" : at.Year >= 0 ? $"{cells.ElementAtOrDefault(at.Year)}-{told?.TrimStart('M', 'm').PadLeft(2, '0')}" : told;
            if (at.Year >= 0 && told is "M13" or "S01" or "S02" or "S03")
            {
                continue; // BLS's mean of the year or of a half
            }

            if (Month(words) is not { } month)
            {
                faults.Add("NOT_A_MONTH", "month", $"\"{WeatherCells.Short(told)}\" is no month.", "Write months as 2024-01.", line, at.Date + 1);
                return;
            }

            table.Add(month, cells.ElementAtOrDefault(value), toUsd, line, at.Date + 1, value + 1);
        }
    }

    private static DateOnly? Month(string? cell) =>
        DateOnly.TryParseExact(cell, Formats, CultureInfo.InvariantCulture, DateTimeStyles.AllowWhiteSpaces, out var day) && day.Year is >= 1900 and <= 2200 ? new(day.Year, day.Month, 1) : null;

    /// <summary>Columns from 0, -1 = not there; each value column with its month of the year, 0 = told by the row.</summary>
    private sealed record Layout(string Words, bool Head, int Date, int Year, int Unit, int Series, int Currency, IReadOnlyList<(int Column, int Month)> Values)
    {
        private const int MostNamed = 12;

        public static Layout? Of(string[] cells, string? wanted, int line, FaultList faults)
        {
            var names = cells.Select(c => HeadCell.Of(c, _ => false).Name).ToArray();
            int Find(params string[] any) => Array.FindIndex(names, n => any.Contains(n, StringComparer.Ordinal));
            var (year, period, unit, series) = (Find("year"), Find("period"), Find("unit", "units"), Find("series id", "series", "seriesid", "sourcekey"));
            var currency = Find("currency");
            var value = Find("value", "price");
            if (year >= 0 && period >= 0 && value >= 0)
            {
                return new("BLS: year, period and value", true, period, year, unit, series, currency, [(value, 0)]);
            }

            var twelve = MonthNames.Select(m => Array.FindIndex(names, n => n.StartsWith(m, StringComparison.Ordinal))).ToArray();
            if (year >= 0 && twelve.All(i => i >= 0))
            {
                return new("a row a year, a column a month", true, year, -1, unit, series, currency, [.. twelve.Select((c, i) => (c, i + 1))]);
            }

            var date = Find(DateNames);
            if (date >= 0 && cells.Length > 1 && Month(cells.ElementAtOrDefault(1 - Math.Min(date, 1))) is null)
            {
                var others = Enumerable.Range(0, cells.Length).Where(i => i != date && i != unit && i != series && i != currency && names[i].Length > 0).ToList();
                var chosen = wanted is null ? -1 : Array.FindIndex(names, n => n == HeadCell.Plain(wanted) || n.Length > 0 && HeadCell.Plain(wanted).StartsWith(n, StringComparison.Ordinal));
                chosen = chosen >= 0 ? chosen : value >= 0 ? value : others.Count == 1 ? others[0] : others.FirstOrDefault(i => names[i].Contains("price", StringComparison.Ordinal) || cells[i].Contains("dollars", StringComparison.OrdinalIgnoreCase), -1);
                if (chosen >= 0)
                {
                    return new("month and price with a head", true, date, -1, unit, series, currency, [(chosen, 0)]);
                }

                if (others.Count > 1)
                {
                    faults.Add("WHICH_COLUMN", "column", $"The file has {others.Count} columns beside the month: {string.Join(", ", others.Take(MostNamed).Select(i => WeatherCells.Short(cells[i])))}{(others.Count > MostNamed ? FormattableString.Invariant($" and {others.Count - MostNamed:#,0} more") : string.Empty)}.", "Say which of them is the price.", line, others[0] + 1);
                }

                return null;
            }

            return cells.Length == 2 && Month(cells[0]) is not null && double.TryParse(PriceCurrency.Split(cells[1]).Number, CultureInfo.InvariantCulture, out _) ? new("month and price without a head", false, 0, -1, -1, -1, -1, [(1, 0)]) : null;
        }
    }
}
