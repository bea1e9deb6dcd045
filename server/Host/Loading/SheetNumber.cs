using System.Globalization;
using System.Text.RegularExpressions;

namespace FarmPortfolio.Host.Loading;

/// <summary>A number in a sheet: a point for decimals, commas only where they part thousands. 412,5 is refused, not read as 4125.</summary>
internal static partial class SheetNumber
{
    /// <summary>What would be right where a cell is none.</summary>
    /// <param name="cell">Cell.</param>
    /// <param name="otherwise">What would be right where no comma is to blame.</param>
    /// <returns>The remedy.</returns>
    public static string Remedy(string cell, string otherwise) => cell.Contains(',', StringComparison.Ordinal) ? "Write decimals with a point, such as 412.5; a comma may only part thousands, as in 1,204.5." : otherwise;

    /// <summary>The number of a cell; null where it is none, not finite, or a comma stands where no thousands end.</summary>
    /// <param name="cell">Cell.</param>
    /// <returns>The number.</returns>
    public static double? Of(string cell)
    {
        var text = cell.Contains(',', StringComparison.Ordinal) ? Thousands().IsMatch(cell) ? cell.Replace(",", string.Empty, StringComparison.Ordinal) : null : cell;
        return text is not null && double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) ? value : null;
    }

    [GeneratedRegex(@"^\s*[+-]?\d{1,3}(,\d{3})+(\.\d*)?\s*$")]
    private static partial Regex Thousands();
}
