using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>Electricity of a heat pump in the form of a demand table: the heat of each month and offset over the machine's ratio in that winter's hours.</summary>
internal static class FuelTables
{
    /// <summary>Mean night set point of a house, the temperature its heat pump works up to, C.</summary>
    internal static double InsideC(IReadOnlyList<Farms.HeatingPeriod> periods) => periods.Count > 0 ? periods.Average(p => p.NightC) : 15;

    /// <summary>Turns heat into electricity.</summary>
    /// <param name="heat">Heat by winter, month and offset.</param>
    /// <param name="pool">The winters.</param>
    /// <param name="insideC">Inside temperature by which hours are weighed, C.</param>
    /// <param name="copFactor">Factor on the machine's usual ratio.</param>
    /// <returns>Electricity, the quadratic through the same three offsets.</returns>
    public static DemandTable Electricity(DemandTable heat, IReadOnlyList<WeatherYear> pool, double insideC, double copFactor)
    {
        const double Step = DemandTable.StepK;
        var coefficients = new double[pool.Count * 36];
        for (var w = 0; w < pool.Count; w++)
        {
            double[][] ratio = [HeatPump.ElectricityPerHeat(pool[w], insideC, -Step), HeatPump.ElectricityPerHeat(pool[w], insideC), HeatPump.ElectricityPerHeat(pool[w], insideC, Step)];
            for (var m = 0; m < 12; m++)
            {
                var at = 3 * (12 * w + m);
                double Kwh(int i) => heat.DemandKwh(w, m, (i - 1) * Step) * ratio[i][m] / copFactor;
                var (low, mid, high) = (Kwh(0), Kwh(1), Kwh(2));
                (coefficients[at], coefficients[at + 1], coefficients[at + 2]) = (mid, (high - low) / (2 * Step), (high - 2 * mid + low) / (2 * Step * Step));
            }
        }

        return new(pool.Count, coefficients, heat.Uses);
    }
}
