using System.Collections.Concurrent;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>What every balance of one season at one station shares: how the night's purge is spread, where a day begins, when movables are due.</summary>
internal sealed class SeasonHours
{
    private static readonly System.Runtime.CompilerServices.ConditionalWeakTable<WeatherYear, SeasonHours> Known = new();

    private readonly ConcurrentDictionary<ClosingTime, RuleHours> rules = new();

    private SeasonHours(WeatherYear year)
    {
        Year = year;
        PurgeShare = new double[year.Hours];
        FirstOfDay = new bool[year.Hours];
        for (var d = 0; d < year.Hours / 24; d++)
        {
            var dark = 0.0;
            for (var h = 24 * d; h < 24 * d + 24; h++)
            {
                dark += 1 - year.SunUp[h];
            }

            for (var h = 24 * d; h < 24 * d + 24; h++)
            {
                PurgeShare[h] = dark > 0 ? (1 - year.SunUp[h]) / dark : 0;
                FirstOfDay[h] = year.SunUp[h] >= 1 && (h == 0 || year.SunUp[h - 1] < 1);
            }
        }
    }

    /// <summary>The weather.</summary>
    public WeatherYear Year { get; }

    /// <summary>Share of the day's purge that falls in each hour: the dark hours alike.</summary>
    public double[] PurgeShare { get; }

    /// <summary>Whether an hour is the first of a day with the sun up throughout: what the day before left over is gone.</summary>
    public bool[] FirstOfDay { get; }

    /// <summary>What a season's balances share; made once a season.</summary>
    /// <param name="year">The season.</param>
    /// <returns>The shared hours.</returns>
    public static SeasonHours Of(WeatherYear year) => Known.GetValue(year, y => new(y));

    /// <summary>When a movable is due in this season.</summary>
    /// <param name="closing">Its closing time.</param>
    /// <returns>Shares by hour.</returns>
    public RuleHours Of(ClosingTime closing) => rules.GetOrAdd(closing, c => RuleHours.Of(c, Year));
}
