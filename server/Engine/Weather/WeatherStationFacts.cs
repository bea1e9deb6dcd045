namespace FarmPortfolio.Engine.Weather;

/// <summary>Step of a record.</summary>
public enum RecordStep
{
    /// <summary>Tmin and Tmax a day, two columns in turn.</summary>
    Daily,

    /// <summary>Air temperature an hour.</summary>
    Hourly,

    /// <summary>Monthly normals only.</summary>
    MonthlyNormals,
}

/// <summary>One recorded season of a station, July to June.</summary>
/// <param name="Season">Year of its July.</param>
/// <param name="Step">Daily or hourly.</param>
/// <param name="Sha256">Name of the recorded values: little-endian float64 degrees Celsius, NaN = missing; daily Tmin and Tmax of each day in turn from 1 July, hourly from 1 July 00:00 local standard time.</param>
/// <param name="Days">Days in the season, 365 or 366.</param>
/// <param name="MissingDays">Days without a value.</param>
/// <param name="Source">Who recorded it.</param>
public sealed record StationSeason(int Season, RecordStep Step, string Sha256, int Days, int MissingDays, string? Source = null);

/// <summary>A place with a weather record.</summary>
public sealed record WeatherStationFacts
{
    /// <summary>Latitude, degrees north.</summary>
    public required double LatitudeDeg { get; init; }

    /// <summary>Longitude, degrees east.</summary>
    public required double LongitudeDeg { get; init; }

    /// <summary>Height above sea level, metres.</summary>
    public required double ElevationM { get; init; }

    /// <summary>Hargreaves coefficient of radiation, 0.16 inland, 0.19 at a coast; null = 0.16 (FAO-56).</summary>
    public double? HargreavesKrs { get; init; }

    /// <summary>Recorded seasons, oldest first.</summary>
    public IReadOnlyList<StationSeason> Seasons { get; init; } = [];

    /// <summary>Monthly mean temperatures January to December, degrees Celsius, where only normals are known.</summary>
    public IReadOnlyList<double>? MonthlyMeanC { get; init; }

    /// <summary>Span of a usual day, Tmax - Tmin, K, where only normals are known; null = 10 K.</summary>
    public double? DailySpanK { get; init; }

    /// <summary>Whether the station is known by its monthly normals only: no winter of it was recorded. A method, so that it is never written among the facts.</summary>
    /// <returns>True where it has normals and no season.</returns>
    public bool IsNormalsOnly() => MonthlyMeanC is not null && Seasons.Count == 0;
}
