using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Units;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.HeatDemand.Calibration;

/// <summary>What a tank or meter bought by month, from its tickets and bills: what a past season is settled on.</summary>
/// <param name="Unit">Unit of the volumes.</param>
/// <param name="Seasons">Seasons that hold a line, newest first: year of its July and its twelve months.</param>
/// <param name="Notes">What was done to lines that span months.</param>
public sealed record PastVolumes(string Unit, IReadOnlyList<(int Season, IReadOnlyList<PastMonth> Months)> Seasons, IReadOnlyList<string> Notes)
{
    /// <summary>The volumes of a record. A ticket counts in the month of its date; a bill is spread over its days, a longer total by what the houses need day by day.</summary>
    /// <param name="group">Tank or meter.</param>
    /// <param name="record">Its lines.</param>
    /// <param name="houses">Houses behind it.</param>
    /// <param name="winters">Winters by season year.</param>
    /// <param name="values">Heating values; null = those in use where nothing is chosen.</param>
    /// <returns>The volumes; no season = no line that counts.</returns>
    public static PastVolumes Of(SupplyGroupFacts group, FuelRecordFacts record, IReadOnlyList<BehindTank> houses, IReadOnlyDictionary<int, WeatherYear> winters, HeatingValueSet? values = null)
    {
        var lines = new EntryLines(group, record, values);
        FuelUses.Of(lines);
        var used = lines.Sound.Where(l => lines.States[l.No].Use is not (EntryUse.Held or EntryUse.Replaced)).OrderBy(l => l.Entry.ToOn).ThenBy(l => l.No).ToList();
        var written = used.GroupBy(l => l.Entry.Unit).OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal).FirstOrDefault()?.Key;
        var unit = written is null or "ccf" or "mcf" or "m3" ? HeatingValues.UnitsOf(group.Fuel)[0] : written;
        var (months, notes, fuel) = (new SortedDictionary<int, PastMonth[]>(), new SortedSet<string>(StringComparer.Ordinal), new ModelledFuel(houses, winters));
        foreach (var line in used)
        {
            var entry = line.Entry;
            var units = entry.Unit == unit && !entry.OnlyDollars ? (decimal)entry.Quantity : Math.Round((decimal)(line.Kwh / HeatingValues.KwhPerUnit(group.Fuel, unit, values)!.Value), 1);
            var parts = Parts(entry, fuel, Calibrations.ToldBase(group), notes);
            var (share, unitsBefore, centsBefore) = (0.0, 0m, 0L);
            for (var i = 0; i < parts.Count; i++)
            {
                share += parts[i].Share;
                var last = i == parts.Count - 1;
                // rounded sums, so that the months of a bill add up to the bill
                var unitsTo = last ? units : Math.Round((decimal)share * units, 1);
                long? cents = entry.TotalCents is { } total ? (last ? total : (long)Math.Round(share * total)) - centsBefore : null;
                Add(months, parts[i].Month, unitsTo - unitsBefore, entry.Kind == FuelEntryKind.Delivery ? 1 : 0, cents);
                (unitsBefore, centsBefore) = (unitsTo, centsBefore + (cents ?? 0));
            }
        }

        return new(unit, [.. months.Reverse().Select(s => (s.Key, (IReadOnlyList<PastMonth>)s.Value))], [.. notes]);
    }

    private static void Add(SortedDictionary<int, PastMonth[]> seasons, DateOnly month, decimal units, int deliveries, long? cents)
    {
        var (season, m) = (SeasonCalendar.SeasonOf(month), SeasonCalendar.MonthIndex(month.Month));
        if (!seasons.TryGetValue(season, out var months))
        {
            seasons[season] = months = [.. Enumerable.Range(0, 12).Select(i => new PastMonth(i, 0, 0, null))];
        }

        var known = months[m];
        months[m] = known with { Units = known.Units + units, Deliveries = known.Deliveries + deliveries, PaidCents = cents is null ? known.PaidCents : (known.PaidCents ?? 0) + cents };
    }

    /// <summary>Months of a line and the share of each.</summary>
    private static List<(DateOnly Month, double Share)> Parts(FuelEntry entry, ModelledFuel fuel, double baseKwhPerDay, SortedSet<string> notes)
    {
        DateOnly Month(DateOnly day) => new(day.Year, day.Month, 1);
        if (entry.Kind == FuelEntryKind.Delivery || Month(entry.FromOn) == Month(entry.ToOn))
        {
            return [(Month(entry.ToOn), 1)];
        }

        var days = Enumerable.Range(0, entry.ToOn.DayNumber - entry.FromOn.DayNumber + 1).Select(i => entry.FromOn.AddDays(i)).ToList();
        var weighed = days.Count > MeterUse.LongDays && fuel.Of(entry.FromOn, entry.ToOn) is > 0;
        notes.Add(days.Count <= MeterUse.LongDays ? "A bill that spans months is spread over its days."
            : weighed ? "A total of more than 70 days is spread over its days by what the houses need on each: months are reckoned, the sum is read."
            : "A total of more than 70 days is spread evenly over its days, for the weather is not on record: its months are rough.");
        double Weight(DateOnly day) => weighed ? baseKwhPerDay + fuel.Season(SeasonCalendar.SeasonOf(day))![SeasonCalendar.DayIndex(day)] : 1;
        var all = days.Sum(Weight);
        return [.. days.GroupBy(Month).Select(g => (g.Key, g.Sum(Weight) / all))];
    }
}
