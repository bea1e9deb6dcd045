using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Engine.Tests.Scenarios;

/// <summary>What scrambling must keep: every point uniform, the points of a replicate even.</summary>
public class SobolPointsTests
{
    [Theory]
    [InlineData(64)]
    [InlineData(1024)]
    public void Each_coordinate_of_a_replicate_lies_once_in_every_even_stretch(int points)
    {
        for (var dimension = 0; dimension < SobolPoints.Dimensions; dimension++)
        {
            var places = Enumerable.Range(0, points).Select(p => (int)(points * SobolPoints.Scrambled(5, 3, p, dimension))).Order();
            Assert.Equal(Enumerable.Range(0, points), places);
        }
    }

    [Fact]
    public void The_first_two_coordinates_lie_once_in_every_box_of_a_thousandth()
    {
        for (var across = 0; across <= 10; across++)
        {
            var (columns, rows) = (1 << across, 1 << (10 - across));
            var boxes = Enumerable.Range(0, 1024).Select(p => (int)(columns * SobolPoints.Scrambled(9, 1, p, 0)) * rows + (int)(rows * SobolPoints.Scrambled(9, 1, p, 1)));
            Assert.Equal(1024, boxes.Distinct().Count());
        }
    }

    /// <summary>One point over many replicates is uniform: mean 1/2, variance 1/12, no two replicates or dimensions alike; 4 standard errors.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(700)]
    public void A_point_is_uniform_over_the_replicates(int point)
    {
        const int Replicates = 20_000;
        double[] Draws(int dimension) => [.. Enumerable.Range(0, Replicates).Select(r => SobolPoints.Scrambled(1, r, point, dimension) - 0.5)];
        var all = Enumerable.Range(0, SobolPoints.Dimensions).Select(Draws).ToArray();
        for (var d = 0; d < all.Length; d++)
        {
            var se = Math.Sqrt(1.0 / 12 / Replicates);
            Assert.True(Math.Abs(all[d].Average()) < 4 * se, $"point {point}, dimension {d}: mean {0.5 + all[d].Average():R}, 1/2 within {4 * se:0.0000} expected");
            var variance = all[d].Average(u => u * u);
            var ofVariance = Math.Sqrt(1.0 / 180 / Replicates);
            Assert.True(Math.Abs(variance - 1.0 / 12) < 4 * ofVariance, $"point {point}, dimension {d}: variance {variance:R}, 1/12 within {4 * ofVariance:0.0000} expected");
            var next = all[(d + 1) % all.Length];
            var product = all[d].Zip(next, (a, b) => 12 * a * b).Average();
            Assert.True(Math.Abs(product) < 4 / Math.Sqrt(Replicates), $"point {point}, dimensions {d} and the next: correlation {product:R}");
            var lag = all[d].Zip(all[d].Skip(1), (a, b) => 12 * a * b).Average();
            Assert.True(Math.Abs(lag) < 4 / Math.Sqrt(Replicates), $"point {point}, dimension {d}: correlation of neighbouring replicates {lag:R}");
        }
    }

    [Fact]
    public void Pairs_of_draws_have_the_bits_of_draws_one_by_one()
    {
        var (first, second) = (new double[11], new double[11]);
        Noise.NormalPairs(77, NoisePurpose.LongFactor, 1, 123, 24_300, first, second);
        for (var i = 0; i < first.Length; i++)
        {
            var words = Noise.Words(77, NoisePurpose.LongFactor, 1, 123, 24_300 + i);
            Assert.Equal(NormalQuantile.At(Philox.Uniform(words.A, words.B)), first[i]);
            Assert.Equal(NormalQuantile.At(Philox.Uniform(words.C, words.D)), second[i]);
        }
    }
}
