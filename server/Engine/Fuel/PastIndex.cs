using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Fuel;

/// <summary>The index of a past season: the record as users would have paid it, in the unit that is asked.</summary>
public static class PastIndex
{
    /// <summary>The delivered price of each month of a season, to $0.0001.</summary>
    /// <param name="series">Record; null = none.</param>
    /// <param name="adderUsdPerUnit">The user's own constant from wholesale to delivered, in the unit of the pass-through; null = fitted or common practice.</param>
    /// <param name="unit">Unit asked for, one the fuel is sold in.</param>
    /// <param name="season">Year of its July.</param>
    /// <param name="own">What the user says the months were, July first; a null, or a list that is shorter, takes the record.</param>
    /// <param name="values">Heating values that one unit is turned into another by; null = those in use where nothing is chosen.</param>
    /// <returns>Twelve prices, US dollars a unit; null = not on record.</returns>
    public static IReadOnlyList<decimal?> Of(PriceSeriesFacts? series, double? adderUsdPerUnit, string unit, int season, IReadOnlyList<double?>? own = null, HeatingValueSet? values = null)
    {
        var recorded = new Dictionary<DateOnly, double>();
        var perUnit = 1.0;
        if (series is not null)
        {
            var through = series.Market == PriceMarket.Wholesale ? PassThrough.Of(series.Fuel, adderUsdPerUnit) : null;
            recorded = DeliveredHistory.Of(series, through).ToDictionary(p => p.Month, p => p.UsdPerUnit);
            perUnit = HeatingValues.KwhPerUnit(series.Fuel, unit, values)!.Value / HeatingValues.KwhPerUnit(series.Fuel, through?.Unit ?? series.Unit, values)!.Value;
        }

        decimal? Month(int m) =>
            own is not null && m < own.Count && own[m] is { } said ? PastBills.Price((decimal)said)
            : recorded.TryGetValue(new DateOnly(season, 7, 1).AddMonths(m), out var usd) ? PastBills.Price((decimal)(usd * perUnit)) : null;
        return [.. Enumerable.Range(0, 12).Select(Month)];
    }
}
