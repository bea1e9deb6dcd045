using System.Globalization;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Host.Loading;

/// <summary>A month's row in the file's unit.</summary>
/// <param name="Month">1 = January.</param>
/// <param name="Mean">Mean; null = could not be read.</param>
/// <param name="Span">Highest less lowest; null = not told.</param>
/// <param name="DegreeDays">Heating degree days; null = not told.</param>
/// <param name="Line">Line.</param>
/// <param name="Column">Column of the mean, from 1.</param>
/// <param name="DegreeDayColumn">Column of the degree days, from 1.</param>
internal sealed record NormalsRow(int Month, double? Mean, double? Span, double? DegreeDays, int Line, int Column, int DegreeDayColumn);

/// <summary>Twelve months as they are read, then checked: each once, one unit, no month out of line with its neighbours.</summary>
/// <param name="faults">Where to say what is wrong.</param>
internal sealed class NormalsTable(FaultList faults)
{
    // the warmest month of a place that heats houses: 5 to 38 C, 41 to 100 F; the two never meet (common practice, no source)
    private const double WarmestC = 38;
    private const double ColdestSummerC = 5;
    private const double ColdestC = -60;

    /// <summary>Farthest a month may lie from the middle of its two neighbours, K; common practice, no source: the sharpest bend of a real place's year is half of it.</summary>
    private const double OutOfLineK = 12;

    /// <summary>Base of degree days where nobody says another, C: 65 F.</summary>
    private const double UsualBaseC = 55.0 / 3;
    private const double DegreeDaysAgree = 0.15;
    private const double FewDegreeDaysK = 30;
    private readonly SortedDictionary<int, NormalsRow> rows = [];
    private bool twice;

    /// <summary>Unit named by the head; null = none.</summary>
    public string? Told { get; set; }

    /// <summary>Line and column of the head's unit.</summary>
    public (int? Line, int? Column) ToldAt { get; set; }

    /// <summary>Whether the head says that degree days are in Fahrenheit; null = it says nothing, and they go by the temperatures.</summary>
    public bool? DegreesInF { get; set; }

    /// <summary>Adds a month.</summary>
    public void Add(NormalsRow row, int monthColumn)
    {
        if (rows.TryGetValue(row.Month, out var known))
        {
            twice = true;
            faults.Add("DOUBLED", "month", $"{Name(row.Month)} stands in the file twice, first in line {known.Line}.", "Keep one row a month.", row.Line, monthColumn);
            return;
        }

        rows[row.Month] = row;
    }

    /// <summary>Checks the months.</summary>
    /// <param name="asked">The user's word for the unit.</param>
    /// <returns>The normals; null where one of twelve is missing or in doubt.</returns>
    public NormalsRecord? Finish(string? asked)
    {
        var missing = Enumerable.Range(1, 12).Where(m => !rows.ContainsKey(m)).Select(Name).ToList();
        if (rows.Count == 0)
        {
            if (!faults.Has("TOO_MANY_CELLS") && !faults.Has("NOT_A_MONTH"))
            {
                faults.Add("EMPTY", null, "The file holds no month.", "Give twelve rows, a month each.");
            }

            return null;
        }

        if (missing.Count > 0)
        {
            faults.Add("MISSING_MONTH", "month", $"{string.Join(", ", missing)} {(missing.Count == 1 ? "is" : "are")} not there.", "Give each of the twelve months a row.", rows.Values.Max(r => r.Line));
        }

        var read = rows.Values.Where(r => r.Mean is not null).ToList();
        if (read.Count < 12 || Chosen(asked, read) is not { } unit)
        {
            return null;
        }

        var means = read.Select(r => TemperatureUnits.ToC(r.Mean!.Value, unit.Unit)).ToArray();
        if (!InRange(read, means, unit.Unit) || !InLine(read, means, unit.Unit) || twice)
        {
            return null;
        }

        var looked = LookAtDegreeDays(read, means, DegreesInF ?? unit.Unit == "F");
        return Span(read, unit.Unit) is var (span, sound) && sound ? new(means, span, unit.Words, looked) : null;
    }

    private (string Unit, string Words)? Chosen(string? asked, List<NormalsRow> read)
    {
        // a month or two in the other unit must not speak for the file
        var sorted = read.Select(r => r.Mean!.Value).Order().ToArray();
        var (high, third) = (sorted[^1], sorted[^Math.Min(3, sorted.Length)]);
        string? range = third > 110 ? null : third > WarmestC ? "F" : third >= ColdestSummerC ? "C" : null;
        var word = TemperatureUnits.Of(asked) ?? TemperatureUnits.Of(Told);
        if (word is null)
        {
            if (range is null)
            {
                faults.Add("UNIT_UNKNOWN", "unit", string.Create(CultureInfo.InvariantCulture, $"The warmest month has {high:0.#} and the head names no unit, so it cannot be told."), "Choose the unit, or write it in the head: mean temperature (F).", ToldAt.Line, ToldAt.Column);
                return null;
            }

            return (range, $"{TemperatureUnits.Words(range)}, by the range of the months");
        }

        if (word is "F" or "C" && range is not null && range != word)
        {
            var (line, column) = TemperatureUnits.Of(asked) is null ? ToldAt : (null, null);
            faults.Add("WRONG_UNIT", "unit", string.Create(CultureInfo.InvariantCulture, $"{(TemperatureUnits.Of(asked) is null ? "The head says" : "You said")} {TemperatureUnits.Words(word)}, but the third warmest month has {third:0.#}: these are degrees {TemperatureUnits.Words(range)}."),
                $"Choose {TemperatureUnits.Words(range)} as the unit, or mend the head.", line, column);
            return null;
        }

        return (word, $"{TemperatureUnits.Words(word)}, {(TemperatureUnits.Of(asked) is null ? "by the head" : "as you said")}");
    }

    private bool InRange(List<NormalsRow> read, double[] meanC, string unit)
    {
        var sound = true;
        for (var m = 0; m < 12; m++)
        {
            if (meanC[m] is >= ColdestC and <= WarmestC)
            {
                continue;
            }

            sound = false;
            var inF = unit == "C" && Engine.Units.Us.C(read[m].Mean!.Value) is >= ColdestC and <= WarmestC;
            faults.Add(inF ? "MIXED_UNIT" : "OUT_OF_RANGE", "mean", string.Create(CultureInfo.InvariantCulture, $"{Name(read[m].Month)} has {read[m].Mean:0.#}, read in {TemperatureUnits.Words(unit)}; no month's mean is that.{(inF ? $" It looks like Fahrenheit: {TemperatureUnits.Both(Engine.Units.Us.C(read[m].Mean!.Value))}." : string.Empty)}"),
                inF ? "Bring the whole column to one unit." : "A month's mean lies between -60 and 38 C (-76 and 100 F); check the value and the unit.", read[m].Line, read[m].Column);
        }

        return sound;
    }

    /// <summary>Months far off the middle of their neighbours: in the other unit, or a slip. The farthest is looked at first and then taken for mended, so that it does not throw its neighbours out.</summary>
    private bool InLine(List<NormalsRow> read, double[] meanC, string unit)
    {
        var (means, sound) = (meanC.ToArray(), true);
        for (var looked = 0; looked < 6; looked++)
        {
            double Middle(int m) => (means[(m + 11) % 12] + means[(m + 1) % 12]) / 2;
            var m = Enumerable.Range(0, 12).MaxBy(i => Math.Abs(means[i] - Middle(i)));
            if (Math.Abs(means[m] - Middle(m)) <= OutOfLineK)
            {
                break;
            }

            sound = false;
            var (value, other) = (read[m].Mean!.Value, unit == "F" ? "C" : "F");
            var mixed = unit is "F" or "C" && Math.Abs(TemperatureUnits.ToC(value, other) - Middle(m)) < OutOfLineK / 2;
            faults.Add(mixed ? "MIXED_UNIT" : "OUT_OF_LINE", "mean", string.Create(CultureInfo.InvariantCulture, $"{Name(read[m].Month)} has {value:0.#}, but the months beside it lead one to expect about {TemperatureUnits.Both(Middle(m))}.{(mixed ? $" It looks like {TemperatureUnits.Words(other)} in a {TemperatureUnits.Words(unit)} column." : string.Empty)}"),
                mixed ? "Bring the whole column to one unit." : "Check the value, its sign and its point.", read[m].Line, read[m].Column);
            means[m] = Middle(m);
        }

        return sound;
    }

    private (double? K, bool Sound) Span(List<NormalsRow> read, string unit)
    {
        if (read.Any(r => r.Span is null))
        {
            return (null, !faults.Has("MISSING") && !faults.Has("NOT_A_NUMBER"));
        }

        var perK = unit switch { "F" => 1.8, "tenths" => 10, _ => 1.0 };
        foreach (var row in read.Where(r => r.Span / perK is not (> 0 and <= 30)))
        {
            faults.Add("MIN_ABOVE_MAX", "low", string.Create(CultureInfo.InvariantCulture, $"{Name(row.Month)}: the usual highest lies {row.Span:0.#} over the usual lowest."), "The highest lies over the lowest, by no more than 30 K (54 F); check both.", row.Line, row.Column);
        }

        return (read.Average(r => r.Span!.Value) / perK, !faults.Has("MIN_ABOVE_MAX"));
    }

    /// <summary>Degree days beside the means say whether both are of one place and one unit; they are a check and are not kept.</summary>
    private bool LookAtDegreeDays(List<NormalsRow> read, double[] meanC, bool inF)
    {
        var spread = DegreeDays.SpreadOfMonthsK(meanC);
        foreach (var row in read.Where(r => r.DegreeDays is not null))
        {
            var (told, formula) = (row.DegreeDays!.Value / (inF ? 1.8 : 1), DegreeDays.OfMonthK(meanC[row.Month - 1], DateTime.DaysInMonth(2023, row.Month), UsualBaseC, spread));
            if (Math.Abs(told - formula) > Math.Max(FewDegreeDaysK, DegreeDaysAgree * formula))
            {
                var f = inF ? 1.8 : 1;
                faults.Add("DEGREE_DAYS_DIFFER", "degree days", string.Create(CultureInfo.InvariantCulture, $"{Name(row.Month)} has {row.DegreeDays:0} heating degree days; its mean leads to about {f * formula:0} below 65 F (18.3 C)."),
                    "Check the month's mean, the base and the unit of the degree days. They are only looked at: studies reckon from the means.", row.Line, row.DegreeDayColumn);
            }
        }

        return read.Any(r => r.DegreeDays is not null);
    }

    private static string Name(int month) => CultureInfo.InvariantCulture.DateTimeFormat.GetMonthName(month);
}
