using System.Globalization;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Published.Weather;

/// <summary>NOAA hourly normals 1981-2010 of Seattle, a U.S. Government work, as the npm package vega-datasets 3.2.1 carries them (date and temperature columns), laid July to June.</summary>
internal static class SeattleNormals
{
    public const int Season = 2009;

    public static WeatherStationFacts Station { get; } = new() { LatitudeDeg = 47.44, LongitudeDeg = -122.31, ElevationM = 130 };

    /// <summary>8,760 hours from 1 July; the record lacks the first hour of January.</summary>
    public static double[] HourlyC { get; } = Read();

    /// <summary>Lowest and highest of each day in turn.</summary>
    public static double[] MinMaxC() =>
        [.. HourlyC.Chunk(24).SelectMany(day => new[] { day.Where(double.IsFinite).Min(), day.Where(double.IsFinite).Max() })];

    private static double[] Read()
    {
        var hours = new double[8760];
        Array.Fill(hours, double.NaN);
        foreach (var line in File.ReadLines(Path.Combine(AppContext.BaseDirectory, "data", "noaa-seattle-hourly-normals-1981-2010.csv")).Skip(1))
        {
            var cells = line.Split(',');
            var at = DateTime.ParseExact(cells[0], "yyyy-MM-dd'T'HH:mm:ss", CultureInfo.InvariantCulture);
            var day = (at.DayOfYear - 1 + 365 - 181) % 365;
            hours[24 * day + at.Hour] = double.Parse(cells[1], CultureInfo.InvariantCulture);
        }

        return hours;
    }
}
