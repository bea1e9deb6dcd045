namespace FarmPortfolio.Engine.Weather;

/// <summary>One season of a station, hour by hour from 1 July 00:00; hour h stands for its middle, h + 1/2: by the sun from a daily record, by local standard time from an hourly one.</summary>
/// <param name="season">Year of its July.</param>
/// <param name="tempC">Air temperature, C; 8,760 or 8,784 values.</param>
/// <param name="radiationWPerM2">Radiation on a horizontal surface, W/m2.</param>
/// <param name="sunUp">Share of the hour with the sun above the horizon, 0 to 1.</param>
public sealed class WeatherYear(int season, double[] tempC, double[] radiationWPerM2, double[] sunUp)
{
    /// <summary>Year of its July.</summary>
    public int Season { get; } = season;

    /// <summary>Whether it was made from monthly normals and stands for no recorded winter.</summary>
    public bool FromNormals { get; init; }

    /// <summary>Hours, 8,760 or 8,784.</summary>
    public int Hours => TempC.Length;

    /// <summary>Air temperature, C.</summary>
    public double[] TempC { get; } = tempC;

    /// <summary>Radiation on a horizontal surface, W/m2.</summary>
    public double[] RadiationWPerM2 { get; } = radiationWPerM2;

    /// <summary>Share of the hour with the sun up.</summary>
    public double[] SunUp { get; } = sunUp;

    /// <summary>First hour of each month of the season, July = 0, and the hour after the last.</summary>
    public int[] MonthStart { get; } = SeasonCalendar.MonthStartHours(season);

    /// <summary>Sum of (base - daily mean) where positive, over the season.</summary>
    /// <param name="baseC">Base temperature, C.</param>
    /// <returns>Kelvin days.</returns>
    public double DegreeDaysK(double baseC)
    {
        var sum = 0.0;
        for (var day = 0; day < Hours / 24; day++)
        {
            sum += Math.Max(0, baseC - DayMeanC(day));
        }

        return sum;
    }

    /// <summary>Mean temperature of a day, C.</summary>
    /// <param name="day">Day from 1 July.</param>
    /// <returns>Degrees Celsius.</returns>
    public double DayMeanC(int day)
    {
        var sum = 0.0;
        for (var h = 24 * day; h < 24 * day + 24; h++)
        {
            sum += TempC[h];
        }

        return sum / 24;
    }

    /// <summary>Mean temperature of a month, C.</summary>
    /// <param name="month">Month of the season, 0 = July.</param>
    /// <returns>Degrees Celsius.</returns>
    public double MonthMeanC(int month)
    {
        var sum = 0.0;
        for (var h = MonthStart[month]; h < MonthStart[month + 1]; h++)
        {
            sum += TempC[h];
        }

        return sum / (MonthStart[month + 1] - MonthStart[month]);
    }
}
