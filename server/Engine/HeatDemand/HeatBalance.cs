using FarmPortfolio.Engine.Weather;
using static System.Math;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>
/// The hourly balance: demand = max(0, sum of conductances x (set point - outside) - sun - what the day left for the night), capped at the heater's output.
/// Steady state, ASABE EP406; ASHRAE Handbook HVAC Applications, environmental control for plants.
/// </summary>
public static class HeatBalance
{
    /// <summary>One season of one option.</summary>
    /// <param name="option">The option on its house.</param>
    /// <param name="year">The season's weather.</param>
    /// <param name="offsetK">Added to every outside temperature, K.</param>
    /// <returns>The season's heat.</returns>
    public static SeasonHeat Season(OptionModel option, WeatherYear year, double offsetK = 0)
    {
        var season = SeasonHours.Of(year);
        var hours = new HourState(option, season);
        var demand = new double[12];
        var (inPlace, nights) = (new[] { new double[12], new double[12] }, new int[2]);
        var stateKh = new double[4];
        var (purgeWh, sunWh, carriedWh, peakW, missingWh, coldHours, darkWh) = (0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0);
        var (light, lightThrough) = (0.0, 0.0);
        var periodOf = RunningChanges.PeriodOfDay(option.Periods, year.Season);
        var (month, heatedDays) = (0, 0);
        for (var d = 0; d < periodOf.Length; d++)
        {
            month = 24 * d >= year.MonthStart[month + 1] ? month + 1 : month;
            if (periodOf[d] < 0)
            {
                hours.Reset();
                continue;
            }

            heatedDays++;
            var period = option.Periods[periodOf[d]];
            var (usedFirst, usedSecond) = (false, false);
            for (var h = 24 * d; h < 24 * d + 24; h++)
            {
                hours.Step(period, season, h, offsetK);
                demand[month] += hours.DemandW;
                darkWh += hours.DemandW * (1 - year.SunUp[h]);
                inPlace[0][month] += hours.First;
                inPlace[1][month] += hours.Second;
                (usedFirst, usedSecond) = (usedFirst || hours.First > 0, usedSecond || hours.Second > 0);
                for (var s = 0; s < 4; s++)
                {
                    stateKh[s] += hours.StateK(s);
                }

                light += year.RadiationWPerM2[h];
                lightThrough += year.RadiationWPerM2[h] * hours.SunThrough;
                purgeWh += hours.PurgeW;
                sunWh += hours.SunUsedW;
                carriedWh += hours.CarriedW;
                peakW = Max(peakW, hours.WantedW);
                missingWh += hours.WantedW - hours.DemandW;
                coldHours += hours.WantedW > hours.DemandW ? 1 : 0;
            }

            nights[0] += usedFirst ? 1 : 0;
            nights[1] += usedSecond ? 1 : 0;
        }

        var parts = new double[5];
        for (var p = 0; p < 5; p++)
        {
            for (var s = 0; s < 4; s++)
            {
                parts[p] += stateKh[s] * option.ConductanceWPerK[s][p] / 1000;
            }
        }

        for (var m = 0; m < 12; m++)
        {
            demand[m] /= 1000;
        }

        var lost = light > 0 ? 1 - (1 - option.LightLostShare) * lightThrough / light : option.LightLostShare;
        return new(demand, new(parts, purgeWh / 1000, sunWh / 1000, carriedWh / 1000), peakW / 1000, missingWh / 1000, coldHours, heatedDays, darkWh / 1000, lost,
            [.. option.Movables.Select((m, i) => new MovableUse(m.Code, inPlace[i], nights[i]))]);
    }

    /// <summary>Demand by month only, hour after hour and plainly; the reference of <see cref="LaneBalance"/>.</summary>
    /// <param name="option">The option on its house.</param>
    /// <param name="year">The season's weather.</param>
    /// <param name="offsetK">Added to every outside temperature, K.</param>
    /// <param name="demandKwh">Twelve months, July first; written.</param>
    internal static void PlainDemand(OptionModel option, WeatherYear year, double offsetK, Span<double> demandKwh)
    {
        demandKwh.Clear();
        var season = SeasonHours.Of(year);
        var hours = new HourState(option, season);
        var periodOf = RunningChanges.PeriodOfDay(option.Periods, year.Season);
        var month = 0;
        for (var d = 0; d < periodOf.Length; d++)
        {
            month = 24 * d >= year.MonthStart[month + 1] ? month + 1 : month;
            if (periodOf[d] < 0)
            {
                hours.Reset();
                continue;
            }

            var period = option.Periods[periodOf[d]];
            for (var h = 24 * d; h < 24 * d + 24; h++)
            {
                hours.Step(period, season, h, offsetK);
                demandKwh[month] += hours.DemandW;
            }
        }

        for (var m = 0; m < 12; m++)
        {
            demandKwh[m] /= 1000;
        }
    }

    /// <summary>Steady demand at a temperature in the dark with everything movable in place or nothing, kW.</summary>
    /// <param name="option">The option.</param>
    /// <param name="outsideC">Outside temperature, C.</param>
    /// <param name="everythingInPlace">Whether movables count.</param>
    /// <returns>kW at the highest night set point.</returns>
    public static double DesignKw(OptionModel option, double outsideC, bool everythingInPlace)
    {
        var set = option.Periods.Count == 0 ? outsideC : option.Periods.Max(p => p.NightC);
        var state = everythingInPlace ? (1 << option.Movables.Count) - 1 : 0;
        return Max(0, option.TotalWPerK(state) * (set - outsideC)) / 1000;
    }
}
