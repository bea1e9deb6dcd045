using static System.Math;

namespace FarmPortfolio.Engine.Fuel;

/// <summary>
/// A price that returns to one level, by least squares: x(t+1) = a + b x(t) + e. It describes a record; forecasts made with it did worse than the default model (see the
/// method page on prices), so it is shown and never used. Schwartz (1997), one factor, from memory.
/// </summary>
/// <param name="Persistence">b, share of a gap that is left after a month.</param>
/// <param name="PersistenceError">Standard error of b.</param>
/// <param name="VolatilityPerYear">Spread of the process a year: from the residual's variance with the exact step.</param>
/// <param name="Level">Price it returns to, US dollars a unit; null where b is 1 or more.</param>
/// <param name="ResidualKurtosis">Excess kurtosis of the residuals; 0 = normal.</param>
/// <param name="ResidualLag">Correlation of a residual with the one before.</param>
/// <param name="Pairs">Pairs of months.</param>
public sealed record OneFactorFit(double Persistence, double PersistenceError, double VolatilityPerYear, double? Level, double ResidualKurtosis, double ResidualLag, int Pairs)
{
    /// <summary>Return to the level a year: -12 ln b; 0 or less = none.</summary>
    public double ReversionPerYear => -12 * Log(Persistence);

    /// <summary>Months after which half a gap is gone; null where there is no return.</summary>
    public double? HalfLifeMonths => Persistence < 1 ? Log(2) / -Log(Persistence) : null;

    /// <summary>Fits a record.</summary>
    /// <param name="logs">Natural logs without the seasonal shape, one a month, 24 or more.</param>
    /// <returns>The fit.</returns>
    /// <exception cref="ArgumentException">There are too few months.</exception>
    public static OneFactorFit Of(IReadOnlyList<double> logs)
    {
        if (logs.Count < PriceRecord.FewestMonths)
        {
            throw new ArgumentException($"{logs.Count} months are too few for a fit; {PriceRecord.FewestMonths} would do", nameof(logs));
        }

        var n = logs.Count - 1;
        var (meanX, meanY) = (logs.Take(n).Average(), logs.Skip(1).Average());
        var (xx, xy) = (0.0, 0.0);
        for (var t = 0; t < n; t++)
        {
            xx += (logs[t] - meanX) * (logs[t] - meanX);
            xy += (logs[t] - meanX) * (logs[t + 1] - meanY);
        }

        var b = xy / xx;
        var a = meanY - b * meanX;
        var e = Enumerable.Range(0, n).Select(t => logs[t + 1] - a - b * logs[t]).ToArray();
        var variance = e.Sum(v => v * v) / (n - 2);
        var step = b is < 1 and > 0 ? -24 * Log(b) / (1 - b * b) : 12;
        return new(b, Sqrt(variance / xx), Sqrt(variance * step), b < 1 ? Exp(a / (1 - b)) : null, Changes.ExcessKurtosis(e), Changes.Lag(e), n);
    }
}
