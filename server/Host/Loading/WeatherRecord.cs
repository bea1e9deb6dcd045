using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Host.Loading;

/// <summary>A recorded season as it will be stored.</summary>
/// <param name="Season">Year of its July.</param>
/// <param name="ValuesC">C, NaN = missing: Tmin and Tmax of each day in turn, or every hour, from 1 July 00:00 local standard time.</param>
/// <param name="MissingDays">Days without a value; of hours, days that lack more than three.</param>
public sealed record SeasonValues(int Season, double[] ValuesC, int MissingDays)
{
    /// <summary>Days of the season.</summary>
    public int Days => SeasonCalendar.Days(Season);

    /// <summary>Share of its days that were recorded, 0 to 1.</summary>
    public double Coverage => 1 - MissingDays / (double)Days;

    /// <summary>Whether a study can use it: no more days missing than are filled.</summary>
    public bool Usable => MissingDays <= WeatherYears.LongestFilledDays;
}

/// <summary>Where a record was made, as far as its file says.</summary>
/// <param name="Code">The station's own code.</param>
/// <param name="Name">Its name.</param>
/// <param name="LatitudeDeg">Degrees north.</param>
/// <param name="LongitudeDeg">Degrees east.</param>
/// <param name="ElevationM">Metres above the sea.</param>
public sealed record StationPlace(string? Code = null, string? Name = null, double? LatitudeDeg = null, double? LongitudeDeg = null, double? ElevationM = null);

/// <summary>A weather record by season.</summary>
/// <param name="Layout">The layout found, in words.</param>
/// <param name="Step">Daily or hourly.</param>
/// <param name="Seasons">Seasons, oldest first, cut ones at the ends included.</param>
/// <param name="Days">Days with values.</param>
/// <param name="FirstOn">First day.</param>
/// <param name="LastOn">Last day.</param>
/// <param name="UnitWords">The unit and how it was told.</param>
/// <param name="Place">Where, as far as the file says.</param>
public sealed record WeatherRecord(string Layout, RecordStep Step, IReadOnlyList<SeasonValues> Seasons, int Days, DateOnly FirstOn, DateOnly LastOn, string UnitWords, StationPlace Place);

/// <summary>What a weather file does not say itself.</summary>
/// <param name="Unit">F, C or tenths; null = as the file tells, or by its range.</param>
/// <param name="UtcOffsetHours">Hours that local standard time is ahead of UTC, -5 in New York; needed for hours told in UTC. Null = not told.</param>
public sealed record WeatherAnswers(string? Unit = null, double? UtcOffsetHours = null);
