using FarmPortfolio.Engine.Units;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>
/// Electricity of an air-source heat pump by outside temperature: heat over electricity 3.4 at 47 F, 2.3 at 17 F, 1.9 at 5 F, straight lines between, and
/// resistance (1.0) below -13 F. Points of a usual cold-climate machine, from memory.
/// </summary>
public static class HeatPump
{
    private static readonly (double F, double Cop)[] Points = [(-13, 1.3), (5, 1.9), (17, 2.3), (47, 3.4), (60, 3.8)];

    /// <summary>Heat over electricity.</summary>
    /// <param name="outsideC">Outside temperature, degrees Celsius.</param>
    /// <returns>1.0 to 3.8.</returns>
    public static double Cop(double outsideC)
    {
        var f = Us.F(outsideC);
        if (f < Points[0].F)
        {
            return 1;
        }

        for (var i = 1; i < Points.Length; i++)
        {
            if (f <= Points[i].F)
            {
                var (a, b) = (Points[i - 1], Points[i]);
                return a.Cop + (b.Cop - a.Cop) * (f - a.F) / (b.F - a.F);
            }
        }

        return Points[^1].Cop;
    }

    /// <summary>Electricity a kWh of heat by month, the hours weighed by how far they are below an inside temperature.</summary>
    /// <param name="year">Winter.</param>
    /// <param name="insideC">Inside temperature, degrees Celsius.</param>
    /// <param name="offsetK">What the winter is warmer than recorded, K.</param>
    /// <returns>Twelve ratios, July first, 0.26 to 1; a month that needs no heat takes the ratio of its mean temperature.</returns>
    public static double[] ElectricityPerHeat(WeatherYear year, double insideC, double offsetK = 0)
    {
        var ratios = new double[12];
        for (var m = 0; m < 12; m++)
        {
            var (heat, electricity, mean, hours) = (0.0, 0.0, 0.0, year.MonthStart[m + 1] - year.MonthStart[m]);
            for (var h = year.MonthStart[m]; h < year.MonthStart[m + 1]; h++)
            {
                var outsideC = year.TempC[h] + offsetK;
                var need = Math.Max(0, insideC - outsideC);
                heat += need;
                electricity += need / Cop(outsideC);
                mean += outsideC / hours;
            }

            ratios[m] = heat > 0 ? electricity / heat : 1 / Cop(mean);
        }

        return ratios;
    }
}
