using System.Globalization;
using System.Text.RegularExpressions;

namespace FarmPortfolio.Host.Loading;

/// <summary>Reads what a row of the houses' sheet tells of a winter's fuel.</summary>
internal static partial class UsedFuelCells
{
    private const int FirstWinter = 1950;

    /// <summary>Reads it; null where nothing is told or something of it cannot stand.</summary>
    /// <param name="cell">Cell of a column; null = empty or not there.</param>
    /// <param name="headUnit">Unit told by the head.</param>
    /// <param name="at">Column of the quantity, from 1.</param>
    /// <param name="hasHouse">Whether the row names a house.</param>
    /// <param name="bad">Takes a fault: column, code, message, remedy.</param>
    /// <returns>The use.</returns>
    public static FuelUsed? Of(Func<HouseColumn, string?> cell, string? headUnit, int? at, bool hasHouse, Action<HouseColumn, string, string, string> bad)
    {
        if (cell(HouseColumn.Used) is not { } told)
        {
            return null;
        }

        var unit = cell(HouseColumn.UsedUnit) is { } own ? HouseColumns.Lower(own) : headUnit;
        if (!hasHouse)
        {
            bad(HouseColumn.Used, "EMPTY", "Fuel is told, but no house that burned it.", "Name the house.");
        }
        else if (SheetNumber.Of(told) is not { } quantity)
        {
            bad(HouseColumn.Used, "NOT_A_NUMBER", $"\"{WeatherCells.Short(told)}\" is no number.", SheetNumber.Remedy(told, "Write a number such as 1250, without its unit."));
        }
        else if (!(quantity > 0))
        {
            bad(HouseColumn.Used, "OUT_OF_RANGE", FormattableString.Invariant($"A winter's use of {quantity:#,0.##} cannot be: it is above 0."), "Give the quantity, or leave the cell empty where it is not known.");
        }
        else if (unit is null)
        {
            bad(HouseColumn.UsedUnit, "UNIT_NOT_TOLD", $"{told} of what is not told.", "Write gal, therm, MMBtu, kWh or ton in the head of the quantity, or beside it.");
        }
        else if (!HouseColumns.Units(HouseColumn.Used).ContainsKey(unit))
        {
            bad(HouseColumn.UsedUnit, "UNKNOWN_UNIT", $"Fuel is not sold by the \"{WeatherCells.Short(unit)}\".", "Write gal, L, lb, therm, ccf, mcf, m3, MMBtu, kWh or ton.");
        }
        else if (cell(HouseColumn.UsedWinter) is not { } winter)
        {
            return new(quantity, unit, null, at);
        }
        else if (Winter(winter) is { } season)
        {
            return new(quantity, unit, season, at);
        }
        else
        {
            bad(HouseColumn.UsedWinter, "NOT_A_WINTER", $"\"{WeatherCells.Short(winter)}\" is no winter.", "Write both of its years, such as 2024-25, or leave the cell empty for the last one.");
        }

        return null;
    }

    // 2024-25, 2024/25, 2024-2025; one year alone could be either of its two
    private static int? Winter(string cell)
    {
        var found = Years().Match(cell);
        if (!found.Success)
        {
            return null;
        }

        var (first, second) = (int.Parse(found.Groups["first"].ValueSpan, CultureInfo.InvariantCulture), int.Parse(found.Groups["second"].ValueSpan, CultureInfo.InvariantCulture));
        return first >= FirstWinter && (second == first + 1 || (second < 100 && second == (first + 1) % 100)) ? first : null;
    }

    [GeneratedRegex(@"^\s*(?<first>\d{4})\s*[-/\u2013]\s*(?<second>\d{4}|\d{2})\s*$")]
    private static partial Regex Years();
}
