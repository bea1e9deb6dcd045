using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Units;
using static System.Math;

namespace FarmPortfolio.Engine.HeatDemand.Calibration;

/// <summary>What is asked of a single ticket, bill or total. The shares and limits are common practice, no source, but where another is named.</summary>
internal static class EntryChecks
{
    /// <summary>Most of a tank's size that one delivery brings without being asked about.</summary>
    internal const double MostOfTank = 0.85;

    /// <summary>Most that a road tanker brings, litres (11,000 gal).</summary>
    internal const double MostByRoadL = 11_000 * Us.GallonL;

    /// <summary>Spread of a quantity reckoned from money.</summary>
    internal const double DollarsSd = 0.10;

    /// <summary>Least price of a kWh that is believed, US dollars: 20 cents a gallon of propane.</summary>
    private const double LeastUsdPerKwh = 0.0075;

    /// <summary>Most of a burnt fuel: 12 dollars a gallon of propane.</summary>
    private const double MostUsdPerKwh = 0.45;

    /// <summary>Most of electricity.</summary>
    private const double MostUsdPerKwhElectric = 1.0;

    private const double TotalMiss = 0.02;
    private const double LeastThermsPerCcf = 0.7;
    private const double MostThermsPerCcf = 1.3;

    /// <summary>Looks at a line.</summary>
    /// <returns>The line in kWh; null where it is held.</returns>
    public static FuelLine? Of(EntryLines lines, int no, double? usdPerKwh)
    {
        var entry = lines.Record.Entries[no];
        if (entry.Held is { } held)
        {
            lines.Set(no, EntryUse.Held, held);
            return null;
        }

        if (entry.FromOn.Year < 1980 || entry.ToOn.Year > 2100)
        {
            lines.Hold(no, "BAD_DATE", "toOn", $"{EntryLines.Day(entry.ToOn)} is no date of a bill.", "Give the date as on the ticket or bill.");
            return null;
        }

        if (entry.ToOn < entry.FromOn)
        {
            lines.Hold(no, "BACKWARDS", "toOn", $"It runs backwards: from {EntryLines.Day(entry.FromOn)} to {EntryLines.Day(entry.ToOn)}.", "Give the day after the last read, then the day of this read.");
            return null;
        }

        if (lines.KwhPerUnit(entry) is not { } kwhPerUnit)
        {
            lines.Hold(no, "UNKNOWN_UNIT", "unit", $"{Words(lines.Group.Fuel)} is not sold by the \"{entry.Unit}\".", $"Choose one of {string.Join(", ", HeatingValues.UnitsOf(lines.Group.Fuel))}.");
            return null;
        }

        if (entry.ThermsPerCcf is { } factor && !(factor is >= LeastThermsPerCcf and <= MostThermsPerCcf))
        {
            lines.Hold(no, "OUT_OF_RANGE", "thermsPerCcf", $"A therm factor of {EntryLines.Figure(factor)} is outside 0.7 to 1.3 therms a Ccf.", "Give the factor as on the bill, near 1.03; MMBtu a thousand cubic feet is the same number.");
            return null;
        }

        if (entry.OnlyDollars)
        {
            return FromDollars(lines, no, entry, kwhPerUnit, usdPerKwh);
        }

        if (!double.IsFinite(entry.Quantity))
        {
            lines.Hold(no, "NO_QUANTITY", "quantity", "There is no quantity.", "Give the quantity on the ticket or bill, or only the money.");
            return null;
        }

        var kwh = entry.Quantity * kwhPerUnit;
        if (entry.Kind == FuelEntryKind.Delivery && !entry.Confirmed && TooMuch(lines, entry, kwh) is { } why)
        {
            lines.Hold(no, "TOO_MUCH", "quantity", why, "Check the unit (litres? pounds?) and the size of the tank bank; where both are right, say so on the line.");
            return null;
        }

        Money(lines, no, entry);
        Believable(lines, no, entry, kwhPerUnit);
        Gauge(lines, no, entry, kwh);
        if (entry.SdShare is { } share && !(share is >= 0 and <= 1))
        {
            lines.Hold(no, "OUT_OF_RANGE", "spreadShare", $"A spread of {EntryLines.Figure(100 * share)} % of the quantity cannot be.", "Give a share between 0 and 1.");
            return null;
        }

        if (entry.SdShare is > 0 and var sd)
        {
            lines.Ask(no, "RECKONED", "quantity", $"The quantity is reckoned, not read: one in three is off by over {EntryLines.Figure(100 * sd)} %.", "Give the gallons of the tickets in its place.");
        }

        return new(no, entry, kwh, (entry.SdShare ?? 0) * Abs(kwh));
    }

    private static FuelLine? FromDollars(EntryLines lines, int no, FuelEntry entry, double kwhPerUnit, double? usdPerKwh)
    {
        var price = entry.PriceUsdPerUnit is > 0 and var p ? p / kwhPerUnit : usdPerKwh;
        if (price is not { } each || entry.TotalCents is not > 0)
        {
            lines.Hold(no, "NO_QUANTITY", "quantity", "Only money is told, and no price to turn it into fuel.", "Give the quantity, or the price of a unit.");
            return null;
        }

        var kwh = (entry.TotalCents.Value - (entry.FeesCents ?? 0)) / 100.0 / each;
        lines.Ask(no, "FROM_DOLLARS", "quantity", $"The quantity is reckoned from the money: {EntryLines.Figure(kwh / kwhPerUnit)} {entry.Unit}, one in three is off by over 10 %.", "Give the quantity as on the ticket.");
        return new(no, entry, kwh, DollarsSd * kwh);
    }

    private static string? TooMuch(EntryLines lines, FuelEntry entry, double kwh)
    {
        var litres = lines.Litres(kwh);
        var (unit, per) = entry.Unit == "L" ? ("L", 1.0) : ("gal", Us.GallonL);
        return lines.Group.TankSizeL is { } size
            ? litres > MostOfTank * size ? $"{EntryLines.Figure(entry.Quantity)} {entry.Unit} is over 85 % of the {EntryLines.Figure(size / per)} {unit} tank." : null
            : litres > MostByRoadL ? $"{EntryLines.Figure(entry.Quantity)} {entry.Unit} is more than a road tanker brings." : null;
    }

    private static void Money(EntryLines lines, int no, FuelEntry entry)
    {
        if (entry.Confirmed || entry.PriceUsdPerUnit is not { } price || entry.TotalCents is not { } total || total == 0)
        {
            return;
        }

        var reckoned = entry.Quantity * price * 100 + (entry.FeesCents ?? 0);
        if (Abs(reckoned - total) > TotalMiss * Abs(total))
        {
            lines.Ask(no, "TOTAL_DIFFERS", "total", $"The total is ${EntryLines.Figure(total / 100.0)}; quantity x price and fees make ${EntryLines.Figure(Round(reckoned) / 100)}.", "Check quantity, price, fees and tax; the quantity is kept.");
        }
    }

    /// <summary>Asks about a ticket whose money is far from any price of its fuel. Bills hold standing charges and are not asked.</summary>
    private static void Believable(EntryLines lines, int no, FuelEntry entry, double kwhPerUnit)
    {
        if (entry.Kind != FuelEntryKind.Delivery || entry.Confirmed || entry.TotalCents is not { } cents || cents == 0 || entry.Quantity == 0)
        {
            return;
        }

        var each = (cents - (entry.FeesCents ?? 0)) / 100.0 / entry.Quantity;
        var (low, high) = (LeastUsdPerKwh * kwhPerUnit, (lines.Group.Fuel == FuelKind.Electricity ? MostUsdPerKwhElectric : MostUsdPerKwh) * kwhPerUnit);
        if (each < low || each > high)
        {
            lines.Ask(no, "PRICE_FAR_OFF", "total", FormattableString.Invariant($"The total of ${cents / 100.0:#,0.00} for {entry.Quantity:#,0.##} {entry.Unit} makes ${each:#,0.0##} a {entry.Unit}; ${low:#,0.00##} to ${high:#,0.00} can be believed."), "Check the total and the quantity; the quantity is kept.");
        }
    }

    private static void Gauge(EntryLines lines, int no, FuelEntry entry, double kwh)
    {
        if (entry.Confirmed || (entry.GaugeBeforePct ?? entry.GaugeAfterPct) is null)
        {
            return;
        }

        if (entry.GaugeBeforePct is < 0 or > 100 || entry.GaugeAfterPct is < 0 or > 100)
        {
            lines.Ask(no, "OUT_OF_RANGE", "gauge", "A gauge reads from 0 to 100 per cent.", "Give per cent of the tank; the reading is not used.");
        }
        else if (entry.GaugeBeforePct > entry.GaugeAfterPct && kwh > 0)
        {
            lines.Ask(no, "GAUGE_FELL", "gauge", $"The gauge fell from {entry.GaugeBeforePct} to {entry.GaugeAfterPct} % while fuel was delivered.", "Are before and after changed about?");
        }
        else if (lines.Group.TankSizeL is { } size && entry is { GaugeBeforePct: { } before, GaugeAfterPct: { } after } && Abs((after - before) / 100 * size - lines.Litres(kwh)) > 0.10 * size)
        {
            lines.Ask(no, "GAUGE_DIFFERS", "gauge", $"The gauge rose by {EntryLines.Figure(after - before)} % of the tank, the quantity is {EntryLines.Figure(100 * lines.Litres(kwh) / size)} % of it.", "Check the reading and the size of the tank bank.");
        }
    }

    private static string Words(FuelKind fuel) => fuel switch
    {
        FuelKind.NaturalGas => "Natural gas",
        FuelKind.FuelOil => "No. 2 oil",
        FuelKind.WoodPellets => "Wood pellets",
        _ => fuel.ToString(),
    };
}
