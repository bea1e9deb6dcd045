namespace FarmPortfolio.Engine.Fuel;

/// <summary>Where a price is made.</summary>
public enum PriceMarket
{
    /// <summary>A hub or harbour.</summary>
    Wholesale,

    /// <summary>Delivered to a user.</summary>
    Retail,
}

/// <summary>How a series behaves: which default parameters it takes.</summary>
public enum PriceClass
{
    /// <summary>Wholesale gas, propane, oil: two factors.</summary>
    WholesaleFuel,

    /// <summary>Retail oil, piped gas, commercial gas, pellets: one slow factor.</summary>
    RetailFuel,

    /// <summary>Electricity: one slow, calm factor.</summary>
    Electricity,
}

/// <summary>A monthly price record.</summary>
public sealed record PriceSeriesFacts
{
    /// <summary>Fuel.</summary>
    public required FuelKind Fuel { get; init; }

    /// <summary>Wholesale or retail.</summary>
    public required PriceMarket Market { get; init; }

    /// <summary>Class whose defaults it takes.</summary>
    public required PriceClass Class { get; init; }

    /// <summary>Unit a price is for: gal, therm, MMBtu, mcf, kWh, ton.</summary>
    public required string Unit { get; init; }

    /// <summary>First month, the first day of it.</summary>
    public required DateOnly FirstMonthOn { get; init; }

    /// <summary>US dollars a unit, one a month without a gap; null = missing in the record.</summary>
    public required IReadOnlyList<double?> UsdPerUnit { get; init; }

    /// <summary>Who made the numbers and how they came here.</summary>
    public string? Source { get; init; }
}
