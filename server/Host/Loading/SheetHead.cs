namespace FarmPortfolio.Host.Loading;

/// <summary>What is said of a head whatever the sheet: columns that stand twice, that nobody knows, and rows longer than it.</summary>
internal static class SheetHead
{
    /// <summary>Unknown columns named one by one; more are only counted.</summary>
    private const int Named = 12;

    /// <summary>Says which of the columns in use stand in the head a second time.</summary>
    /// <param name="names">Names of all columns, plain.</param>
    /// <param name="used">Columns that are read, from 0; under 0 = not there.</param>
    /// <param name="line">Line of the head.</param>
    /// <param name="faults">Where to say it.</param>
    public static void Doubled(IReadOnlyList<string> names, IEnumerable<int> used, int line, FaultList faults)
    {
        var taken = used.Where(i => i >= 0).ToHashSet();
        foreach (var i in taken.Order())
        {
            for (var j = i + 1; j < names.Count; j++)
            {
                if (names[j] == names[i] && !taken.Contains(j))
                {
                    Twice(names[j], line, j, faults);
                }
            }
        }
    }

    /// <summary>Says that a column stands a second time.</summary>
    public static void Twice(string name, int line, int column, FaultList faults) =>
        faults.Add("DOUBLED", name, $"The column \"{WeatherCells.Short(name)}\" stands twice, or under two names; the first is read.", "Keep one of them.", line, column + 1);

    /// <summary>Says which columns are not known and not read; of very many the first few and how many.</summary>
    /// <param name="unknown">Columns from 0 with their words.</param>
    /// <param name="known">Known names, for the remedy.</param>
    /// <param name="line">Line of the head.</param>
    /// <param name="faults">Where to say it.</param>
    public static void Unknown(IReadOnlyList<(int At, string Words)> unknown, string known, int line, FaultList faults)
    {
        foreach (var (at, words) in unknown.Count > Named ? unknown.Take(1) : unknown)
        {
            var more = unknown.Count > Named ? FormattableString.Invariant($" So are {unknown.Count - 1:#,0} more columns.") : string.Empty;
            faults.Add("UNKNOWN_COLUMN", HeadCell.Plain(words), $"The column \"{WeatherCells.Short(words)}\" is not known; it is not read.{more}", $"Rename it or take it out. Known: {known}.", line, at + 1);
        }
    }

    /// <summary>Whether a row has more cells than the head, which shifts them; says so.</summary>
    /// <param name="cells">Cells.</param>
    /// <param name="columns">Columns of the head.</param>
    /// <param name="line">Line.</param>
    /// <param name="faults">Where to say it.</param>
    /// <returns>Whether the row cannot be told.</returns>
    public static bool TooLong(string[] cells, int columns, int line, FaultList faults)
    {
        var more = cells.Length > columns ? Array.FindIndex(cells, columns, c => c.Length > 0) : -1;
        if (more < 0)
        {
            return false;
        }

        faults.Add("TOO_MANY_CELLS", null, $"The row has {cells.Length} cells, the head {columns}: a comma within a number or a name parts it.", "Put the cell in quotation marks, or take the comma out. The row is left out.", line, more + 1);
        return true;
    }
}
