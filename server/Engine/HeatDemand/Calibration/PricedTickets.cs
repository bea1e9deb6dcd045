using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.HeatDemand.Calibration;

/// <summary>Prices that a fuel record's tickets and bills tell, less fees.</summary>
public static class PricedTickets
{
    /// <summary>The prices of a record.</summary>
    /// <param name="group">Tank or meter.</param>
    /// <param name="record">Its lines; held and replaced ones, credits, totals of a season and lines without a price do not count.</param>
    /// <param name="unit">Unit asked for.</param>
    /// <param name="values">Heating values; null = those in use where nothing is chosen.</param>
    /// <returns>In order of time; a bill belongs to the month in which its middle day lies.</returns>
    /// <exception cref="ArgumentException">The fuel is not sold by that unit.</exception>
    public static IReadOnlyList<TicketPoint> Of(SupplyGroupFacts group, FuelRecordFacts record, string unit, HeatingValueSet? values = null)
    {
        var lines = new EntryLines(group, record, values);
        FuelUses.Of(lines);
        var perUnit = HeatingValues.KwhPerUnit(group.Fuel, unit, values) ?? throw new ArgumentException($"{group.Fuel} is not sold by the {unit}", nameof(unit));
        var points = new List<TicketPoint>();
        foreach (var line in lines.Sound.Where(l => l.Entry.Kind != FuelEntryKind.Total && !l.Entry.OnlyDollars && l.Kwh > 0 && lines.States[l.No].Use is not (EntryUse.Held or EntryUse.Replaced)))
        {
            var entry = line.Entry;
            var usd = entry.TotalCents is { } total ? (total - (entry.FeesCents ?? 0)) / 100.0 / line.Kwh
                : entry.PriceUsdPerUnit is { } printed && lines.KwhPerUnit(entry) is { } kwh ? printed / kwh : 0;
            if (usd > 0)
            {
                var middle = entry.FromOn.AddDays((entry.ToOn.DayNumber - entry.FromOn.DayNumber) / 2);
                points.Add(new(new(middle.Year, middle.Month, 1), usd * perUnit));
            }
        }

        return [.. points.OrderBy(p => p.Month)];
    }
}
