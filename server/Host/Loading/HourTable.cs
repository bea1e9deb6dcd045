using System.Globalization;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Host.Loading;

/// <summary>Hours as they are read, laid out by season in local standard time. The first reading of an hour stands for it.</summary>
/// <param name="faults">Where to say what is wrong.</param>
internal sealed class HourTable(FaultList faults)
{
    private const int HoursMissingOfADay = 3;
    private readonly SortedDictionary<int, double[]> seasons = [];
    private readonly Dictionary<int, int[]> lines = [];
    private DateTime last = DateTime.MinValue;
    private DateOnly first = DateOnly.MaxValue;
    private DateOnly latest = DateOnly.MinValue;

    /// <summary>Hours with a value.</summary>
    public int Count { get; private set; }

    /// <summary>Adds a reading.</summary>
    /// <param name="at">Local standard time.</param>
    /// <param name="value">In the file's unit; NaN = missing.</param>
    /// <param name="line">Line.</param>
    /// <param name="column">Column of the time.</param>
    public void Add(DateTime at, double value, int line, int column)
    {
        if (at == last)
        {
            faults.Add("DOUBLED", "time", $"{at:yyyy-MM-dd HH:mm} stands in the file twice.", "Keep one reading a time; the first is taken.", line, column);
            return;
        }

        if (at < last)
        {
            faults.Add("OUT_OF_ORDER", "time", $"{at:yyyy-MM-dd HH:mm} comes after {last:yyyy-MM-dd HH:mm}.", "Sort the rows by time; the reading is taken where it belongs.", line, column);
        }
        else if (last != DateTime.MinValue && at - last > TimeSpan.FromHours(24))
        {
            faults.Add("GAP", "time", $"{(at - last).TotalHours - 1:0} {((at - last).TotalHours < 2.5 ? "hour" : "hours")} before {at:yyyy-MM-dd HH:mm} {((at - last).TotalHours < 2.5 ? "is" : "are")} missing.", $"Add them if you can. A season that lacks more than {WeatherYears.LongestFilledDays} days is not used.", line, column);
        }

        last = at > last ? at : last;
        var day = DateOnly.FromDateTime(at);
        (first, latest) = (day < first ? day : first, day > latest ? day : latest);
        var season = SeasonCalendar.SeasonOf(day);
        if (!seasons.TryGetValue(season, out var values))
        {
            seasons[season] = values = new double[24 * SeasonCalendar.Days(season)];
            Array.Fill(values, double.NaN);
            lines[season] = new int[values.Length];
        }

        var hour = 24 * SeasonCalendar.DayIndex(day) + at.Hour;
        if (double.IsNaN(values[hour]) && !double.IsNaN(value))
        {
            values[hour] = value;
            lines[season][hour] = line;
            Count++;
        }
    }

    /// <summary>Highest value of each day that has one, in the file's unit.</summary>
    public IEnumerable<(DateOnly Day, double High)> Highs() => seasons.SelectMany(s => Enumerable.Range(0, s.Value.Length / 24)
        .Select(d => (SeasonCalendar.FirstDay(s.Key).AddDays(d), s.Value.Skip(24 * d).Take(24).Where(v => !double.IsNaN(v)).DefaultIfEmpty(double.NaN).Max())).Where(d => !double.IsNaN(d.Item2)));

    /// <summary>Brings the hours to Celsius and lays them out.</summary>
    public WeatherRecord Finish(string layout, string unit, string words, StationPlace place)
    {
        foreach (var (season, values) in seasons)
        {
            for (var i = 0; i < values.Length; i++)
            {
                var c = TemperatureUnits.ToC(values[i], unit);
                if (!double.IsNaN(c) && !TemperatureUnits.Believable(c))
                {
                    faults.Add("OUT_OF_RANGE", "temperature", string.Create(CultureInfo.InvariantCulture, $"{values[i]:0.#} at {SeasonCalendar.FirstDay(season).AddDays(i / 24):yyyy-MM-dd} {i % 24}:00, read in {TemperatureUnits.Words(unit)}, cannot be."),
                        "An hour lies between -60 and 57 C (-76 and 135 F); check the value and the unit. It counts as missing.", lines[season][i]);
                    c = double.NaN;
                }

                values[i] = c;
            }
        }

        var laid = seasons.Select(s => new SeasonValues(s.Key, s.Value, Enumerable.Range(0, s.Value.Length / 24).Count(d => Missing(s.Value, d) > HoursMissingOfADay))).ToList();
        return new(layout, RecordStep.Hourly, laid, laid.Sum(s => s.Days - s.MissingDays), first, latest, words, place);
    }

    private static int Missing(double[] values, int day) => values.AsSpan(24 * day, 24).ToArray().Count(double.IsNaN);
}
