using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Fuel;

/// <summary>
/// A contract's own price series told by the index that futures are drawn for: own = a + b x index, least squares over the months that both records hold. What is left
/// over the line is drawn month by month (<see cref="PriceScatter"/>).
/// </summary>
/// <param name="UsdPerKwh">a, US dollars a kWh of fuel.</param>
/// <param name="Share">b.</param>
/// <param name="Months">Months that both hold.</param>
/// <param name="SdUsdPerKwh">Standard deviation about the line.</param>
/// <param name="Carry">Share of a month's residual that the next keeps.</param>
public sealed record SeriesBasis(double UsdPerKwh, double Share, int Months, double SdUsdPerKwh, double Carry = 0)
{
    /// <summary>The index itself.</summary>
    public static SeriesBasis Index { get; } = new(0, 1, 0, 0);

    /// <summary>Fewest months that both records must hold.</summary>
    public const int FewestMonths = 24;

    /// <summary>Tells a series by the index.</summary>
    /// <param name="own">The contract's series, as users pay it where it is retail, else by the pass-through.</param>
    /// <param name="inUse">The record the futures of the fuel roll on from; null = none.</param>
    /// <param name="adderUsdPerUnit">Constant of the pass-through of <paramref name="inUse"/> in the assumptions; null = fitted or common practice.</param>
    /// <param name="fuel">Fuel of the tank or meter.</param>
    /// <param name="values">Heating values that both records are turned into kWh by; null = those in use where nothing is chosen.</param>
    /// <returns>The basis, null when a fault stops it, and the fault.</returns>
    public static (SeriesBasis? Basis, Fault? Fault) Of(PriceSeriesFacts own, PriceSeriesFacts? inUse, double? adderUsdPerUnit, FuelKind fuel, HeatingValueSet? values = null)
    {
        if (own.Fuel != fuel)
        {
            return (null, new("SERIES_OF_OTHER_FUEL", "priceSeriesId", $"The contract follows a price series of {own.Fuel} and its tank or meter gives {fuel}.", $"Choose a series of {fuel}, or none for the index."));
        }

        if (ReferenceEquals(own, inUse))
        {
            return (Index, null);
        }

        var (mine, index) = (PerKwh(own, null, values), inUse is null ? [] : PerKwh(inUse, adderUsdPerUnit, values));
        var points = mine.Where(p => index.ContainsKey(p.Key)).OrderBy(p => p.Key).Select(p => (Month: p.Key, Index: index[p.Key], Own: p.Value)).ToList();
        if (points.Count < FewestMonths || StraightLine.Of([.. points.Select(p => (p.Index, p.Own))]) is not { } line)
        {
            return (null, new("SERIES_TOO_SHORT", "priceSeriesId", $"The contract's own series shares {points.Count} months with the record that futures roll on from.", $"Import a record that shares {FewestMonths} months or more, or choose none for the index."));
        }

        return line.B > 0 ? (new(line.A, line.B, line.Count, line.Sd, PriceScatter.CarryOf([.. points.Select(p => (p.Month, p.Own - line.A - line.B * p.Index))])), null)
            : (null, new("SERIES_AGAINST", "priceSeriesId", "The contract's own series falls where the index rises: it cannot be told by it.", "Make it the series of the fuel in the assumptions, or choose none for the index."));
    }

    private static Dictionary<DateOnly, double> PerKwh(PriceSeriesFacts series, double? adderUsdPerUnit, HeatingValueSet? values)
    {
        var through = series.Market == PriceMarket.Wholesale ? PassThrough.Of(series.Fuel, adderUsdPerUnit) : null;
        var kwh = HeatingValues.KwhPerUnit(series.Fuel, through?.Unit ?? series.Unit, values)!.Value;
        return DeliveredHistory.Of(series, through).ToDictionary(p => p.Month, p => p.UsdPerUnit / kwh);
    }
}
