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
        ["idle"] = RetrofitState.Idle,
        [string.Empty] = RetrofitState.Idle,
        ["broken"] = RetrofitState.Broken,
        ["forgotten"] = RetrofitState.Broken,
    };

    /// <summary>Reads a notebook.</summary>
    /// <param name="text">Text.</param>
    /// <param name="file">Name of the file.</param>
    /// <param name="askedUnit">The user's word for the unit of temperatures; null = told by the head or the range.</param>
    /// <returns>The notebook, null when there is none, and its faults.</returns>
    public static Loaded<Notebook> Read(TextReader text, string file, string? askedUnit = null)
    {
        using var source = new SourceText(text, file);
        var (faults, rows, table, dates, width) = (new FaultList(file), 0, new NotebookTable(), new SlashDates(), 0);
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

                if (head is { Columns: var columns })
                {
                    width = cells.Length;
                    string[] names = [.. cells.Select(c => HeadCell.Of(c, w => TemperatureUnits.Of(w) is not null).Name)];
                    SheetHead.Doubled(names, columns.Where(c => c.Field != NotebookField.Passed).DistinctBy(c => names[c.At]).Select(c => c.At), line, faults);
                }

                continue;
            }

            rows++;
            if (!SheetHead.TooLong(cells, width, line, faults))
            {
                Row(head.Value.Columns, head.Value.Wide, cells, line, table, dates, faults);
            }
        }

        if (head is null && source.Refusal is null)
        {
            faults.Add("NO_HEAD", null, "No row names the columns of a trial notebook.", "Give a head: house, time, reading, inside (F), outside (F), state; or time and columns such as \"A meter (therm)\", \"A inside (F)\".", 1, 1);
        }

        if (head is null || dates.InDoubt(faults))
        {
            return new(null, rows, faults.All);
        }

        if (dates.Note is { } taken)
        {
            table.Note(taken);
        }

        var notebook = table.Finish(head.Value.Wide ? "a wide sheet with columns for each house" : "long rows", head.Value.Columns, askedUnit, faults);
        return new(notebook, rows, faults.All) { Notes = table.Notes };
    }

    private static void Row(IReadOnlyList<NotebookColumn> columns, bool wide, string[] cells, int line, NotebookTable table, SlashDates dates, FaultList faults)
    {
        string Cell(NotebookColumn? c) => c is null ? string.Empty : cells.ElementAtOrDefault(c.At)?.Trim() ?? string.Empty;
        NotebookColumn? Of(NotebookField field, string? house = null) => columns.FirstOrDefault(c => c.Field == field && c.House == house);
        var timeColumn = (Of(NotebookField.Date) ?? Of(NotebookField.Time))!.At + 1;
        dates.See(Cell(Of(NotebookField.Date) ?? Of(NotebookField.Time)), line, timeColumn);
        if (Time(Cell(Of(NotebookField.Date)), Cell(Of(NotebookField.Time)), timeColumn, line, table, faults) is not { } at)
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
                faults.Add("UNKNOWN_STATE", "state", $"\"{WeatherCells.Short(word)}\" is no state of a retrofit.", "Write in use (it worked as meant since the last reading), idle (left out on purpose) or broken (forgotten counts as broken). The row is left out.", line, Mine(NotebookField.State)!.At + 1);
                continue;
            }

            if (word.Length == 0 && Mine(NotebookField.State) is not null)
            {
                table.Note("Rows whose state is empty are taken as idle.");
            }

            var reading = Parse(Cell(value), "reading", line, (value?.At ?? 0) + 1, faults);
            if (reading < 0)
            {
                faults.Add("OUT_OF_RANGE", "reading", FormattableString.Invariant($"A reading of {reading} is below nothing."), "Give what the counter shows.", line, (value?.At ?? 0) + 1);
                continue;
            }

            table.Add(label, measure, value?.Unit, new(0, at, reading, Number(NotebookField.Inside, "inside"), Number(NotebookField.Outside, "outside"), Number(NotebookField.SetPoint, "setPoint"), state, line, Columns()), faults);
            (int Inside, int Outside, int SetPoint) Columns() => (At(NotebookField.Inside), At(NotebookField.Outside), At(NotebookField.SetPoint));
            int At(NotebookField field) => (Mine(field)?.At ?? 0) + 1;
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

        if (SheetNumber.Of(cell) is { } value)
        {
            return value;
        }

        faults.Add("NOT_A_NUMBER", field, $"\"{WeatherCells.Short(cell)}\" is no number.", SheetNumber.Remedy(cell, "Give a number, or leave the cell empty where nothing was read."), line, column);
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
