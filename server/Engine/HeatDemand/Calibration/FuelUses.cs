using FarmPortfolio.Engine.Farms;

namespace FarmPortfolio.Engine.HeatDemand.Calibration;

/// <summary>Turns a fuel record into intervals of use. Nothing is dropped silently: every line has its state, every question its fault.</summary>
public static class FuelUses
{
    /// <summary>The intervals of a record.</summary>
    /// <param name="group">Tank or meter.</param>
    /// <param name="record">Its lines, in any order.</param>
    /// <returns>Intervals, states, questions.</returns>
    public static FuelUse Of(SupplyGroupFacts group, FuelRecordFacts record) => Of(new EntryLines(group, record));

    internal static FuelUse Of(EntryLines lines)
    {
        var tickets = TankUse.Of(lines);
        var bills = MeterUse.Of(lines, tickets);
        return new([.. tickets.Concat(bills).OrderBy(i => i.FromOn)], lines.States, [.. lines.Faults.OrderBy(f => f.No)], lines.Notes);
    }
}
