using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Units;
using static System.Math;

namespace FarmPortfolio.Engine.Tests.Scenarios;

/// <summary>
/// Log prices of drawn futures against the closed forms of the two-factor model with one draw of unrest a path: mean, variance, shares below P5 to P95,
/// correlations of the fuels. Everything within 4 standard errors read from 40 independent replicates, plain and Sobol alike.
/// </summary>
public class FuturesLawTests
{
    private const int Replicates = 40;
    private const double MeanSquareUnrest = (0.49 + 2 + 2.25) / 4;
    private static readonly int[] Months = [7, 55, 139];

    [Theory]
    [InlineData(PathSampling.Plain)]
    [InlineData(PathSampling.Sobol)]
    public void Moments_shares_and_correlations_are_those_of_the_law(PathSampling sampling)
    {
        var spec = Spec(sampling);
        var blocks = Enumerable.Range(0, Replicates).Select(new Futures(spec).Draw).ToArray();
        foreach (var month in Months)
        {
            var laws = spec.Fuels.Select(f => Law(spec, f, month)).ToArray();
            for (var f = 0; f < laws.Length; f++)
            {
                var (median, variance) = laws[f];
                var what = $"{sampling}, {spec.Fuels[f].Fuel}, month {month}";
                Near($"{what}, mean", 0, x => x - median, f);
                Near($"{what}, variance", MeanSquareUnrest * variance, x => (x - median) * (x - median), f);
                foreach (var (share, deviate) in new[] { (0.05, -PriceModel.P95), (0.25, -PriceModel.P75), (0.5, 0), (0.75, PriceModel.P75), (0.95, PriceModel.P95) })
                {
                    Near($"{what}, share below P{100 * share:0}", share, x => x < median + deviate * Sqrt(variance) ? 1 : 0, f);
                }

                for (var g = 0; g < f; g++)
                {
                    var (other, others) = laws[g];
                    var covariance = Covariance(spec, f, g, month);
                    Close($"{what} with {spec.Fuels[g].Fuel}, covariance", MeanSquareUnrest * covariance,
                        [.. blocks.Select(b => Enumerable.Range(0, b.Paths).Average(p => (Log(spec, b, f, p, month) - median) * (Log(spec, b, g, p, month) - other)))]);
                }
            }

            void Near(string what, double expected, Func<double, double> of, int fuel) =>
                Close(what, expected, [.. blocks.Select(b => Enumerable.Range(0, b.Paths).Average(p => of(Log(spec, b, fuel, p, month))))]);
        }
    }

    [Fact]
    public void The_directions_are_square_to_each_other_and_hold_most_of_the_variance()
    {
        var leading = new Futures(Spec(PathSampling.Sobol)).Leading;
        Assert.Equal(9, leading.Count);
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
        var leading = new Futures(Spec(PathSampling.Sobol)).Leading;
        var draws = Enumerable.Range(0, leading.Directions[0].Length).Select(i => Noise.Normal(3, NoisePurpose.Offset, 9, i, 0)).ToArray();
        var before = draws.ToArray();
        double[] wanted = [0.3, -1, 2, 0, 0.5, -0.2, 1.1, -2.4, 0.9];
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
    public void A_horizon_too_short_for_nine_components_takes_what_there_is(int seasons)
    {
        var spec = Spec(PathSampling.Sobol);
        var futures = new Futures(spec with { Set = spec.Set with { SeasonCount = seasons } });
        Assert.Equal(3 * seasons, futures.Leading.Count);
        Assert.All(futures.Draw(0).UsdPerKwh, prices => Assert.All(prices, v => Assert.True(v > 0 && double.IsFinite(v))));
    }

    [Fact]
    public void Paths_that_cannot_be_spread_evenly_and_weights_that_are_none_are_refused_by_name()
    {
        var set = Spec(PathSampling.Sobol).Set;
        Assert.Equal("pathCount", Assert.Single(ScenarioChecks.Of(set with { PathCount = 1000 })).Field);
        Assert.Empty(ScenarioChecks.Of(set with { PathCount = 1000, Sampling = PathSampling.Plain }));
        Assert.Equal("samplingWeights", Assert.Single(ScenarioChecks.Of(set with { SamplingWeights = [1, -1, 0, 0] })).Field);
        Assert.Equal("samplingWeights", Assert.Single(ScenarioChecks.Of(set with { SamplingWeights = [0, 0, 0, 0] })).Field);
    }

    /// <summary>Four series, three of them wholesale, paid as they are quoted, so that prices drawn are prices of the law.</summary>
    private static FuturesSpec Spec(PathSampling sampling)
    {
        var set = new ScenarioSetFacts { FirstSeason = 2026, SeasonCount = 12, ReplicateCount = Replicates, PathCount = 512, Seed = 31, Sampling = sampling, ColdMonthTerm = false };
        var fuels = new[] { FuelKind.NaturalGas, FuelKind.Propane, FuelKind.FuelOil, FuelKind.Electricity };
        var (spec, faults) = FuturesSpec.Of(set, fuels.ToDictionary(f => f, Series), [2015, 2016], [Winter(0), Winter(1)]);
        Assert.Empty(faults);
        return spec! with { Fuels = [.. spec.Fuels.Select(f => f with { PassThrough = null })] };
    }

    private static double[] Winter(int number) => [.. Enumerable.Range(0, 12).Select(m => 10 + 12 * Cos(PI * (m - 0.5) / 6) + number)];

    private static PriceSeriesFacts Series(FuelKind fuel) => new()
    {
        Fuel = fuel,
        Market = fuel == FuelKind.Electricity ? PriceMarket.Retail : PriceMarket.Wholesale,
        Class = fuel == FuelKind.Electricity ? PriceClass.Electricity : PriceClass.WholesaleFuel,
        Unit = fuel == FuelKind.NaturalGas ? "MMBtu" : HeatingValues.UnitsOf(fuel)[0],
        FirstMonthOn = new(2016, 1, 1),
        UsdPerUnit = [.. Enumerable.Range(0, 122).Select(i => (double?)(2 + 0.4 * Sin(i * 0.37) + 0.2 * Sin(i * 1.7)))],
    };

    private static double Log(FuturesSpec spec, FuturesBlock block, int fuel, int path, int month) =>
        Math.Log(block.UsdPerKwh[fuel][path * 12 * block.Seasons + month] * HeatingValues.KwhPerUnit(spec.Fuels[fuel].Fuel, spec.Fuels[fuel].Unit)!.Value);

    private static int Steps(FuturesSpec spec, FuelSpec fuel, int month) =>
        12 * spec.Set.FirstSeason + 6 + month - (12 * fuel.Model.LastMonthOn.Year + fuel.Model.LastMonthOn.Month - 1);

    private static (double Median, double Variance) Law(FuturesSpec spec, FuelSpec fuel, int month)
    {
        var (m, steps) = (fuel.Model, Steps(spec, fuel, month));
        var shape = m.Shape[(6 + month) % 12] - Math.Log(m.Shape.Average(Exp));
        var number = spec.Fuels.ToList().IndexOf(fuel);
        return (m.Median(steps / 12.0) + shape, Covariance(spec, number, number, month));
    }

    /// <summary>Added up month by month, the season of unrest in the short-term factor: 1.45 from November to March, 0.45 else, wholesale only.</summary>
    private static double Covariance(FuturesSpec spec, int f, int g, int month)
    {
        var (a, b) = (spec.Fuels[f], spec.Fuels[g]);
        var (short_, long_) = (Correlation.ShortDefault[4 * f + g], Correlation.LongDefault[4 * f + g]);
        var (steps, sum) = (Steps(spec, a, month), 0.0);
        for (var back = 0; back < steps; back++)
        {
            var calendar = (6 + month + 1200 - back) % 12;
            double Unrest(FuelSpec s) => !s.Wholesale ? 1 : calendar is >= 10 or <= 2 ? 1.45 : 0.45;
            sum += short_ * Unrest(a) * Unrest(b) * Step(a.Model.ShortVolatility, a.Model.ShortReversion, back) * Step(b.Model.ShortVolatility, b.Model.ShortReversion, back);
            sum += long_ * Step(a.Model.LongVolatility, a.Model.LongReversion, back) * Step(b.Model.LongVolatility, b.Model.LongReversion, back);
        }

        return sum;
    }

    /// <summary>Standard deviation of a month's step, faded over the months since.</summary>
    private static double Step(double volatility, double reversion, int back) =>
        volatility * Sqrt(reversion > 0 ? (1 - Exp(-reversion / 6)) / (2 * reversion) : 1.0 / 12) * Exp(-reversion * back / 12);

    private static void Close(string what, double expected, double[] replicates)
    {
        var mean = replicates.Average();
        var se = Sqrt(replicates.Sum(v => (v - mean) * (v - mean)) / (replicates.Length - 1) / replicates.Length);
        Assert.True(Abs(mean - expected) <= 4 * se, $"{what}: {expected:R} by the closed form, {mean:R} drawn, standard error {se:R}");
    }
}
