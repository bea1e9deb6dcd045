using static System.Math;

namespace FarmPortfolio.Engine.Scenarios;

/// <summary>
/// Eigenvalues and vectors of a small symmetric matrix by cyclic Jacobi rotations (Golub and Van Loan, Matrix Computations, 8.5, from memory). Sums, products,
/// quotients and square roots in a fixed order alone, so the same bits on every machine.
/// </summary>
internal static class SymmetricEigen
{
    private const int MostSweeps = 60;

    /// <summary>Eigenvalues falling, each with its vector of length 1 whose numbers add up to 0 or more.</summary>
    /// <param name="matrix">Symmetric; it is overwritten.</param>
    /// <returns>Values, and vectors one after the other.</returns>
    public static (double Value, double[] Vector)[] Of(double[,] matrix)
    {
        var n = matrix.GetLength(0);
        var vectors = new double[n, n];
        for (var i = 0; i < n; i++)
        {
            vectors[i, i] = 1;
        }

        for (var sweep = 0; sweep < MostSweeps && !Diagonal(matrix); sweep++)
        {
            for (var p = 0; p < n - 1; p++)
            {
                for (var q = p + 1; q < n; q++)
                {
                    Rotate(matrix, vectors, p, q);
                }
            }
        }

        return [.. Enumerable.Range(0, n).OrderByDescending(i => matrix[i, i]).ThenBy(i => i).Select(i =>
        {
            var vector = Enumerable.Range(0, n).Select(k => vectors[k, i]).ToArray();
            return (matrix[i, i], vector.Sum() < 0 ? [.. vector.Select(v => -v)] : vector);
        })];
    }

    private static bool Diagonal(double[,] a)
    {
        var (off, all) = (0.0, 0.0);
        for (var i = 0; i < a.GetLength(0); i++)
        {
            for (var j = 0; j < a.GetLength(0); j++)
            {
                all += a[i, j] * a[i, j];
                off += i == j ? 0 : a[i, j] * a[i, j];
            }
        }

        return off <= 1e-28 * all;
    }

    private static void Rotate(double[,] a, double[,] vectors, int p, int q)
    {
        if (a[p, q] == 0)
        {
            return;
        }

        var theta = (a[q, q] - a[p, p]) / (2 * a[p, q]);
        var t = (theta >= 0 ? 1 : -1) / (Abs(theta) + Sqrt(theta * theta + 1));
        var c = 1 / Sqrt(t * t + 1);
        var s = t * c;
        for (var k = 0; k < a.GetLength(0); k++)
        {
            (a[k, p], a[k, q]) = (c * a[k, p] - s * a[k, q], s * a[k, p] + c * a[k, q]);
        }

        for (var k = 0; k < a.GetLength(0); k++)
        {
            (a[p, k], a[q, k]) = (c * a[p, k] - s * a[q, k], s * a[p, k] + c * a[q, k]);
            (vectors[k, p], vectors[k, q]) = (c * vectors[k, p] - s * vectors[k, q], s * vectors[k, p] + c * vectors[k, q]);
        }
    }
}
