using FarmPortfolio.Engine.Trials;

namespace FarmPortfolio.Host.Loading;

/// <summary>Lines of a notebook as they are read, then checked and turned to SI.</summary>
internal sealed class NotebookTable
{
    private const double ColdestHouseF = 38;
    private const double HottestHouseC = 38;
    private readonly List<(string Label, TrialMeasure? Measure, string? Unit, List<NotebookLine> Lines)> houses = [];
    private readonly List<double> last = [];
    private readonly SortedSet<string> notes = new(StringComparer.Ordinal);

    /// <summary>What was taken for granted.</summary>
    public IReadOnlyList<string> Notes => [.. notes];

    /// <summary>Says what was taken for granted.</summary>
    public void Note(string note) => notes.Add(note);

    /// <summary>Adds a line.</summary>
    public void Add(string label, TrialMeasure? measure, string? unit, NotebookLine line, FaultList faults)
    {
        var at = houses.FindIndex(h => h.Label.Equals(label, StringComparison.OrdinalIgnoreCase));
        if (at < 0)
        {
            at = houses.Count;
            houses.Add((label, measure, unit, []));
            last.Add(double.NaN);
        }

        var house = houses[at];
        if (measure is not null && house.Measure is not null && measure != house.Measure)
        {
            faults.Add("TWO_MEASURES", "what", $"House {house.Label} is read in two ways, first in line {house.Lines[0].Line}.", "Read one thing on a house throughout; give the other in a notebook of its own.", line.Line, 1);
            return;
        }

        houses[at] = house with { Measure = house.Measure ?? measure, Unit = house.Unit ?? unit };
        if (house.Lines.Count > 0 && line.At <= house.Lines[^1].At)
        {
            faults.Add(line.At == house.Lines[^1].At ? "DOUBLED" : "TIME_BACKWARDS", "time", FormattableString.Invariant($"House {house.Label}: {line.At:yyyy-MM-dd HH:mm} does not come after {house.Lines[^1].At:yyyy-MM-dd HH:mm} in line {house.Lines[^1].Line}."), "Put a house's rows in order of time; correct the date, or take the row out.", line.Line, 1);
            return;
        }

        if (house.Measure is not TrialMeasure.Used && line.Value < last[at])
        {
            faults.Add("NEW_SEGMENT", "reading", FormattableString.Invariant($"House {house.Label}: the counter falls from {last[at]:0.##} to {line.Value:0.##}."), "If it was changed or rolled over, a new segment begins here, as taken; if it is a slip, correct it.", line.Line, 1);
        }

        last[at] = double.IsNaN(line.Value) ? last[at] : line.Value;
        house.Lines.Add(line with { House = at });
    }

    /// <summary>The notebook in SI; null where nothing was read or a unit is in doubt.</summary>
    public Notebook? Finish(string layout, IReadOnlyList<NotebookColumn> columns, string? asked, FaultList faults)
    {
        if (houses.Count < 2 || houses.All(h => h.Lines.Count < 2))
        {
            faults.Add("EMPTY", null, houses.Count < 2 ? "The notebook holds fewer than two houses." : "No house has two readings.", "Give the control and a treated house, each with a reading at the start and after.");
            return null;
        }

        var told = asked ?? columns.Where(c => c.Field is NotebookField.Inside or NotebookField.SetPoint or NotebookField.Outside).Select(c => TemperatureUnits.Of(c.Unit)).FirstOrDefault(u => u is not null);
        var inside = houses.SelectMany(h => h.Lines).Select(l => double.IsNaN(l.Inside) ? l.SetPoint : l.Inside).Where(v => !double.IsNaN(v)).Order().ToList();
        var unit = told ?? (inside.Count > 0 && inside[inside.Count / 2] > HottestHouseC ? "F" : "C");
        if (told is null)
        {
            Note($"No unit stands by the temperatures; by their range they are taken as {TemperatureUnits.Words(unit)}.");
        }

        var sure = true;
        foreach (var house in houses)
        {
            var own = house.Lines.Select(l => double.IsNaN(l.Inside) ? l.SetPoint : l.Inside).Where(v => !double.IsNaN(v)).Order().ToList();
            var middle = own.Count > 0 ? own[own.Count / 2] : double.NaN;
            if (unit == "F" && middle < ColdestHouseF || unit == "C" && middle > HottestHouseC)
            {
                var (looks, is_) = unit == "F" ? ("Celsius", "Fahrenheit") : ("Fahrenheit", "Celsius");
                faults.Add(unit == "F" ? "LOOKS_LIKE_C" : "LOOKS_LIKE_F", "inside", FormattableString.Invariant($"House {house.Label}: inside temperatures about {middle:0} are told to be {is_}; no heated house is kept so. They look like {looks}."), $"Write the head as inside ({looks[0]}), or choose {looks}; nothing was turned.", house.Lines[0].Line, house.Lines[0].Columns.Inside);
                sure = false;
            }
        }

        if (!sure)
        {
            return null;
        }

        var ranges = new NotebookRanges(unit, faults);
        return new(layout, [.. houses.Select(h => new NotebookHouse(h.Label, h.Measure ?? (HeadCell.Plain(h.Unit ?? string.Empty) is "h" or "hours" ? TrialMeasure.BurnerHours : TrialMeasure.Meter), h.Unit, h.Lines.Count, h.Lines.Any(l => l.State != RetrofitState.Idle)))],
            [.. houses.SelectMany(h => h.Lines.Select(l => ranges.Reading(h.Label, l)))]);
    }
}
