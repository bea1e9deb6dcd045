using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.HeatDemand.Calibration;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.Studies;

/// <summary>One way a house is fed.</summary>
/// <param name="GroupId">Tank or meter; null = none told.</param>
/// <param name="Fuel">Its fuel.</param>
/// <param name="HeaterNo">Heater it feeds.</param>
/// <param name="Share">Share of the house's heat, 0 to 1.</param>
/// <param name="Terms">What is paid.</param>
/// <param name="StandBy">Fuel that takes over when the supply is cut; null = none.</param>
internal sealed record SupplyLine(string? GroupId, FuelKind Fuel, int HeaterNo, double Share, SupplyTerms Terms, FuelKind? StandBy = null);

/// <summary>A house ready for a study.</summary>
/// <param name="Id">House.</param>
/// <param name="Model">Its model.</param>
/// <param name="Farm">Its farm.</param>
/// <param name="Pool">Winters it meets.</param>
/// <param name="Supplies">How it is fed, at least one line, shares summing to 1.</param>
/// <param name="Loss">How well its heat is known.</param>
/// <param name="Options">Options wanted, beside "as it stands".</param>
/// <param name="Quotes">Quotes of its farm.</param>
internal sealed record StudyHouse(
    string Id, HouseModel Model, FarmFacts Farm, IReadOnlyList<WeatherYear> Pool, IReadOnlyList<SupplyLine> Supplies, LossFit Loss,
    IReadOnlyList<OptionFacts> Options, IReadOnlyList<QuoteFacts> Quotes)
{
    /// <summary>Line that each option with a switch of fuel moves the first heater to, by key of the option; or why it cannot.</summary>
    public IReadOnlyDictionary<string, SwitchLine> Switches { get; init; } = new Dictionary<string, SwitchLine>();

    /// <summary>Fuel of the first line.</summary>
    public FuelKind Fuel => Supplies[0].Fuel;

    /// <summary>How well its heat is known.</summary>
    public DataGrade Grade => Loss.Grade;

    /// <summary>Year of the July of season 0.</summary>
    public required int FirstSeason { get; init; }

    /// <summary>Seasonal efficiency of the heater on a line as the house stands.</summary>
    /// <param name="supply">Line.</param>
    /// <param name="season">Season.</param>
    /// <returns>Efficiency.</returns>
    public double StandingEfficiency(SupplyLine supply, int season) => CashPlan.Standing(Model.Heaters[supply.HeaterNo], FirstSeason, season);

    /// <summary>The pool's winter of middling degree days (base 15 C).</summary>
    public WeatherYear Middling { get; } = Pool.OrderBy(y => y.DegreeDaysK(15)).ThenBy(y => y.Season).ElementAt(Pool.Count / 2);

    /// <summary>Makes a house ready, or says why it cannot be.</summary>
    /// <param name="portfolio">All that the study reads.</param>
    /// <param name="id">House.</param>
    /// <param name="futures">Futures with the pool of winters.</param>
    /// <param name="priceFactor">Factor on every price, 1 = as drawn.</param>
    /// <returns>The house, null when a fault stops it, and the faults.</returns>
    public static (StudyHouse? House, IReadOnlyList<Fault> Faults) Of(Portfolio portfolio, string id, StudyFutures futures, double priceFactor = 1)
    {
        var (facts, set) = (portfolio.Houses[id], portfolio.Set);
        if (!portfolio.Farms.TryGetValue(facts.FarmId, out var farm))
        {
            return (null, [new("NO_FARM", "farmId", "The house stands on no farm of this co-op.", "Choose its farm.")]);
        }

        var group = facts.Supplies.Count > 0 ? portfolio.SupplyGroups.GetValueOrDefault(facts.Supplies[0].SupplyGroupId) : null;
        var (model, modelFaults) = HouseModels.Of(facts, portfolio.Catalogue, set.Heat(), set.FirstSeason, group?.Fuel ?? FuelKind.Propane);
        var faults = new List<Fault>(modelFaults);
        if (farm.WeatherStationId is not { } station || futures.Years(station) is not { } pool)
        {
            pool = [];
            faults.Add(new("NO_WINTERS", "weatherStationId", "The farm's station lacks a winter of the pool.", "Choose a station whose record covers the pool, or import what is missing."));
        }

        if (model is not null && SetPointChecks.Of(model.Periods, pool) is { } cold)
        {
            faults.Add(cold);
        }

        var supplies = model is null ? [] : Feed(portfolio, facts, model, priceFactor, faults);
        return faults.Count > 0 || model is null
            ? (null, faults)
            : (new(id, model with { HouseId = id }, farm, pool, supplies, LossOf(portfolio, id, facts), portfolio.Options.GetValueOrDefault(id) ?? [], portfolio.Quotes.GetValueOrDefault(facts.FarmId) ?? []) { FirstSeason = set.FirstSeason, Switches = SwitchLine.Of(portfolio, facts, supplies, portfolio.Options.GetValueOrDefault(id) ?? [], priceFactor) }, []);
    }

    /// <summary>What the bills say, or the spread of a record not fitted (B) or none (C); common practice, no source.</summary>
    private static LossFit LossOf(Portfolio portfolio, string id, HouseFacts facts)
    {
        if (portfolio.LossFits.TryGetValue(id, out var fit))
        {
            return fit;
        }

        var recorded = facts.Supplies.Any(s => portfolio.FuelRecords.TryGetValue(s.SupplyGroupId, out var r) && r.Entries.Any(e => e.Held is null));
        return new(1, 0, portfolio.Catalogue.Default(recorded ? "gradeBSd" : "gradeCSd"), recorded ? DataGrade.B : DataGrade.C) { AirSdLn = portfolio.Catalogue.Default("airChangesSdLn") };
    }

    private static List<SupplyLine> Feed(Portfolio portfolio, HouseFacts facts, HouseModel model, double priceFactor, List<Fault> faults)
    {
        var (lines, set) = (new List<SupplyLine>(), portfolio.Set);
        foreach (var supply in facts.Supplies)
        {
            if (!portfolio.SupplyGroups.TryGetValue(supply.SupplyGroupId, out var group))
            {
                faults.Add(new("NO_SUPPLY", "supplies", "The house hangs on a tank or meter that is not there.", "Choose a tank or meter of its farm."));
            }
            else if (supply.HeaterNo < 0 || supply.HeaterNo >= model.Heaters.Count)
            {
                faults.Add(new("NO_HEATER", "supplies", $"A tank or meter feeds heater {supply.HeaterNo + 1}, and the house has {model.Heaters.Count}.", "Choose a heater of the house."));
            }
            else if (model.Heaters[supply.HeaterNo].Fuel != group.Fuel)
            {
                faults.Add(new("FUEL_MISMATCH", "supplies", $"Heater {supply.HeaterNo + 1} burns {model.Heaters[supply.HeaterNo].Fuel} and its tank or meter gives {group.Fuel}.", "Change the heater's fuel or its tank or meter."));
            }
            else if (SupplyTerms.Of(portfolio.InForce(supply.SupplyGroupId), portfolio.Contract, group.Fuel, group.StandByFuel, set.FirstSeason, set.SeasonCount, set.DiscountRate, priceFactor, c => portfolio.BasisOf(c, group.Fuel), set.HeatingValues()) is var (terms, wrong) && terms is not null)
            {
                lines.Add(new(supply.SupplyGroupId, group.Fuel, supply.HeaterNo, supply.Share, terms, group.StandByFuel));
            }
            else
            {
                faults.AddRange(wrong);
            }
        }

        if (facts.Supplies.Count == 0)
        {
            lines.Add(new(null, model.Heaters[0].Fuel, 0, 1, SupplyTerms.Of([], null, model.Heaters[0].Fuel, null, set.FirstSeason, set.SeasonCount, factor: priceFactor, values: set.HeatingValues()).Terms!));
        }

        if (faults.Count == 0 && Math.Abs(lines.Sum(l => l.Share) - 1) > 1e-6)
        {
            faults.Add(new("SHARES", "supplies", $"The shares of the house's tanks and meters add up to {lines.Sum(l => l.Share):0.###}.", "Make them add up to 1."));
        }

        return lines;
    }
}
