using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.HeatDemand.Calibration;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Engine.Tests.HeatDemand.Calibration;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Tests.Studies;

/// <summary>A study on another dated set of heating values: the same gallon holds more or less heat, so the same heat costs less or more. EIA 2012 is what holds where nothing is chosen.</summary>
public class HeatingValueChoiceTests
{
    /// <summary>Propane, EIA 2012 over EIA 2022, Btu a gallon as both print it.</summary>
    private const double Less = 91333.0 / 91452;

    private static readonly HeatingValueSet Later = FuelSets.HeatingNamed("EIA 2022")!;

    [Theory]
    [InlineData(ContractKind.Indexed)]
    [InlineData(ContractKind.Fixed)]
    public void The_same_heat_takes_fewer_gallons_of_a_set_with_more_heat_in_them(ContractKind kind)
    {
        var contract = new ContractFacts { SupplyGroupId = "g", Kind = kind, Unit = "gal", PriceUsdPerUnit = kind == ContractKind.Fixed ? 2.4 : null };
        var (now, later) = (Run(contract, null), Run(contract, "EIA 2022"));
        Assert.NotEqual(now.FuturesSha256, later.FuturesSha256);
        for (var s = 0; s < now.CostBySeason.Count; s++)
        {
            Assert.Equal(Less, later.CostBySeason[s].Mean / now.CostBySeason[s].Mean, 1e-9);
            Assert.Equal(Less, later.CostBySeason[s].P95 / now.CostBySeason[s].P95, 1e-9);
        }

        Assert.All(now.Options.Zip(later.Options), o => Assert.Equal(Less, o.Second.FuelSavingUsd / o.First.FuelSavingUsd, 1e-9));
    }

    [Fact]
    public void Volumes_of_a_contract_are_turned_by_the_set_as_well()
    {
        // a minimum take of 1,000,000 gal binds always: what is due is gallons times dollars, whatever heat is in them
        var contract = new ContractFacts { SupplyGroupId = "g", Kind = ContractKind.Fixed, Unit = "gal", PriceUsdPerUnit = 2.4, MinimumTakeUnits = 1_000_000 };
        var (now, later) = (Run(contract, null), Run(contract, "EIA 2022"));
        Assert.Equal(2_400_000, now.CostBySeason[0].Mean, 0.01);
        Assert.Equal(2_400_000, later.CostBySeason[0].Mean, 0.01);
    }

    [Fact]
    public void Tickets_in_gallons_tell_more_kWh_and_the_same_money()
    {
        var tickets = MadeBills.Tickets(1.2, 0);
        var now = Calibrations.Of(MadeBills.Tank, tickets, MadeBills.Behind, MadeBills.Winters);
        var later = Calibrations.Of(MadeBills.Tank, tickets, MadeBills.Behind, MadeBills.Winters, values: Later);
        Assert.Equal(now.Use.Intervals.Sum(i => i.KwhFuel) / Less, later.Use.Intervals.Sum(i => i.KwhFuel), 1e-6);
        Assert.Equal(1 / Less, later.Multiplier!.Value / now.Multiplier!.Value, 1e-3);
        Assert.True(later.Multiplier.Value > now.Multiplier.Value, "more heat in the same gallons, a hungrier house");
        // the fuel of the house, priced by the gallon on the same set, costs what the tickets say
        var (perKwhNow, perKwhLater) = (2.4 / HeatingValues.KwhPerUnit(FuelKind.Propane, "gal")!.Value, 2.4 / HeatingValues.KwhPerUnit(FuelKind.Propane, "gal", Later)!.Value);
        Assert.Equal(now.Use.Intervals.Sum(i => i.KwhFuel) * perKwhNow, later.Use.Intervals.Sum(i => i.KwhFuel) * perKwhLater, 1e-6);
    }

    [Fact]
    public void A_bill_by_volume_takes_the_sets_heat_only_where_one_is_chosen_and_none_is_on_the_bill()
    {
        FuelRecordFacts Bill(double? factor) => new() { SupplyGroupId = "g", Entries = [new(FuelEntryKind.Bill, new(2012, 1, 3), new(2012, 2, 2), 100, "ccf", 0, ThermsPerCcf: factor)] };
        double Therms(double? factor, HeatingValueSet? set)
        {
            var fit = Calibrations.Of(MadeBills.Meter, Bill(factor), MadeBills.Behind, MadeBills.Winters, values: set);
            Assert.Equal(set is not null && factor is null, fit.Use.Notes.Any(n => n.Contains("1.036 therms a Ccf is taken (EIA 2022", StringComparison.Ordinal)));
            return fit.Use.Entries[0].KwhFuel / HeatingValues.KwhPerUnit(FuelKind.NaturalGas, "therm")!.Value;
        }

        // 1.026: 40 CFR 98, table NN-1; 1,036 Btu a cubic foot: EIA 2022
        Assert.Equal(102.6, Therms(null, null), 1e-9);
        Assert.Equal(103.6, Therms(null, Later), 1e-9);
        Assert.Equal(104.2, Therms(1.042, Later), 1e-9);
    }

    [Fact]
    public void A_set_that_is_not_there_stops_the_study_by_name()
    {
        var (result, faults) = StudyRun.Run(SmallPortfolio.Of(change: s => s with { HeatingValueSet = "EIA 1850" }), 2, null, TestContext.Current.CancellationToken);
        Assert.Null(result);
        Assert.Contains(faults, f => f is { Code: "UNKNOWN_SET", Field: "heatingValueSet" } && f.Remedy.Contains("EIA 2022", StringComparison.Ordinal));
    }

    private static StudyResult Run(ContractFacts contract, string? set)
    {
        var small = SmallPortfolio.Of(1, change: s => s with { HeatingValueSet = set });
        var (result, faults) = StudyRun.Run(small with { Contracts = new Dictionary<string, ContractFacts> { ["g"] = contract } }, 2, null, TestContext.Current.CancellationToken);
        Assert.Empty(faults);
        return result!;
    }
}
