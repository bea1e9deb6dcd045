using MathNet.Numerics.LinearAlgebra;

namespace FarmPortfolio.Engine.Scenarios;

/// <summary>
/// The correlation matrix nearest to a symmetric one in the sum of squared differences, by alternating projections with Dykstra's correction: Higham (2002),
/// "Computing the nearest correlation matrix", algorithm 3.3, from memory; its printed example is a test.
/// </summary>
internal static class NearestCorrelation
{
    private const int MostRounds = 2000;
    private const double CloseEnough = 1e-13;

    /// <summary>Finds it.</summary>
    /// <param name="matrix">Symmetric, row by row.</param>
    /// <param name="size">Rows.</param>
    /// <param name="floor">Least eigenvalue; above 0 the matrix has a root.</param>
    /// <returns>The nearest, row by row, and the root of the summed squares of what differs.</returns>
    internal static (double[] Nearest, double Distance) Of(IReadOnlyList<double> matrix, int size, double floor)
    {
        var given = Matrix<double>.Build.Dense(size, size, (i, j) => matrix[i * size + j]);
        var (y, correction) = (given.Clone(), Matrix<double>.Build.Dense(size, size));
        for (var round = 0; round < MostRounds; round++)
        {
            var r = y - correction;
            var x = Lifted(r, floor);
            correction = x - r;
            var next = x.Clone();
            next.SetDiagonal(Vector<double>.Build.Dense(size, 1));
            var moved = (next - y).FrobeniusNorm();
            y = next;
            if (moved < CloseEnough)
            {
                break;
            }
        }

        // the last step set the diagonal: scale instead, so that no eigenvalue falls below the floor by more than rounding
        var scaled = Lifted(y, floor);
        var result = new double[size * size];
        for (var i = 0; i < size; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                result[i * size + j] = result[j * size + i] = i == j ? 1 : scaled[i, j] / Math.Sqrt(scaled[i, i] * scaled[j, j]);
            }
        }

        var sum = 0.0;
        for (var i = 0; i < result.Length; i++)
        {
            sum += (result[i] - matrix[i]) * (result[i] - matrix[i]);
        }

        return (result, Math.Sqrt(sum));
    }

    private static Matrix<double> Lifted(Matrix<double> m, double floor)
    {
        var eigen = m.Evd(Symmetricity.Symmetric);
        var values = Matrix<double>.Build.DenseOfDiagonalVector(eigen.EigenValues.Map(v => Math.Max(floor, v.Real)));
        return eigen.EigenVectors * values * eigen.EigenVectors.Transpose();
    }
}
