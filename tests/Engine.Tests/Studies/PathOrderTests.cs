using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Studies;

namespace FarmPortfolio.Engine.Tests.Studies;

/// <summary>Rough orders of the paths: every path once, none further from its place than a thousandth of the score's range.</summary>
public class PathOrderTests
{
    [Theory]
    [InlineData(64, 3)]
    [InlineData(1024, 2)]
    public void A_rough_order_is_an_order_to_a_thousandth_of_the_range(int paths, int replicates)
    {
        double[] score = [.. Enumerable.Range(0, paths * replicates).Select(p => 40 + 3 * Noise.Normal(5, NoisePurpose.Offset, 2, p, 0))];
        var order = PathOrder.Roughly(score, replicates);
        for (var r = 0; r < replicates; r++)
        {
            var found = order.Of(r).ToArray();
            Assert.Equal(Enumerable.Range(0, paths), found.Order());
            var row = score.AsSpan(r * paths, paths).ToArray();
            var step = (row.Max() - row.Min()) / 1023;
            var highest = double.NegativeInfinity;
            foreach (var path in found)
            {
                Assert.True(row[path] >= highest - step * (1 + 1e-9), $"replicate {r}: a path of score {row[path]:R} comes after one of {highest:R}, a step is {step:R}");
                highest = Math.Max(highest, row[path]);
            }
        }
    }

    [Fact]
    public void Paths_alike_stay_in_the_order_of_their_numbers() =>
        Assert.Equal(Enumerable.Range(0, 64), PathOrder.Roughly([.. Enumerable.Repeat(2.5, 64)], 1).Of(0).ToArray());
}
