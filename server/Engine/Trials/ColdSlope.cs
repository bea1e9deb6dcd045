using MathNet.Numerics.Distributions;
using static System.Math;

namespace FarmPortfolio.Engine.Trials;

/// <summary>How the saving of a night depends on the cold: a straight line through the nights' savings, weighted by their heat, with an error by 7-night blocks.</summary>
internal static class ColdSlope
{
    /// <summary>Saving gained for each kelvin it is colder outside, share a kelvin.</summary>
    /// <param name="fit">The trial.</param>
    public static Measured Of(RatioFit fit)
    {
        var nights = fit.Use.Select(p => (p.Block, X: -p.OutsideC, Weight: fit.Ratio * fit.Moved(p), p.TreatedKwh)).Where(n => n.Weight > 0).ToList();
        var all = nights.Sum(n => n.Weight);
        var mean = nights.Sum(n => n.Weight * n.X) / all;
        var saving = 1 - nights.Sum(n => n.TreatedKwh) / all;
        var sxx = nights.Sum(n => n.Weight * (n.X - mean) * (n.X - mean));
        if (!(sxx > 1e-9 * all))
        {
            return new(0, double.NegativeInfinity, double.PositiveInfinity, double.PositiveInfinity);
        }

        double Off(double weight, double treated) => weight - treated - saving * weight;
        var slope = nights.Sum(n => (n.X - mean) * Off(n.Weight, n.TreatedKwh)) / sxx;
        var blocks = nights.GroupBy(n => n.Block).ToList();
        var meat = blocks.Sum(g => Pow(g.Sum(n => (n.X - mean) * (Off(n.Weight, n.TreatedKwh) - slope * (n.X - mean) * n.Weight)), 2));
        var freedom = Max(1, blocks.Count - 2);
        var sd = Sqrt(meat * blocks.Count / freedom) / sxx;
        var half = StudentT.InvCDF(0, 1, freedom, 0.95) * sd;
        return new(slope, slope - half, slope + half, sd);
    }
}
