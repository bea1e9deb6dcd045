using MathNet.Numerics.Distributions;
using static System.Math;

namespace FarmPortfolio.Engine.Weather;

/// <summary>Whether a station's winters are getting warmer: Mann (1945) and Kendall's rank test with Sen's slope (1968), beside a straight line by least squares.</summary>
/// <param name="Seasons">Number of seasons.</param>
/// <param name="SenKPerYear">Median of the slopes of all pairs, K a year.</param>
/// <param name="LineKPerYear">Slope of the straight line, K a year.</param>
/// <param name="LineErrorKPerYear">Its standard error, K a year.</param>
/// <param name="PValue">Chance of so strong a run of ranks without a trend, two-sided.</param>
/// <param name="SpreadSdK">Standard deviation of the winters about the line, K.</param>
public sealed record WinterTrend(int Seasons, double SenKPerYear, double LineKPerYear, double LineErrorKPerYear, double PValue, double SpreadSdK)
{
    /// <summary>Trend of the mean temperature of November to April.</summary>
    /// <param name="years">Seasons, eight or more.</param>
    /// <returns>The trend.</returns>
    /// <exception cref="ArgumentException">Fewer than eight seasons: too few for a trend to be told from chance.</exception>
    public static WinterTrend Of(IReadOnlyList<WeatherYear> years)
    {
        var ordered = years.OrderBy(y => y.Season).ToArray();
        return Of([.. ordered.Select(y => (double)y.Season)], [.. ordered.Select(WinterMeanC)]);
    }

    /// <summary>Trend of a series.</summary>
    /// <param name="year">Years, rising.</param>
    /// <param name="valueK">Values.</param>
    /// <returns>The trend.</returns>
    /// <exception cref="ArgumentException">Fewer than eight values.</exception>
    internal static WinterTrend Of(double[] year, double[] valueK)
    {
        var n = year.Length;
        if (n < 8)
        {
            throw new ArgumentException($"a trend needs eight seasons or more, not {n}", nameof(year));
        }

        var (slopes, score) = (new List<double>(), 0);
        for (var i = 0; i < n; i++)
        {
            for (var j = i + 1; j < n; j++)
            {
                slopes.Add((valueK[j] - valueK[i]) / (year[j] - year[i]));
                score += Sign(valueK[j] - valueK[i]);
            }
        }

        slopes.Sort();
        var sen = slopes.Count % 2 == 1 ? slopes[slopes.Count / 2] : (slopes[slopes.Count / 2 - 1] + slopes[slopes.Count / 2]) / 2;
        var ties = valueK.GroupBy(v => v).Sum(g => (double)g.Count() * (g.Count() - 1) * (2 * g.Count() + 5));
        var variance = (n * (n - 1.0) * (2 * n + 5) - ties) / 18;
        var z = score == 0 || variance <= 0 ? 0 : (score - Sign(score)) / Sqrt(variance);
        var p = 2 * (1 - Normal.CDF(0, 1, Abs(z)));
        var (meanYear, mean) = (year.Average(), valueK.Average());
        var sxx = year.Sum(y => (y - meanYear) * (y - meanYear));
        var slope = Enumerable.Range(0, n).Sum(i => (year[i] - meanYear) * (valueK[i] - mean)) / sxx;
        var residual = Enumerable.Range(0, n).Sum(i => Pow(valueK[i] - mean - slope * (year[i] - meanYear), 2));
        var sd = Sqrt(residual / (n - 2));
        return new(n, sen, slope, sd / Sqrt(sxx), p, sd);
    }

    private static double WinterMeanC(WeatherYear year)
    {
        // months 4 to 9 of the season: November to April
        var (from, to) = (year.MonthStart[4], year.MonthStart[10]);
        return year.TempC.AsSpan(from, to - from).ToArray().Average();
    }
}
