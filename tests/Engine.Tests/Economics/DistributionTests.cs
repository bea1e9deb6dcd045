using FarmPortfolio.Engine.Economics;
using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Engine.Tests.Economics;

/// <summary>A distribution's figures against a sort of all values, for shapes that fill the buckets evenly and for such as do not.</summary>
public class DistributionTests
{
    private static readonly double[] Levels = [0.05, 0.10, 0.25, 0.50, 0.75, 0.90, 0.95];

    public static TheoryData<string, int> Shapes => new(
        from shape in new[] { "even", "normal", "skewed", "two heaps", "nearly all the same", "one far out", "narrow about a large number", "whole numbers", "all the same", "denormal", "infinite" }
        from count in new[] { 7, 20, 320, 1003, 10_240 }
        select (shape, count));

    [Theory]
    [MemberData(nameof(Shapes))]
    public void Quantiles_and_tails_are_those_of_a_sort(string shape, int count)
    {
        var values = Enumerable.Range(0, count).Select(i => Value(shape, i, count)).ToArray();
        var sorted = values.Order().ToArray();
        var tail = Math.Max(1, (int)Math.Round(0.05 * count));
        foreach (var high in new[] { false, true })
        {
            var found = Distribution.Of(values, 1, high);
            double[] quantiles = [found.P5, found.P10, found.P25, found.P50, found.P75, found.P90, found.P95];
            for (var i = 0; i < Levels.Length; i++)
            {
                var low = (int)(Levels[i] * (count - 1));
                var expected = sorted[low] + (Levels[i] * (count - 1) - low) * (sorted[Math.Min(count - 1, low + 1)] - sorted[low]);
                Assert.True(expected.Equals(quantiles[i]), $"{shape}, {count} values: P{100 * Levels[i]:0} is {quantiles[i]:R}, by a sort {expected:R}");
            }

            var worst = (high ? sorted[^tail..] : sorted[..tail]).Average();
            Assert.True(worst.Equals(found.MeanOfWorst5Pct) || Math.Abs(worst - found.MeanOfWorst5Pct) <= 1e-12 * Math.Abs(worst), $"{shape}, {count} values: mean of the worst {found.MeanOfWorst5Pct:R}, by a sort {worst:R}");
        }
    }

    [Fact]
    public void The_order_of_the_values_moves_no_quantile()
    {
        var values = Enumerable.Range(0, 10_240).Select(i => Value("skewed", i, 10_240)).ToArray();
        var (forth, back) = (Distribution.Of(values, 1, histogram: true), Distribution.Of([.. values.Reverse()], 1, histogram: true));
        Assert.Equal((forth.P5, forth.P50, forth.P95), (back.P5, back.P50, back.P95));
        Assert.Equal(forth.Histogram!.Counts, back.Histogram!.Counts);
        Assert.Equal(values.Length, forth.Histogram.Counts.Sum());
        Assert.Equal((values.Min(), values.Max()), (forth.Histogram.From, forth.Histogram.To));
    }

    private static double Value(string shape, int i, int count)
    {
        var (u, z) = (Noise.Uniform(1, NoisePurpose.LossOwn, 1, i, 0), Noise.Normal(1, NoisePurpose.LossOwn, 2, i, 0));
        return shape switch
        {
            "even" => u,
            "normal" => 100 * z - 20,
            "skewed" => Math.Exp(2 * z),
            "two heaps" => u < 0.5 ? z : 1e6 + z,
            "nearly all the same" => i == count / 2 ? 1 : 3.25,
            "one far out" => i == 3 ? -1e12 : z,
            "narrow about a large number" => 1e9 + 1e-3 * z,
            "whole numbers" => Math.Floor(10 * u),
            "denormal" => i * double.Epsilon,
            "infinite" => i == 2 ? double.PositiveInfinity : z,
            _ => -7.5,
        };
    }
}
