using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using static System.Math;

namespace FarmPortfolio.Engine.Scenarios;

/// <summary>
/// The few directions of a path's price draws that move a co-op's fuel most. y = load-weighted season costs by fuel, each a share of its middle value = G e to first order, with e the
/// independent standard normal draws of a path; eigenvectors v and values l of W G G' W give z = v' W y / sqrt l, uncorrelated with variance 1. Sobol normals
/// take their place: e += b (Sobol normal - z), b = G' W v / sqrt l. The b are orthonormal, so e stays independent standard normal and no law of any price
/// changes. Weights W = 1.05^-(season + 1/2) x share of the fuel: fixed, so nothing of a farm and no discount rate enters the futures.
/// </summary>
internal sealed class LeadingComponents
{
    private const double SamplingDiscount = 1.05;

    /// <summary>Most components there are: with the unrest and the weather they take ten dimensions of the Sobol points.</summary>
    public const int Most = 8;

    /// <summary>Rows of months that a path draws: short-term factors, long-term ones and residuals of prices paid, one a fuel.</summary>
    public const int Rows = 3 * Correlation.Fuels;

    private static readonly double[] EqualWeights = [1, 1, 1, 0];
    private readonly double[][] directions;

    private LeadingComponents(double[][] directions, double shareHeld) => (this.directions, ShareHeld) = (directions, shareHeld);

    /// <summary>Components, 8 at most.</summary>
    public int Count => directions.Length;

    /// <summary>Share of the weighted variance they hold.</summary>
    public double ShareHeld { get; }

    /// <summary>Directions b, each of length 1 and square to the others, over the draws of a path.</summary>
    public IReadOnlyList<double[]> Directions => directions;

    /// <summary>The components of a set of futures.</summary>
    /// <param name="spec">What names the futures.</param>
    /// <param name="tracks">Fuels in order.</param>
    /// <param name="roots">Roots of the short and the long correlations.</param>
    /// <param name="firstMonth">Month of the first season's July.</param>
    /// <param name="months">Months drawn.</param>
    /// <returns>The components.</returns>
    public static LeadingComponents Of(FuturesSpec spec, FuelTrack[] tracks, double[][] roots, int firstMonth, int[] months)
    {
        var (seasons, weights) = (spec.Set.SeasonCount, spec.Set.SamplingWeights ?? EqualWeights);
        var rows = (from fuel in Enumerable.Range(0, Correlation.Fuels)
                    where weights[fuel] > 0
                    from season in Enumerable.Range(0, seasons)
                    select Row(fuel, season, weights[fuel] / weights.Sum() * Pow(SamplingDiscount, -(season + 0.5)))).ToArray();
        var variances = new double[rows.Length, rows.Length];
        for (var i = 0; i < rows.Length; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                variances[i, j] = variances[j, i] = Dot(rows[i], rows[j]);
            }
        }

        var eigen = SymmetricEigen.Of(variances);
        var held = eigen.Where(e => e.Value > 1e-9 * eigen[0].Value).Take(Most).ToArray();
        return new([.. held.Select(e => Direction(rows, e.Value, e.Vector))], held.Sum(e => e.Value) / eigen.Sum(e => e.Value));

        // one row of W G: what each draw of a path does to the weighted cost of a season
        double[] Row(int fuel, int season, double weight)
        {
            var (row, response) = (new double[Rows * months.Length], tracks[fuel].Response(firstMonth, season, spec.LoadShare));
            for (var factor = 0; factor < 2; factor++)
            {
                for (var j = 0; j <= fuel; j++)
                {
                    Fill(factor * Correlation.Fuels + j, weight * roots[factor][fuel * Correlation.Fuels + j], factor == 0 ? response.Short : response.Long);
                }
            }

            Fill(2 * Correlation.Fuels + fuel, weight, response.Residual);
            return row;

            void Fill(int lane, double by, double[] of)
            {
                for (var m = 0; m < of.Length; m++)
                {
                    row[lane * months.Length + m] = by * of[m];
                }
            }
        }
    }

    /// <summary>Puts given normals in place of the components of a path's draws.</summary>
    /// <param name="draws">Independent standard normal draws, twelve rows of months; replaced.</param>
    /// <param name="normals">One a component.</param>
    public void Replace(Span<double> draws, ReadOnlySpan<double> normals)
    {
        Span<double> away = stackalloc double[Most];
        for (var i = 0; i < directions.Length; i++)
        {
            away[i] = normals[i] - Dot(directions[i], draws);
        }

        for (var i = 0; i < directions.Length; i++)
        {
            var by = Vector256.Create(away[i]);
            var e = MemoryMarshal.Cast<double, Vector256<double>>(draws);
            var b = MemoryMarshal.Cast<double, Vector256<double>>(directions[i]);
            for (var k = 0; k < e.Length; k++)
            {
                e[k] = Vector256.FusedMultiplyAdd(b[k], by, e[k]);
            }
        }
    }

    private static double[] Direction(double[][] rows, double value, double[] vector)
    {
        var b = new double[rows[0].Length];
        for (var r = 0; r < rows.Length; r++)
        {
            for (var k = 0; k < b.Length; k++)
            {
                b[k] += vector[r] * rows[r][k];
            }
        }

        var length = Sqrt(value);
        return [.. b.Select(v => v / length)];
    }

    /// <summary>Sum of products over eight fixed lanes; lengths are multiples of four.</summary>
    private static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        var x = MemoryMarshal.Cast<double, Vector256<double>>(a);
        var y = MemoryMarshal.Cast<double, Vector256<double>>(b);
        var (even, odd) = (Vector256<double>.Zero, Vector256<double>.Zero);
        for (var i = 0; i + 1 < x.Length; i += 2)
        {
            even = Vector256.FusedMultiplyAdd(x[i], y[i], even);
            odd = Vector256.FusedMultiplyAdd(x[i + 1], y[i + 1], odd);
        }

        if (x.Length % 2 == 1)
        {
            even = Vector256.FusedMultiplyAdd(x[^1], y[^1], even);
        }

        even += odd;
        return even[0] + even[1] + (even[2] + even[3]);
    }
}
