using System.Globalization;

namespace FarmPortfolio.Host.Loading;

/// <summary>One row of a sheet under its head: cells by the column meant, days and numbers, and what is wrong with them.</summary>
/// <param name="cells">Cells.</param>
/// <param name="line">Line.</param>
/// <param name="at">Place of each column, from 0.</param>
/// <param name="dates">Looks at dates with slashes.</param>
/// <param name="faults">Where to say what is wrong.</param>
internal class SheetRow(string[] cells, int line, IReadOnlyDictionary<string, int> at, SlashDates dates, FaultList faults)
{
    private static readonly string[] Dates = ["yyyy-MM-dd", "yyyy/M/d", "M/d/yyyy", "M/d/yy", "d MMM yyyy", "MMM d yyyy", "d-MMM-yyyy"];

    /// <summary>Whether something was wrong with the row so far.</summary>
    protected bool IsWrong { get; private set; }

    /// <summary>Cell of a column; empty where it is not there.</summary>
    protected string Cell(string column) => at.TryGetValue(column, out var i) && i < cells.Length ? cells[i].Trim() : string.Empty;

    /// <summary>Says what leaves the row out.</summary>
    protected void Wrong(string code, string column, string message, string remedy)
    {
        IsWrong = true;
        Notice(code, column, message, remedy);
    }

    /// <summary>Says what leaves nothing out.</summary>
    protected void Notice(string code, string column, string message, string remedy) => faults.Add(code, column, message, remedy, line, at.TryGetValue(column, out var i) ? i + 1 : null);

    /// <summary>Day of a column; null = empty or wrong.</summary>
    protected DateOnly? Day(string column)
    {
        var cell = Cell(column);
        if (cell.Length == 0)
        {
            return null;
        }

        dates.See(cell, line, at[column] + 1);
        if (DateOnly.TryParseExact(cell.Replace(",", string.Empty, StringComparison.Ordinal), Dates, CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
        {
            return day;
        }

        Wrong("BAD_DATE", column, $"\"{WeatherCells.Short(cell)}\" is no date that can be told.", "Write it as 2024-02-17 or 2/17/2024 (month first).");
        return null;
    }

    /// <summary>Number of a column; null = empty or wrong.</summary>
    protected double? Number(string column)
    {
        var cell = Cell(column).Trim('$', '%', ' ');
        if (cell.Length == 0)
        {
            return null;
        }

        if (SheetNumber.Of(cell) is { } value && Math.Abs(value) < 1e9)
        {
            return value;
        }

        Wrong("NOT_A_NUMBER", column, $"\"{WeatherCells.Short(cell)}\" is no number.", SheetNumber.Remedy(cell, "Write digits with a point for decimals, such as 412.5."));
        return null;
    }
}
