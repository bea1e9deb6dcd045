using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.HeatDemand.Calibration;

/// <summary>Heat a house needs day by day: the hourly balance of <see cref="HeatBalance"/>, summed over each day, so that a bill meets exactly its own days.</summary>
public static class DailyHeat
{
    /// <summary>One season.</summary>
    /// <param name="option">The house with what stands in it.</param>
    /// <param name="year">The season's weather.</param>
    /// <returns>kWh of heat for each day from 1 July.</returns>
    public static double[] Of(OptionModel option, WeatherYear year)
    {
        var season = SeasonHours.Of(year);
        var hours = new HourState(option, season);
        var periodOf = RunningChanges.PeriodOfDay(option.Periods, year.Season);
        var daily = new double[periodOf.Length];
        for (var d = 0; d < periodOf.Length; d++)
        {
            if (periodOf[d] < 0)
            {
                hours.Reset();
                continue;
            }

            for (var h = 24 * d; h < 24 * d + 24; h++)
            {
                hours.Step(option.Periods[periodOf[d]], season, h, 0);
                daily[d] += hours.DemandW;
            }

            daily[d] /= 1000;
        }

        return daily;
    }
}
