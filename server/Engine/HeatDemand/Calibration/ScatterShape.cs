using static System.Math;

namespace FarmPortfolio.Engine.HeatDemand.Calibration;

/// <summary>How the scatter of bills grows: with the days alone, or with the use. Told by the likelihood of normal residuals, the days where neither is clearly likelier.</summary>
internal static class ScatterShape
{
    /// <summary>Least use a day that a weight is made from, as a share of the mean: a bill near zero would else outweigh all others.</summary>
    private const double LeastRate = 0.02;

    /// <summary>Gain in twice the log-likelihood that speaks for the use: as one more parameter would need (Akaike).</summary>
    private const double Clearly = 2;

    /// <summary>Relative variances where the scatter grows with the use.</summary>
    /// <param name="use">Billed use.</param>
    /// <param name="fitted">Fitted use.</param>
    /// <param name="days">Days.</param>
    /// <param name="sd">What is known to be unsure.</param>
    /// <param name="freedom">Degrees of freedom.</param>
    /// <returns>One an interval, days x (use a day / its mean)^2; null where the days alone do.</returns>
    public static double[]? GrowsWithUse(double[] use, double[] fitted, double[] days, double[] sd, int freedom)
    {
        var mean = fitted.Sum() / days.Sum();
        if (freedom < 3 || !(mean > 0) || sd.Any(s => s > 0))
        {
            return null;
        }

        var byUse = days.Select((d, i) => d * Pow(Max(LeastRate, fitted[i] / d / mean), 2)).ToArray();
        double Deviance(double[] spread)
        {
            var (sum, logs) = (0.0, 0.0);
            for (var i = 0; i < use.Length; i++)
            {
                sum += Pow(use[i] - fitted[i], 2) / spread[i];
                logs += Log(spread[i]);
            }

            return use.Length * Log(sum) + logs;
        }

        return Deviance(days) - Deviance(byUse) > Clearly ? byUse : null;
    }
}
