using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Studies;

namespace FarmPortfolio.Engine.Tests.Studies;

/// <summary>Contracts inside a study: month by month where a price allows it, season by season on the volume of the whole tank where it does not.</summary>
public class ContractStudyTests
{
    private static readonly ContractFacts Indexed = new() { SupplyGroupId = "g", Kind = ContractKind.Indexed, Unit = "gal", AdderUsdPerUnit = 0.4, MonthlyFeeUsd = 20 };

    private static readonly ContractFacts Fixed = new() { SupplyGroupId = "g", Kind = ContractKind.Fixed, Unit = "gal", PriceUsdPerUnit = 2.4 };

    [Fact]
    public void Steps_that_add_nothing_settle_on_the_volume_to_the_same_money_as_month_by_month()
    {
        var (monthly, settled) = (Run(Indexed), Run(Indexed with { Tiers = [new(0, 0)] }));
        foreach (var (m, s) in monthly.Options.Zip(settled.Options))
        {
            Assert.Equal(m.NpvUsd.Mean, s.NpvUsd.Mean, 1e-6);
            Assert.Equal(m.NpvUsd.P10, s.NpvUsd.P10, 1e-6);
            Assert.Equal(m.SavingBySeason[3].Mean, s.SavingBySeason[3].Mean, 1e-6);
            Assert.Equal(m.NetBySeason[3].P90, s.NetBySeason[3].P90, 1e-6);
            Assert.Equal(m.Lasting.NeverShare, s.Lasting.NeverShare, 1e-12);
        }

        Assert.All(monthly.CostBySeason.Zip(settled.CostBySeason), c => Assert.Equal(c.First.P50, c.Second.P50, 1e-5));
    }

    [Fact]
    public void Under_a_minimum_take_that_is_never_reached_no_retrofit_saves_fuel_money()
    {
        var bound = Run(Fixed with { MinimumTakeUnits = 1_000_000 });
        Assert.All(bound.Options, o => Assert.Equal(0, o.FuelSavingUsd, 1e-3));
        Assert.All(Run(Fixed).Options, o => Assert.True(o.FuelSavingUsd > 100));
    }

    [Fact]
    public void A_block_that_is_lost_when_it_is_not_burned_takes_the_worth_out_of_a_saving()
    {
        var block = new ContractFacts { SupplyGroupId = "g", Kind = ContractKind.PreBought, Unit = "gal", PriceUsdPerUnit = 2.4, BlockUnits = 4_000, Leftover = LeftoverRule.Lost };
        var (lost, share) = (Run(block), Run(block with { Leftover = LeftoverRule.BilledToShare, BilledShare = 0.2 }));
        Assert.All(lost.Options.Zip(share.Options), o => Assert.True(o.First.FuelSavingUsd < o.Second.FuelSavingUsd, $"{o.First.Key}: {o.First.FuelSavingUsd} with the rest lost, {o.Second.FuelSavingUsd} with a fifth of it billed"));
    }

    [Fact]
    public void A_cap_cuts_the_dear_seasons_and_no_others()
    {
        var (free, capped) = (Run(Indexed), Run(Indexed with { Kind = ContractKind.Capped, CapUsdPerUnit = 4 }));
        Assert.True(capped.CostBySeason[^1].P95 < free.CostBySeason[^1].P95);
        Assert.Equal(free.CostBySeason[0].P5, capped.CostBySeason[0].P5, 1e-6);
    }

    [Fact]
    public void Settled_units_have_the_same_bits_on_any_number_of_threads() =>
        Assert.Equal(Run(Fixed with { MinimumTakeUnits = 3_000 }, 1).ResultSha256, Run(Fixed with { MinimumTakeUnits = 3_000 }, 8).ResultSha256);

    [Fact]
    public void A_contract_that_cannot_be_leaves_its_houses_out_and_says_why()
    {
        var result = Run(Indexed with { Kind = ContractKind.Collared, CapUsdPerUnit = 1, FloorUsdPerUnit = 2 });
        Assert.Equal(0, result.Houses);
        Assert.Contains(result.LeftOut, l => l.ItemId == "h0");
    }

    [Fact]
    public void A_contract_on_its_own_series_pays_by_it_and_one_that_is_not_there_is_said()
    {
        // the series is the index and half a dollar: the same as an adder of 0.50
        var small = SmallPortfolio.Of();
        var dearer = small.Prices[FuelKind.Propane] with { UsdPerUnit = [.. small.Prices[FuelKind.Propane].UsdPerUnit.Select(p => p + 0.5)] };
        var own = Indexed with { AdderUsdPerUnit = null, PriceSeriesId = "s" };
        var (result, _) = StudyRun.Run(small with { Contracts = new Dictionary<string, ContractFacts> { ["g"] = own }, OwnSeries = new Dictionary<string, PriceSeriesFacts> { ["s"] = dearer } }, 2, null, CancellationToken.None);
        var same = Run(Indexed with { AdderUsdPerUnit = 0.5 });
        Assert.Equal(same.CostBySeason[2].Mean, result!.CostBySeason[2].Mean, 1e-6 * same.CostBySeason[2].Mean);
        Assert.Contains(Run(own).LeftOut, l => l.Fault.Code == "NO_SERIES" && l.Fault.Field == "priceSeriesId");
    }

    private static StudyResult Run(ContractFacts contract, int threads = 2)
    {
        var (result, faults) = StudyRun.Run(SmallPortfolio.Of() with { Contracts = new Dictionary<string, ContractFacts> { ["g"] = contract } }, threads, null, CancellationToken.None);
        Assert.Empty(faults);
        return result!;
    }
}
