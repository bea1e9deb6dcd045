using System.Globalization;
using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Units;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Host.Loading;

/// <summary>
/// What a dealer's sheet tells beside or in place of quantities: degree days since the last fill, and the K-factor, degree days that a gallon lasts. Quantity = degree days / K, known to 15 % (common practice, no source).
/// Degree days alone move nothing: the balance meets the station's own hours; they are only held against the station's.
/// </summary>
/// <param name="winters">Weather of the farm's station by season year.</param>
public sealed class DealerSheet(IReadOnlyDictionary<int, WeatherYear> winters)
{
    /// <summary>Spread of a quantity reckoned from degree days, share.</summary>
    public const double Spread = 0.15;

    /// <summary>Base that is taken where a sheet tells none, F.</summary>
    public const double UsualBaseF = 65;

    private const double LeastBaseF = 40;
    private const double MostBaseF = 75;
    private const double MostMiss = 0.20;
    private readonly HashSet<string> notes = [];
    private DateOnly? before;

    /// <summary>What was taken for granted.</summary>
    public IReadOnlyList<string> Notes => [.. notes];

    /// <summary>A row whose quantity only degree days and a K-factor tell.</summary>
    /// <param name="row">What the row says.</param>
    /// <param name="wrong">Told what is wrong: code, column, message, remedy.</param>
    /// <returns>The entry; null with a fault.</returns>
    internal FuelEntry? Reckoned(DealerRow row, Action<string, string, string, string> wrong)
    {
        var from = row.From ?? before?.AddDays(1);
        before = row.To;
        if (!(row.K is > 0.05 and < 500))
        {
            wrong("OUT_OF_RANGE", "k", $"A K-factor of {row.K:0.###} degree days a {row.Unit} cannot be.", "Give degree days (F) that one unit of fuel lasts, such as 4.5 for a gallon; a heated plastic house uses a gallon in few.");
            return null;
        }

        if (from is not { } first || first > row.To)
        {
            wrong("NO_FROM", "from", "Where the degree days begin is not told.", "Give the day of the fill before, or put the sheet's rows in order of their dates.");
            return null;
        }

        if (Base(row.BaseF, wrong) is not { } baseF)
        {
            return null;
        }

        if ((row.DegreeDaysF ?? Station(first, row.To, baseF)) is not { } days)
        {
            wrong("NO_WEATHER", "hdd", $"The sheet tells no degree days, and the station's record does not reach {first:yyyy-MM-dd} to {row.To:yyyy-MM-dd}.", "Give the degree days, or bring in the station's weather for those days.");
            return null;
        }

        if (!(days >= 0 && days < 20000))
        {
            wrong("OUT_OF_RANGE", "hdd", $"{days:0.#} degree days cannot be.", "Give degree days in F since the last fill, 0 or more.");
            return null;
        }

        var quantity = days / row.K;
        var note = string.Create(CultureInfo.InvariantCulture, $"reckoned from {days:0} degree days (base {baseF:0} F{(row.DegreeDaysF is null ? ", of the station" : string.Empty)}) over a K-factor of {row.K:0.##}{(row.Note is { } more ? "; " + more : string.Empty)}");
        return new(FuelEntryKind.Total, first, row.To, quantity, row.Unit, quantity * HeatingValues.KwhPerUnit(row.Fuel, row.Unit)!.Value, Note: note, SdShare: Spread);
    }

    /// <summary>A row that tells its quantity: its degree days, if any, are held against the station's.</summary>
    /// <param name="from">First day; null = the day after the row before.</param>
    /// <param name="to">Last day.</param>
    /// <param name="degreeDaysF">Degree days told.</param>
    /// <param name="baseF">Base told.</param>
    /// <param name="notice">Told where they differ: code, column, message, remedy.</param>
    internal void Measured(DateOnly? from, DateOnly to, double? degreeDaysF, double? baseF, Action<string, string, string, string> notice)
    {
        var first = from ?? before?.AddDays(1);
        before = to;
        if (degreeDaysF is not { } told)
        {
            return;
        }

        notes.Add("The sheet's degree days are not used: the station's own hours are.");
        if (first is { } day && day <= to && Base(baseF, notice) is { } at && Station(day, to, at) is { } station && Math.Abs(told - station) > MostMiss * Math.Max(station, 50))
        {
            notice("DEGREE_DAYS_DIFFER", "hdd", string.Create(CultureInfo.InvariantCulture, $"The sheet tells {told:0} degree days, the farm's station {station:0} (base {at:0} F)."), "Check the dates, the base and the station; the quantity is kept.");
        }
    }

    private double? Base(double? told, Action<string, string, string, string> wrong)
    {
        if (told is not { } at)
        {
            notes.Add("The base of the degree days is not told: 65 F is taken. Ask the dealer; at another base the same K-factor gives other gallons.");
            return UsualBaseF;
        }

        if (at is >= LeastBaseF and <= MostBaseF)
        {
            return at;
        }

        wrong("OUT_OF_RANGE", "base", $"A base of {at:0.#} is outside 40 to 75 F.", "Give the base in Fahrenheit, such as 65; in Celsius 18.3 is 65 F.");
        return null;
    }

    /// <summary>Degree days below a base over whole days, F; null where a day's weather is not on record.</summary>
    private double? Station(DateOnly from, DateOnly to, double baseF)
    {
        var (sum, baseC) = (0.0, Us.C(baseF));
        for (var day = from; day <= to; day = day.AddDays(1))
        {
            if (!winters.TryGetValue(SeasonCalendar.SeasonOf(day), out var year))
            {
                return null;
            }

            sum += Math.Max(0, baseC - year.DayMeanC(SeasonCalendar.DayIndex(day))) / Us.DegreeK;
        }

        return sum;
    }
}

/// <summary>What a row of a dealer's sheet says.</summary>
/// <param name="Fuel">Fuel.</param>
/// <param name="From">First day; null = the day after the row before.</param>
/// <param name="To">Last day.</param>
/// <param name="K">Degree days (F) a unit lasts.</param>
/// <param name="DegreeDaysF">Degree days; null = by the station.</param>
/// <param name="BaseF">Base, F; null = not told.</param>
/// <param name="Unit">Unit of the fuel.</param>
/// <param name="Note">Remark.</param>
internal sealed record DealerRow(FuelKind Fuel, DateOnly? From, DateOnly To, double K, double? DegreeDaysF, double? BaseF, string Unit, string? Note);
