using System.Globalization;
using FarmPortfolio.Engine.Units;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Published;

/// <summary>
/// NOAA GHCN-Daily, USW00094728 Central Park, 2009-01-01 to 2024-02-29, public domain. Seasons 2009-10 to 2022-23 are whole.
/// </summary>
internal static class CentralPark
{
    private static readonly Lazy<IReadOnlyList<(DateOnly Day, double MaxF, double MinF)>> Record = new(Read);

    public static IReadOnlyList<(DateOnly Day, double MaxF, double MinF)> Days => Record.Value;

    public static IReadOnlyList<int> Seasons { get; } = [.. Enumerable.Range(2009, 14)];

    /// <summary>The record as it is (0 F lower, 40.8 N), or moved north; hours by the engine's shape of the day or by the cosine.</summary>
    public static IReadOnlyList<WeatherYear> Years(double latitudeDeg = 40.78, double colderF = 0, bool cosine = false)
    {
        var station = new WeatherStationFacts { LatitudeDeg = latitudeDeg, LongitudeDeg = -73.97, ElevationM = 40 };
        return [.. Seasons.Select(season =>
        {
            var values = Days.Where(d => SeasonCalendar.SeasonOf(d.Day) == season).SelectMany(d => new[] { Us.C(d.MinF - colderF), Us.C(d.MaxF - colderF) }).ToArray();
            var year = WeatherYears.FromDaily(station, season, values);
            return cosine ? CosineDay.Of(year, latitudeDeg, values) : year;
        })];
    }

    private static List<(DateOnly Day, double MaxF, double MinF)> Read()
    {
        var lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "data", "ghcn-central-park-USW00094728-daily-2009-2024.csv"));
        var head = lines[0].Split(',').Select(c => c.Trim('"')).ToList();
        var (date, max, min) = (head.IndexOf("DATE"), head.IndexOf("TMAX"), head.IndexOf("TMIN"));
        return [.. lines.Skip(1).Select(line =>
        {
            // the station's name holds a comma: cells are counted from the end
            var cells = line.Split(',').Select(c => c.Trim('"')).ToList();
            cells = cells[(cells.Count - head.Count)..];
            return (DateOnly.ParseExact(cells[date], "yyyy-MM-dd", CultureInfo.InvariantCulture), double.Parse(cells[max], CultureInfo.InvariantCulture), double.Parse(cells[min], CultureInfo.InvariantCulture));
        })];
    }
}
