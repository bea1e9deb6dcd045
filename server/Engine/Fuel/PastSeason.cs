using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Fuel;

/// <summary>A month of a past season as tickets and bills tell it.</summary>
/// <param name="Month">Month of the season, July = 0.</param>
/// <param name="Units">Fuel bought, in the season's unit.</param>
/// <param name="Deliveries">Tickets of the month.</param>
/// <param name="PaidCents">What was paid, fees included; null = no line of the month tells it.</param>
public sealed record PastMonth(int Month, decimal Units, int Deliveries, long? PaidCents);

/// <summary>A past season ready to be settled under any contract.</summary>
public sealed record PastSeason
{
    /// <summary>Year of its July.</summary>
    public required int Season { get; init; }

    /// <summary>Fuel.</summary>
    public required FuelKind Fuel { get; init; }

    /// <summary>Unit of its volumes and of <see cref="Index"/>.</summary>
    public required string Unit { get; init; }

    /// <summary>Its twelve months, July first.</summary>
    public required IReadOnlyList<PastMonth> Months { get; init; }

    /// <summary>Delivered price of the month that an index contract follows, US dollars a <see cref="Unit"/> to $0.0001; null = not on record.</summary>
    public required IReadOnlyList<decimal?> Index { get; init; }

    /// <summary>Price of the stand-by fuel for the heat of one <see cref="Unit"/>, by month; empty = there is none.</summary>
    public IReadOnlyList<decimal?> StandBy { get; init; } = [];

    /// <summary>Price of money from paying a block to using it where the contract tells none, a year.</summary>
    public double MoneyRatePerYear { get; init; }

    /// <summary>Heating values that one unit is turned into another by.</summary>
    public HeatingValueSet Heating { get; init; } = FuelSets.HeatingInUse;

    /// <summary>Units of the season.</summary>
    public decimal Units => Months.Sum(m => m.Units);
}

/// <summary>A line of a bill.</summary>
/// <param name="Month">Month of the season, July = 0; null = at the season's end.</param>
/// <param name="What">What is billed, in words.</param>
/// <param name="Quantity">Quantity; null = a flat charge.</param>
/// <param name="UsdPerUnit">Price of one; null = a flat charge.</param>
/// <param name="Cents">What it comes to, whole cents, halves away from zero.</param>
public sealed record BillLine(int? Month, string What, decimal? Quantity, decimal? UsdPerUnit, long Cents);

/// <summary>What a season would have cost under some contracts, line by line.</summary>
/// <param name="Lines">Lines in order of the months; what is settled at the season's end comes last.</param>
/// <param name="StillOwnUnits">Units of a block that are paid and still to be had.</param>
/// <param name="CreditCents">Money that stands with the dealer.</param>
public sealed record PastBill(IReadOnlyList<BillLine> Lines, decimal StillOwnUnits, long CreditCents)
{
    /// <summary>All of it, whole cents.</summary>
    public long TotalCents => Lines.Sum(l => l.Cents);

    /// <summary>What a month comes to.</summary>
    /// <param name="month">Month of the season, July = 0; null = the season's end.</param>
    /// <returns>Whole cents.</returns>
    public long Cents(int? month) => Lines.Where(l => l.Month == month).Sum(l => l.Cents);
}
