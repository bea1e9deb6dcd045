using FarmPortfolio.Engine.Exposure;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Engine.Tests.Studies;

namespace FarmPortfolio.Engine.Tests.Exposure;

public class ExposureTests
{
    private static readonly Lazy<FarmExposure> Indexed = new(() => Of([]));

    [Fact]
    public void Terms_that_are_fair_cost_the_mean_of_the_index()
    {
        var own = Indexed.Value.Own;
        foreach (var key in new[] { "index", "fixed", "capped" })
        {
            var way = Indexed.Value.Ways.Single(w => w.Cost.Way.Key == key);
            Assert.True(Math.Abs(way.Cost.Cost.Mean - own.Cost.Mean) < 1e-6 * own.Cost.Mean, $"{key}: mean {way.Cost.Cost.Mean}, index {own.Cost.Mean}");
        }

        var (fixedSpread, capped) = (Spread("fixed"), Spread("capped"));
        Assert.True(fixedSpread < Spread("index") && capped < Spread("index"), $"index {Spread("index")}, fixed {fixedSpread}, capped {capped}");
    }

    [Fact]
    public void The_mean_season_is_the_study_s_own()
    {
        // without bills the loss multiplier has a mean of 1: the exposure takes the mean, the study draws it, so only the means agree
        var (result, _) = StudyRun.Run(SmallPortfolio.Of(), 1, null, TestContext.Current.CancellationToken);
        var study = result!.CostBySeason[0];
        Assert.True(Math.Abs(study.Mean - Indexed.Value.Own.Cost.Mean) < 0.05 * study.Mean, $"study {study.Mean}, exposure {Indexed.Value.Own.Cost.Mean}");
    }

    [Fact]
    public void A_minimum_take_of_all_of_it_leaves_an_option_nothing_to_take_off()
    {
        var take = new ContractFacts { SupplyGroupId = "g", Kind = ContractKind.Fixed, Unit = "gal", PriceUsdPerUnit = 2.2, MinimumTakeUnits = 100_000 };
        var bound = Of([new("c", "all of it", take)]);
        Assert.All(bound.Options, o => Assert.Equal(0, o.MeanOffUsd, 1e-3));
        Assert.All(Indexed.Value.Options, o => Assert.True(o.MeanOffUsd > 0 && o.TailOffUsd > 0, $"{o.Key}: mean {o.MeanOffUsd}, tail {o.TailOffUsd}"));
    }

    [Fact]
    public void A_contract_that_cannot_be_is_left_out_by_name()
    {
        var wrong = new ContractFacts { SupplyGroupId = "g", Kind = ContractKind.Collared, Unit = "gal", CapUsdPerUnit = 2, FloorUsdPerUnit = 3, Standing = ContractStanding.Offered };
        var exposure = Of([new("c", "upside down", wrong)]);
        Assert.Equal("CAP_BELOW_FLOOR", Assert.Single(exposure.LeftOut).Fault.Code);
        Assert.DoesNotContain(exposure.Ways, w => w.Cost.Way.Key == "c");
    }

    [Fact]
    public void Break_even_price_makes_the_ways_cost_the_same()
    {
        var gas = Indexed.Value.Ways.Single(w => w.Cost.Way.Fuel == FuelKind.NaturalGas);
        Assert.Equal(Indexed.Value.Own.Cost.Mean, gas.BreakEvenUsdPerUnit!.Value * gas.Cost.Units, 1e-6 * Indexed.Value.Own.Cost.Mean);
    }

    [Theory]
    [InlineData(1.0, 1.5, DearBecause.Price)]
    [InlineData(1.3, 1.0, DearBecause.Winter)]
    [InlineData(1.3, 1.3, DearBecause.Both)]
    [InlineData(0.9, 1.6, DearBecause.Price)]
    [InlineData(1.4, 0.95, DearBecause.Winter)]
    public void A_dear_season_is_named_by_what_made_it(double heat, double price, DearBecause expected) => Assert.Equal(expected, WorstSeasons.Cause(heat, price));

    [Fact]
    public void What_moves_as_one_is_not_spread_and_opposites_are()
    {
        double[] up = [.. Enumerable.Range(0, 400).Select(i => 1000.0 + i)];
        double[] down = [.. up.Select(v => 2400 - v)];
        Assert.Equal(0, JointExposure.Of([up, up], 4).SpreadingGivesUsd, 1e-6);
        var opposite = JointExposure.Of([up, down], 4);
        Assert.True(opposite.PartsOverMeanUsd > 100);
        Assert.Equal(opposite.PartsOverMeanUsd, opposite.SpreadingGivesUsd, 1e-6);
    }

    [Fact]
    public void Cash_is_short_by_what_a_season_costs_over_it()
    {
        var own = Indexed.Value.Own;
        var cash = CashAtRisk.Of(own, own.Cost.P90);
        Assert.Equal(0.10, cash.OverShare, 0.005);
        Assert.Equal(own.Cost.P95 - own.Cost.P90, cash.ShortOneInTwentyUsd, 1e-9);
        Assert.Equal(0, CashAtRisk.Of(own, 1e9).MeanShortUsd);
    }

    [Theory]
    [InlineData(8.333333, 3.4)]
    [InlineData(-8.333333, 2.3)]
    [InlineData(-15, 1.9)]
    [InlineData(-30, 1)]
    public void A_heat_pump_gives_less_the_colder_it_is(double outsideC, double cop) => Assert.Equal(cop, HeatPump.Cop(outsideC), 1e-6);

    private static double Spread(string key) => Indexed.Value.Ways.Single(w => w.Cost.Way.Key == key).Cost.Cost is var c ? c.P95 - c.P5 : 0;

    private static FarmExposure Of(IReadOnlyList<NamedContract> contracts)
    {
        var portfolio = SmallPortfolio.Of();
        var (futures, faults) = StudyFutures.Of(portfolio);
        Assert.Empty(faults);
        return FarmExposure.Of(portfolio, futures!, futures!.Blocks(1, TestContext.Current.CancellationToken), [.. portfolio.Houses.Keys], contracts, 0).Exposure!;
    }
}
