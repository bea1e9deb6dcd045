using FarmPortfolio.Engine;

namespace FarmPortfolio.Host.Loading;

/// <summary>A monthly price record.</summary>
/// <param name="FirstMonthOn">First month.</param>
/// <param name="Prices">US dollars a unit, one a month; null = missing.</param>
/// <param name="Layout">The layout found, in words.</param>
/// <param name="Unit">Unit the file names; null = none.</param>
/// <param name="Fuel">Fuel the file names; null = none.</param>
public sealed record MonthlyRecord(DateOnly FirstMonthOn, IReadOnlyList<double?> Prices, string Layout, string? Unit, FuelKind? Fuel)
{
    /// <summary>Last month.</summary>
    public DateOnly LastMonthOn => FirstMonthOn.AddMonths(Prices.Count - 1);
}
