using static System.Math;

namespace FarmPortfolio.Engine.Weather;

/// <summary>Makes hours from what was recorded: gaps filled, days shaped, radiation reckoned.</summary>
public static class WeatherYears
{
    /// <summary>Longest run of missing days filled between its neighbours.</summary>
    public const int LongestFilledDays = GapFilling.LongestDays;

    /// <summary>A season from daily lowest and highest temperatures.</summary>
    /// <param name="station">The station (latitude, height).</param>
    /// <param name="season">Year of its July.</param>
    /// <param name="minMaxC">Tmin and Tmax of each day in turn from 1 July, C; NaN = missing.</param>
    /// <returns>The hours.</returns>
    /// <exception cref="ArgumentException">The record has not two values a day, or more than <see cref="LongestFilledDays"/> days in a row are missing.</exception>
    public static WeatherYear FromDaily(WeatherStationFacts station, int season, ReadOnlySpan<double> minMaxC)
    {
        var days = SeasonCalendar.Days(season);
        if (minMaxC.Length != 2 * days)
        {
            throw new ArgumentException($"season {season} has {days} days, so {2 * days} values are needed, not {minMaxC.Length}", nameof(minMaxC));
        }

        var min = Filled(minMaxC, 0, season);
        var max = Filled(minMaxC, 1, season);
        var (temp, radiation, sunUp) = (new double[24 * days], new double[24 * days], new double[24 * days]);
        var latitude = station.LatitudeDeg * PI / 180;
        var krs = station.HargreavesKrs ?? 0.16;
        var first = SeasonCalendar.FirstDay(season);
        for (var d = 0; d < days; d++)
        {
            var dayOfYear = first.AddDays(d).DayOfYear;
            var declination = SolarGeometry.DeclinationRad(dayOfYear);
            var halfDay = 12 / PI * SolarGeometry.SunsetAngleRad(latitude, declination);
            var (sunrise, sunset) = (12 - halfDay, 12 + halfDay);
            var (yesterday, tomorrow) = (Max(d - 1, 0), Min(d + 1, days - 1));
            var ra = SolarGeometry.ExtraterrestrialMjPerM2(station.LatitudeDeg, dayOfYear);
            var rs = SolarGeometry.HargreavesMjPerM2(ra, max[d], min[d], krs, station.ElevationM);
            for (var h = 0; h < 24; h++)
            {
                var t = h + 0.5;
                temp[24 * d + h] = t < sunrise
                    ? DayShape.At(t + 24, sunrise, sunset, min[yesterday], max[yesterday], min[d])
                    : DayShape.At(t, sunrise, sunset, min[d], max[d], min[tomorrow]);
            }

            SpreadSun(radiation.AsSpan(24 * d, 24), sunUp.AsSpan(24 * d, 24), latitude, declination, sunrise, sunset, rs);
        }

        return new(season, temp, radiation, sunUp);
    }

    /// <summary>A season from hourly temperatures; radiation from each day's span.</summary>
    /// <param name="station">The station.</param>
    /// <param name="season">Year of its July.</param>
    /// <param name="hourlyC">Temperature of each hour from 1 July 00:00 local standard time, C; NaN = missing, filled between neighbours.</param>
    /// <returns>The hours.</returns>
    /// <exception cref="ArgumentException">The record has not 24 values a day, or too many in a row are missing.</exception>
    public static WeatherYear FromHourly(WeatherStationFacts station, int season, ReadOnlySpan<double> hourlyC)
    {
        var days = SeasonCalendar.Days(season);
        if (hourlyC.Length != 24 * days)
        {
            throw new ArgumentException($"season {season} has {24 * days} hours, not {hourlyC.Length}", nameof(hourlyC));
        }

        var temp = hourlyC.ToArray();
        var usual = temp.All(double.IsFinite) ? null : GapFilling.UsualHours(temp);
        GapFilling.Fill(temp, GapFilling.LongestHours, GapFilling.ShortHours, usual, $"season {SeasonCalendar.Name(season)}, hours");
        var (radiation, sunUp) = (new double[24 * days], new double[24 * days]);
        var latitude = station.LatitudeDeg * PI / 180;
        for (var d = 0; d < days; d++)
        {
            var day = temp.AsSpan(24 * d, 24);
            var (low, high) = (double.PositiveInfinity, double.NegativeInfinity);
            foreach (var t in day)
            {
                (low, high) = (Min(low, t), Max(high, t));
            }

            var dayOfYear = SeasonCalendar.FirstDay(season).AddDays(d).DayOfYear;
            var declination = SolarGeometry.DeclinationRad(dayOfYear);
            var halfDay = 12 / PI * SolarGeometry.SunsetAngleRad(latitude, declination);
            var noon = SolarGeometry.NoonByTheClock(station.LongitudeDeg, dayOfYear);
            var ra = SolarGeometry.ExtraterrestrialMjPerM2(station.LatitudeDeg, dayOfYear);
            var rs = SolarGeometry.HargreavesMjPerM2(ra, high, low, station.HargreavesKrs ?? 0.16, station.ElevationM);
            SpreadSun(radiation.AsSpan(24 * d, 24), sunUp.AsSpan(24 * d, 24), latitude, declination, noon - halfDay, noon + halfDay, rs);
        }

        return new(season, temp, radiation, sunUp);
    }

    /// <summary>The day's radiation over its hours in proportion to the sine of the sun's height at the middle of the sunlit part.</summary>
    private static void SpreadSun(Span<double> radiation, Span<double> sunUp, double latitude, double declination, double sunrise, double sunset, double dayMj)
    {
        var sum = 0.0;
        for (var h = 0; h < 24; h++)
        {
            var (from, to) = (Max(h, sunrise), Min(h + 1, sunset));
            sunUp[h] = Max(0, to - from);
            radiation[h] = to > from ? (to - from) * Max(0, SolarGeometry.SinElevation(latitude, declination, (from + to) / 2 + 12 - (sunrise + sunset) / 2)) : 0;
            sum += radiation[h];
        }

        var scale = sum > 0 ? dayMj * 1e6 / 3600 / sum : 0;
        for (var h = 0; h < 24; h++)
        {
            radiation[h] *= scale;
        }
    }

    private static double[] Filled(ReadOnlySpan<double> minMaxC, int column, int season)
    {
        var values = new double[minMaxC.Length / 2];
        for (var d = 0; d < values.Length; d++)
        {
            values[d] = minMaxC[2 * d + column];
        }

        GapFilling.Fill(values, GapFilling.LongestDays, GapFilling.LongestDays, null, $"season {SeasonCalendar.Name(season)}, days");
        return values;
    }
}
