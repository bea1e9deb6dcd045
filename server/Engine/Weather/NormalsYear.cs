using static System.Math;

namespace FarmPortfolio.Engine.Weather;

/// <summary>
/// A season made from twelve monthly means where a station has no daily record. The daily means of a month take the quantiles of the distribution that
/// Erbs, Klein and Beckman's degree days imply (a logistic one), in a fixed order that runs up and down through the month; days are shaped as recorded days are.
/// It stands for no recorded winter and is marked so; how such a station gets the winters of a pool: <see cref="NormalsPool"/>.
/// </summary>
public static class NormalsYear
{
    /// <summary>Span of a day's temperature where the station tells none, K; common practice, no source.</summary>
    public const double UsualSpanK = 10;

    private const int SpellsAMonth = 3;

    /// <summary>Season of the one year that is made where no other station tells how winters differ; any without a leap day would do.</summary>
    public const int StandInSeason = 2001;

    /// <summary>Least share of the spread within a month that is left when what its months differ by from season to season is taken off.</summary>
    private const double LeastWithin = 0.5;

    /// <summary>A season from monthly means.</summary>
    /// <param name="station">Station with <see cref="WeatherStationFacts.MonthlyMeanC"/>.</param>
    /// <param name="season">Year of its July.</param>
    /// <param name="anomalyK">What the other stations' months of that season were off their own means, July first, so that all freeze together; null = none.</param>
    /// <param name="betweenK">Standard deviation of those anomalies over the seasons, July first: the formula's spread of days holds it too, so it is taken off within the month; null = none.</param>
    /// <returns>The hours, marked <see cref="WeatherYear.FromNormals"/>.</returns>
    /// <exception cref="ArgumentException">The station has not twelve finite monthly means, or there are not twelve anomalies.</exception>
    public static WeatherYear Of(WeatherStationFacts station, int season, IReadOnlyList<double>? anomalyK = null, IReadOnlyList<double>? betweenK = null)
    {
        var year = WeatherYears.FromDaily(station, season, MinMaxC(station, season, anomalyK, betweenK));
        return new(season, year.TempC, year.RadiationWPerM2, year.SunUp) { FromNormals = true };
    }

    /// <summary>The days that <see cref="Of"/> shapes into hours: the means of a month's lowest and highest average to its normal plus its anomaly.</summary>
    /// <param name="station">Station with <see cref="WeatherStationFacts.MonthlyMeanC"/>.</param>
    /// <param name="season">Year of its July.</param>
    /// <param name="anomalyK">As for <see cref="Of"/>.</param>
    /// <param name="betweenK">As for <see cref="Of"/>.</param>
    /// <returns>Lowest and highest of each day in turn from 1 July, C.</returns>
    /// <exception cref="ArgumentException">The station has not twelve finite monthly means, or there are not twelve anomalies.</exception>
    public static double[] MinMaxC(WeatherStationFacts station, int season, IReadOnlyList<double>? anomalyK = null, IReadOnlyList<double>? betweenK = null)
    {
        if (station.MonthlyMeanC is not { Count: 12 } normals || !normals.All(double.IsFinite))
        {
            throw new ArgumentException("a station of normals needs twelve monthly means in degrees Celsius, January first", nameof(station));
        }

        Twelve(anomalyK, nameof(anomalyK));
        Twelve(betweenK, nameof(betweenK));
        var spread = DegreeDays.SpreadOfMonthsK(normals);
        var half = (station.DailySpanK ?? UsualSpanK) / 2;
        var values = new double[2 * SeasonCalendar.Days(season)];
        var at = 0;
        for (var m = 0; m < 12; m++)
        {
            var calendar = SeasonCalendar.CalendarMonth(m);
            var days = DateTime.DaysInMonth(calendar >= 7 ? season : season + 1, calendar);
            var scale = DegreeDays.SpreadOfMonthK(normals[calendar - 1], spread) * Sqrt(days) / (2 * DegreeDays.ErbsSlope);
            scale *= Within(betweenK?[m] ?? 0, scale * PI / Sqrt(3));
            foreach (var rank in Order(days))
            {
                var p = (rank + 0.5) / days;
                var mean = normals[calendar - 1] + (anomalyK?[m] ?? 0) + scale * Log(p / (1 - p));
                (values[at], values[at + 1]) = (mean - half, mean + half);
                at += 2;
            }
        }

        return values;
    }

    /// <summary>Share of the spread of days that lies within a month: variances add.</summary>
    private static double Within(double betweenK, double allK) => Max(LeastWithin, Sqrt(Max(0, 1 - betweenK * betweenK / (allK * allK))));

    private static void Twelve(IReadOnlyList<double>? months, string name)
    {
        if (months is not null && months.Count != 12)
        {
            throw new ArgumentException($"twelve months are needed, July first, not {months.Count}", name);
        }
    }

    /// <summary>Ranks of a month's days: three spells, each falling and rising again, so that cold days stand together.</summary>
    private static int[] Order(int days) =>
        [.. Enumerable.Range(0, days)
            .Select(d => (Day: d, Height: Sin(2 * PI * SpellsAMonth * (d + 0.5) / days) + 1e-3 * d))
            .OrderBy(x => x.Height).Select((x, rank) => (x.Day, Rank: rank)).OrderBy(x => x.Day).Select(x => x.Rank)];
}
