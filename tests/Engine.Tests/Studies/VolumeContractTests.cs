using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Studies;

namespace FarmPortfolio.Engine.Tests.Studies;

/// <summary>Contracts whose price depends on the volume are settled on the whole tank, after the retrofit.</summary>
public class VolumeContractTests
{
    private static readonly ContractFacts Fixed = new() { SupplyGroupId = "g", Kind = ContractKind.Fixed, Unit = "gal", PriceUsdPerUnit = 2.35, MonthlyFeeUsd = 20 };
    private static readonly Lazy<StudyResult> Plain = new(() => Run(Fixed));

    [Fact]
    public void A_bill_by_volume_that_never_binds_is_the_bill_house_by_house()
    {
        // a minimum take of a hundredth of a gallon sends the same price through the settlement of the whole tank
        var settled = Run(Fixed with { MinimumTakeUnits = 0.01 });
        Assert.Equal(Plain.Value.Options.Count, settled.Options.Count);
        foreach (var (a, b) in Plain.Value.Options.Zip(settled.Options))
        {
            Assert.True(Math.Abs(a.SavingUsd.Mean - b.SavingUsd.Mean) < 1e-6 * Math.Abs(a.SavingUsd.Mean) + 1e-6, $"{a.HouseId} {a.Key}: house by house {a.SavingUsd.Mean}, whole tank {b.SavingUsd.Mean}");
            Assert.Equal(a.NpvUsd.P50, b.NpvUsd.P50, 1e-4);
        }

        Assert.All(Plain.Value.CostBySeason.Zip(settled.CostBySeason), s => Assert.Equal(s.First.P90, s.Second.P90, 1e-3));
    }

    [Fact]
    public void Below_the_minimum_take_a_retrofit_saves_no_fuel_money()
    {
        var bound = Run(Fixed with { MinimumTakeUnits = 100_000 });
        Assert.All(bound.Options, o => Assert.Equal(0, o.FuelSavingUsd, 1e-3));
        Assert.All(Plain.Value.Options, o => Assert.True(o.FuelSavingUsd > 100, $"{o.HouseId} {o.Key}: {o.FuelSavingUsd}"));
    }

    [Fact]
    public void What_is_left_of_a_block_and_lost_eats_the_saving()
    {
        var block = Run(new() { SupplyGroupId = "g", Kind = ContractKind.PreBought, Unit = "gal", PriceUsdPerUnit = 2.35, BlockUnits = 100_000, Leftover = LeftoverRule.Lost, MoneyRatePerYear = 0 });
        Assert.All(block.Options, o => Assert.Equal(0, o.FuelSavingUsd, 1e-3));
        var back = Run(new() { SupplyGroupId = "g", Kind = ContractKind.PreBought, Unit = "gal", PriceUsdPerUnit = 2.35, BlockUnits = 100_000, Leftover = LeftoverRule.BilledToShare, BilledShare = 0.25, MoneyRatePerYear = 0 });
        Assert.All(back.Options.Zip(Plain.Value.Options), o => Assert.Equal(0.75 * o.Second.FuelSavingUsd, o.First.FuelSavingUsd, 1e-6 * o.Second.FuelSavingUsd + 1e-6));
    }

    [Fact]
    public void A_capped_contract_lowers_what_a_retrofit_saves_when_prices_are_high()
    {
        var index = Run(null);
        var capped = Run(new() { SupplyGroupId = "g", Kind = ContractKind.Capped, Unit = "gal", CapUsdPerUnit = 2.4 });
        Assert.All(index.Options.Zip(capped.Options), o => Assert.True(o.Second.SavingUsd.P90 < o.First.SavingUsd.P90, $"{o.First.Key}: index {o.First.SavingUsd.P90}, capped {o.Second.SavingUsd.P90}"));
        Assert.True(capped.CostBySeason[0].P95 < index.CostBySeason[0].P95);
    }

    [Fact]
    public void Other_uses_fill_the_minimum_take_first()
    {
        var alone = Run(Fixed with { MinimumTakeUnits = 9_000 });
        var shared = Run(Fixed with { MinimumTakeUnits = 9_000 }, baseKwhPerDay: 1_000);
        Assert.True(shared.Options[0].FuelSavingUsd > alone.Options[0].FuelSavingUsd, $"alone {alone.Options[0].FuelSavingUsd}, with other uses {shared.Options[0].FuelSavingUsd}");
    }

    [Fact]
    public void A_house_on_pellets_is_priced_on_its_own_futures_and_moves_no_other()
    {
        var portfolio = SmallPortfolio.Of();
        var houses = portfolio.Houses.ToDictionary();
        houses["h1"] = houses["h1"] with { Supplies = [], Heaters = [new("pellet", FuelKind.WoodPellets, 100)] };
        var (result, _) = StudyRun.Run(portfolio with { Houses = houses }, 1, null, TestContext.Current.CancellationToken);
        Assert.Empty(result!.LeftOut);
        Assert.Contains(result.Options, o => o.HouseId == "h1" && o.Fuel == FuelKind.WoodPellets && o.FuelSavingUsd > 0);
        var (without, _) = StudyRun.Run(portfolio, 1, null, TestContext.Current.CancellationToken);
        Assert.Equal(without!.Options.First(o => o.HouseId == "h0").NpvUsd.Mean, result.Options.First(o => o.HouseId == "h0").NpvUsd.Mean);
    }

    private static StudyResult Run(ContractFacts? contract, double baseKwhPerDay = 0)
    {
        var portfolio = SmallPortfolio.Of();
        portfolio = portfolio with
        {
            Contracts = contract is null ? new Dictionary<string, ContractFacts>() : new Dictionary<string, ContractFacts> { ["g"] = contract },
            SupplyGroups = new Dictionary<string, SupplyGroupFacts> { ["g"] = portfolio.SupplyGroups["g"] with { BaseUseKwhPerDay = baseKwhPerDay } },
        };
        var (result, faults) = StudyRun.Run(portfolio, 1, null, TestContext.Current.CancellationToken);
        Assert.Empty(faults);
        Assert.Empty(result!.LeftOut);
        return result;
    }
}
