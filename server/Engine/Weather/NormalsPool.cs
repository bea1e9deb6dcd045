using static System.Math;

namespace FarmPortfolio.Engine.Weather;

/// <summary>
/// Winters of a station that is known by monthly normals only, for the seasons of a pool: its normals plus what each month of the season was off its own mean over the pool at the
/// stations that have a record, all stations being drawn from the same season. Averaging over stations evens departures out, so they are stretched back to what one station shows.
/// Over the pool the departures of a month add up to nothing: its mean is the normal. Common practice, no source; days within the month: <see cref="NormalsYear"/>.
/// </summary>
/// <param name="DepartureK">By season in the pool's order, twelve months each, July first.</param>
/// <param name="BetweenK">Their standard deviation over the pool, July first.</param>
/// <param name="Stations">Stations with a record that they are read from.</param>
public sealed record NormalsPool(IReadOnlyList<double[]> DepartureK, IReadOnlyList<double> BetweenK, int Stations)
{
    /// <summary>Departures of the stations with a record.</summary>
    /// <param name="recorded">Winters of the pool in its order, a row a station; one row at least, all of one length.</param>
    /// <returns>The departures.</returns>
    /// <exception cref="ArgumentException">There is no station, or no winter.</exception>
    public static NormalsPool Of(IReadOnlyList<IReadOnlyList<WeatherYear>> recorded)
    {
        if (recorded.Count == 0 || recorded[0].Count == 0)
        {
            throw new ArgumentException("departures need a station with a record and a winter of it", nameof(recorded));
        }

        var (winters, stations) = (recorded[0].Count, recorded.Count);
        var own = recorded.Select(Departures).ToList();
        var mean = Enumerable.Range(0, winters).Select(_ => new double[12]).ToList();
        var (single, averaged) = (0.0, 0.0);
        for (var w = 0; w < winters; w++)
        {
            for (var m = 0; m < 12; m++)
            {
                // in the order of the values: stations known by other identifiers give the same bits
                var all = own.Select(o => o[w][m]).Order().ToArray();
                mean[w][m] = all.Sum() / stations;
                single += all.Sum(d => d * d) / stations;
                averaged += mean[w][m] * mean[w][m];
            }
        }

        var stretch = averaged > 0 ? Sqrt(single / averaged) : 1;
        var departures = mean.Select(months => months.Select(d => stretch * d).ToArray()).ToList();
        return new(departures, [.. Enumerable.Range(0, 12).Select(m => Sqrt(departures.Sum(d => d[m] * d[m]) / winters))], stations);
    }

    /// <summary>The winters of a station of normals.</summary>
    /// <param name="station">Station with <see cref="WeatherStationFacts.MonthlyMeanC"/>.</param>
    /// <param name="pool">Season years of the pool, in its order.</param>
    /// <returns>One a season, marked <see cref="WeatherYear.FromNormals"/>.</returns>
    /// <exception cref="ArgumentException">The station has not twelve finite monthly means, or the pool is another.</exception>
    public IReadOnlyList<WeatherYear> Years(WeatherStationFacts station, IReadOnlyList<int> pool) => pool.Count == DepartureK.Count
        ? [.. pool.Select((season, w) => NormalsYear.Of(station, season, DepartureK[w], BetweenK))]
        : throw new ArgumentException($"the pool has {pool.Count} winters, the departures {DepartureK.Count}", nameof(pool));

    private static List<double[]> Departures(IReadOnlyList<WeatherYear> years)
    {
        var months = years.Select(y => Enumerable.Range(0, 12).Select(y.MonthMeanC).ToArray()).ToList();
        var mean = Enumerable.Range(0, 12).Select(m => months.Sum(y => y[m]) / months.Count).ToArray();
        return [.. months.Select(y => y.Select((t, m) => t - mean[m]).ToArray())];
    }
}
