using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Engine.Tests.Scenarios;

/// <summary>Draws spread evenly: each of n stretches once, each run of neighbours even, each path's draw standard normal whatever its place in the order.</summary>
public class EvenNormalsTests
{
    [Theory]
    [InlineData(64)]
    [InlineData(128)]
    [InlineData(1024)]
    public void Every_stretch_is_met_once_and_every_run_of_neighbours_is_even(int paths)
    {
        var (order, normals) = (Order(paths), new double[paths]);
        EvenNormals.Fill(3, NoisePurpose.LossOwn, 8, 2, order, normals);
        var ranks = new int[paths];
        var sorted = Enumerable.Range(0, paths).OrderBy(p => normals[p]).ToArray();
        for (var i = 0; i < paths; i++)
        {
            ranks[sorted[i]] = i;
            Assert.InRange(normals[sorted[i]], i == 0 ? double.NegativeInfinity : NormalQuantile.At((double)i / paths), i == paths - 1 ? double.PositiveInfinity : NormalQuantile.At((i + 1.0) / paths));
        }

        var runs = 1 << (int.Log2(paths) / 2);
        var each = paths / runs;
        for (var run = 0; run < runs; run++)
        {
            Assert.Equal(Enumerable.Range(0, each), order.AsSpan(run * each, each).ToArray().Select(p => ranks[p] / runs).Order());
        }
    }

    /// <summary>First, middle and last of the order over 8,000 replicates: mean 0, variance 1, shares below the quartiles, two keys unrelated; 4 standard errors.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(31)]
    [InlineData(63)]
    public void A_paths_draw_is_standard_normal(int place)
    {
        const int Replicates = 8_000;
        var (order, a, b) = (Order(64), new double[64], new double[64]);
        var (sum, squares, below, product) = (0.0, 0.0, 0, 0.0);
        for (var r = 0; r < Replicates; r++)
        {
            EvenNormals.Fill(3, NoisePurpose.SavingOwn, 1, r, order, a);
            EvenNormals.Fill(3, NoisePurpose.SavingOwn, 2, r, order, b);
            var z = a[order[place]];
            (sum, squares, below, product) = (sum + z, squares + z * z, below + (z < NormalQuantile.At(0.25) ? 1 : 0), product + z * b[order[place]]);
        }

        Near("mean", 0, sum / Replicates, 1 / Math.Sqrt(Replicates));
        Near("variance", 1, squares / Replicates, Math.Sqrt(2.0 / Replicates));
        Near("share below the lower quartile", 0.25, below / (double)Replicates, Math.Sqrt(0.25 * 0.75 / Replicates));
        Near("correlation of two keys", 0, product / Replicates, 1 / Math.Sqrt(Replicates));

        void Near(string what, double expected, double found, double se) =>
            Assert.True(Math.Abs(expected - found) <= 4 * se, $"place {place}, {what}: {expected} expected, {found:R} found, standard error {se:R}");
    }

    private static int[] Order(int paths) => [.. Enumerable.Range(0, paths).OrderBy(p => Philox.Mix((ulong)p))];
}
