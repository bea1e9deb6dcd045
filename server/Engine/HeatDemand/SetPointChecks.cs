using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Units;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>Set points against the weather they meet.</summary>
public static class SetPointChecks
{
    /// <summary>Set points that the outside air never falls under.</summary>
    /// <param name="periods">Heating periods.</param>
    /// <param name="winters">Recorded winters of the house's station.</param>
    /// <returns>The fault; null where some hour of some winter needs heat, or no winter is on record.</returns>
    public static Fault? Of(IReadOnlyList<HeatingPeriod> periods, IReadOnlyCollection<WeatherYear> winters)
    {
        var coldestC = double.PositiveInfinity;
        foreach (var year in winters)
        {
            var periodOf = RunningChanges.PeriodOfDay(periods, year.Season);
            for (var h = 0; h < 24 * periodOf.Length; h++)
            {
                if (periodOf[h / 24] is var p && p < 0)
                {
                    continue;
                }

                var up = year.SunUp[h];
                if (up * periods[p].DayC + (1 - up) * periods[p].NightC > year.TempC[h])
                {
                    return null;
                }

                coldestC = Math.Min(coldestC, year.TempC[h]);
            }
        }

        var highestC = periods.Count > 0 ? periods.Max(p => Math.Max(p.NightC, p.DayC)) : 0;
        return winters.Count == 0 || periods.Count == 0 ? null : new(
            "NO_HEAT", "heatingPeriods",
            double.IsFinite(coldestC)
                ? FormattableString.Invariant($"The outside air never falls under the set points in the months heated: it is {coldestC:0.#} C ({Us.F(coldestC):0} F) at its coldest in {winters.Count} {(winters.Count == 1 ? "winter" : "winters")}, the highest set point is {highestC:0.#} C ({Us.F(highestC):0} F).")
                : "No day of the year is heated.",
            "Check the set points and their unit, and the dates heated; a house that is not heated needs no study.");
    }
}
