using System.Globalization;
using static System.Math;

namespace FarmPortfolio.Engine.Fuel;

/// <summary>What a ticket or bill charged for its fuel.</summary>
/// <param name="Month">First day of its month.</param>
/// <param name="UsdPerUnit">Price of a unit less fees, US dollars.</param>
public readonly record struct TicketPoint(DateOnly Month, double UsdPerUnit);

/// <summary>
/// How a farm's own delivered price follows the index: a + b x index by least squares from six priced tickets over two winters up, else the mean difference with b = 1.
/// The counts are trade practice (common practice, no source); a slope outside 0.3 to 1.5 is not believed.
/// </summary>
/// <param name="Unit">Unit of the prices.</param>
/// <param name="Tickets">Priced tickets whose index is on record.</param>
/// <param name="Winters">Seasons they lie in.</param>
/// <param name="WithoutIndex">Priced tickets whose month is not on record.</param>
/// <param name="SameMonth">Line on the index of the ticket's month; null = too few points, or the index did not move.</param>
/// <param name="MonthBefore">Line on the index of the month before; null likewise.</param>
/// <param name="MeanOver">Mean of price less index; null without a ticket.</param>
/// <param name="MeanOverSd">Standard deviation of it, n - 1; null with one ticket.</param>
/// <param name="Adder">a to be used; null = refused.</param>
/// <param name="Share">b to be used; null = refused.</param>
/// <param name="Verdict">What the tickets say, in a sentence.</param>
/// <param name="Faults">Why no line, or nothing, could be made.</param>
public sealed record TicketPrice(
    string Unit, int Tickets, int Winters, int WithoutIndex, StraightLine? SameMonth, StraightLine? MonthBefore, double? MeanOver, double? MeanOverSd, double? Adder, double? Share, string Verdict, IReadOnlyList<Fault> Faults)
{
    /// <summary>What the tickets leave over the a and b to be used, standard deviation; null = refused, or one ticket.</summary>
    public double? Scatter => Adder is not { } a ? null : SameMonth is { } line && line.A == a && line.B == Share ? line.Sd : MeanOverSd;

    /// <summary>Tickets from which a line is fitted.</summary>
    public const int FewestForLine = 6;

    /// <summary>Winters they must lie in.</summary>
    public const int FewestWinters = 2;

    /// <summary>Tickets from which a mean difference is told; common practice, no source.</summary>
    public const int FewestForMean = 3;

    private const double LowestShare = 0.3;
    private const double HighestShare = 1.5;

    /// <summary>Fits the tickets.</summary>
    /// <param name="tickets">Priced tickets, in order of time.</param>
    /// <param name="unit">Their unit.</param>
    /// <param name="index">Delivered index of a month, US dollars a unit; null = not on record.</param>
    /// <returns>The fit.</returns>
    public static TicketPrice Of(IReadOnlyList<TicketPoint> tickets, string unit, Func<DateOnly, double?> index)
    {
        var known = tickets.Where(t => index(t.Month) is not null).ToList();
        var same = StraightLine.Of([.. known.Select(t => (index(t.Month)!.Value, t.UsdPerUnit))]);
        var before = StraightLine.Of([.. tickets.Where(t => index(t.Month.AddMonths(-1)) is not null).Select(t => (index(t.Month.AddMonths(-1))!.Value, t.UsdPerUnit))]);
        var winters = known.Select(t => t.Month.Month >= 7 ? t.Month.Year : t.Month.Year - 1).Distinct().Count();
        var over = known.Select(t => t.UsdPerUnit - index(t.Month)!.Value).ToList();
        double? mean = over.Count > 0 ? over.Average() : null;
        double? sd = over.Count > 1 ? Sqrt(over.Sum(o => (o - mean!.Value) * (o - mean.Value)) / (over.Count - 1)) : null;
        var faults = Wrong(known.Count, winters, tickets.Count - known.Count, same);
        var line = known.Count >= FewestForLine && winters >= FewestWinters && same is { B: >= LowestShare and <= HighestShare } ? same : null;
        var (a, b) = line is not null ? (line.A, line.B) : known.Count >= FewestForMean ? (mean, 1.0) : (null as double?, null as double?);
        var result = new TicketPrice(unit, known.Count, winters, tickets.Count - known.Count, same, before, mean, sd, a, b, string.Empty, faults);
        return result with { Verdict = result.Said(line) };
    }

    private static List<Fault> Wrong(int count, int winters, int without, StraightLine? same)
    {
        var faults = new List<Fault>();
        var said = without > 0 ? $" {without} more lie in months without a price on record." : string.Empty;
        if (count < FewestForMean)
        {
            faults.Add(new("TOO_FEW_TICKETS", "entries", $"{count} priced tickets whose index is on record are too few to tell how your price follows it.{said}", $"Give {FewestForMean} or more with their price or total; {FewestForLine} over {FewestWinters} winters make a line."));
        }
        else if (count < FewestForLine || winters < FewestWinters)
        {
            faults.Add(new("TOO_FEW_FOR_A_LINE", "entries", $"{count} priced tickets over {winters} {(winters == 1 ? "winter" : "winters")} make no line: the mean difference is taken, the index counts in full.{said}", $"Give {FewestForLine} tickets over {FewestWinters} winters."));
        }
        else if (same is null)
        {
            faults.Add(new("INDEX_FLAT", "entries", "The index did not move over the tickets' months, so nothing tells how your price follows it.", "Give tickets of other months."));
        }
        else if (same.B is < LowestShare or > HighestShare)
        {
            faults.Add(new("SLOPE", "entries", string.Create(CultureInfo.InvariantCulture, $"The tickets give a slope of {same.B:0.00} on the index, which is not believed outside {LowestShare} to {HighestShare}."), "Look for a fixed price, a fee inside the price or a wrong unit among the tickets; the mean difference is taken until then."));
        }

        return faults;
    }

    private string Said(StraightLine? line)
    {
        string Usd(double v) => string.Create(CultureInfo.InvariantCulture, $"{(v < 0 ? "−" : string.Empty)}${Abs(v):0.000}");
        if (Adder is not { } a)
        {
            return "Your tickets do not yet tell how your price follows the index.";
        }

        if (line is null)
        {
            return $"You pay {Usd(Abs(a))} a {Unit} {(a < 0 ? "under" : "over")} the index, give or take {Usd(MeanOverSd ?? 0)} ({Tickets} tickets).";
        }

        var start = string.Create(CultureInfo.InvariantCulture, $"You pay {line.B:0.00} times the index {(a < 0 ? "less" : "and")} {Usd(Abs(a))} a {Unit}, give or take {Usd(line.Sd)} ({Tickets} tickets over {Winters} winters).");
        return MonthBefore is { } late && late.Count >= FewestForLine && late.Sd < 0.8 * line.Sd ? $"{start} Your price follows the index of the month before more closely, give or take {Usd(late.Sd)}." : start;
    }
}
