using FarmPortfolio.Engine.Economics;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Scenarios;
using static System.Math;

namespace FarmPortfolio.Engine.Studies;

/// <summary>
/// What does not depend on the path: when the option is built, what it costs each season beside fuel, and the heater's efficiency. "As it stands" renews its own
/// film and heater when due; what the option spares of that counts for it. Nominal.
/// </summary>
/// <param name="StartSeason">Season before which it is built, from 0.</param>
/// <param name="CostUsd">Running and renewals less what is spared, by season.</param>
/// <param name="Efficiency">Seasonal efficiency with the option.</param>
/// <param name="ResidualUsd">Straight-line worth of what is not yet worn at the horizon's end.</param>
/// <param name="OutlayGrowth">Growth of the outlay up to the season it is paid.</param>
internal sealed record CashPlan(int StartSeason, double[] CostUsd, double[] Efficiency, double ResidualUsd, double OutlayGrowth)
{
    public static CashPlan Of(HouseModel house, OptionFacts option, OptionCosts costs, ScenarioSetFacts set, double optionEfficiency)
    {
        var n = set.SeasonCount;
        var heater = house.Heaters[0];
        var filmDue = Max(0, house.FilmDueYear - set.FirstSeason);
        var filmLife = Max(1, (int)Round(house.FilmLifeYears));
        var heaterDue = Max(0, heater.DueYear - set.FirstSeason);
        var start = option.Timing switch { OptionTiming.AtFilmChange => filmDue, OptionTiming.AtHeaterChange => heaterDue, _ => 0 };
        start = Min(start, n - 1);
        var cost = new double[n];
        double Grown(double usd, int season) => usd * Pow(1 + set.ReplacementGrowth, season);
        for (var s = start; s < n; s++)
        {
            cost[s] += costs.RunningUsd * Pow(1 + set.UpkeepGrowth, s);
        }

        foreach (var renewal in costs.Renewals)
        {
            var every = renewal.WithFilm ? filmLife : Max(1, (int)Round(renewal.EveryYears));
            for (var s = renewal.WithFilm ? filmDue : start + every; s < n; s += every)
            {
                cost[s] += s > start ? Grown(renewal.Usd, s) : 0;
            }
        }

        if (option.Parts.Contains("irfilm"))
        {
            Film(house, option, set, cost, start, filmDue, filmLife);
        }

        var replaces = option.Parts.Contains("condensing");
        if (replaces)
        {
            for (var s = heaterDue; s < n; s += 15)
            {
                cost[s] -= s >= start ? Grown(heater.RenewalUsd, s) : 0;
            }
        }

        var added = option.Parts.Contains("service") ? house.Catalogue.Value(CatalogueKind.Retrofit, "service", "efficiencyAdded") : 0;
        var efficiency = new double[n];
        for (var s = 0; s < n; s++)
        {
            var standing = s >= heaterDue ? heater.NewEfficiency : heater.Efficiency;
            efficiency[s] = s < start ? standing : replaces ? Max(optionEfficiency, standing) : Min(standing + added, Max(standing, 0.97));
        }

        var life = Max(1, costs.LifeYears);
        var used = (n - start) % life;
        var residual = used == 0 ? 0 : Grown(costs.OutlayUsd, n) * (1 - used / life);
        return new(start, cost, efficiency, residual, Pow(1 + set.ReplacementGrowth, start));
    }

    /// <summary>Film that holds heat: its premium at each of its own changes; the plain film it spares.</summary>
    private static void Film(HouseModel house, OptionFacts option, ScenarioSetFacts set, double[] cost, int start, int filmDue, int filmLife)
    {
        var premium = house.Catalogue.Value(CatalogueKind.Retrofit, "irfilm", "premiumPerCover") * house.CoverM2 / 2;
        for (var s = start + filmLife; s < cost.Length; s += filmLife)
        {
            cost[s] += (premium + (option.Timing == OptionTiming.Now ? house.FilmRenewalUsd : 0)) * Pow(1 + set.ReplacementGrowth, s);
        }

        for (var s = filmDue; option.Timing == OptionTiming.Now && s < cost.Length; s += filmLife)
        {
            cost[s] -= house.FilmRenewalUsd * Pow(1 + set.ReplacementGrowth, s);
        }
    }
}
