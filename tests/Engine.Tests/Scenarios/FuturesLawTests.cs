using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Scenarios;
using static System.Math;
using static FarmPortfolio.Engine.Tests.Scenarios.FuturesLaw;

namespace FarmPortfolio.Engine.Tests.Scenarios;

/// <summary>
/// Log prices of drawn futures against the closed forms of the two-factor model with one draw of unrest a path: mean, variance, shares below P5 to P95,
/// covariances and correlations of the fuels, 1, 5 and 15 years from the records' end. Everything within 4 standard errors read from 40 independent replicates, plain and Sobol alike.
/// </summary>
public class FuturesLawTests
{
    private const double MeanSquareUnrest = (0.49 + 2 + 2.25) / 4;

    [Theory]
    [InlineData(PathSampling.Plain)]
    [InlineData(PathSampling.Sobol)]
    public void Moments_shares_and_correlations_are_those_of_the_law(PathSampling sampling)
    {
        var spec = FuturesLaw.Spec(sampling);
        var blocks = FuturesLaw.Blocks(spec);
        Assert.Equal([1, 5, 15], FuturesLaw.Months.Select(m => FuturesLaw.Steps(spec, spec.Fuels[0], m) / 12.0));
        foreach (var month in FuturesLaw.Months)
        {
            var laws = spec.Fuels.Select(f => FuturesLaw.Of(spec, f, month)).ToArray();
            // how far each log price is from its middle, by fuel, replicate and path
            var away = laws.Select((law, f) => blocks.Select(b => Enumerable.Range(0, b.Paths).Select(p => Log(spec, b, f, p, month) - law.Median).ToArray()).ToArray()).ToArray();
            for (var f = 0; f < laws.Length; f++)
            {
                var variance = laws[f].Variance;
                var what = $"{sampling}, {spec.Fuels[f].Fuel}, month {month}";
                Near($"{what}, mean", 0, x => x, f);
                Near($"{what}, variance", MeanSquareUnrest * variance, x => x * x, f);
                foreach (var (share, deviate) in new[] { (0.05, -PriceModel.P95), (0.25, -PriceModel.P75), (0.5, 0), (0.75, PriceModel.P75), (0.95, PriceModel.P95) })
                {
                    Near($"{what}, share below P{100 * share:0}", share, x => x < deviate * Sqrt(variance) ? 1 : 0, f);
                }

                for (var g = 0; g < f; g++)
                {
                    var (first, second, covariance) = (f, g, FuturesLaw.Covariance(spec, f, g, month));
                    double Product(int replicate, int one, int other) => away[one][replicate].Zip(away[other][replicate], (x, y) => x * y).Average();
                    Close($"{what} with {spec.Fuels[g].Fuel}, covariance", MeanSquareUnrest * covariance, [.. blocks.Select((_, r) => Product(r, first, second))]);
                    Close($"{what} with {spec.Fuels[g].Fuel}, correlation", covariance / Sqrt(variance * laws[g].Variance),
                        [.. blocks.Select((_, r) => Product(r, first, second) / Sqrt(Product(r, first, first) * Product(r, second, second)))]);
                }
            }

            void Near(string what, double expected, Func<double, double> of, int fuel) => Close(what, expected, [.. away[fuel].Select(a => a.Average(of))]);
        }
    }

    [Fact]
    public void The_directions_are_square_to_each_other_and_hold_most_of_the_variance()
    {
        var leading = new Futures(FuturesLaw.Spec(PathSampling.Sobol)).Leading;
        Assert.Equal(LeadingComponents.Most, leading.Count);
        Assert.InRange(leading.ShareHeld, 0.8, 0.999);
        for (var i = 0; i < leading.Count; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                Assert.Equal(i == j ? 1 : 0, leading.Directions[i].Zip(leading.Directions[j], (a, b) => a * b).Sum(), 1e-9);
            }
        }
    }

    [Fact]
    public void Given_normals_take_the_place_of_the_components_and_leave_the_rest()
    {
        var leading = new Futures(FuturesLaw.Spec(PathSampling.Sobol)).Leading;
        var draws = Enumerable.Range(0, leading.Directions[0].Length).Select(i => Noise.Normal(3, NoisePurpose.Offset, 9, i, 0)).ToArray();
        var before = draws.ToArray();
        double[] wanted = [0.3, -1, 2, 0, 0.5, -0.2, 1.1, -2.4];
        leading.Replace(draws, wanted);
        for (var i = 0; i < leading.Count; i++)
        {
            Assert.Equal(wanted[i], leading.Directions[i].Zip(draws, (a, b) => a * b).Sum(), 1e-9);
        }

        var moved = draws.Zip(before, (a, b) => (a - b) * (a - b)).Sum();
        var along = leading.Directions.Zip(wanted, (b, z) => z - b.Zip(before, (x, y) => x * y).Sum()).Sum(v => v * v);
        Assert.Equal(along, moved, 1e-9);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void A_horizon_too_short_for_all_components_takes_what_there_is(int seasons)
    {
        var spec = FuturesLaw.Spec(PathSampling.Sobol);
        var futures = new Futures(spec with { Set = spec.Set with { SeasonCount = seasons } });
        Assert.Equal(3 * seasons, futures.Leading.Count);
        Assert.All(futures.Draw(0).UsdPerKwh, prices => Assert.All(prices, v => Assert.True(v > 0 && double.IsFinite(v))));
    }

    [Fact]
    public void Paths_that_cannot_be_spread_evenly_and_weights_that_are_none_are_refused_by_name()
    {
        var set = FuturesLaw.Spec(PathSampling.Sobol).Set;
        Assert.Equal("pathCount", Assert.Single(ScenarioChecks.Of(set with { PathCount = 1000 })).Field);
        Assert.Empty(ScenarioChecks.Of(set with { PathCount = 1000, Sampling = PathSampling.Plain }));
        Assert.Equal("samplingWeights", Assert.Single(ScenarioChecks.Of(set with { SamplingWeights = [1, -1, 0, 0] })).Field);
        Assert.Equal("samplingWeights", Assert.Single(ScenarioChecks.Of(set with { SamplingWeights = [0, 0, 0, 0] })).Field);
    }
}
