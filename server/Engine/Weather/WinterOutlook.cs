using MathNet.Numerics.Distributions;

namespace FarmPortfolio.Engine.Weather;

/// <summary>Severity of a season to come under the winter model, against the middle recorded season.</summary>
/// <param name="Season">Seasons after the first, from 0.</param>
/// <param name="P10">One in ten is milder, share.</param>
/// <param name="P50">Middle, share.</param>
/// <param name="P90">One in ten is harder, share.</param>
public sealed record OutlookSeason(int Season, double P10, double P50, double P90);

/// <summary>
/// The winters that futures draw, without drawing them: every recorded season alike, moved by an offset that is normal about its trend. A move of the temperature by d is a
/// move of the base by -d, so that the mixture of recorded degree days over the offsets' quantiles is the model's distribution.
/// </summary>
public static class WinterOutlook
{
    private const int OffsetLevels = 9;

    /// <summary>Severity by season to come.</summary>
    /// <param name="years">Recorded seasons, one or more.</param>
    /// <param name="baseC">Base of the degree days, C.</param>
    /// <param name="offsetK">Mean offset of the first season, K.</param>
    /// <param name="trendKPerYear">Its trend, K a year.</param>
    /// <param name="sdK">Its spread, K.</param>
    /// <param name="seasons">Seasons, 1 or more.</param>
    /// <returns>One a season.</returns>
    /// <exception cref="ArgumentException">No season is recorded, or none needs heat.</exception>
    public static IReadOnlyList<OutlookSeason> Of(IReadOnlyList<WeatherYear> years, double baseC, double offsetK, double trendKPerYear, double sdK, int seasons)
    {
        var means = years.Select(DailyMeans).ToArray();
        var recorded = means.Select(m => DegreeDays(m, baseC)).Order().ToArray();
        if (recorded.Length == 0 || !(recorded[recorded.Length / 2] > 0))
        {
            throw new ArgumentException("an outlook needs a recorded season that needs heat", nameof(years));
        }

        var middle = recorded[recorded.Length / 2];
        var levels = Enumerable.Range(0, OffsetLevels).Select(i => sdK > 0 ? Normal.InvCDF(0, sdK, (i + 0.5) / OffsetLevels) : 0).ToArray();
        return [.. Enumerable.Range(0, seasons).Select(s =>
        {
            var all = means.SelectMany(m => levels.Select(l => DegreeDays(m, baseC - offsetK - trendKPerYear * s - l) / middle - 1)).Order().ToArray();
            double At(double p) => all[Math.Clamp((int)Math.Round(p * (all.Length - 1)), 0, all.Length - 1)];
            return new OutlookSeason(s, At(0.1), At(0.5), At(0.9));
        })];
    }

    private static double[] DailyMeans(WeatherYear year) => [.. Enumerable.Range(0, year.Hours / 24).Select(d => year.TempC.AsSpan(24 * d, 24).ToArray().Average())];

    private static double DegreeDays(double[] dailyC, double baseC)
    {
        var sum = 0.0;
        foreach (var c in dailyC)
        {
            sum += Math.Max(0, baseC - c);
        }

        return sum;
    }
}
