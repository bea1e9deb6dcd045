using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.HeatDemand.Calibration;

/// <summary>
/// A bill fixes the heat as a whole. How much leakier the houses would have to be with their films as described, and how much worse the films with the leaks as described,
/// for the model to meet it: the two are kept apart, neither is fitted.
/// </summary>
public static class LeaksAndFilms
{
    private const int MostDays = 800;

    /// <summary>Reckons both over the days billed.</summary>
    /// <param name="houses">Houses as described.</param>
    /// <param name="winters">Weather by season year.</param>
    /// <param name="fit">What the bills say.</param>
    /// <returns>The factors; null where no multiplier is believed.</returns>
    public static LossReasons? Of(IReadOnlyList<BehindTank> houses, IReadOnlyDictionary<int, WeatherYear> winters, GroupFit fit)
    {
        if (fit is not { Believed: true, Multiplier: { Value: var multiplier } })
        {
            return null;
        }

        var days = fit.Intervals.Select(i => i.Use).Reverse().ToList();
        days = [.. days.Where((_, i) => i == 0 || days.Take(i + 1).Sum(u => u.Days) <= MostDays)];
        double Fuel(Func<HouseModel, HouseModel> change)
        {
            var fuel = new ModelledFuel([.. houses.Select(h => h with { Model = change(h.Model) })], winters);
            return days.Sum(i => fuel.Of(i.FromOn, i.ToOn) ?? 0);
        }

        var wanted = multiplier * Fuel(m => m);
        double? Solve(Func<HouseModel, double, HouseModel> scaled)
        {
            // burning grows with either factor; halved until within half a per cent
            var (low, high) = (0.02, 12.0);
            if (Fuel(m => scaled(m, low)) > wanted || Fuel(m => scaled(m, high)) < wanted)
            {
                return null;
            }

            while (high - low > 0.005 * low)
            {
                var mid = (low + high) / 2;
                (low, high) = Fuel(m => scaled(m, mid)) > wanted ? (low, mid) : (mid, high);
            }

            return (low + high) / 2;
        }

        return new(
            Solve((m, f) => m with { AirChangesPerHour = m.AirChangesPerHour * f }),
            Solve((m, f) => m with { RoofU = m.RoofU * f, SideU = m.SideU * f, EndU = m.EndU * f }));
    }
}
