using static System.Math;

namespace FarmPortfolio.Engine.HeatDemand.Calibration;

/// <summary>
/// Least squares of use = slope x modelled + base x days, the error of an interval growing with the root of its days (so that the use a day is weighed by days)
/// on top of what is known to be unsure of it: variance = s^2 days + sd^2, s^2 by the method of moments (sum of r^2 / variance = n - p).
/// </summary>
/// <param name="Slope">Loss multiplier.</param>
/// <param name="SlopeSe">Its standard error; null where the intervals do not tell it.</param>
/// <param name="Base">Base use a day.</param>
/// <param name="BaseSe">Its standard error; null where it was not fitted.</param>
/// <param name="Freedom">Degrees of freedom, n - p.</param>
internal sealed record WeightedFit(double Slope, double? SlopeSe, double Base, double? BaseSe, int Freedom)
{
    /// <summary>Fits the slope, and the base too unless one is given.</summary>
    /// <param name="use">Billed use.</param>
    /// <param name="modelled">Modelled use.</param>
    /// <param name="days">Days.</param>
    /// <param name="sd">What is known to be unsure.</param>
    /// <param name="givenBase">Base use a day; null = fit it.</param>
    /// <returns>The fit; null where the modelled use does not tell the slope.</returns>
    public static WeightedFit? Of(double[] use, double[] modelled, int[] days, double[] sd, double? givenBase)
    {
        var parameters = givenBase is null ? 2 : 1;
        var freedom = use.Length - parameters;
        var scale = Solve(use, modelled, days, sd, givenBase, 1, alone: true);
        if (freedom < 0 || scale is null)
        {
            return null;
        }

        // the scatter beyond what is known: none where the known alone explains the residuals
        double Excess(double variance) => Solve(use, modelled, days, sd, givenBase, variance, alone: false)!.Value.Chi2 - freedom;
        var variance = scale.Value.Chi2 / Max(1, freedom);
        if (freedom > 0 && sd.Any(s => s > 0))
        {
            var (low, high) = (1e-12 * variance + 1e-12, Max(variance, 1e-9));
            for (var i = 0; i < 60 && Excess(high) > 0; i++)
            {
                high *= 2;
            }

            if (Excess(low) <= 0)
            {
                high = low;
            }

            for (var i = 0; i < 80; i++)
            {
                var mid = Sqrt(low * high);
                (low, high) = Excess(mid) > 0 ? (mid, high) : (low, mid);
            }

            variance = high;
        }

        variance = Max(variance, 1e-12);
        var fit = Solve(use, modelled, days, sd, givenBase, variance, alone: false)!.Value;
        var (slopeVar, baseVar) = Robust(use, modelled, days, sd, variance, fit);
        return new(fit.Slope, freedom > 0 ? Sqrt(slopeVar) : null, fit.Base, freedom > 0 && givenBase is null ? Sqrt(baseVar) : null, freedom);
    }

    /// <summary>
    /// Variances that stay true where the error grows with the use and not with the days: the sandwich of MacKinnon and White (1985), kind HC2,
    /// each squared residual divided by one less its leverage (from memory).
    /// </summary>
    private static (double Slope, double Base) Robust(double[] use, double[] modelled, int[] days, double[] sd, double variance, Solution fit)
    {
        var (slopeVar, baseVar) = (0.0, 0.0);
        for (var i = 0; i < use.Length; i++)
        {
            var w = 1 / (variance * days[i] + sd[i] * sd[i]);
            var slopeOf = w * (fit.SlopeVar * modelled[i] + fit.Cross * days[i]);
            var baseOf = w * (fit.Cross * modelled[i] + fit.BaseVar * days[i]);
            var leverage = Min(0.99, modelled[i] * slopeOf + days[i] * baseOf);
            var miss = (use[i] - fit.Slope * modelled[i] - fit.Base * days[i]) / Sqrt(1 - leverage);
            slopeVar += slopeOf * slopeOf * miss * miss;
            baseVar += baseOf * baseOf * miss * miss;
        }

        return (slopeVar, baseVar);
    }

    private readonly record struct Solution(double Slope, double Base, double SlopeVar, double BaseVar, double Cross, double Chi2);

    private static Solution? Solve(double[] use, double[] modelled, int[] days, double[] sd, double? givenBase, double variance, bool alone)
    {
        var (xx, xd, dd, xy, dy) = (0.0, 0.0, 0.0, 0.0, 0.0);
        double Weight(int i) => 1 / (variance * days[i] + (alone ? 0 : sd[i] * sd[i]));
        for (var i = 0; i < use.Length; i++)
        {
            var (w, y) = (Weight(i), use[i] - (givenBase ?? 0) * days[i]);
            xx += w * modelled[i] * modelled[i];
            xd += w * modelled[i] * days[i];
            dd += w * (double)days[i] * days[i];
            xy += w * modelled[i] * y;
            dy += w * days[i] * y;
        }

        var determinant = xx * dd - xd * xd;
        if (xx <= 0 || (givenBase is null && determinant <= 1e-9 * xx * dd))
        {
            return null;
        }

        var (slope, own) = givenBase is { } known ? (xy / xx, known) : ((xy * dd - dy * xd) / determinant, (dy * xx - xy * xd) / determinant);
        var chi2 = 0.0;
        for (var i = 0; i < use.Length; i++)
        {
            var miss = use[i] - slope * modelled[i] - own * days[i];
            chi2 += Weight(i) * miss * miss;
        }

        return givenBase is null ? new(slope, own, dd / determinant, xx / determinant, -xd / determinant, chi2) : new(slope, own, 1 / xx, 0, 0, chi2);
    }
}
