namespace FarmPortfolio.Engine.Fuel;

/// <summary>Assumptions for one fuel's price. Null = fitted or the class default.</summary>
public sealed record FuelPriceAssumption
{
    /// <summary>Fuel.</summary>
    public required FuelKind Fuel { get; init; }

    /// <summary>The series its futures roll on from.</summary>
    public string? PriceSeriesId { get; init; }

    /// <summary>Own level of the first season, US dollars a unit of the series; null = from the record.</summary>
    public double? LevelUsdPerUnit { get; init; }

    /// <summary>Default adder from index to delivered, US dollars a unit of the series.</summary>
    public double? RetailAdderUsdPerUnit { get; init; }

    /// <summary>Yearly growth of the level, 0.02 = 2 %.</summary>
    public double? GrowthPerYear { get; init; }

    /// <summary>Short-term reversion a year (k1).</summary>
    public double? ShortReversionPerYear { get; init; }

    /// <summary>Long-term reversion a year (k2).</summary>
    public double? LongReversionPerYear { get; init; }

    /// <summary>Share of the long-term factor in the volatility (l), 0 to 1.</summary>
    public double? LongShare { get; init; }

    /// <summary>Yearly volatility (ss); null = fitted.</summary>
    public double? VolatilityPerYear { get; init; }
}
