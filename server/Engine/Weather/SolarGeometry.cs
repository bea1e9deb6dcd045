using static System.Math;

namespace FarmPortfolio.Engine.Weather;

/// <summary>Sun and sky by FAO Irrigation and Drainage Paper 56 (Allen and others 1998), chapter 3.</summary>
public static class SolarGeometry
{
    private const double SolarConstantMjPerM2Minute = 0.0820;

    /// <summary>Inverse relative distance of Earth and Sun, FAO-56 eq. 23.</summary>
    /// <param name="dayOfYear">1 to 366.</param>
    /// <returns>About 0.97 to 1.03.</returns>
    public static double InverseDistance(int dayOfYear) => 1 + 0.033 * Cos(2 * PI / 365 * dayOfYear);

    /// <summary>Declination of the sun, FAO-56 eq. 24.</summary>
    /// <param name="dayOfYear">1 to 366.</param>
    /// <returns>Radians.</returns>
    public static double DeclinationRad(int dayOfYear) => 0.409 * Sin(2 * PI / 365 * dayOfYear - 1.39);

    /// <summary>Hour angle of sunset, FAO-56 eq. 25; 0 in the polar night, pi in the polar day.</summary>
    /// <param name="latitudeRad">Latitude, radians.</param>
    /// <param name="declinationRad">Declination, radians.</param>
    /// <returns>Radians.</returns>
    public static double SunsetAngleRad(double latitudeRad, double declinationRad) => Acos(Clamp(-Tan(latitudeRad) * Tan(declinationRad), -1, 1));

    /// <summary>Radiation on a horizontal surface outside the atmosphere in a day, FAO-56 eq. 21.</summary>
    /// <param name="latitudeDeg">Latitude, degrees north.</param>
    /// <param name="dayOfYear">1 to 366.</param>
    /// <returns>MJ/m2 a day.</returns>
    public static double ExtraterrestrialMjPerM2(double latitudeDeg, int dayOfYear)
    {
        var phi = latitudeDeg * PI / 180;
        var delta = DeclinationRad(dayOfYear);
        var ws = SunsetAngleRad(phi, delta);
        return 24 * 60 / PI * SolarConstantMjPerM2Minute * InverseDistance(dayOfYear) *
            (ws * Sin(phi) * Sin(delta) + Cos(phi) * Cos(delta) * Sin(ws));
    }

    /// <summary>Hours of daylight, FAO-56 eq. 34.</summary>
    /// <param name="latitudeDeg">Latitude, degrees north.</param>
    /// <param name="dayOfYear">1 to 366.</param>
    /// <returns>Hours.</returns>
    public static double DaylightHours(double latitudeDeg, int dayOfYear) =>
        24 / PI * SunsetAngleRad(latitudeDeg * PI / 180, DeclinationRad(dayOfYear));

    /// <summary>Solar radiation from the day's temperature span (Hargreaves), FAO-56 eq. 50, never over clear sky (eq. 37).</summary>
    /// <param name="extraterrestrialMjPerM2">Radiation outside the atmosphere, MJ/m2 a day.</param>
    /// <param name="tMaxC">Highest temperature of the day, C.</param>
    /// <param name="tMinC">Lowest temperature of the day, C.</param>
    /// <param name="krs">0.16 inland, 0.19 at a coast.</param>
    /// <param name="elevationM">Height above sea level, metres.</param>
    /// <returns>MJ/m2 a day.</returns>
    public static double HargreavesMjPerM2(double extraterrestrialMjPerM2, double tMaxC, double tMinC, double krs, double elevationM) =>
        Min(krs * Sqrt(Max(0, tMaxC - tMinC)) * extraterrestrialMjPerM2, ClearSkyMjPerM2(extraterrestrialMjPerM2, elevationM));

    /// <summary>Clear-sky radiation, FAO-56 eq. 37.</summary>
    /// <param name="extraterrestrialMjPerM2">Radiation outside the atmosphere, MJ/m2 a day.</param>
    /// <param name="elevationM">Height above sea level, metres.</param>
    /// <returns>MJ/m2 a day.</returns>
    public static double ClearSkyMjPerM2(double extraterrestrialMjPerM2, double elevationM) => (0.75 + 2e-5 * elevationM) * extraterrestrialMjPerM2;

    /// <summary>Local standard time at which the sun stands highest, FAO-56 eq. 31 to 33; the zone is taken as that of the nearest fifteenth meridian.</summary>
    /// <param name="longitudeDeg">Longitude, degrees east.</param>
    /// <param name="dayOfYear">1 to 366.</param>
    /// <returns>Hours, about 11 to 13.</returns>
    public static double NoonByTheClock(double longitudeDeg, int dayOfYear)
    {
        var b = 2 * PI * (dayOfYear - 81) / 364;
        var seasonal = 0.1645 * Sin(2 * b) - 0.1255 * Cos(b) - 0.025 * Sin(b);
        return 12 - (longitudeDeg - 15 * Round(longitudeDeg / 15)) / 15 - seasonal;
    }

    /// <summary>Sine of the sun's height.</summary>
    /// <param name="latitudeRad">Latitude, radians.</param>
    /// <param name="declinationRad">Declination, radians.</param>
    /// <param name="solarHour">Hour of the day by the sun, 12 = noon.</param>
    /// <returns>Below 0 when the sun is down.</returns>
    public static double SinElevation(double latitudeRad, double declinationRad, double solarHour) =>
        Sin(latitudeRad) * Sin(declinationRad) + Cos(latitudeRad) * Cos(declinationRad) * Cos(PI / 12 * (solarHour - 12));
}
