using static System.Math;

namespace FarmPortfolio.Engine.HeatDemand.Calibration;

/// <summary>
/// How well a model meets bills, ASHRAE Guideline 14-2014 (from memory): normalised mean bias error sum(m - s) / ((n - p) mean) and
/// coefficient of variation of the root mean square error sqrt(sum (m - s)^2 / (n - p)) / mean, of the use a day, each interval weighed by its days.
/// With intervals of one length these are the Guideline's own; its monthly limits, 5 % and 15 %, are borrowed for the others.
/// </summary>
/// <param name="NmbePct">Bias, per cent; above 0 = more billed than modelled.</param>
/// <param name="CvRmsePct">Scatter, per cent.</param>
public sealed record Goodness(double NmbePct, double CvRmsePct)
{
    /// <summary>Guideline 14's monthly limit of bias, per cent.</summary>
    public const double MostNmbePct = 5;

    /// <summary>Guideline 14's monthly limit of scatter, per cent.</summary>
    public const double MostCvRmsePct = 15;

    /// <summary>Whether both limits are met.</summary>
    public bool Met => Abs(NmbePct) <= MostNmbePct && CvRmsePct <= MostCvRmsePct;

    /// <summary>The two figures.</summary>
    /// <param name="measured">Billed use of each interval.</param>
    /// <param name="modelled">Modelled use of each.</param>
    /// <param name="days">Days of each, above 0.</param>
    /// <param name="parameters">Parameters fitted; 1 for a calibrated simulation with none told.</param>
    /// <returns>The figures; null where the intervals are not more than the parameters, or nothing was billed.</returns>
    public static Goodness? Of(IReadOnlyList<double> measured, IReadOnlyList<double> modelled, IReadOnlyList<int> days, int parameters = 1)
    {
        var (n, total, billed) = (measured.Count, (double)days.Sum(), measured.Sum());
        if (n <= parameters || billed <= 0)
        {
            return null;
        }

        var (bias, square) = (0.0, 0.0);
        for (var i = 0; i < n; i++)
        {
            var miss = (measured[i] - modelled[i]) / days[i];
            var weight = n * days[i] / total;
            bias += weight * miss;
            square += weight * miss * miss;
        }

        var mean = billed / total;
        return new(100 * bias / ((n - parameters) * mean), 100 * Sqrt(square / (n - parameters)) / mean);
    }
}
