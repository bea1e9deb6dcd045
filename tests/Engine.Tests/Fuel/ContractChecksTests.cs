using FarmPortfolio.Engine.Fuel;

namespace FarmPortfolio.Engine.Tests.Fuel;

/// <summary>What cannot be is named by field, with what would be right.</summary>
public class ContractChecksTests
{
    private static readonly ContractFacts Plain = new() { SupplyGroupId = "g", Kind = ContractKind.Indexed, Unit = "gal" };

    public static TheoryData<string, string, ContractFacts> Wrong => new()
    {
        { "UNKNOWN_UNIT", "unit", Plain with { Unit = "therm" } },
        { "CAP_BELOW_FLOOR", "capUsdPerUnit", Plain with { Kind = ContractKind.Collared, CapUsdPerUnit = 2, FloorUsdPerUnit = 2.4 } },
        { "NO_CAP", "capUsdPerUnit", Plain with { Kind = ContractKind.Capped } },
        { "NO_FLOOR", "floorUsdPerUnit", Plain with { Kind = ContractKind.Collared, CapUsdPerUnit = 2 } },
        { "NO_PRICE", "priceUsdPerUnit", Plain with { Kind = ContractKind.Fixed } },
        { "OUT_OF_RANGE", "priceUsdPerUnit", Plain with { Kind = ContractKind.Fixed, PriceUsdPerUnit = 290 } },
        { "OUT_OF_RANGE", "capUsdPerUnit", Plain with { Kind = ContractKind.Capped, CapUsdPerUnit = 265 } },
        { "NO_BLOCK", "blockUnits", Plain with { Kind = ContractKind.PreBought, PriceUsdPerUnit = 2 } },
        { "NEGATIVE", "blockUnits", Plain with { Kind = ContractKind.Fixed, PriceUsdPerUnit = 2, BlockUnits = -100 } },
        { "NEGATIVE", "minimumTakeUnits", Plain with { MinimumTakeUnits = -1 } },
        { "NEGATIVE", "tankRentUsdPerYear", Plain with { TankRentUsdPerYear = double.NaN } },
        { "ENDS_BEFORE_IT_STARTS", "endsOn", Plain with { StartsOn = new(2027, 1, 1), EndsOn = new(2026, 12, 31) } },
        { "NO_SHARE", "billedShare", Plain with { Kind = ContractKind.PreBought, PriceUsdPerUnit = 2, BlockUnits = 1000, Leftover = LeftoverRule.BilledToShare } },
        { "OUT_OF_RANGE", "indexShare", Plain with { IndexShare = 1.8 } },
        { "OUT_OF_RANGE", "volumeShare", Plain with { VolumeShare = 1.2 } },
        { "STEPS", "tiers", Plain with { Tiers = [new(300, -0.1), new(200, -0.2)] } },
        { "NO_STAND_BY", "interruptedDays", Plain with { InterruptedDays = 10 } },
        { "DEMAND_CHARGE", "demandUsdPerKw", Plain with { DemandUsdPerKw = 12 } },
    };

    [Theory, MemberData(nameof(Wrong))]
    public void A_contract_that_cannot_be_is_named(string code, string field, ContractFacts contract)
    {
        var fault = Assert.Single(ContractChecks.Of(contract, FuelKind.Propane), f => f.Code == code && f.Field == field);
        Assert.NotEmpty(fault.Remedy);
        Assert.Null(SupplyTerms.Of([contract], null, FuelKind.Propane, null, 2026, 1).Terms);
    }

    /// <summary>Where it is and what would be right, in words a grower reads.</summary>
    [Fact]
    public void What_cannot_be_is_said_with_its_figures_and_what_would_be_right()
    {
        var collar = Assert.Single(ContractChecks.Of(Plain with { Kind = ContractKind.Collared, CapUsdPerUnit = 2, FloorUsdPerUnit = 2.4 }, FuelKind.Propane));
        Assert.Equal(("The cap of 2 is below the floor of 2.4.", "Give a cap above the floor."), (collar.Message, collar.Remedy));
        var ends = Assert.Single(ContractChecks.Of(Plain with { StartsOn = new(2027, 1, 1), EndsOn = new(2026, 12, 31) }, FuelKind.Propane));
        Assert.Equal(("The contract ends on 2026-12-31, before it starts on 2027-01-01.", "Give a last day after the first."), (ends.Message, ends.Remedy));
        var shares = Assert.Single(ContractChecks.Together([Plain with { VolumeShare = 0.7 }, Plain with { VolumeShare = 0.6 }]));
        Assert.Equal(("volumeShare", "The shares of the 2 contracts in force together add up to 130 % of the volume."), (shares.Field, shares.Message));
        Assert.StartsWith("Lower them to 100 % or less together", shares.Remedy, StringComparison.Ordinal);
        Assert.Contains("what no contract covers pays the index", shares.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(FuelKind.Propane, "gal", 12, 290)]
    [InlineData(FuelKind.Electricity, "kWh", 0.9, 18)]
    [InlineData(FuelKind.NaturalGas, "therm", 9, 110)]
    public void Cents_for_dollars_are_asked_about_and_a_dear_price_stands(FuelKind fuel, string unit, double dear, double cents)
    {
        ContractFacts At(double usd) => Plain with { Kind = ContractKind.Fixed, Unit = unit, PriceUsdPerUnit = usd };
        Assert.Empty(ContractChecks.Of(At(dear), fuel));
        Assert.Contains("dollars, not cents", Assert.Single(ContractChecks.Of(At(cents), fuel)).Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void A_figure_of_hundreds_of_digits_is_told_by_its_power_of_ten()
    {
        var fault = Assert.Single(ContractChecks.Of(Plain with { AdderUsdPerUnit = 1e300 }, FuelKind.Propane));
        Assert.Equal("The adder a of 1E+300 is outside -1000 to 1000.", fault.Message);
        Assert.Equal("The adder a of 123456789.25 is outside -1000 to 1000.", Assert.Single(ContractChecks.Of(Plain with { AdderUsdPerUnit = 123456789.25 }, FuelKind.Propane)).Message);
    }

    [Fact]
    public void Shares_over_the_whole_are_named()
    {
        var (terms, faults) = SupplyTerms.Of([Plain with { VolumeShare = 0.7 }, Plain with { VolumeShare = 0.6 }], null, FuelKind.Propane, null, 2026, 1);
        Assert.Null(terms);
        Assert.Contains("130 %", Assert.Single(faults).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Contracts_that_follow_each_other_are_no_overlap_and_those_that_share_a_month_are_named()
    {
        var first = Plain with { Kind = ContractKind.Fixed, PriceUsdPerUnit = 2, EndsOn = new(2027, 6, 30) };
        var next = Plain with { Kind = ContractKind.Fixed, PriceUsdPerUnit = 3, StartsOn = new(2027, 7, 1) };
        var (terms, faults) = SupplyTerms.Of([first, next], null, FuelKind.Propane, null, 2026, 2);
        Assert.Empty(faults);
        var kwh = FarmPortfolio.Engine.Units.HeatingValues.KwhPerUnit(FuelKind.Propane, "gal")!.Value;
        var index = Enumerable.Repeat(9 / kwh, 12).ToArray();
        var volume = Enumerable.Repeat(100 * kwh, 12).ToArray();
        var carried = new Carried[2];
        Assert.Equal((2400.0, 3600.0), (Math.Round(terms!.SeasonUsd(0, index, volume, [], carried), 6), Math.Round(terms.SeasonUsd(1, index, volume, [], carried), 6)));
        Assert.Contains("in 2027-06 add up to 200 %", Assert.Single(ContractChecks.Together([first, next with { StartsOn = new(2027, 6, 30) }])).Message, StringComparison.Ordinal);
        Assert.Contains("in 2027-07", Assert.Single(ContractChecks.Together([first with { RollsIntoContractId = "x" }, next])).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_contract_cannot_roll_into_one_that_is_over()
    {
        var old = Plain with { EndsOn = new(2026, 6, 30), AdderUsdPerUnit = 0.1 };
        var (terms, faults) = SupplyTerms.Of([Plain with { EndsOn = new(2027, 6, 30), RollsIntoContractId = "old" }], _ => old, FuelKind.Propane, null, 2026, 3);
        Assert.Null(terms);
        Assert.Equal("ROLLS_INTO_THE_PAST", Assert.Single(faults).Code);
    }

    [Fact]
    public void A_sound_contract_has_no_fault() => Assert.Empty(ContractChecks.Of(Plain with { Kind = ContractKind.PreBought, PriceUsdPerUnit = 2.1, BlockUnits = 800, Leftover = LeftoverRule.Lost }, FuelKind.Propane));
}
