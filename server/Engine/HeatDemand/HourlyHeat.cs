using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>The balance hour by hour, for what is measured over odd hours: trials, tickets, bills.</summary>
public static class HourlyHeat
{
    /// <summary>Demand of every hour of a season.</summary>
    /// <param name="option">The option on its house.</param>
    /// <param name="year">The season's weather.</param>
    /// <param name="offsetK">Added to every outside temperature, K.</param>
    /// <returns>Heat delivered in each hour from 1 July 00:00, Wh.</returns>
    public static double[] Season(OptionModel option, WeatherYear year, double offsetK = 0)
    {
        var season = SeasonHours.Of(year);
        var state = new HourState(option, season);
        var demand = new double[year.Hours];
        var periodOf = RunningChanges.PeriodOfDay(option.Periods, year.Season);
        for (var d = 0; d < periodOf.Length; d++)
        {
            if (periodOf[d] < 0)
            {
                state.Reset();
                continue;
            }

            for (var h = 24 * d; h < 24 * d + 24; h++)
            {
                state.Step(option.Periods[periodOf[d]], season, h, offsetK);
                demand[h] = state.DemandW;
            }
        }

        return demand;
    }
}
