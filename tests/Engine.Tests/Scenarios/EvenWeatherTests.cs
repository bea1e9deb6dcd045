using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Tests.Scenarios;

/// <summary>Weather spread evenly over dear and cheap futures: its law is what it was, and hard weather follows its dimension of the Sobol points. Computed here, no source.</summary>
public class EvenWeatherTests
{
    private const int Replicates = 40;
    private static readonly FuelKind[] Fuels = [FuelKind.NaturalGas, FuelKind.Propane, FuelKind.FuelOil, FuelKind.Electricity];

    [Theory]
    [InlineData(PathSampling.Plain)]
    [InlineData(PathSampling.Sobol)]
    public void Every_winter_is_met_equally_often_in_every_season_and_offsets_keep_their_law(PathSampling sampling)
    {
        var spec = Spec(sampling);
        var blocks = Enumerable.Range(0, Replicates).Select(new Futures(spec).Draw).ToArray();
        foreach (var block in blocks)
        {
            for (var s = 0; s < block.Seasons; s++)
            {
                // 512 paths over 4 winters: a path's place in its stretch may fall on either side of an edge, once at each
                Assert.All(Enumerable.Range(0, 4), w => Assert.InRange(Enumerable.Range(0, block.Paths).Count(p => block.Winter[p * block.Seasons + s] == w), 127, 129));
            }
        }

        foreach (var s in new[] { 0, 7 })
        {
            double[] Offsets(FuturesBlock b) => [.. Enumerable.Range(0, b.Paths).Select(p => b.OffsetK[p * b.Seasons + s] - spec.Set.OffsetTrendKPerYear * s)];
            Close($"{sampling}, season {s}, mean offset", 0, [.. blocks.Select(b => Offsets(b).Average())]);
            Close($"{sampling}, season {s}, variance of the offset", spec.Set.OffsetSdK * spec.Set.OffsetSdK, [.. blocks.Select(b => Offsets(b).Average(o => o * o))]);
        }
    }

    /// <summary>Product of a season's hardness and the log of propane's price, both less their means over all replicates: 0 within 4 standard errors, in the season, before it and after it.</summary>
    [Theory]
    [InlineData(PathSampling.Plain)]
    [InlineData(PathSampling.Sobol)]
    public void Weather_has_nothing_to_do_with_prices(PathSampling sampling)
    {
        var spec = Spec(sampling);
        var blocks = Enumerable.Range(0, Replicates).Select(new Futures(spec).Draw).ToArray();
        foreach (var (s, month) in new[] { (0, 7), (0, 90), (5, 7), (5, 67) })
        {
            double Hard(FuturesBlock b, int p) => spec.Hardness[b.Winter[p * b.Seasons + s]] - 0.05 * b.OffsetK[p * b.Seasons + s];
            double Dear(FuturesBlock b, int p) => Math.Log(b.UsdPerKwh[1][p * 12 * b.Seasons + month]);
            var (hard, dear) = (Mean(blocks, Hard), Mean(blocks, Dear));
            Close($"{sampling}, season {s} with month {month}", 0, [.. blocks.Select(b => Enumerable.Range(0, b.Paths).Average(p => (Hard(b, p) - hard) * (Dear(b, p) - dear)))]);
        }
    }

    [Fact]
    public void The_hardest_runs_of_winters_go_to_the_highest_points()
    {
        var spec = Spec(PathSampling.Sobol);
        var block = new Futures(spec).Draw(3);
        var hardness = Enumerable.Range(0, block.Paths).OrderBy(p => SobolPoints.Scrambled(spec.Set.Seed, 3, p, SobolPlan.Weather))
            .Select(p => Enumerable.Range(0, block.Seasons).Sum(s => Math.Pow(1.2, -s) * spec.Hardness[block.Winter[p * block.Seasons + s]])).ToArray();
        for (var i = 1; i < hardness.Length; i++)
        {
            Assert.True(hardness[i] >= hardness[i - 1] - 1e-12, $"path {i} in the order of the points has hardness {hardness[i]:R} after {hardness[i - 1]:R}");
        }
    }

    /// <summary>Another offset, trend or spread moves no path's winter; a winter fixed for a season moves none of another season.</summary>
    [Fact]
    public void Offsets_and_fixed_winters_leave_the_other_winters_of_a_path_alone()
    {
        var spec = Spec(PathSampling.Sobol);
        var block = new Futures(spec).Draw(1);
        var warmer = new Futures(spec with { Set = spec.Set with { OffsetK = 1.5, OffsetTrendKPerYear = 0.1, OffsetSdK = 0.2 } }).Draw(1);
        var hard = new Futures(spec with { FixedWinters = new Dictionary<int, int> { [2] = 3 } }).Draw(1);
        Assert.Equal(block.Winter, warmer.Winter);
        for (var cell = 0; cell < block.Winter.Length; cell++)
        {
            Assert.Equal(cell % block.Seasons == 2 ? 3 : block.Winter[cell], hard.Winter[cell]);
            Assert.Equal(block.Winter[cell], hard.DrawnWinter[cell]);
        }
    }

    /// <summary>Where no month lies below the base no winter is harder than another, and none counts for nothing: what is ordered by its logarithm stays finite.</summary>
    [Fact]
    public void Winters_without_a_cold_month_are_alike()
    {
        var warm = Enumerable.Repeat(22.0, 12).ToArray();
        var set = new ScenarioSetFacts { FirstSeason = 2026, SeasonCount = 2, ReplicateCount = 2, PathCount = 64, Sampling = PathSampling.Sobol };
        var (spec, faults) = FuturesSpec.Of(set, Fuels.ToDictionary(f => f, Series), [2013, 2014], [warm, warm]);
        Assert.Empty(faults);
        Assert.Equal([1.0, 1.0], spec!.Hardness);
        var (mixed, _) = FuturesSpec.Of(set, Fuels.ToDictionary(f => f, Series), [2013, 2014], [warm, Winter(0)]);
        Assert.True(mixed!.Hardness[0] > 0 && mixed.Hardness[1] < 2);
        var futures = new Futures(mixed);
        var order = PathOrder.ByPrice([futures.Draw(0), futures.Draw(1)], FuelKind.Propane, mixed);
        Assert.All(order.Score, s => Assert.True(s > 0 && double.IsFinite(Math.Log(s))));
        Assert.Equal(Enumerable.Range(0, 64), PathOrder.Roughly([.. order.Score.Select(s => Math.Log(s))], 2).Of(1).ToArray().Order());
    }

    /// <summary>What a draw does to a season's cost, against the difference of two paths a small step apart, for a price that follows an index with a residual.</summary>
    [Theory]
    [InlineData(0, 0)]
    [InlineData(0, 3)]
    [InlineData(2, 5)]
    public void What_a_draw_does_to_a_season_is_the_slope_of_its_cost(int fuel, int season)
    {
        var spec = Spec(PathSampling.Sobol);
        var (first, last) = (12 * spec.Set.FirstSeason + 6, 12 * spec.Set.FirstSeason + 6 + 12 * spec.Set.SeasonCount);
        var months = Enumerable.Range(first - 3, last - first + 3).ToArray();
        var track = new FuelTrack(spec.Fuels[fuel], spec.Set, first, months);
        var response = track.Response(first, season, spec.LoadShare);
        Assert.True(track.HasResidual);
        foreach (var month in new[] { 3, 12 * season + 8, 12 * season + 20 })
        {
            foreach (var (row, slope) in new[] { (0, response.Short[month]), (1, response.Long[month]), (2, response.Residual[month]) })
            {
                var (up, down) = (Cost(row, month, 1e-4), Cost(row, month, -1e-4));
                var found = (up - down) / 2e-4 / Cost(row, month, 0);
                Assert.True(Math.Abs(found - slope) <= 1e-6, $"{spec.Fuels[fuel].Fuel}, season {season}, draw {row} of month {month}: slope {slope:R}, {found:R} by a small step");
            }
        }

        double Cost(int row, int month, double step)
        {
            var (draws, residuals, paid) = (new double[2 * months.Length], new double[months.Length], new double[months.Length]);
            (row < 2 ? draws : residuals)[row < 2 ? row * months.Length + month : month] = step;
            track.Follow(1, draws, new double[months.Length], residuals, paid);
            return Enumerable.Range(0, 12).Sum(m => spec.LoadShare[m] * paid[3 + 12 * season + m]);
        }
    }

    private static double Mean(FuturesBlock[] blocks, Func<FuturesBlock, int, double> of) => blocks.Average(b => Enumerable.Range(0, b.Paths).Average(p => of(b, p)));

    private static FuturesSpec Spec(PathSampling sampling)
    {
        var set = new ScenarioSetFacts { FirstSeason = 2026, SeasonCount = 8, ReplicateCount = Replicates, PathCount = 512, Seed = 77, Sampling = sampling, ColdMonthTerm = false };
        var (spec, faults) = FuturesSpec.Of(set, Fuels.ToDictionary(f => f, Series), [2013, 2014, 2015, 2016], [Winter(-3), Winter(1), Winter(2), Winter(0)]);
        Assert.Empty(faults);
        return spec!;
    }

    private static double[] Winter(int warmer) => [.. Enumerable.Range(0, 12).Select(m => 10 + 12 * Math.Cos(Math.PI * (m - 0.5) / 6) + warmer)];

    private static PriceSeriesFacts Series(FuelKind fuel) => new()
    {
        Fuel = fuel,
        Market = fuel == FuelKind.Electricity ? PriceMarket.Retail : PriceMarket.Wholesale,
        Class = fuel == FuelKind.Electricity ? PriceClass.Electricity : PriceClass.WholesaleFuel,
        Unit = fuel == FuelKind.NaturalGas ? "MMBtu" : HeatingValues.UnitsOf(fuel)[0],
        FirstMonthOn = new(2016, 4, 1),
        UsdPerUnit = [.. Enumerable.Range(0, 120).Select(i => (double?)(2 + 0.4 * Math.Sin(i * 0.37) + 0.2 * Math.Sin(i * 1.7)))],
    };

    private static void Close(string what, double expected, double[] replicates)
    {
        var mean = replicates.Average();
        var se = Math.Sqrt(replicates.Sum(v => (v - mean) * (v - mean)) / (replicates.Length - 1) / replicates.Length);
        Assert.True(Math.Abs(mean - expected) <= 4 * se, $"{what}: {expected:R} expected, {mean:R} drawn, standard error {se:R}");
    }
}
