using FarmPortfolio.Engine.Economics;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Scenarios;
using static System.Math;

namespace FarmPortfolio.Engine.Studies;

/// <summary>
/// What does not depend on the path: when the option is built and given up, what it costs each season beside fuel, and the first heater's efficiency.
/// "As it stands" renews its own film and heater when due; what the option spares of that counts for it, and what falls due at the very moment it is built
/// comes off its outlay: an option at renewal costs its premium. Nominal.
/// </summary>
internal sealed record CashPlan
{
    private const double BestEfficiency = 0.97;

    /// <summary>Season before which it is built, from 0.</summary>
    public required int StartSeason { get; init; }

    /// <summary>First season without it; the horizon's length where it is renewed.</summary>
    public required int EndSeason { get; init; }

    /// <summary>Whether it stands in a season.</summary>
    /// <param name="season">Season.</param>
    public bool Runs(int season) => season >= StartSeason && season < EndSeason;

    /// <summary>Running and renewals less what is spared, by season.</summary>
    public required double[] CostUsd { get; init; }

    /// <summary>Of that the running alone, by season.</summary>
    public required double[] RunningUsd { get; init; }

    /// <summary>Seasonal efficiency of the first heater with the option, by season.</summary>
    public required double[] Efficiency { get; init; }

    /// <summary>Outlay in dollars of the season it is paid, before what is spared.</summary>
    public required double OutlayUsd { get; init; }

    /// <summary>What the house would have spent at that moment anyway.</summary>
    public required double SparedUsd { get; init; }

    /// <summary>Renewals of the house's own that the option spares after it is built, by season.</summary>
    public required double[] SparedBySeason { get; init; }

    /// <summary>Straight-line worth of what is not yet worn at the horizon's end.</summary>
    public required double ResidualUsd { get; init; }

    /// <summary>Outlay less what is spared: what payback is measured against.</summary>
    public double PremiumUsd => OutlayUsd - SparedUsd;

    /// <summary>The plan of an option on a house.</summary>
    /// <param name="house">House.</param>
    /// <param name="option">Option.</param>
    /// <param name="costs">Its costs.</param>
    /// <param name="set">Assumptions.</param>
    /// <param name="optionEfficiency">Seasonal efficiency of the first heater with the option.</param>
    /// <returns>The plan.</returns>
    public static CashPlan Of(HouseModel house, OptionFacts option, OptionCosts costs, ScenarioSetFacts set, double optionEfficiency)
    {
        var n = set.SeasonCount;
        var due = new Dues(house, set.FirstSeason);
        var start = Min(n - 1, option.Timing switch { OptionTiming.AtFilmChange => due.Film, OptionTiming.AtHeaterChange => due.Heater, _ => 0 });
        var life = Max(1, (int)Round(costs.LifeYears));
        var end = costs.Renewed || costs.LifeYears <= 0 ? n : Min(n, start + life);
        var (cost, running) = (new double[n], new double[n]);
        double Grown(double usd, int season) => usd * Pow(1 + set.ReplacementGrowth, season);
        for (var s = start; s < end; s++)
        {
            cost[s] = running[s] = costs.RunningUsd * Pow(1 + set.UpkeepGrowth, s);
        }

        foreach (var renewal in costs.Renewals)
        {
            var every = renewal.WithFilm ? due.FilmLife : Max(1, (int)Round(renewal.EveryYears));
            var whole = renewal.WholeYears is { } years ? Max(1, (int)Round(years)) : int.MaxValue;
            for (var s = renewal.WithFilm ? due.Film : start + every; s < end; s += every)
            {
                cost[s] += s > start && (s - start) % whole != 0 ? Grown(renewal.Usd, s) : 0;
            }
        }

        var spared = new double[n];
        FilmSpared(house, option, due, start, spared, cost, Grown);
        var replaces = option.Parts.Contains("condensing") || (FuelSwitch.Of(option.Parts) is { } code && house.Catalogue.Value(CatalogueKind.Retrofit, code, "keepsOld") == 0);
        for (var s = due.Heater; replaces && s < end; s += due.HeaterLife)
        {
            spared[s] += s >= start ? Grown(house.Heaters[0].RenewalUsd, s) : 0;
        }

        var outlay = Grown(costs.OutlayUsd, start);
        var atOnce = Min(spared[start], outlay);
        spared[start] -= atOnce;
        var used = (n - start) % Max(1, costs.LifeYears);
        return new()
        {
            StartSeason = start,
            EndSeason = end,
            CostUsd = [.. cost.Zip(spared, (c, s) => c - s)],
            RunningUsd = running,
            Efficiency = Efficiencies(house, option, due, n, start, end, optionEfficiency),
            OutlayUsd = outlay,
            SparedUsd = atOnce,
            SparedBySeason = spared,
            ResidualUsd = end < n || used == 0 ? 0 : Grown(costs.OutlayUsd, n) * (1 - used / Max(1, costs.LifeYears)),
        };
    }

    /// <summary>Seasonal efficiency of a heater as the house stands: its own until it is due, a standard new one after.</summary>
    /// <param name="heater">Heater.</param>
    /// <param name="firstSeason">Year of the July of season 0.</param>
    /// <param name="season">Season.</param>
    /// <returns>Efficiency.</returns>
    public static double Standing(HeaterModel heater, int firstSeason, int season) => firstSeason + season >= heater.DueYear ? heater.NewEfficiency : heater.Efficiency;

    private static double[] Efficiencies(HouseModel house, OptionFacts option, Dues due, int seasons, int start, int end, double optionEfficiency)
    {
        var added = option.Parts.Contains("service") ? house.Catalogue.Value(CatalogueKind.Retrofit, "service", "efficiencyAdded") : 0;
        var efficiency = new double[seasons];
        for (var s = 0; s < seasons; s++)
        {
            var standing = s >= due.Heater ? house.Heaters[0].NewEfficiency : house.Heaters[0].Efficiency;
            efficiency[s] = s < start || s >= end ? standing : FuelSwitch.Of(option.Parts) is not null ? optionEfficiency : option.Parts.Contains("condensing") ? Max(optionEfficiency, standing) : Min(standing + added, Max(standing, BestEfficiency));
        }

        return efficiency;
    }

    /// <summary>Film that holds heat: its premium at each of its own changes; the plain film it spares.</summary>
    private static void FilmSpared(HouseModel house, OptionFacts option, Dues due, int start, double[] spared, double[] cost, Func<double, int, double> grown)
    {
        if (!option.Parts.Contains("irfilm"))
        {
            return;
        }

        var premium = house.Catalogue.Value(CatalogueKind.Retrofit, "irfilm", "premiumPerCover") * house.CoverM2;
        for (var s = start + due.FilmLife; s < cost.Length; s += due.FilmLife)
        {
            cost[s] += grown(premium + (option.Timing == OptionTiming.Now ? house.FilmRenewalUsd : 0), s);
        }

        for (var s = due.Film; option.Timing == OptionTiming.Now && s < cost.Length; s += due.FilmLife)
        {
            spared[s] += grown(house.FilmRenewalUsd, s);
        }
    }

    /// <summary>Seasons in which film and heater are renewed anyway.</summary>
    private readonly record struct Dues
    {
        public Dues(HouseModel house, int firstSeason)
        {
            Film = Max(0, house.FilmDueYear - firstSeason);
            FilmLife = Max(1, (int)Round(house.FilmLifeYears));
            Heater = Max(0, house.Heaters[0].DueYear - firstSeason);
            var code = house.Facts.Heaters.Count > 0 ? house.Facts.Heaters[0].HeaterCode : "power";
            HeaterLife = Max(1, (int)Round(house.Catalogue.Value(CatalogueKind.Heater, code, "lifeYears", 15)));
        }

        public int Film { get; }

        public int FilmLife { get; }

        public int Heater { get; }

        public int HeaterLife { get; }
    }
}
