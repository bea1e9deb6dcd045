using static System.Math;

namespace FarmPortfolio.Engine.Weather;

/// <summary>
/// A season made from twelve monthly means where a station has no daily record. The daily means of a month take the quantiles of the distribution that
/// Erbs, Klein and Beckman's degree days imply (a logistic one), in a fixed order that runs up and down through the month; days are shaped as recorded days are.
/// It stands for a middling winter, not for any recorded one, and is marked so.
/// </summary>
public static class NormalsYear
{
    /// <summary>Span of a day's temperature where the station tells none, K; common practice, no source.</summary>
    public const double UsualSpanK = 10;

    private const int SpellsAMonth = 3;

    /// <summary>A season from monthly means.</summary>
    /// <param name="station">Station with <see cref="WeatherStationFacts.MonthlyMeanC"/>.</param>
    /// <param name="season">Year of its July.</param>
    /// <param name="anomalyK">What a neighbour's months of that season were off their own means, July first, so that both freeze together; null = none.</param>
    /// <returns>The hours, marked <see cref="WeatherYear.FromNormals"/>.</returns>
    /// <exception cref="ArgumentException">The station has not twelve finite monthly means, or there are not twelve anomalies.</exception>
    public static WeatherYear Of(WeatherStationFacts station, int season, IReadOnlyList<double>? anomalyK = null)
    {
        if (station.MonthlyMeanC is not { Count: 12 } normals || !normals.All(double.IsFinite))
        {
            throw new ArgumentException("a station of normals needs twelve monthly means in degrees Celsius, January first", nameof(station));
        }

        if (anomalyK is not null && anomalyK.Count != 12)
        {
            throw new ArgumentException($"twelve anomalies are needed, July first, not {anomalyK.Count}", nameof(anomalyK));
        }

        var spread = DegreeDays.SpreadOfMonthsK(normals);
        var half = (station.DailySpanK ?? UsualSpanK) / 2;
        var values = new double[2 * SeasonCalendar.Days(season)];
        var at = 0;
        for (var m = 0; m < 12; m++)
        {
            var calendar = SeasonCalendar.CalendarMonth(m);
            var days = DateTime.DaysInMonth(calendar >= 7 ? season : season + 1, calendar);
            var scale = DegreeDays.SpreadOfMonthK(normals[calendar - 1], spread) * Sqrt(days) / (2 * DegreeDays.ErbsSlope);
            foreach (var rank in Order(days))
            {
                var p = (rank + 0.5) / days;
                var mean = normals[calendar - 1] + (anomalyK?[m] ?? 0) + scale * Log(p / (1 - p));
                (values[at], values[at + 1]) = (mean - half, mean + half);
                at += 2;
            }
        }

        var year = WeatherYears.FromDaily(station, season, values);
        return new(season, year.TempC, year.RadiationWPerM2, year.SunUp) { FromNormals = true };
    }

    /// <summary>Ranks of a month's days: three spells, each falling and rising again, so that cold days stand together.</summary>
    private static int[] Order(int days) =>
        [.. Enumerable.Range(0, days)
            .Select(d => (Day: d, Height: Sin(2 * PI * SpellsAMonth * (d + 0.5) / days) + 1e-3 * d))
            .OrderBy(x => x.Height).Select((x, rank) => (x.Day, Rank: rank)).OrderBy(x => x.Day).Select(x => x.Rank)];
}
