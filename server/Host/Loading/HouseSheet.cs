using System.Globalization;
using FarmPortfolio.Engine.Retrofits;

namespace FarmPortfolio.Host.Loading;

/// <summary>
/// Reads farms and houses from one sheet, a row a house (a row without a house is a farm alone). Heads are plain words in any order; a unit stands in the head,
/// in a row of units under it, or is said for the whole sheet; one that is told nowhere is asked for, never guessed.
/// </summary>
public static class HouseSheet
{
    /// <summary>Most rows that one sheet brings in: more than any co-op has houses.</summary>
    internal const int MostRows = 20_000;

    /// <summary>Reads a sheet.</summary>
    /// <param name="text">Text.</param>
    /// <param name="catalogue">Coverings, heaters, plans and retrofits it may name.</param>
    /// <param name="si">Whether cells without a unit are SI; null = not said.</param>
    /// <returns>The sound rows, null when there is no head, and the faults.</returns>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static Loaded<HouseRows> Read(SourceText text, Catalogue catalogue, bool? si = null)
    {
        var faults = new FaultList(text.File);
        var rows = new List<HouseRow>();
        HouseCells? cells = null;
        var (read, first) = (0, true);
        foreach (var (line, row) in TableRows.Of(text, faults))
        {
            if (cells is null)
            {
                cells = HouseCells.Head(row, line, catalogue, si, faults);
                if (cells is not null)
                {
                    text.HeadFound();
                }

                continue;
            }

            if (first && cells.TakeUnits(row))
            {
                first = false;
                continue;
            }

            if (first && !cells.AskUnits(line - 1, faults))
            {
                return new(null, 0, faults.All);
            }

            first = false;
            if (++read > MostRows)
            {
                faults.Add("TOO_MANY_ROWS", null, FormattableString.Invariant($"The sheet has more than {MostRows:#,0} rows."), "Split it by farms.", line, 1);
                return new(null, read, faults.All);
            }

            if (cells.Row(row, line, faults) is { } sound)
            {
                rows.Add(sound);
            }
        }

        if (cells is null)
        {
            if (text.Refusal is null && faults.Count == 0)
            {
                faults.Add("NO_HEAD", null, "No head with a column \"farm\" was found in the first 64 kB.", "Give a first row that names the columns, such as: farm, house, shape, width (ft), length (ft), fuel.", 1, 1);
            }

            return new(null, 0, faults.All);
        }

        if (read == 0 && text.Refusal is null)
        {
            faults.Add("EMPTY", null, "The sheet has a head and no row.", "Give a row a house under the head.");
        }

        var left = new HashSet<HouseRow>(ReferenceEqualityComparer.Instance);
        foreach (var doubled in rows.Where(r => r.House is not null).GroupBy(r => (Names.Key(r.Farm), Names.Key(r.House!))).Where(g => g.Count() > 1))
        {
            foreach (var again in doubled.Skip(1))
            {
                faults.Add("DOUBLED", "house", $"\"{again.House}\" of {again.Farm} stands in line {doubled.First().Line} already.", "Give each house of a farm a name of its own; the row is left out.", again.Line, cells.ColumnOf(HouseColumn.House));
                left.Add(again);
            }
        }

        return new(new([.. rows.Where(r => !left.Contains(r))]), read, faults.All);
    }

    /// <summary>A sheet to fill in: the head, a row of units, and one made-up row.</summary>
    /// <returns>CSV text.</returns>
    public static string Template()
    {
        var columns = HouseColumns.Names.Keys.ToList();
        var example = new Dictionary<HouseColumn, string>
        {
            [HouseColumn.Farm] = "Example Farm",
            [HouseColumn.Place] = "Anyplace",
            [HouseColumn.House] = "house 1",
            [HouseColumn.Shape] = "hoop",
            [HouseColumn.Width] = "30",
            [HouseColumn.Length] = "96",
            [HouseColumn.Covering] = "double film",
            [HouseColumn.FilmYear] = "2024",
            [HouseColumn.HeatedFrom] = "15 Feb",
            [HouseColumn.HeatedTo] = "31 May",
            [HouseColumn.Night] = "60",
            [HouseColumn.Day] = "65",
            [HouseColumn.Heater] = "power",
            [HouseColumn.HeaterYear] = "2015",
            [HouseColumn.Input] = "250000",
            [HouseColumn.Fuel] = "propane",
            [HouseColumn.Supply] = "tank bank",
            [HouseColumn.TankSize] = "1000",
            [HouseColumn.Used] = "1250",
        };
        string Row(Func<HouseColumn, string> cell) => string.Join(',', columns.Select(cell));
        return string.Create(CultureInfo.InvariantCulture, $"{Row(c => HouseColumns.Names[c][0])}\r\n{Row(c => HouseColumns.Units(c).Count > 0 ? HouseColumns.Usual(c, si: false) : string.Empty)}\r\n{Row(c => example.GetValueOrDefault(c, string.Empty))}\r\n");
    }
}

/// <summary>Names as they are compared.</summary>
internal static class Names
{
    /// <summary>Trimmed, small letters, single blanks.</summary>
    /// <param name="name">Name.</param>
    /// <returns>The key.</returns>
    public static string Key(string name) => string.Join(' ', name.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).ToLowerInvariant();
}
