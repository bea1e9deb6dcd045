using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Tests.Studies;

/// <summary>A house that moves to another fuel: what leaves the old tank, what the new line pays, heater and fees.</summary>
public class FuelSwitchTests
{
    private static readonly double Gallon = HeatingValues.KwhPerUnit(FuelKind.Propane, "gal")!.Value;
    private static readonly double Therm = HeatingValues.KwhPerUnit(FuelKind.NaturalGas, "therm")!.Value;
    private static readonly ContractFacts OldPrice = new() { SupplyGroupId = "g", Kind = ContractKind.Fixed, Unit = "gal", PriceUsdPerUnit = 2.40 };

    /// <summary>The gas price that makes the same heat cost the same: the new heater is as efficient (0.78) as the one that stands there.</summary>
    private static readonly double Even = 2.40 / Gallon * Therm;

    [Fact]
    public void At_the_same_cost_of_heat_a_switch_saves_nothing_and_at_half_of_it_half_the_bill()
    {
        var even = Of(Run("togas", Gas(Even)), "togas-now");
        Assert.Equal(0, even.FuelSavingUsd, 0.01);
        var study = Run("togas", Gas(Even / 2));
        var half = Of(study, "togas-now");
        // realised 0.98 of the heat moves; loss and factor are drawn apart, 256 futures
        var bill = study.CostBySeason.Average(c => c.Mean);
        Assert.InRange(half.FuelSavingUsd / (0.98 * 0.5 * bill), 0.98, 1.02);
    }

    [Fact]
    public void Heater_and_connection_are_the_outlay_and_the_new_meters_fees_come_with_it()
    {
        // 130 kW in at 0.78 out is 101.4 kW; into the new heater 130 kW at $14 a kBtu/h, and $1,500 for the line
        var free = Of(Run("togas", Gas(Even)), "togas-now");
        Assert.Equal(1500 + 14 / 0.29307107 * 130, free.Costs.OutlayUsd, 1);
        var charged = Of(Run("togas", Gas(Even) with { MonthlyFeeUsd = 25 }), "togas-now");
        Assert.Equal(-300, charged.SavingUsd.Mean - free.SavingUsd.Mean, 1e-6);
        var rented = Of(Run("togas", Gas(Even), OldPrice with { TankRentUsdPerYear = 120 }), "togas-now");
        Assert.Equal(120, rented.SavingUsd.Mean - free.SavingUsd.Mean, 1e-6);
        // pellets keep the old heater, its tank and its rent
        var pellets = Of(Run("topellets", null, OldPrice with { TankRentUsdPerYear = 120 }), "topellets-now");
        Assert.Equal(Of(Run("topellets", null), "topellets-now").SavingUsd.Mean, pellets.SavingUsd.Mean, 1e-6);
    }

    [Fact]
    public void A_minimum_take_on_the_old_tank_still_binds_when_the_fuel_has_left()
    {
        var bound = Of(Run("togas", Gas(Even), OldPrice with { MinimumTakeUnits = 1_000_000 }), "togas-now");
        var even = Run("togas", Gas(Even));
        Assert.InRange(bound.FuelSavingUsd / (-0.98 * even.CostBySeason.Average(c => c.Mean)), 0.98, 1.02);
    }

    [Fact]
    public void A_new_meter_settled_by_the_season_costs_what_it_does_month_by_month()
    {
        var monthly = Of(Run("togas", Gas(0.9) with { MonthlyFeeUsd = 25 }), "togas-now");
        var settled = Of(Run("togas", Gas(0.9) with { MonthlyFeeUsd = 25, Tiers = [new(0, 0)] }), "togas-now");
        Assert.Equal(monthly.NpvUsd.Mean, settled.NpvUsd.Mean, 1e-5);
        Assert.Equal(monthly.NpvUsd.P10, settled.NpvUsd.P10, 1e-5);
        var late = Of(Run("togas", Gas(0.9) with { MonthlyFeeUsd = 25, Tiers = [new(0, 0)] }, timing: OptionTiming.AtHeaterChange), "togas-heater");
        Assert.True(late.StartSeason > 0);
        Assert.Equal(Of(Run("togas", Gas(0.9) with { MonthlyFeeUsd = 25 }, timing: OptionTiming.AtHeaterChange), "togas-heater").NpvUsd.Mean, late.NpvUsd.Mean, 1e-5);
    }

    [Fact]
    public void A_heat_pump_takes_by_the_outside_temperature_and_pellets_by_their_heater()
    {
        var study = Run("toresistance", null, more: ["toheatpump", "topellets"]);
        var (plain, pump, pellets) = (Of(study, "toresistance-now"), Of(study, "toheatpump-now"), Of(study, "topellets-now"));
        var heat = plain.NewFuelKwh!.Value / plain.RealisedMean;
        Assert.Equal(plain.BaseHeatKwh, heat, 1e-6 * heat);
        Assert.Equal(plain.BaseHeatKwh / 0.80 * pellets.RealisedMean, pellets.NewFuelKwh!.Value, 1e-6 * heat);
        Assert.InRange(pump.NewFuelKwh!.Value / pump.RealisedMean / heat, 1 / 3.4, 1 / 1.9);
        Assert.Equal(FuelKind.WoodPellets, pellets.NewFuel);
        // all propane leaves the tank but for what the realised factor leaves on the old heater
        Assert.Equal(plain.BaseHeatKwh / 0.78 * plain.RealisedMean, plain.FuelSavedKwh, 1e-6 * heat);
        Assert.Equal(plain.FuelSavedKwh * HeatingValues.Co2KgPerKwh(FuelKind.Propane), plain.Co2SavedKg, 1e-6 * heat);
        Assert.True(pellets.SavingUsd.P90 > pellets.SavingUsd.P10 + 100);
    }

    [Fact]
    public void A_heat_pumps_table_meets_the_exact_hours_at_the_three_offsets()
    {
        var house = HeatDemand.TestHouse.Model();
        var heat = DemandTables.Of(OptionModels.AsItStands(house), HeatDemand.TestHouse.Winters);
        var table = FuelTables.Electricity(heat, HeatDemand.TestHouse.Winters, 15, 1);
        foreach (var offset in new[] { -DemandTable.StepK, 0, DemandTable.StepK })
        {
            var ratio = HeatPump.ElectricityPerHeat(HeatDemand.TestHouse.Winters[1], 15, offset);
            Assert.Equal(heat.DemandKwh(1, 6, offset) * ratio[6], table.DemandKwh(1, 6, offset), 1e-6);
        }

        Assert.True(table.SeasonKwh(1, -2) / heat.SeasonKwh(1, -2) > table.SeasonKwh(1, 2) / heat.SeasonKwh(1, 2));
    }

    [Fact]
    public void A_switch_that_cannot_be_is_left_out_by_name()
    {
        var wrong = Run("togas", Gas(1), overrides: new() { SwitchSupplyGroupId = "g" });
        Assert.Contains(wrong.LeftOut, l => l.ItemId == "h0~togas-now" && l.Fault is { Code: "SWITCH_SUPPLY", Field: "switchSupplyGroupId" });
        Assert.Contains(Run("topropane", null).LeftOut, l => l.ItemId == "h0~topropane-now" && l.Fault.Code == "NEEDS");
        var twice = Run("togas", null, more: ["condensing+togas"]);
        Assert.Contains(twice.LeftOut, l => l.ItemId == "h0~condensing-togas-now" && l.Fault.Code == "EXCLUDED");
    }

    [Fact]
    public void A_switch_has_the_same_bits_on_any_number_of_threads() =>
        Assert.Equal(Run("togas", Gas(0.9) with { Tiers = [new(100, -0.1)] }, threads: 1).ResultSha256, Run("togas", Gas(0.9) with { Tiers = [new(100, -0.1)] }, threads: 8).ResultSha256);

    private static ContractFacts Gas(double usdPerTherm) => new() { SupplyGroupId = "gas", Kind = ContractKind.Fixed, Unit = "therm", PriceUsdPerUnit = usdPerTherm };

    private static OptionResult Of(StudyResult study, string key) => study.Options.First(o => o.Key == key);

    private static StudyResult Run(
        string code, ContractFacts? gas, ContractFacts? old = null, OptionTiming timing = OptionTiming.Now, OptionOverrides? overrides = null, string[]? more = null, int threads = 2)
    {
        var small = SmallPortfolio.Of(1);
        var contracts = new Dictionary<string, ContractFacts> { ["g"] = old ?? OldPrice };
        var groups = small.SupplyGroups.ToDictionary();
        if (gas is not null)
        {
            contracts["gas"] = gas;
            groups["gas"] = new() { FarmId = "f", Fuel = FuelKind.NaturalGas, Kind = SupplyKind.Meter };
        }

        OptionFacts[] options = [UsualOptions.Option([code], timing, overrides), .. (more ?? []).Select(m => UsualOptions.Option(m.Split('+'), OptionTiming.Now))];
        var (result, faults) = StudyRun.Run(
            small with { Contracts = contracts, SupplyGroups = groups, Options = new Dictionary<string, IReadOnlyList<OptionFacts>> { ["h0"] = options } }, threads, null, TestContext.Current.CancellationToken);
        Assert.Empty(faults);
        return result!;
    }
}
