using static System.Math;

namespace FarmPortfolio.Engine.Weather;

/// <summary>Heating degree days of a month from its mean temperature, to any base, where no daily record is at hand.</summary>
public static class DegreeDays
{
    /// <summary>Slope of the daily means' distribution, Erbs, Klein and Beckman (1983), ASHRAE Journal 25(6); from memory, its form settled on records.</summary>
    public const double ErbsSlope = 1.698;

    /// <summary>Spread of a month's mean over the years, Erbs, Klein and Beckman (1983).</summary>
    /// <param name="meanC">The month's mean, C.</param>
    /// <param name="spreadOfMonthsK">Standard deviation of the twelve monthly means about the year's, K.</param>
    /// <returns>K, at least 0.2.</returns>
    public static double SpreadOfMonthK(double meanC, double spreadOfMonthsK) => Max(0.2, 1.45 - 0.0290 * meanC + 0.0664 * spreadOfMonthsK);

    /// <summary>Degree days below a base in a month of normals, Erbs, Klein and Beckman (1983).</summary>
    /// <param name="meanC">The month's mean, C.</param>
    /// <param name="days">Days of the month.</param>
    /// <param name="baseC">Base, C.</param>
    /// <param name="spreadOfMonthsK">Standard deviation of the twelve monthly means about the year's, K.</param>
    /// <returns>Kelvin days.</returns>
    public static double OfMonthK(double meanC, int days, double baseC, double spreadOfMonthsK)
    {
        var spread = SpreadOfMonthK(meanC, spreadOfMonthsK);
        var h = (baseC - meanC) / (spread * Sqrt(days));
        var a = ErbsSlope * Abs(h);
        // ln(e^-a + e^a) without overflow
        return spread * Pow(days, 1.5) * (h / 2 + (a + Log(1 + Exp(-2 * a))) / (2 * ErbsSlope));
    }

    /// <summary>Degree days below a base where the daily means are normal about the month's, Schoenau and Kehrig (1990), Energy and Buildings 14; from memory.</summary>
    /// <param name="meanC">The month's mean, C.</param>
    /// <param name="days">Days of the month.</param>
    /// <param name="baseC">Base, C.</param>
    /// <param name="spreadOfDaysK">Standard deviation of the daily means, K, above 0.</param>
    /// <returns>Kelvin days.</returns>
    public static double OfNormalMonthK(double meanC, int days, double baseC, double spreadOfDaysK)
    {
        var z = (baseC - meanC) / spreadOfDaysK;
        var density = Exp(-z * z / 2) / Sqrt(2 * PI);
        return days * spreadOfDaysK * (z * MathNet.Numerics.Distributions.Normal.CDF(0, 1, z) + density);
    }

    /// <summary>Standard deviation of twelve monthly means about the year's, divided by eleven.</summary>
    /// <param name="monthlyMeanC">Twelve means, C.</param>
    /// <returns>K.</returns>
    public static double SpreadOfMonthsK(IReadOnlyList<double> monthlyMeanC)
    {
        var mean = monthlyMeanC.Average();
        return Sqrt(monthlyMeanC.Sum(t => (t - mean) * (t - mean)) / (monthlyMeanC.Count - 1));
    }
}
