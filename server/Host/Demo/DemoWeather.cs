using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Weather;
using static System.Math;

namespace FarmPortfolio.Host.Demo;

/// <summary>Invented winters for invented places: a yearly wave, winters that are cold or mild for all stations at once, cold spells that last, and each place's own weather.</summary>
internal static class DemoWeather
{
    /// <summary>First season.</summary>
    public const int FirstSeason = 2008;

    /// <summary>Number of seasons.</summary>
    public const int Seasons = 17;

    private const long Seed = 20260911;
    private const double Persistence = 0.72;

    /// <summary>Tmin and Tmax of a season's days in turn, C, to a tenth.</summary>
    /// <param name="station">Number of the station.</param>
    /// <param name="meanC">Mean of the year.</param>
    /// <param name="swingK">Half the distance of July and January.</param>
    /// <param name="season">Year of its July.</param>
    /// <returns>Values.</returns>
    public static double[] Season(int station, double meanC, double swingK, int season)
    {
        var days = SeasonCalendar.Days(season);
        var first = SeasonCalendar.FirstDay(season);
        var severity = 1.4 * Noise.Normal(Seed, NoisePurpose.Offset, 0, season, 0);
        var values = new double[2 * days];
        var (region, local) = (0.0, 0.0);
        for (var d = -30; d < days; d++)
        {
            region = Persistence * region + Sqrt(1 - Persistence * Persistence) * Noise.Normal(Seed, NoisePurpose.ShortFactor, 0, season, d + 40);
            local = Persistence * local + Sqrt(1 - Persistence * Persistence) * Noise.Normal(Seed, NoisePurpose.LongFactor, station, season, d + 40);
            if (d < 0)
            {
                continue;
            }

            var phase = 2 * PI * (first.AddDays(d).DayOfYear - 202) / 365.25;
            var winter = Max(0, -Cos(phase));
            var mean = meanC + swingK * Cos(phase) + severity * winter + (3.6 + 1.6 * winter) * (0.93 * region + 0.37 * local);
            var span = Max(2.5, 11.5 - 2.0 * winter + 2.8 * Noise.Normal(Seed, NoisePurpose.WinterPlace, station, season, d + 40));
            values[2 * d] = Round(mean - span / 2, 1);
            values[2 * d + 1] = Round(mean + span / 2, 1);
        }

        return values;
    }
}
