using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.Trials;

/// <summary>The model's hours over a trial: an option of a house under the station's weather of the very dates.</summary>
/// <param name="years">Recorded seasons of the station, by season year.</param>
/// <param name="offsetK">Added to the station's temperatures so that their mean is the notebook's.</param>
internal sealed class TrialModel(IReadOnlyDictionary<int, WeatherYear> years, double offsetK)
{
    private readonly Dictionary<(OptionModel, int), double[]> known = [];

    /// <summary>Heat of an option between two moments, kWh; NaN where the station has no record.</summary>
    /// <param name="option">Option.</param>
    /// <param name="from">Begin.</param>
    /// <param name="to">End.</param>
    public double Kwh(OptionModel option, DateTime from, DateTime to) => Sum(years, from, to, (year, h) => Hours(option, year)[h] / 1000);

    /// <summary>Mean temperature of the station between two moments, C; NaN where it has no record.</summary>
    /// <param name="years">Recorded seasons.</param>
    /// <param name="from">Begin.</param>
    /// <param name="to">End.</param>
    public static double MeanC(IReadOnlyDictionary<int, WeatherYear> years, DateTime from, DateTime to) => Sum(years, from, to, (year, h) => year.TempC[h]) / (to - from).TotalHours;

    private static double Sum(IReadOnlyDictionary<int, WeatherYear> years, DateTime from, DateTime to, Func<WeatherYear, int, double> of)
    {
        var sum = 0.0;
        for (var at = from; at < to;)
        {
            var next = at.Date.AddHours(at.Hour + 1);
            var end = next < to ? next : to;
            var day = DateOnly.FromDateTime(at);
            if (!years.TryGetValue(SeasonCalendar.SeasonOf(day), out var year))
            {
                return double.NaN;
            }

            sum += of(year, 24 * SeasonCalendar.DayIndex(day) + at.Hour) * (end - at).TotalHours;
            at = end;
        }

        return sum;
    }

    private double[] Hours(OptionModel option, WeatherYear year)
    {
        if (!known.TryGetValue((option, year.Season), out var hours))
        {
            known[(option, year.Season)] = hours = HourlyHeat.Season(option, year, offsetK);
        }

        return hours;
    }
}
