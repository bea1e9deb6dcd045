using static System.Math;

namespace FarmPortfolio.Engine.Fuel;

/// <summary>Least squares of y = a + b x.</summary>
/// <param name="Count">Points.</param>
/// <param name="A">a.</param>
/// <param name="B">b.</param>
/// <param name="Sd">Standard deviation about the line, n - 2 degrees of freedom; 0 with two points.</param>
/// <param name="BSe">Standard error of b.</param>
/// <param name="R2">Share of the variance of y that the line tells, 0 to 1.</param>
public sealed record StraightLine(int Count, double A, double B, double Sd, double BSe, double R2)
{
    /// <summary>The line of some points.</summary>
    /// <param name="points">Points in a steady order.</param>
    /// <returns>The line; null with fewer than two points or where x does not move.</returns>
    public static StraightLine? Of(IReadOnlyList<(double X, double Y)> points)
    {
        if (points.Count < 2)
        {
            return null;
        }

        var (mx, my) = (points.Average(p => p.X), points.Average(p => p.Y));
        var (sxx, sxy, syy) = (0.0, 0.0, 0.0);
        foreach (var (x, y) in points)
        {
            (sxx, sxy, syy) = (sxx + (x - mx) * (x - mx), sxy + (x - mx) * (y - my), syy + (y - my) * (y - my));
        }

        if (sxx <= 1e-12 * points.Count * mx * mx)
        {
            return null;
        }

        var b = sxy / sxx;
        var left = Max(0, syy - b * sxy);
        var sd = points.Count > 2 ? Sqrt(left / (points.Count - 2)) : 0;
        return new(points.Count, my - b * mx, b, sd, sd / Sqrt(sxx), syy > 0 ? 1 - left / syy : 1);
    }
}
