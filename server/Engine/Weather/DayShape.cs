using static System.Math;

namespace FarmPortfolio.Engine.Weather;

/// <summary>
/// Temperature through a day from its lowest and highest: a sine from sunrise to the afternoon's highest (four hours before sunset), a sine
/// down to sunset, a square root through the night. Cesaraccio, Spano, Duce and Snyder (2001), Int. J. Biometeorology 45.
/// </summary>
public static class DayShape
{
    private const double SunsetDrop = 0.39;
    private const double PeakBeforeSunsetH = 4;

    /// <summary>Temperature at an hour after sunrise of the same day, up to the next sunrise.</summary>
    /// <param name="hour">Hour of the day, may run past 24.</param>
    /// <param name="sunrise">Hour of sunrise.</param>
    /// <param name="sunset">Hour of sunset.</param>
    /// <param name="tMinC">Lowest temperature of the day (at sunrise), C.</param>
    /// <param name="tMaxC">Highest temperature of the day, C.</param>
    /// <param name="nextTMinC">Lowest temperature of the next day, C.</param>
    /// <returns>Degrees Celsius.</returns>
    public static double At(double hour, double sunrise, double sunset, double tMinC, double tMaxC, double nextTMinC)
    {
        var peak = sunset - PeakBeforeSunsetH;
        if (hour <= peak)
        {
            return tMinC + (tMaxC - tMinC) * Sin((hour - sunrise) / (peak - sunrise) * PI / 2);
        }

        var atSunset = tMaxC - SunsetDrop * (tMaxC - nextTMinC);
        if (hour < sunset)
        {
            return atSunset + (tMaxC - atSunset) * Sin(PI / 2 + (hour - peak) / PeakBeforeSunsetH * PI / 2);
        }

        var nightH = sunrise + 24 - sunset;
        return atSunset + (nextTMinC - atSunset) * Sqrt(Min(1, (hour - sunset) / nightH));
    }
}
