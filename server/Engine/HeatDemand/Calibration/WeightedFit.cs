using static System.Math;

namespace FarmPortfolio.Engine.HeatDemand.Calibration;

/// <summary>
/// Least squares of use = slope x modelled + base x days. The error of an interval grows with the root of its days (so that the use a day is weighed by days), or with the use itself where the
/// residuals say so (<see cref="ScatterShape"/>), on top of what is known to be unsure of it: variance = s^2 spread + sd^2, s^2 by the method of moments (sum of r^2 / variance = n - p).
/// </summary>
/// <param name="Slope">Loss multiplier.</param>
/// <param name="SlopeSe">Its standard error; null where the intervals do not tell it.</param>
/// <param name="Base">Base use a day.</param>
/// <param name="BaseSe">Its standard error; null where it was not fitted.</param>
/// <param name="Freedom">Degrees of freedom, n - p.</param>
/// <param name="Variances">Variance of each interval's use.</param>
internal sealed record WeightedFit(double Slope, double? SlopeSe, double Base, double? BaseSe, int Freedom, double[] Variances)
{
    /// <summary>Fits the slope, and the base too unless one is given.</summary>
    /// <param name="use">Billed use.</param>
    /// <param name="modelled">Modelled use.</param>
    /// <param name="days">Days.</param>
    /// <param name="sd">What is known to be unsure.</param>
    /// <param name="givenBase">Base use a day; null = fit it.</param>
    /// <param name="scatterDays">Days that an interval scatters by: its own, but of a total the heated ones.</param>
    /// <returns>The fit; null where the modelled use does not tell the slope.</returns>
    public static WeightedFit? Of(double[] use, double[] modelled, int[] days, double[] sd, double? givenBase, int[]? scatterDays = null)
    {
        var byDays = Array.ConvertAll(days, d => (double)d);
        var spread = scatterDays is null ? byDays : Array.ConvertAll(scatterDays, d => (double)d);
        var data = new Data(use, modelled, byDays, sd, givenBase, spread);
        if (Once(data) is not { } first)
        {
            return null;
        }

        var fitted = use.Select((_, i) => first.Slope * modelled[i] + first.Base * byDays[i]).ToArray();
        return ScatterShape.GrowsWithUse(use, fitted, spread, sd, first.Freedom) is { } byUse && Once(data with { Spread = byUse }, shapeTold: true) is { } second ? second : first;
    }

    private static WeightedFit? Once(Data data, bool shapeTold = false)
    {
        var freedom = data.Use.Length - (data.GivenBase is null ? 2 : 1);
        var scale = Solve(data with { Sd = new double[data.Use.Length] }, 1);
        if (freedom < 0 || scale is null)
        {
            return null;
        }

        // the scatter beyond what is known: none where the known alone explains the residuals
        double Excess(double variance) => Solve(data, variance)!.Value.Chi2 - freedom;
        var variance = scale.Value.Chi2 / Max(1, freedom);
        if (freedom > 0 && data.Sd.Any(s => s > 0))
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
        var fit = Solve(data, variance)!.Value;
        var (slopeVar, baseVar) = shapeTold ? (fit.SlopeVar, fit.BaseVar) : Robust(data, variance, fit);
        var variances = data.Spread.Select((s, i) => variance * s + data.Sd[i] * data.Sd[i]).ToArray();
        return new(fit.Slope, freedom > 0 ? Sqrt(slopeVar) : null, fit.Base, freedom > 0 && data.GivenBase is null ? Sqrt(baseVar) : null, freedom, variances);
    }

    /// <summary>
    /// Variances that stay true where the error grows otherwise than taken: the sandwich of MacKinnon and White (1985), kind HC2,
    /// each squared residual divided by one less its leverage (from memory). Where the residuals told how it grows the plain ones do: a few bills of summer
    /// fix the base then, and the sandwich of so few is too narrow.
    /// </summary>
    private static (double Slope, double Base) Robust(Data data, double variance, Solution fit)
    {
        var (slopeVar, baseVar) = (0.0, 0.0);
        for (var i = 0; i < data.Use.Length; i++)
        {
            var (x, d) = (data.Modelled[i], data.Days[i]);
            var w = 1 / (variance * data.Spread[i] + data.Sd[i] * data.Sd[i]);
            var slopeOf = w * (fit.SlopeVar * x + fit.Cross * d);
            var baseOf = w * (fit.Cross * x + fit.BaseVar * d);
            var leverage = Min(0.99, x * slopeOf + d * baseOf);
            var miss = (data.Use[i] - fit.Slope * x - fit.Base * d) / Sqrt(1 - leverage);
            slopeVar += slopeOf * slopeOf * miss * miss;
            baseVar += baseOf * baseOf * miss * miss;
        }

        return (slopeVar, baseVar);
    }

    /// <summary>What is fitted; the scatter's variance goes with <paramref name="Spread"/>.</summary>
    private sealed record Data(double[] Use, double[] Modelled, double[] Days, double[] Sd, double? GivenBase, double[] Spread);

    private readonly record struct Solution(double Slope, double Base, double SlopeVar, double BaseVar, double Cross, double Chi2);

    private static Solution? Solve(Data data, double variance)
    {
        var (xx, xd, dd, xy, dy) = (0.0, 0.0, 0.0, 0.0, 0.0);
        double Weight(int i) => 1 / (variance * data.Spread[i] + data.Sd[i] * data.Sd[i]);
        for (var i = 0; i < data.Use.Length; i++)
        {
            var (w, x, d) = (Weight(i), data.Modelled[i], data.Days[i]);
            var y = data.Use[i] - (data.GivenBase ?? 0) * d;
            xx += w * x * x;
            xd += w * x * d;
            dd += w * d * d;
            xy += w * x * y;
            dy += w * d * y;
        }

        var determinant = xx * dd - xd * xd;
        if (xx <= 0 || (data.GivenBase is null && determinant <= 1e-9 * xx * dd))
        {
            return null;
        }

        var (slope, own) = data.GivenBase is { } known ? (xy / xx, known) : ((xy * dd - dy * xd) / determinant, (dy * xx - xy * xd) / determinant);
        var chi2 = 0.0;
        for (var i = 0; i < data.Use.Length; i++)
        {
            var miss = data.Use[i] - slope * data.Modelled[i] - own * data.Days[i];
            chi2 += Weight(i) * miss * miss;
        }

        return data.GivenBase is null ? new(slope, own, dd / determinant, xx / determinant, -xd / determinant, chi2) : new(slope, own, 1 / xx, 0, 0, chi2);
    }
}
