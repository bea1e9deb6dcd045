using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Fuel;

/// <summary>What the same heat cost on three fuels in a year, mean of the months that all records have.</summary>
/// <param name="Year">Year.</param>
/// <param name="Months">Months, 1 to 12.</param>
/// <param name="GasUsdPerMmbtu">Useful heat on natural gas, US dollars a MMBtu.</param>
/// <param name="PropaneUsdPerMmbtu">On propane.</param>
/// <param name="OilUsdPerMmbtu">On No. 2 oil.</param>
public sealed record HeatCostYear(int Year, int Months, double GasUsdPerMmbtu, double PropaneUsdPerMmbtu, double OilUsdPerMmbtu)
{
    /// <summary>Propane over gas.</summary>
    public double PropaneOverGas => PropaneUsdPerMmbtu / GasUsdPerMmbtu;

    /// <summary>Oil over gas.</summary>
    public double OilOverGas => OilUsdPerMmbtu / GasUsdPerMmbtu;
}

/// <summary>
/// Useful heat on propane and oil against natural gas, year by year, at the usual heaters' seasonal efficiencies. The trade says four times and twice: a look back, never
/// used to derive one fuel's price from another's.
/// </summary>
public static class HeatCostHistory
{
    /// <summary>Seasonal efficiency of a power-vented unit heater on gas or propane; from memory.</summary>
    public const double GasEfficiency = 0.78;

    /// <summary>Seasonal efficiency of an oil furnace; from memory.</summary>
    public const double OilEfficiency = 0.77;

    /// <summary>The years that all three records have months of.</summary>
    /// <param name="gas">Natural gas as users pay it.</param>
    /// <param name="propane">Propane, wholesale.</param>
    /// <param name="oil">No. 2 oil as users pay it.</param>
    /// <param name="propaneMarginUsdPerGallon">Dealer's margin on the wholesale price, US dollars a gallon.</param>
    /// <param name="values">Heating values; null = those in use where nothing is chosen.</param>
    /// <returns>By year.</returns>
    public static IReadOnlyList<HeatCostYear> Of(PriceSeriesFacts gas, PriceSeriesFacts propane, PriceSeriesFacts oil, double propaneMarginUsdPerGallon, HeatingValueSet? values = null)
    {
        var (g, p, o) = (PerMmbtu(gas, 0, values), PerMmbtu(propane, propaneMarginUsdPerGallon, values), PerMmbtu(oil, 0, values));
        return
        [
            .. g.Keys.Where(m => p.ContainsKey(m) && o.ContainsKey(m)).GroupBy(m => m.Year).OrderBy(y => y.Key).Select(y => new HeatCostYear(
                y.Key, y.Count(), y.Average(m => g[m]) / GasEfficiency, y.Average(m => p[m]) / GasEfficiency, y.Average(m => o[m]) / OilEfficiency)),
        ];
    }

    private static Dictionary<DateOnly, double> PerMmbtu(PriceSeriesFacts series, double marginUsdPerUnit, HeatingValueSet? values)
    {
        var mmbtu = HeatingValues.KwhPerUnit(series.Fuel, series.Unit, values)!.Value / Us.MmbtuKwh;
        return series.UsdPerUnit.Select((v, i) => (Month: series.FirstMonthOn.AddMonths(i), v)).Where(x => x.v is > 0).ToDictionary(x => x.Month, x => (x.v!.Value + marginUsdPerUnit) / mmbtu);
    }
}
