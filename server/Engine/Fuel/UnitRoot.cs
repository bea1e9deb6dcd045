using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using static System.Math;

namespace FarmPortfolio.Engine.Fuel;

/// <summary>
/// Augmented Dickey-Fuller test with a constant, lags of up to a year by Akaike's criterion: does the record speak against a price that returns nowhere?
/// Said and Dickey (1984); p-values by the response surface of MacKinnon (1994); coefficients from memory, held to p-values of an independent program in the tests.
/// </summary>
/// <param name="Statistic">t of the lagged level.</param>
/// <param name="Lags">Lagged changes used.</param>
/// <param name="P">Chance of a statistic as low as this when the price returns nowhere.</param>
public sealed record UnitRoot(double Statistic, int Lags, double P)
{
    /// <summary>Share below which "returns nowhere" is rejected.</summary>
    public const double Level = 0.05;

    private const int MostLags = 12;

    /// <summary>Whether "returns nowhere" is rejected.</summary>
    public bool IsRejected => P < Level;

    /// <summary>Tests a record.</summary>
    /// <param name="logs">Natural logs without the seasonal shape, one a month, 24 or more.</param>
    /// <returns>The test.</returns>
    public static UnitRoot Of(IReadOnlyList<double> logs)
    {
        var most = Min(MostLags, logs.Count / 2 - 3);
        var best = Enumerable.Range(0, most + 1).Select(lags => (lags, Regress(logs, lags, most).Aic)).MinBy(x => x.Aic).lags;
        var t = Regress(logs, best, best).T;
        return new(t, best, PValue(t));
    }

    /// <summary>Chance of a statistic as low under no return, with a constant.</summary>
    internal static double PValue(double t) => t switch
    {
        > 2.74 => 1,
        < -18.83 => 0,
        <= -1.61 => Normal.CDF(0, 1, 2.1659 + 1.4412 * t + 0.038269 * t * t),
        _ => Normal.CDF(0, 1, 1.7339 + 0.93202 * t - 0.12745 * t * t - 0.010368 * t * t * t),
    };

    /// <summary>x(t) - x(t-1) on a constant, x(t-1) and lagged changes, from the month after the first <paramref name="skipped"/> changes.</summary>
    private static (double T, double Aic) Regress(IReadOnlyList<double> x, int lags, int skipped)
    {
        var (from, terms) = (skipped + 1, lags + 2);
        var n = x.Count - from;
        var design = Matrix<double>.Build.Dense(n, terms, (i, j) => j switch
        {
            0 => 1,
            1 => x[from + i - 1],
            _ => x[from + i - j + 1] - x[from + i - j],
        });
        var change = Vector<double>.Build.Dense(n, i => x[from + i] - x[from + i - 1]);
        var square = design.TransposeThisAndMultiply(design);
        var beta = square.Cholesky().Solve(design.TransposeThisAndMultiply(change));
        var rest = (change - design * beta).DotProduct(change - design * beta);
        var error = Sqrt(rest / (n - terms) * square.Inverse()[1, 1]);
        return (beta[1] / error, n * Log(rest / n) + 2 * terms);
    }
}
