using FarmPortfolio.Engine.Farms;
using static System.Math;

namespace FarmPortfolio.Engine.HeatDemand.Calibration;

/// <summary>Use at a meter from its bills, on their exact dates; use is never moved to calendar months. Trade practice; the limits are common practice, no source.</summary>
internal static class MeterUse
{
    /// <summary>A longer period is kept as one interval, and said.</summary>
    internal const int LongDays = 70;

    /// <summary>A gap of so many days is taken into the later bill.</summary>
    internal const int GapDays = 3;

    private sealed record Stretch(DateOnly FromOn, FuelLine Line)
    {
        public DateOnly ToOn => Line.Entry.ToOn;

        public bool Estimated => Line.Entry is { Kind: FuelEntryKind.Bill, Read: ReadKind.Estimated };
    }

    /// <summary>The intervals of a record's bills and totals.</summary>
    /// <param name="lines">Lines.</param>
    /// <param name="taken">Intervals that tickets tell already.</param>
    public static List<UseInterval> Of(EntryLines lines, IReadOnlyList<UseInterval> taken)
    {
        var bills = lines.Sound.Where(l => l.Entry.Kind != FuelEntryKind.Delivery).OrderBy(l => l.Entry.FromOn).ThenBy(l => l.Entry.ToOn).ThenBy(l => l.No).ToList();
        CreditNotes.Net(lines, bills, "bill", "Give the corrected bill for its own days instead.");
        Newest(lines, bills);
        Covered(lines, bills);
        Told(lines, bills);
        foreach (var bill in bills.Where(b => taken.Any(t => t.FromOn <= b.Entry.ToOn && b.Entry.FromOn <= t.ToOn)).ToList())
        {
            lines.Hold(bill.No, "OVERLAP", "fromOn", "Delivery tickets tell these days already.", "Take out the total, or the tickets.");
            bills.Remove(bill);
        }

        return Merged(lines, Laid(lines, bills));
    }

    /// <summary>Of bills for the same days the newest counts.</summary>
    private static void Newest(EntryLines lines, List<FuelLine> bills)
    {
        foreach (var same in bills.GroupBy(b => (b.Entry.FromOn, b.Entry.ToOn)).Where(g => g.Count() > 1).ToList())
        {
            var newest = same.OrderBy(b => b.Entry.IssuedOn ?? DateOnly.MinValue).ThenBy(b => b.No).Last();
            foreach (var old in same.Where(b => b != newest))
            {
                var doubled = Abs(old.Kwh - newest.Kwh) < 1e-6;
                lines.Set(old.No, EntryUse.Replaced, doubled ? $"The same bill stands in line {newest.No + 1}." : $"Line {newest.No + 1} is a newer bill for the same days.");
                bills.Remove(old);
            }
        }
    }

    /// <summary>An actual read over the days of estimated ones replaces them.</summary>
    private static void Covered(EntryLines lines, List<FuelLine> bills)
    {
        foreach (var whole in bills.Where(b => b.Entry.Read != ReadKind.Estimated).ToList())
        {
            var inside = bills.Where(b => b != whole && b.Entry.Read == ReadKind.Estimated && b.Entry.FromOn >= whole.Entry.FromOn && b.Entry.ToOn <= whole.Entry.ToOn).ToList();
            foreach (var old in inside)
            {
                lines.Set(old.No, EntryUse.Replaced, $"Line {whole.No + 1} bills these days by an actual read.");
                bills.Remove(old);
            }
        }
    }

    /// <summary>A total over days that bills tell is held, and the bills count.</summary>
    private static void Told(EntryLines lines, List<FuelLine> bills)
    {
        foreach (var total in bills.Where(b => b.Entry.Kind == FuelEntryKind.Total).ToList())
        {
            var inside = bills.Where(b => b.Entry.Kind == FuelEntryKind.Bill && b.Entry.FromOn <= total.Entry.ToOn && total.Entry.FromOn <= b.Entry.ToOn).Select(b => b.No + 1).ToList();
            if (inside.Count > 0)
            {
                lines.Hold(total.No, "OVERLAP", "fromOn", $"Bills tell days of this total already (line{(inside.Count > 1 ? "s" : string.Empty)} {string.Join(", ", inside)}); they count, it does not.", "Take out the total; or take out the bills, if only the total is right.");
                bills.Remove(total);
            }
        }
    }

    /// <summary>Bills end to end: a day billed twice is the later one's start, small gaps are the later one's, an overlap holds both.</summary>
    private static List<Stretch> Laid(EntryLines lines, List<FuelLine> bills)
    {
        var laid = new List<Stretch>();
        FuelLine? reach = null;
        foreach (var bill in bills)
        {
            var over = reach is null ? 0 : reach.Entry.ToOn.DayNumber - bill.Entry.FromOn.DayNumber + 1;
            if (reach is not null && (over >= 2 || (over == 1 && bill.Entry.ToOn <= reach.Entry.ToOn)))
            {
                Overlap(lines, bill, reach, over);
                if (laid.Count > 0 && laid[^1].Line == reach)
                {
                    Overlap(lines, reach, bill, over);
                    laid.RemoveAt(laid.Count - 1);
                }
            }
            else
            {
                laid.Add(new(reach is not null && (over == 1 || (over < 0 && -over <= GapDays)) ? reach.Entry.ToOn.AddDays(1) : bill.Entry.FromOn, bill));
            }

            reach = reach is null || bill.Entry.ToOn > reach.Entry.ToOn ? bill : reach;
        }

        return laid;
    }

    private static void Overlap(EntryLines lines, FuelLine bill, FuelLine other, int days) => lines.Hold(
        bill.No, "OVERLAP", "fromOn", $"{days} {(days == 1 ? "day is" : "days are")} billed in line {other.No + 1} too; neither is used until one is right.", "Correct the dates, or take out the bill that was replaced.");

    private static List<UseInterval> Merged(EntryLines lines, List<Stretch> laid)
    {
        var used = new List<UseInterval>();
        var open = new List<Stretch>();
        foreach (var bill in laid)
        {
            if (open.Count > 0 && bill.FromOn.DayNumber != open[^1].ToOn.DayNumber + 1)
            {
                Wait(lines, open);
            }

            open.Add(bill);
            if (bill.Estimated)
            {
                continue;
            }

            var days = bill.ToOn.DayNumber - open[0].FromOn.DayNumber + 1;
            var note = open.Count > 1 ? $"{open.Count - 1} estimated, merged up to the actual read" : bill.FromOn != bill.Line.Entry.FromOn ? "its start was moved to meet the bill before" : days > LongDays ? $"{days} days on one bill" : null;
            used.Add(new(open[0].FromOn, bill.ToOn, open.Sum(b => b.Line.Kwh), Sqrt(open.Sum(b => b.Line.SdKwh * b.Line.SdKwh)), bill.Line.Entry.Kind == FuelEntryKind.Bill, [.. open.Select(b => b.Line.No)], note));
            open.Clear();
        }

        Wait(lines, open);
        return used;
    }

    private static void Wait(EntryLines lines, List<Stretch> open)
    {
        open.ForEach(b => lines.Set(b.Line.No, EntryUse.Waiting, "It is estimated; it counts with the next actual read that follows on."));
        open.Clear();
    }
}
