using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Published;

/// <summary>A second shape of the day, for comparison only: half cosines from sunrise's lowest to the highest at 15 h and back to the next sunrise.</summary>
internal static class CosineDay
{
    private const double PeakH = 15;

    public static WeatherYear Of(WeatherYear year, double latitudeDeg, double[] minMaxC)
    {
        var temp = new double[year.Hours];
        var days = year.Hours / 24;
        for (var d = 0; d < days; d++)
        {
            var sunrise = 12 - SolarGeometry.DaylightHours(latitudeDeg, SeasonCalendar.FirstDay(year.Season).AddDays(d).DayOfYear) / 2;
            var (before, next) = (2 * Math.Max(d - 1, 0), 2 * Math.Min(d + 1, days - 1));
            var (min, max) = (minMaxC[2 * d], minMaxC[2 * d + 1]);
            for (var h = 0; h < 24; h++)
            {
                var t = h + 0.5;
                temp[24 * d + h] = t < sunrise ? Between(t + 24, PeakH, sunrise + 24, minMaxC[before + 1], min)
                    : t < PeakH ? Between(t, sunrise, PeakH, min, max)
                    : Between(t, PeakH, sunrise + 24, max, minMaxC[next]);
            }
        }

        return new(year.Season, temp, year.RadiationWPerM2, year.SunUp);
    }

    private static double Between(double t, double from, double to, double low, double high) =>
        low + (high - low) * (1 - Math.Cos(Math.PI * (t - from) / (to - from))) / 2;
}
