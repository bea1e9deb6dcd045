using System.Text.RegularExpressions;

namespace FarmPortfolio.Host.Loading;

/// <summary>
/// Dates with slashes are read month first. A file that writes some day first (31/01/2025) leaves in doubt those that could be either (05/03/2025): it is refused whole, for half of its days would be
/// read wrongly without a word. Where every one could be either, that they were read month first is said.
/// </summary>
internal sealed partial class SlashDates
{
    private (string Cell, int Line, int Column)? dayFirst;
    private string? either;
    private bool monthFirst;
    private (string Cell, int Line, int Column)? ones;
    private bool onesAlone = true;
    private int seconds;

    /// <summary>What was taken for granted; null = nothing.</summary>
    public string? Note => either is null || monthFirst || dayFirst is not null ? null : $"Dates such as {either} are read month first; no date of the file tells which comes first.";

    /// <summary>Looks at a cell that holds a date.</summary>
    /// <param name="cell">Cell.</param>
    /// <param name="line">Line.</param>
    /// <param name="column">Column from 1.</param>
    public void See(string? cell, int line, int column)
    {
        if (cell is null || !cell.Contains('/', StringComparison.Ordinal) || Slashes().Match(cell) is not { Success: true } match)
        {
            return;
        }

        var (first, second) = (int.Parse(match.Groups[1].ValueSpan, System.Globalization.CultureInfo.InvariantCulture), int.Parse(match.Groups[2].ValueSpan, System.Globalization.CultureInfo.InvariantCulture));
        ones ??= (match.Value, line, column);
        onesAlone &= first == 1;
        seconds |= second is >= 0 and < 31 ? 1 << second : 0;
        if (first is > 12 and <= 31 && second is >= 1 and <= 12)
        {
            dayFirst ??= (match.Value, line, column);
        }
        else if (second is > 12 and <= 31 && first is >= 1 and <= 12)
        {
            monthFirst = true;
        }
        else if (first != second)
        {
            either ??= match.Value;
        }
    }

    /// <summary>Whether the dates are in doubt; says so.</summary>
    /// <param name="faults">Where to say it.</param>
    /// <returns>Whether nothing of the file can be taken.</returns>
    public bool InDoubt(FaultList faults)
    {
        if (dayFirst is not var (cell, line, column) || (either is null && !monthFirst))
        {
            return false;
        }

        faults.Add("DAY_FIRST", "date", monthFirst && either is null ? $"{cell} has the day first, other dates of the file the month." : $"{cell} has the day first; {either ?? "others"} could be either, and is read month first.",
            "Write every date as 2025-01-31, or month first; nothing of the file is taken.", line, column);
        return true;
    }

    /// <summary>Whether months are written by their first days, day first: every date begins with a 1 and what follows changes; says so.</summary>
    /// <param name="faults">Where to say it.</param>
    /// <returns>Whether nothing of the file can be taken.</returns>
    public bool FirstsOfMonths(FaultList faults)
    {
        if (ones is not var (cell, line, column) || !onesAlone || System.Numerics.BitOperations.PopCount((uint)seconds) < 3)
        {
            return false;
        }

        faults.Add("DAY_FIRST", "month", $"Every date begins with a 1, as {cell} does: these look like first days of months, day first, and would all be read as January.", "Write months as 2024-01; nothing of the file is taken.", line, column);
        return true;
    }

    [GeneratedRegex(@"^\s*(\d{1,2})/(\d{1,2})/\d{2,4}")]
    private static partial Regex Slashes();
}
