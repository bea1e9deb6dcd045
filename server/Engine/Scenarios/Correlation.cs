namespace FarmPortfolio.Engine.Scenarios;

/// <summary>Correlations of the fuels, order gas, propane, oil, electricity.</summary>
public static class Correlation
{
    /// <summary>Code of the fault where each number could be a correlation and all together cannot.</summary>
    public const string Impossible = "NOT_TOGETHER";

    /// <summary>Fuels with price futures.</summary>
    public const int Fuels = 4;

    /// <summary>Default of the short-term factor, rounded from the public record's three-month changes.</summary>
    public static IReadOnlyList<double> ShortDefault { get; } = [1, 0.4, 0.4, 0.1, 0.4, 1, 0.7, 0.1, 0.4, 0.7, 1, 0.1, 0.1, 0.1, 0.1, 1];

    /// <summary>Default of the long-term factor, rounded from its yearly changes.</summary>
    public static IReadOnlyList<double> LongDefault { get; } = [1, 0.6, 0.55, 0.3, 0.6, 1, 0.8, 0.2, 0.55, 0.8, 1, 0.2, 0.3, 0.2, 0.2, 1];

    private static readonly string[] Names = ["gas", "propane", "oil", "electricity"];

    /// <summary>Lower triangular root of a correlation matrix, row by row.</summary>
    /// <param name="matrix">Square matrix, row by row.</param>
    /// <param name="size">Rows.</param>
    /// <returns>The root.</returns>
    /// <exception cref="ArgumentException">The matrix is not positive definite.</exception>
    public static double[] Cholesky(IReadOnlyList<double> matrix, int size = Fuels)
    {
        var root = new double[size * size];
        for (var i = 0; i < size; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var sum = matrix[i * size + j];
                for (var k = 0; k < j; k++)
                {
                    sum -= root[i * size + k] * root[j * size + k];
                }

                if (i == j)
                {
                    if (!(sum > 1e-12))
                    {
                        throw new ArgumentException("the correlations are not those of any four prices: the matrix is not positive definite", nameof(matrix));
                    }

                    root[i * size + i] = Math.Sqrt(sum);
                }
                else
                {
                    root[i * size + j] = sum / root[j * size + j];
                }
            }
        }

        return root;
    }

    /// <summary>What is wrong with a correlation matrix, with the nearest usable one.</summary>
    /// <param name="matrix">Four by four, row by row.</param>
    /// <param name="field">Field name for the fault.</param>
    /// <returns>The faults; empty = usable.</returns>
    public static IReadOnlyList<Fault> Check(IReadOnlyList<double> matrix, string field)
    {
        if (matrix.Count != Fuels * Fuels)
        {
            return [new("SIZE", field, $"{matrix.Count} correlations were given.", "Give 16: gas, propane, oil, electricity, row by row.")];
        }

        for (var i = 0; i < Fuels; i++)
        {
            for (var j = 0; j < Fuels; j++)
            {
                var r = matrix[i * Fuels + j];
                if (!(r >= -1 && r <= 1) || (i == j && r != 1) || r != matrix[j * Fuels + i])
                {
                    var other = r >= -1 && r <= 1 && i != j ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $", row {j + 1}, column {i + 1} is {matrix[j * Fuels + i]:0.####}") : string.Empty;
                    return [new("NOT_A_CORRELATION", field, string.Create(System.Globalization.CultureInfo.InvariantCulture, $"Row {i + 1}, column {j + 1} ({Names[i]} with {Names[j]}) is {r:0.####}{other}."),
                        "Give numbers from -1 to 1, the same on both sides of the diagonal, and 1 on it.")];
                }
            }
        }

        var (nearest, distance) = Nearest(matrix);
        return distance < 1e-9 ? [] : [new(Impossible, field, "No four prices can have these correlations together.", string.Create(System.Globalization.CultureInfo.InvariantCulture, $"The nearest that can be lies {distance:0.000} away: {Words(nearest)}."))];
    }

    private static string Words(double[] m)
    {
        return string.Join(", ", Enumerable.Range(0, Fuels).SelectMany(i => Enumerable.Range(i + 1, Fuels - i - 1).Select(j => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Names[i]} with {Names[j]} {m[i * Fuels + j]:0.000}"))));
    }

    /// <summary>The matrix itself where four prices can have it, else the nearest whose eigenvalues are 0.02 or more, and the Frobenius distance to it.</summary>
    /// <param name="matrix">Four by four, row by row, symmetric.</param>
    /// <returns>The nearest matrix and the distance; distance 0 = it was usable.</returns>
    public static (double[] Nearest, double Distance) Nearest(IReadOnlyList<double> matrix)
    {
        const double Floor = 0.02;
        var m = MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.Dense(Fuels, Fuels, (i, j) => matrix[i * Fuels + j]);
        return m.Evd(MathNet.Numerics.LinearAlgebra.Symmetricity.Symmetric).EigenValues.All(v => v.Real >= 1e-6) ? ([.. matrix], 0) : NearestCorrelation.Of(matrix, Fuels, Floor);
    }
}
