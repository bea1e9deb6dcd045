using System.Globalization;
using FarmPortfolio.Engine.Trials;

namespace FarmPortfolio.Host.Loading;

/// <summary>Reads a trial notebook: long rows (house, time, reading, inside and outside temperature, state) or a wide sheet with columns for each house, which is turned.</summary>
public static class NotebookFile
{
    /// <summary>The head of a file to begin with, and three rows of an invented trial.</summary>
    public const string Template =
        "house,time,what,reading,inside (F),outside (F),set point (F),state,who,remark\n" +
        "A,2025-11-01 08:00,meter,1204.0,60.5,41,60,idle,JL,control\nB,2025-11-01 08:00,meter,877.2,60.8,41,60,idle,JL,\nA,2025-11-02 08:00,meter,1216.4,60.2,36,60,idle,JL,\n";

    private static readonly string[] Times = ["yyyy-MM-dd HH:mm", "yyyy-MM-dd H:mm", "yyyy-MM-ddTHH:mm", "yyyy-MM-ddTHH:mm:ss", "yyyy-MM-dd HH:mm:ss", "M/d/yyyy H:mm", "M/d/yyyy h:mm tt", "yyyy-MM-dd", "M/d/yyyy"];
    private static readonly Dictionary<string, RetrofitState> States = new(StringComparer.OrdinalIgnoreCase)
    {
        ["in use"] = RetrofitState.InUse,
        ["use"] = RetrofitState.InUse,
        ["on"] = RetrofitState.InUse,
        ["closed"] = RetrofitState.InUse,
        ["idle"] = RetrofitState.Idle,
        ["off"] = RetrofitState.Idle,
        ["open"] = RetrofitState.Idle,
        [string.Empty] = RetrofitState.Idle,
        ["none"] = RetrofitState.Idle,
        ["control"] = RetrofitState.Idle,
        ["broken"] = RetrofitState.Broken,
        ["forgotten"] = RetrofitState.Broken,
        ["failed"] = RetrofitState.Broken,
    };

    /// <summary>Reads a notebook.</summary>
    /// <param name="text">Text.</param>
    /// <param name="file">Name of the file.</param>
    /// <param name="askedUnit">The user's word for the unit of temperatures; null = told by the head or the range.</param>
    /// <returns>The notebook, null when there is none, and its faults.</returns>
    public static Loaded<Notebook> Read(TextReader text, string file, string? askedUnit = null)
    {
        using var source = new SourceText(text, file);
        var (faults, rows, table) = (new FaultList(file), 0, new NotebookTable());
        (IReadOnlyList<NotebookColumn> Columns, bool Wide)? head = null;
        source.HeadFound();
        foreach (var (line, cells) in TableRows.Of(source, faults))
        {
            if (head is null)
            {
                if ((head = NotebookHead.Of(cells)) is null && line > 50)
                {
                    break;
                }

                continue;
            }

            rows++;
            Row(head.Value.Columns, head.Value.Wide, cells, line, table, faults);
        }

        if (head is null)
        {
            faults.Add("NO_HEAD", null, "No row names the columns of a trial notebook.", "Give a head: house, time, reading, inside (F), outside (F), state; or time and columns such as \"A meter (therm)\", \"A inside (F)\".", 1, 1);
            return new(null, rows, faults.All);
        }

        var notebook = table.Finish(head.Value.Wide ? "a wide sheet with columns for each house" : "long rows", head.Value.Columns, askedUnit, faults);
        return new(notebook, rows, faults.All) { Notes = table.Notes };
    }

    private static void Row(IReadOnlyList<NotebookColumn> columns, bool wide, string[] cells, int line, NotebookTable table, FaultList faults)
    {
        string Cell(NotebookColumn? c) => c is null ? string.Empty : cells.ElementAtOrDefault(c.At)?.Trim() ?? string.Empty;
        NotebookColumn? Of(NotebookField field, string? house = null) => columns.FirstOrDefault(c => c.Field == field && c.House == house);
        if (Time(Cell(Of(NotebookField.Date)), Cell(Of(NotebookField.Time)), (Of(NotebookField.Time) ?? Of(NotebookField.Date))!.At + 1, line, table, faults) is not { } at)
        {
            return;
        }

        var houses = wide ? columns.Select(c => c.House).OfType<string>().Distinct(StringComparer.OrdinalIgnoreCase).ToList() : [Cell(Of(NotebookField.House))];
        foreach (var label in houses)
        {
            if (label.Length == 0)
            {
                faults.Add("EMPTY", "house", "The row names no house.", "Name the house, or take the row out.", line, Of(NotebookField.House)!.At + 1);
                continue;
            }

            NotebookColumn? Mine(NotebookField field) => wide ? columns.FirstOrDefault(c => c.Field == field && string.Equals(c.House, label, StringComparison.OrdinalIgnoreCase)) ?? Of(field) : Of(field);
            double Number(NotebookField field, string name) => Parse(Cell(Mine(field)), name, line, (Mine(field)?.At ?? 0) + 1, faults);
            var value = columns.FirstOrDefault(c => c.Field == NotebookField.Value && (!wide || string.Equals(c.House, label, StringComparison.OrdinalIgnoreCase)) && Cell(c).Length > 0) ?? Mine(NotebookField.Value);
            var measure = value?.Measure ?? Measure(Cell(Of(NotebookField.What)), line, (Of(NotebookField.What)?.At ?? 0) + 1, faults);
            var word = Cell(Mine(NotebookField.State));
            if (!States.TryGetValue(word, out var state))
            {
                faults.Add("UNKNOWN_STATE", "state", $"\"{WeatherCells.Short(word)}\" is no state of a retrofit.", "Write in use, idle or broken.", line, Mine(NotebookField.State)!.At + 1);
                continue;
            }

            var reading = Parse(Cell(value), "reading", line, (value?.At ?? 0) + 1, faults);
            if (reading < 0)
            {
                faults.Add("OUT_OF_RANGE", "reading", FormattableString.Invariant($"A reading of {reading} is below nothing."), "Give what the counter shows.", line, (value?.At ?? 0) + 1);
                continue;
            }

            table.Add(label, measure, value?.Unit, new(0, at, reading, Number(NotebookField.Inside, "inside"), Number(NotebookField.Outside, "outside"), Number(NotebookField.SetPoint, "setPoint"), state, line, (Mine(NotebookField.Inside)?.At ?? 0) + 1), faults);
        }
    }

    private static DateTime? Time(string date, string time, int column, int line, NotebookTable table, FaultList faults)
    {
        var text = $"{date} {time}".Trim();
        if (DateTime.TryParseExact(text, Times, CultureInfo.InvariantCulture, DateTimeStyles.AllowWhiteSpaces, out var at) && at.Year is > 1950 and < 2200)
        {
            if (!text.Contains(':', StringComparison.Ordinal))
            {
                table.Note("Rows with a date alone are taken as read at 8 in the morning.");
                at = at.AddHours(8);
            }

            return at;
        }

        faults.Add("NOT_A_TIME", "time", $"\"{WeatherCells.Short(text)}\" is no time.", "Write times as 2025-11-01 08:00.", line, column);
        return null;
    }

    private static double Parse(string cell, string field, int line, int column, FaultList faults)
    {
        if (cell is "" or "-" or "NA" or "n/a" or "missed")
        {
            return double.NaN;
        }

        if (double.TryParse(cell, NumberStyles.Float | NumberStyles.AllowThousands, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value))
        {
            return value;
        }

        faults.Add("NOT_A_NUMBER", field, $"\"{WeatherCells.Short(cell)}\" is no number.", "Give a number, or leave the cell empty where nothing was read.", line, column);
        return double.NaN;
    }

    private static TrialMeasure? Measure(string word, int line, int column, FaultList faults)
    {
        switch (HeadCell.Plain(word))
        {
            case "":
                return null;
            case "meter" or "gas meter" or "counter":
                return TrialMeasure.Meter;
            case "gallons" or "gal" or "used" or "fuel used":
                return TrialMeasure.Used;
            case "burner hours" or "hours" or "hour meter":
                return TrialMeasure.BurnerHours;
            default:
                faults.Add("UNKNOWN_MEASURE", "what", $"\"{WeatherCells.Short(word)}\" is nothing that is read on a heater.", "Write meter, gallons (used since the last reading) or burner hours.", line, column);
                return null;
        }
    }
}
