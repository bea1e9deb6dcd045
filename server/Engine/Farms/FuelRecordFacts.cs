namespace FarmPortfolio.Engine.Farms;

/// <summary>How a fuel record's line was taken.</summary>
public enum FuelEntryKind
{
    /// <summary>A truck's delivery ticket.</summary>
    Delivery,

    /// <summary>A utility's bill over a period.</summary>
    Bill,

    /// <summary>A total over a season or a stretch of one.</summary>
    Total,
}

/// <summary>What is known of a delivery's end state or a bill's read.</summary>
public enum ReadKind
{
    /// <summary>Not told.</summary>
    Unknown,

    /// <summary>Tank filled to its usable top.</summary>
    Full,

    /// <summary>Tank not filled.</summary>
    Part,

    /// <summary>Meter read by the utility.</summary>
    Actual,

    /// <summary>Read estimated by the utility.</summary>
    Estimated,

    /// <summary>Meter read by the customer.</summary>
    Customer,
}

/// <summary>One ticket, bill or total.</summary>
/// <param name="Kind">Ticket, bill or total.</param>
/// <param name="FromOn">First day covered; for a ticket the day of delivery.</param>
/// <param name="ToOn">Last day covered; for a ticket the day of delivery.</param>
/// <param name="Quantity">Quantity in <paramref name="Unit"/>.</param>
/// <param name="Unit">Unit as written: gal, L, lb, therm, ccf, mcf, m3, kWh, MMBtu, ton.</param>
/// <param name="KwhFuel">The same in kWh, higher heating value, by the set in use where nothing is chosen, as a note of the day it was entered: whatever is reckoned turns <paramref name="Quantity"/> into kWh by the set of the co-op.</param>
/// <param name="TotalCents">What was paid in whole cents; null = not told.</param>
/// <param name="Read">Fill or read.</param>
/// <param name="GaugeBeforePct">Tank gauge before the fill, per cent; null = not read.</param>
/// <param name="GaugeAfterPct">Tank gauge after the fill, per cent; null = not read.</param>
/// <param name="FeesCents">Fees inside the total in whole cents; null = none told.</param>
/// <param name="Held">Why the user took the line out; null = it counts.</param>
/// <param name="PriceUsdPerUnit">Price of a unit as printed, US dollars; null = none told.</param>
/// <param name="ThermsPerCcf">The bill's own therm factor; null = the meter's, or the published mean.</param>
/// <param name="OnlyDollars">Only money is known; the quantity is reckoned from the price.</param>
/// <param name="Confirmed">The user looked at what was asked of the line and keeps it.</param>
/// <param name="IssuedOn">Day a bill was made out; of two for the same days the newer counts. Null = not told.</param>
/// <param name="Note">Remark of the user.</param>
/// <param name="SdShare">Spread of a quantity that was reckoned and not read, such as from degree days, share of it; null = read.</param>
public sealed record FuelEntry(
    FuelEntryKind Kind, DateOnly FromOn, DateOnly ToOn, double Quantity, string Unit, double KwhFuel, long? TotalCents = null,
    ReadKind Read = ReadKind.Unknown, double? GaugeBeforePct = null, double? GaugeAfterPct = null, long? FeesCents = null, string? Held = null,
    double? PriceUsdPerUnit = null, double? ThermsPerCcf = null, bool OnlyDollars = false, bool Confirmed = false, DateOnly? IssuedOn = null, string? Note = null, double? SdShare = null);

/// <summary>All deliveries and bills of one supply group.</summary>
public sealed record FuelRecordFacts
{
    /// <summary>The tank or meter.</summary>
    public required string SupplyGroupId { get; init; }

    /// <summary>Its lines, oldest first.</summary>
    public IReadOnlyList<FuelEntry> Entries { get; init; } = [];

    /// <summary>Whether the supplier fills on his own schedule; null = not told.</summary>
    public bool? AutomaticDelivery { get; init; }
}
