using FarmPortfolio.Engine.Trials;

namespace FarmPortfolio.Host.Loading;

/// <summary>What a column of a notebook holds.</summary>
internal enum NotebookField
{
    Time, Date, House, What, Value, Inside, Outside, SetPoint, State, Passed,
}

/// <summary>A column of a notebook.</summary>
/// <param name="Field">What it holds.</param>
/// <param name="House">House of a wide sheet's column; null = of the row, or of all houses.</param>
/// <param name="Unit">Unit as written.</param>
/// <param name="Measure">What a column of readings reads; null = not told.</param>
/// <param name="At">Column from 0.</param>
internal sealed record NotebookColumn(NotebookField Field, string? House, string? Unit, TrialMeasure? Measure, int At);

/// <summary>The head of a notebook: long rows with a column for the house, or a wide sheet with columns of each house.</summary>
internal static class NotebookHead
{
    // longest first, for a wide sheet's column ends in one of these
    private static readonly (string Words, NotebookField Field, TrialMeasure? Measure)[] Known =
    [
        ("state of the retrofit", NotebookField.State, null), ("inside temperature", NotebookField.Inside, null), ("outside temperature", NotebookField.Outside, null),
        ("set temperature", NotebookField.SetPoint, null), ("burner hours", NotebookField.Value, TrialMeasure.BurnerHours), ("hour meter", NotebookField.Value, TrialMeasure.BurnerHours),
        ("what is read", NotebookField.What, null), ("meter reading", NotebookField.Value, TrialMeasure.Meter), ("fuel used", NotebookField.Value, TrialMeasure.Used), ("gallons used", NotebookField.Value, TrialMeasure.Used),
        ("inside temp", NotebookField.Inside, null), ("outside temp", NotebookField.Outside, null), ("set point", NotebookField.SetPoint, null), ("setpoint", NotebookField.SetPoint, null),
        ("read at", NotebookField.Time, null), ("datetime", NotebookField.Time, null), ("time", NotebookField.Time, null), ("date", NotebookField.Date, null), ("day", NotebookField.Date, null),
        ("house", NotebookField.House, null), ("what", NotebookField.What, null), ("kind", NotebookField.What, null), ("gallons", NotebookField.Value, TrialMeasure.Used), ("used", NotebookField.Value, TrialMeasure.Used),
        ("meter", NotebookField.Value, TrialMeasure.Meter), ("reading", NotebookField.Value, null), ("value", NotebookField.Value, null), ("inside", NotebookField.Inside, null), ("outside", NotebookField.Outside, null),
        ("state", NotebookField.State, null), ("retrofit", NotebookField.State, null), ("who", NotebookField.Passed, null), ("read by", NotebookField.Passed, null), ("remark", NotebookField.Passed, null), ("remarks", NotebookField.Passed, null), ("note", NotebookField.Passed, null), ("unit", NotebookField.Passed, null),
    ];

    /// <summary>The columns of a head; null where the row is none.</summary>
    /// <param name="cells">Cells.</param>
    /// <returns>Columns, and whether the sheet is wide.</returns>
    internal static (IReadOnlyList<NotebookColumn> Columns, bool Wide)? Of(string[] cells)
    {
        var heads = cells.Select(c => HeadCell.Of(c, w => TemperatureUnits.Of(w) is not null)).ToArray();
        var plain = heads.Select((h, i) => Known.FirstOrDefault(k => k.Words == h.Name) is { Words: not null } k ? new NotebookColumn(k.Field, null, h.Unit, k.Measure, i) : null).ToArray();
        if (!plain.Any(c => c?.Field is NotebookField.Time or NotebookField.Date))
        {
            return null;
        }

        if (plain.Any(c => c?.Field == NotebookField.House))
        {
            return plain.Any(c => c?.Field == NotebookField.Value) ? ([.. plain.OfType<NotebookColumn>()], false) : null;
        }

        var wide = heads.Select((h, i) => plain[i] ?? Wide(cells[i], h, i)).OfType<NotebookColumn>().ToList();
        return wide.Where(c => c.Field == NotebookField.Value && c.House is not null).Select(c => c.House).Distinct().Count() >= 2 ? (wide, true) : null;
    }

    /// <summary>A wide sheet's column: "A meter (therm)", "middle house inside (F)", or the house alone for its meter.</summary>
    private static NotebookColumn? Wide(string cell, HeadCell head, int at)
    {
        foreach (var (words, field, measure) in Known)
        {
            if (head.Name.EndsWith(' ' + words, StringComparison.Ordinal) && field is NotebookField.Value or NotebookField.Inside or NotebookField.SetPoint or NotebookField.State)
            {
                return new(field, Label(cell, head.Name[..^(words.Length + 1)]), head.Unit, measure, at);
            }
        }

        return head.Name.Length > 0 ? new(NotebookField.Value, Label(cell, head.Name), head.Unit, null, at) : null;
    }

    /// <summary>The house as the sheet writes it; "house B" and "B" are one.</summary>
    private static string Label(string cell, string plain)
    {
        var asWritten = cell.Length >= plain.Length && cell[..plain.Length].Equals(plain, StringComparison.OrdinalIgnoreCase) ? cell[..plain.Length] : plain;
        return asWritten.StartsWith("house ", StringComparison.OrdinalIgnoreCase) && asWritten.Length > 6 ? asWritten[6..] : asWritten;
    }
}
