using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Units;
using static System.Math;

namespace FarmPortfolio.Engine.Scenarios;

/// <summary>Delivered prices along the future in which nothing happens: no draw of either factor, no residual of the retail price, no case.</summary>
internal static class MiddlePrices
{
    private const double Month = 1.0 / 12;

    /// <summary>Mean over each season's months.</summary>
    /// <param name="fuel">Fuel.</param>
    /// <param name="set">Assumptions.</param>
    /// <returns>By season, US dollars a kWh of fuel.</returns>
    internal static double[] UsdPerKwh(FuelSpec fuel, ScenarioSetFacts set)
    {
        var m = fuel.Model;
        var lastMonth = 12 * m.LastMonthOn.Year + m.LastMonthOn.Month - 1;
        var firstMonth = 12 * set.FirstSeason + 6;
        var own = set.Prices.FirstOrDefault(p => p.Fuel == fuel.Fuel)?.LevelUsdPerUnit;
        var (level, gap) = own is { } given ? (Log(given) - m.Growth * Max(0, firstMonth - lastMonth) * Month, 0) : (m.Level, m.Gap);
        var mean = Log(m.Shape.Average(Exp));
        var kwh = HeatingValues.KwhPerUnit(fuel.Fuel, fuel.DeliveredUnit, set.HeatingValues()) ?? throw new ArgumentException($"{fuel.Fuel} is not sold by the {fuel.DeliveredUnit}", nameof(fuel));
        return [.. Enumerable.Range(0, set.SeasonCount).Select(s => Enumerable.Range(firstMonth + 12 * s, 12).Average(Delivered) / kwh)];

        double Series(int month)
        {
            var steps = month - lastMonth;
            if (steps <= 0)
            {
                return fuel.LastPrices[Min(-steps, fuel.LastPrices.Count - 1)];
            }

            var years = steps * Month;
            var shift = set.LevelMeaning == LevelMeaning.Expected ? PriceModel.MeanOverMedian(m.Variance(years)) : 0;
            return Exp(level + m.Growth * years + m.Shape[month % 12] - mean - shift + gap * Exp(-m.ShortReversion * years));
        }

        double Delivered(int month) => fuel.PassThrough is { } p
            ? p.Constant * Exp(m.Growth * Max(0, month - lastMonth) * Month) + p.Now * Series(month) + p.Last * Series(month - 1) + p.Before * Series(month - 2)
            : Series(month);
    }
}
