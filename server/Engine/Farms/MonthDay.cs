namespace FarmPortfolio.Engine.Farms;

/// <summary>A day that returns every year, such as the day heating begins.</summary>
/// <param name="Month">Month, 1 to 12.</param>
/// <param name="Day">Day of the month, 1 to 31; 29 February reads as 28 February in common years.</param>
public readonly record struct MonthDay(int Month, int Day);
