using System.Globalization;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Host.Loading;

/// <summary>Monthly normals of a station.</summary>
/// <param name="MonthlyMeanC">Mean temperature January to December, C.</param>
/// <param name="DailySpanK">Mean of the months' usual highest less usual lowest, K; null = not told.</param>
/// <param name="UnitWords">The unit and how it was told.</param>
/// <param name="DegreeDaysLookedAt">Whether degree days stood beside the means and were held against them.</param>
public sealed record NormalsRecord(IReadOnlyList<double> MonthlyMeanC, double? DailySpanK, string UnitWords, bool DegreeDaysLookedAt);

/// <summary>
/// Reads monthly normals: a head with month and mean temperature, or highest and lowest of which the mean is half the sum, and twelve rows in any order, each month once.
/// Heating degree days may stand beside them; they are held against what the means give by Erbs, Klein and Beckman (1983), and not kept.
/// </summary>
public static class MonthlyNormals
{
    private static readonly string[] Months = ["month", "mon", "months"];
    private static readonly string[] Means = ["mean temperature", "mean temp", "mean", "tmean", "tavg", "average temperature", "average temp", "avg temp", "average", "normal", "temperature", "temp", "daily mean"];
    private static readonly string[] Highs = ["tmax", "mean maximum", "mean max", "mean high", "average high", "max temp", "high", "maximum temperature", "daily maximum"];
    private static readonly string[] Lows = ["tmin", "mean minimum", "mean min", "mean low", "average low", "min temp", "low", "minimum temperature", "daily minimum"];
    private static readonly string[] Degrees = ["heating degree days", "hdd", "degree days", "heating dd"];
    private static readonly string[] Totals = ["annual", "year", "ann", "total", "mean", "average"];

    /// <summary>Reads normals.</summary>
    /// <param name="text">Text.</param>
    /// <param name="unit">The user's word for the unit: F, C or tenths; null = as the file tells, or by its range.</param>
    /// <returns>The normals, null when there are not twelve sound months, and their faults.</returns>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static Loaded<NormalsRecord> Read(SourceText text, string? unit = null)
    {
        var faults = new FaultList(text.File);
        if (unit is { } word && TemperatureUnits.Of(word) is null)
        {
            faults.Add("UNKNOWN_UNIT", "unit", $"\"{WeatherCells.Short(word)}\" is no unit of temperature.", "Choose F, C or tenths.");
            return new(null, 0, faults.All);
        }

        var (table, rows) = (new NormalsTable(faults), 0);
        Found? at = null;
        foreach (var (line, cells) in TableRows.Of(text, faults))
        {
            if (at is null)
            {
                at = Columns(cells);
                if (at is not null)
                {
                    text.HeadFound();
                    (table.Told, table.ToldAt, table.DegreesInF) = (at.Unit, (line, Math.Max(at.Mean, at.High) + 1), at.DegreesInF);
                    SheetHead.Doubled([.. cells.Select(c => HeadCell.Of(c, w => TemperatureUnits.Of(w) is not null).Name)], [at.Month, at.Mean, at.High, at.Low, at.Degrees], line, faults);
                }

                continue;
            }

            if (SheetHead.TooLong(cells, at.Width, line, faults))
            {
                rows++;
                continue;
            }

            var name = cells.ElementAtOrDefault(at.Month);
            if (rows > 0 && Totals.Contains(HeadCell.Plain(name ?? string.Empty), StringComparer.Ordinal))
            {
                continue; // the year's own row
            }

            rows++;
            if (Month(name) is not { } month)
            {
                faults.Add("NOT_A_MONTH", "month", $"\"{WeatherCells.Short(name)}\" is no month.", "Write January or Jan or 1, and so on to December, Dec or 12.", line, at.Month + 1);
                continue;
            }

            double? Number(int column, string field) => column < 0 ? null : Cell(cells.ElementAtOrDefault(column) ?? string.Empty, field, line, column + 1, faults);
            var (mean, high, low) = (Number(at.Mean, "mean"), Number(at.High, "high"), Number(at.Low, "low"));
            table.Add(new(month, at.Mean >= 0 ? mean : (high + low) / 2, high - low, at.Degrees < 0 || string.IsNullOrWhiteSpace(cells.ElementAtOrDefault(at.Degrees)) ? null : Number(at.Degrees, "degree days"), line, Math.Max(at.Mean, at.High) + 1, at.Degrees + 1), at.Month + 1);
        }

        if (at is null && text.Refusal is null)
        {
            faults.Add("NO_HEAD", null, "No head with a month and a mean temperature was found in the first 64 kB.", "Give a head and twelve rows: month,mean temperature (F), with heating degree days beside them if you have them.", 1, 1);
        }

        return new(at is null || faults.Has("TOO_LARGE") ? null : table.Finish(unit), rows, faults.All);
    }

    /// <summary>Reads normals from a text at hand.</summary>
    /// <param name="text">Text.</param>
    /// <param name="file">Name of the file.</param>
    /// <param name="unit">The user's word for the unit; null = none.</param>
    /// <returns>The normals and their faults.</returns>
    public static Loaded<NormalsRecord> Read(TextReader text, string file, string? unit = null)
    {
        using var source = new SourceText(text, file);
        return Read(source, unit);
    }

    /// <summary>Whether a line is the head of monthly normals.</summary>
    internal static bool IsHead(string[] cells) => Columns(cells) is not null;

    private static Found? Columns(string[] cells)
    {
        var heads = cells.Select(c => HeadCell.Of(c, w => TemperatureUnits.Of(w) is not null)).ToArray();
        int Find(string[] names) => Array.FindIndex(heads, h => names.Contains(h.Name, StringComparer.Ordinal));
        var (month, mean, high, low, degrees) = (Find(Months), Find(Means), Find(Highs), Find(Lows), Find(Degrees));
        return month < 0 || (mean < 0 && (high < 0 || low < 0)) ? null
            : new(cells.Length, month, mean, high >= 0 && low >= 0 ? high : -1, high >= 0 && low >= 0 ? low : -1, degrees,
                new[] { mean, high, low }.Where(i => i >= 0).Select(i => heads[i].Unit).FirstOrDefault(u => u is not null),
                degrees < 0 || heads[degrees].Unit is not { } told ? null : HeadCell.Plain(told).Contains('f', StringComparison.Ordinal));
    }

    private static int? Month(string? cell)
    {
        var plain = HeadCell.Plain(cell ?? string.Empty);
        if (int.TryParse(plain, NumberStyles.None, CultureInfo.InvariantCulture, out var number))
        {
            return number is >= 1 and <= 12 ? number : null;
        }

        var names = CultureInfo.InvariantCulture.DateTimeFormat;
        bool Is(string name) => plain.Equals(name, StringComparison.OrdinalIgnoreCase);
        var at = Enumerable.Range(1, 12).FirstOrDefault(m => Is(names.GetMonthName(m)) || Is(names.GetAbbreviatedMonthName(m)) || (m == 9 && Is("sept")));
        return at > 0 ? at : null;
    }

    private static double? Cell(string cell, string field, int line, int column, FaultList faults)
    {
        if (SheetNumber.Of(cell) is { } value && value > -999)
        {
            return value;
        }

        var missing = string.IsNullOrWhiteSpace(cell) || SheetNumber.Of(cell) is not null;
        faults.Add(missing ? "MISSING" : "NOT_A_NUMBER", field, missing ? $"The month has no {field}." : $"\"{WeatherCells.Short(cell)}\" is no number.",
            missing ? "All twelve months are needed; give it." : SheetNumber.Remedy(cell, "Give a number, such as 21.5."), line, column);
        return null;
    }

    /// <summary>Columns from 0; -1 = not there. DegreesInF: whether the head says Fahrenheit degree days; null = it says nothing.</summary>
    private sealed record Found(int Width, int Month, int Mean, int High, int Low, int Degrees, string? Unit, bool? DegreesInF);
}
