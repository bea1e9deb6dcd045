namespace FarmPortfolio.Engine.Fuel;

/// <summary>Default parameters of a class of prices.</summary>
/// <param name="ShortReversionPerYear">k1; 0 = no short-term factor.</param>
/// <param name="LongReversionPerYear">k2; 0 = a random walk.</param>
/// <param name="LongShare">l, share of the long-term factor in the volatility.</param>
/// <param name="PriorVolatility">ss that a record is shrunk to.</param>
/// <param name="GrowthPerYear">mu.</param>
public sealed record PriceClassDefaults(double ShortReversionPerYear, double LongReversionPerYear, double LongShare, double PriorVolatility, double GrowthPerYear)
{
    /// <summary>The defaults of a class. Chosen on the published record 1986 to 2026; see the method page on prices.</summary>
    /// <param name="priceClass">Class.</param>
    /// <returns>Its defaults.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such class.</exception>
    public static PriceClassDefaults Of(PriceClass priceClass) => priceClass switch
    {
        PriceClass.WholesaleFuel => new(0.7, 0.05, 0.7, 0.40, 0.02),
        PriceClass.RetailFuel => new(0, 0, 1, 0.17, 0.02),
        PriceClass.Electricity => new(0, 0, 1, 0.045, 0.02),
        _ => throw new ArgumentOutOfRangeException(nameof(priceClass), priceClass, "no such class"),
    };
}
