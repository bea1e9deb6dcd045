using System.Globalization;

namespace FarmPortfolio.Host.Loading;

/// <summary>Dates and numbers of a weather file, with the fault where one is none.</summary>
internal static class WeatherCells
{
    private const int FirstYear = 1800;
    private const int LastYear = 2200;
    private static readonly string[] Days = ["yyyy-MM-dd", "yyyyMMdd", "M/d/yyyy", "yyyy/MM/dd", "d-MMM-yyyy"];

    /// <summary>A day.</summary>
    internal static DateOnly? Day(string? cell, int line, int column, FaultList faults)
    {
        var text = cell is { Length: > 10 } && cell[10] is 'T' or ' ' ? cell[..10] : cell;
        if (DateOnly.TryParseExact(text, Days, CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) && day.Year is >= FirstYear and <= LastYear)
        {
            return day;
        }

        faults.Add("NOT_A_DATE", "DATE", $"\"{Short(cell)}\" is no date.", "Write dates as 2024-01-31.", line, column);
        return null;
    }

    /// <summary>A temperature; NaN where the cell is empty or holds one of the usual marks of a missing value.</summary>
    internal static double Number(string? cell, string field, int line, int column, FaultList faults)
    {
        if (string.IsNullOrWhiteSpace(cell) || cell is "-9999" or "9999" or "-999.9" or "NA" or "NaN" or "M" or "null" or "-")
        {
            return double.NaN;
        }

        if (double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value))
        {
            return value;
        }

        var comma = cell.Contains(',', StringComparison.Ordinal);
        faults.Add("NOT_A_NUMBER", field, $"\"{Short(cell)}\" is no temperature.", comma ? "Write decimals with a point." : "Give a number, or leave the cell empty where nothing was read.", line, column);
        return double.NaN;
    }

    /// <summary>At most forty characters of a cell.</summary>
    internal static string Short(string? cell) => cell is null ? string.Empty : cell.Length <= 40 ? cell : cell[..40] + "...";
}
