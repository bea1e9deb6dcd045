using FarmPortfolio.Engine.Weather;
using static System.Math;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>Where the heat of a season went, kWh, over the hours heated.</summary>
/// <param name="PartsKwh">By path of heat, in the order of <see cref="HeatPath"/>.</param>
/// <param name="PurgeKwh">Air vented against humidity.</param>
/// <param name="SunUsedKwh">Sun that counted.</param>
/// <param name="CarriedKwh">Sun of the day that served the night.</param>
public sealed record LossSplit(double[] PartsKwh, double PurgeKwh, double SunUsedKwh, double CarriedKwh);

/// <summary>A season's heat of one option.</summary>
/// <param name="DemandKwh">Heat the heater must deliver by month, July first; capped at its output.</param>
/// <param name="Losses">Where it went.</param>
/// <param name="PeakKw">Largest hourly demand before the cap, kW.</param>
/// <param name="UndeliveredKwh">Heat wanted over the heater's output.</param>
/// <param name="ColdHours">Hours in which the heater was too small.</param>
/// <param name="HoursInPlace">Hours with the first movable in place, by month.</param>
/// <param name="NightsInUse">Nights on which the first movable was used.</param>
/// <param name="HeatedDays">Days with a set point.</param>
/// <param name="DarkDemandKwh">Of the demand, what fell in the dark.</param>
public sealed record SeasonHeat(
    double[] DemandKwh, LossSplit Losses, double PeakKw, double UndeliveredKwh, double ColdHours, double[] HoursInPlace, double NightsInUse, int HeatedDays, double DarkDemandKwh)
{
    /// <summary>Heat of the season, kWh.</summary>
    public double TotalKwh
    {
        get
        {
            var sum = 0.0;
            foreach (var month in DemandKwh)
            {
                sum += month;
            }

            return sum;
        }
    }
}

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
        var hours = new HourState(option);
        var (demand, inPlace) = (new double[12], new double[12]);
        var stateKh = new double[4];
        var (purgeWh, sunWh, carriedWh, peakW, missingWh, coldHours, nights, darkWh) = (0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0, 0.0);
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
            hours.StartDay(year, d);
            var used = false;
            for (var h = 24 * d; h < 24 * d + 24; h++)
            {
                hours.Step(option, period, year, h, offsetK);
                demand[month] += hours.DemandW;
                darkWh += hours.DemandW * (1 - year.SunUp[h]);
                inPlace[month] += hours.First;
                used |= hours.First > 0;
                for (var s = 0; s < 4; s++)
                {
                    stateKh[s] += hours.StateK(s);
                }

                purgeWh += hours.PurgeW;
                sunWh += hours.SunUsedW;
                carriedWh += hours.CarriedW;
                peakW = Max(peakW, hours.WantedW);
                missingWh += hours.WantedW - hours.DemandW;
                coldHours += hours.WantedW > hours.DemandW ? 1 : 0;
            }

            nights += used ? 1 : 0;
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

        return new(demand, new(parts, purgeWh / 1000, sunWh / 1000, carriedWh / 1000), peakW / 1000, missingWh / 1000, coldHours, inPlace, nights, heatedDays, darkWh / 1000);
    }

    /// <summary>Demand by month only; the same arithmetic as <see cref="Season"/>.</summary>
    /// <param name="option">The option on its house.</param>
    /// <param name="year">The season's weather.</param>
    /// <param name="offsetK">Added to every outside temperature, K.</param>
    /// <param name="demandKwh">Twelve months, July first; written.</param>
    public static void Demand(OptionModel option, WeatherYear year, double offsetK, Span<double> demandKwh)
    {
        demandKwh.Clear();
        var hours = new HourState(option);
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
            hours.StartDay(year, d);
            for (var h = 24 * d; h < 24 * d + 24; h++)
            {
                hours.Step(option, period, year, h, offsetK);
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
