using static System.Math;

namespace FarmPortfolio.Engine.HeatDemand.Calibration;

/// <summary>Credits take back a line of the same quantity near them, and both leave the record; one that meets none is asked about. Common practice, no source.</summary>
internal static class CreditNotes
{
    /// <summary>Days within which a credit meets what it takes back.</summary>
    internal const int Days = 60;

    private const double QuantityMiss = 0.005;

    /// <summary>Nets the credits among lines, in place.</summary>
    /// <param name="lines">Record.</param>
    /// <param name="among">Tickets, or bills; credits and what they take back are removed.</param>
    /// <param name="what">What a credit takes back, in a word.</param>
    /// <param name="remedy">What would be right where it meets none.</param>
    public static void Net(EntryLines lines, List<FuelLine> among, string what, string remedy)
    {
        foreach (var credit in among.Where(t => t.Kwh < 0).ToList())
        {
            var met = among.Where(t => Abs(t.Kwh + credit.Kwh) <= QuantityMiss * t.Kwh && Abs(t.Entry.ToOn.DayNumber - credit.Entry.ToOn.DayNumber) <= Days)
                .MinBy(t => Abs(t.Entry.ToOn.DayNumber - credit.Entry.ToOn.DayNumber));
            among.Remove(credit);
            if (met is null)
            {
                lines.Hold(credit.No, "CREDIT", "quantity", $"A credit of {EntryLines.Figure(-credit.Entry.Quantity)} {credit.Entry.Unit} meets no {what} of that quantity within {Days} days.", remedy);
                continue;
            }

            lines.Set(met.No, EntryUse.Replaced, $"Line {credit.No + 1} credits it.");
            lines.Set(credit.No, EntryUse.Replaced, $"It credits line {met.No + 1}.");
            among.Remove(met);
        }
    }
}
