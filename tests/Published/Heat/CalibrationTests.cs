using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.HeatDemand.Calibration;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Published.Heat;

/// <summary>
/// Bills against a model. The statistics are those of ASHRAE Guideline 14-2014 (from memory; division by n - p as in public code that cites it). Two public functions of the bias print an example:
/// measured 100, 200, 300 against 110, 190, 310 is off by 10 in 600, 1.6667 per cent, without a correction for parameters. 40 CFR 98 table NN-1: 1.026 MMBtu per 1,000 cubic feet of natural gas.
/// </summary>
public class CalibrationTests
{
    [Fact]
    public void Bias_of_a_printed_example()
    {
        var found = Goodness.Of([100, 200, 300], [110, 190, 310], [30, 30, 30], 0)!;
        // measured less modelled, so the sign is turned
        Expect.Near(-1.666666666, found.NmbePct, 1e-6, "NMBE, per cent");
    }

    [Fact]
    public void Guideline_14_by_hand_with_one_parameter()
    {
        // misses -10, 10, -10: sum -10 over (3 - 1) x 200; squares 300 over (3 - 1), root 12.2474, over 200
        var found = Goodness.Of([100, 200, 300], [110, 190, 310], [30, 30, 30])!;
        Expect.Near(-2.5, found.NmbePct, 1e-9, "NMBE, per cent");
        Expect.Near(6.123724, found.CvRmsePct, 1e-6, "CV(RMSE), per cent");
        Assert.True(found.Met);
        Assert.False((found with { CvRmsePct = 15.1 }).Met);
        Assert.False((found with { NmbePct = -5.1 }).Met);
    }

    [Fact]
    public void A_hundred_cubic_feet_by_table_NN_1()
    {
        var meter = new SupplyGroupFacts { FarmId = "f", Fuel = FarmPortfolio.Engine.FuelKind.NaturalGas, Kind = SupplyKind.Meter };
        var bill = new FuelEntry(FuelEntryKind.Bill, new(2024, 1, 1), new(2024, 1, 31), 1, "mcf", 0, null, ReadKind.Actual);
        var use = FuelUses.Of(meter, new() { SupplyGroupId = "g", Entries = [bill] });
        Expect.Near(1.026, use.Intervals[0].KwhFuel / Us.MmbtuKwh, 1e-9, "MMBtu a thousand cubic feet");
    }
}
