using FarmPortfolio.Engine.Farms;
using static System.Math;

namespace FarmPortfolio.Engine.HeatDemand.Calibration;

/// <summary>
/// Use of a tank from its tickets: between two known levels it is what came in after the first, up to and including the second, and what the level fell.
/// Trade practice; the shares are common practice, no source, but the 80 per cent fill of a propane tank, which is the codes'.
/// </summary>
internal static class TankUse
{
    /// <summary>Shorter intervals are merged.</summary>
    internal const int ShortestDays = 14;

    /// <summary>Spread of a level that nobody read, share of the tank.</summary>
    internal const double UnknownEndSd = 0.15;

    /// <summary>Spread of a gauge reading, share of the tank.</summary>
    internal const double GaugeSd = 0.02;

    private sealed record End(DateOnly On, double? Level, double SdL);

    /// <summary>The intervals of a record's tickets.</summary>
    public static List<UseInterval> Of(EntryLines lines)
    {
        var tickets = Netted(lines, [.. lines.Sound.Where(l => l.Entry.Kind == FuelEntryKind.Delivery).OrderBy(l => l.Entry.ToOn).ThenBy(l => l.No)]);
        if (tickets.Count == 0)
        {
            return [];
        }

        var usable = Usable(lines);
        var sizeL = lines.Group.TankSizeL ?? tickets.Max(t => lines.Litres(t.Kwh)) / usable;
        var ends = Spaced([.. tickets.GroupBy(t => t.Entry.ToOn).Select(d => EndOf(lines, [.. d], sizeL, usable)).OfType<End>()]);
        var used = new List<UseInterval>();
        foreach (var ticket in tickets)
        {
            var on = ticket.Entry.ToOn;
            var (use, why) = ends.Count == 0 ? (EntryUse.Waiting, "No full fill and no gauge reading: only season totals can be told.")
                : on < ends[0].On ? (EntryUse.Waiting, "It came before the first known level of the tank.")
                : on == ends[0].On ? (EntryUse.Opens, "It opens the account: use is counted from here.")
                : on > ends[^1].On ? (EntryUse.Waiting, "It counts when the next full fill or gauge reading comes in.")
                : (EntryUse.Used, null as string);
            lines.Set(ticket.No, use, why);
        }

        for (var i = 1; i < ends.Count; i++)
        {
            if (Between(lines, tickets, ends[i - 1], ends[i], sizeL, usable) is { } interval)
            {
                used.Add(interval);
            }
        }

        return used;
    }

    /// <summary>Tickets of a season without a known level at either end: from its first ticket, not counted, to its last; both levels unknown.</summary>
    public static UseInterval? Total(EntryLines lines, IReadOnlyList<FuelLine> tickets)
    {
        var days = tickets.OrderBy(t => t.Entry.ToOn).ToList();
        if (days.Count < 2 || days[0].Entry.ToOn == days[^1].Entry.ToOn)
        {
            return null;
        }

        var counted = days.Where(t => t.Entry.ToOn > days[0].Entry.ToOn).ToList();
        var usable = Usable(lines);
        var sizeL = lines.Group.TankSizeL ?? days.Max(t => lines.Litres(t.Kwh)) / usable;
        var endSd = UnknownEndSd * sizeL / lines.Litres(1);
        var sd = Sqrt(2 * endSd * endSd + counted.Sum(t => t.SdKwh * t.SdKwh));
        return new(days[0].Entry.ToOn.AddDays(1), days[^1].Entry.ToOn, counted.Sum(t => t.Kwh), sd, false, [.. counted.Select(t => t.No)], "season total between tickets; the level at both ends is not known");
    }

    /// <summary>Share of a tank that a full fill leaves in it: 95 % of oil, common practice; 80 % of propane, by the codes.</summary>
    private static double Usable(EntryLines lines) => lines.Group.Fuel == FuelKind.FuelOil ? 0.95 : 0.80;

    private static List<FuelLine> Netted(EntryLines lines, List<FuelLine> tickets)
    {
        foreach (var same in tickets.Where(t => t.Kwh > 0).GroupBy(t => (t.Entry.ToOn, Round(t.Kwh, 3))).Where(g => g.Count() > 1).ToList())
        {
            foreach (var again in same.Skip(1).Where(t => !t.Entry.Confirmed))
            {
                lines.Hold(again.No, "DOUBLED", "quantity", $"The same day and quantity stand in line {same.First().No + 1} already.", "Leave it held, or say that there were two such deliveries.");
                lines.Holes.RemoveAll(h => h.No == again.No);
                tickets.Remove(again);
            }
        }

        CreditNotes.Net(lines, tickets, "delivery", "Say which ticket it takes back, or correct the quantity.");
        return tickets;
    }

    private static End? EndOf(EntryLines lines, List<FuelLine> day, double sizeL, double usable)
    {
        var last = day[^1].Entry;
        var gauge = lines.Group.TankSizeL is not null && last.GaugeAfterPct is >= 0 and <= 100 and var pct ? pct / 100 : null as double?;
        if (day.Any(t => t.Entry.Read == ReadKind.Full))
        {
            return new(last.ToOn, null, 0);
        }

        if (gauge is { } level)
        {
            return new(last.ToOn, level, GaugeSd * sizeL);
        }

        var litres = day.Sum(t => lines.Litres(t.Kwh));
        return last.Read == ReadKind.Part || (lines.Record.AutomaticDelivery != true && litres < usable * sizeL / 2) ? null : new(last.ToOn, null, UnknownEndSd * sizeL);
    }

    /// <summary>Ends at least <see cref="ShortestDays"/> apart; the first stays, and so does the last.</summary>
    private static List<End> Spaced(List<End> ends)
    {
        var kept = new List<End>();
        foreach (var end in ends.OrderBy(e => e.On))
        {
            if (kept.Count == 0 || end.On.DayNumber - kept[^1].On.DayNumber >= ShortestDays)
            {
                kept.Add(end);
            }
        }

        if (kept.Count > 1 && ends.MaxBy(e => e.On)! is var last && last.On > kept[^1].On)
        {
            kept[^1] = last;
        }

        return kept;
    }

    private static UseInterval? Between(EntryLines lines, List<FuelLine> tickets, End from, End to, double sizeL, double usable)
    {
        var inside = tickets.Where(t => t.Entry.ToOn > from.On && t.Entry.ToOn <= to.On).ToList();
        if (lines.Holes.Where(h => h.On > from.On && h.On <= to.On).Select(h => h.No + 1).ToList() is { Count: > 0 } holes)
        {
            inside.ForEach(t => lines.Set(t.No, EntryUse.Waiting, $"Between these fills line {string.Join(", ", holes)} is held; its answer lets this one count."));
            return null;
        }

        var perKwh = lines.Litres(1);
        var fell = from.Level is null && to.Level is null ? 0 : sizeL * ((from.Level ?? usable) - (to.Level ?? usable)) / perKwh;
        var kwh = inside.Sum(t => t.Kwh) + fell;
        if (kwh < 0)
        {
            inside.ForEach(t => lines.Set(t.No, EntryUse.Waiting, "The gauge readings say that the tank gained more than came in."));
            lines.Ask(inside[^1].No, "GAUGE_DIFFERS", "gauge", "The tank gained more than was delivered.", "Check the gauge readings and the size of the tank bank.");
            return null;
        }

        var sd = Sqrt((from.SdL * from.SdL + to.SdL * to.SdL) / (perKwh * perKwh) + inside.Sum(t => t.SdKwh * t.SdKwh));
        var note = from.Level is null && to.Level is null ? from.SdL + to.SdL > 0 ? "whether a fill was full is not told" : null : "levels by the gauge";
        return new(from.On.AddDays(1), to.On, kwh, sd, true, [.. inside.Select(t => t.No)], note);
    }
}
