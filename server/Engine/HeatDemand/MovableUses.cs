using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>How a pool of winters would see an option's movables used.</summary>
/// <param name="NightsByPart">Mean nights a season on which each movable part is used, by code.</param>
/// <param name="HoursByPart">Mean hours a season in place, by code.</param>
/// <param name="HeatedDays">Days heated a season, the most of any.</param>
/// <param name="LightLostShare">Share of the daylight of the days heated that the option takes, what it shades while in place included.</param>
public sealed record MovableUses(IReadOnlyDictionary<string, double> NightsByPart, IReadOnlyDictionary<string, double> HoursByPart, int HeatedDays, double LightLostShare)
{
    /// <summary>Uses of an option over a pool of winters, at no temperature offset.</summary>
    /// <param name="option">The option.</param>
    /// <param name="pool">Recorded winters.</param>
    /// <returns>Means over the pool.</returns>
    public static MovableUses Of(OptionModel option, IReadOnlyList<WeatherYear> pool)
    {
        var (nights, hours) = (new double[2], new double[2]);
        var (days, light, through) = (0, 0.0, 0.0);
        foreach (var year in pool)
        {
            var season = SeasonHours.Of(year);
            var periodOf = RunningChanges.PeriodOfDay(option.Periods, year.Season);
            days = Math.Max(days, periodOf.Count(p => p >= 0));
            var rules = option.Movables.Select(m => (m.Rule, Hours: season.Of(m.Rule.Closing))).ToArray();
            var (temp, sunshine) = (year.TempC, year.RadiationWPerM2);
            for (var d = 0; d < periodOf.Length && rules.Length > 0; d++)
            {
                if (periodOf[d] < 0)
                {
                    continue;
                }

                Span<bool> used = [false, false];
                for (var h = 24 * d; h < 24 * d + 24; h++)
                {
                    var passes = 1.0;
                    for (var i = 0; i < rules.Length; i++)
                    {
                        var (share, sun) = rules[i].Rule.At(rules[i].Hours, temp[h], sunshine[h], h);
                        hours[i] += share;
                        used[i] |= share > 0;
                        passes *= sun;
                    }

                    light += sunshine[h];
                    through += sunshine[h] * passes;
                }

                nights[0] += used[0] ? 1 : 0;
                nights[1] += used[1] ? 1 : 0;
            }
        }

        IReadOnlyDictionary<string, double> Mean(double[] sums) => option.Movables.Select((m, i) => (m.Code, Mean: sums[i] / pool.Count)).ToDictionary(p => p.Code, p => p.Mean);
        var lost = light > 0 ? 1 - (1 - option.LightLostShare) * through / light : option.LightLostShare;
        return new(Mean(nights), Mean(hours), days, lost);
    }
}
