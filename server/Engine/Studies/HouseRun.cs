using FarmPortfolio.Engine.Economics;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Units;
using FarmPortfolio.Engine.Weather;
using static System.Math;

namespace FarmPortfolio.Engine.Studies;

/// <summary>One house through all futures: what it costs as it stands, and what each option saves.</summary>
internal sealed class HouseRun
{
    private readonly Portfolio portfolio;
    private readonly string houseId;
    private readonly HouseFacts facts;
    private readonly HouseModel house;
    private readonly FarmFacts farm;
    private readonly IReadOnlyList<WeatherYear> pool;
    private readonly DemandTable standing;
    private readonly Dictionary<string, (OptionModel? Model, DemandTable? Table, IReadOnlyList<Fault> Faults)> options;
    private readonly ScenarioSetFacts set;
    private double[] standingKwh = [];
    private double[] paidUsdPerKwh = [];

    public HouseRun(Portfolio portfolio, string houseId, HouseModel house, IReadOnlyList<WeatherYear> pool, IReadOnlyList<OptionFacts> wanted)
    {
        (this.portfolio, this.houseId, this.house, this.pool) = (portfolio, houseId, house, pool);
        (facts, set) = (house.Facts, portfolio.Set);
        farm = portfolio.Farms[facts.FarmId];
        var models = wanted.Select(o => OptionModels.Of(house, o)).ToArray();
        var tables = DemandTables.Of([OptionModels.AsItStands(house), .. models.Where(m => m.Model is not null).Select(m => m.Model!)], pool);
        standing = tables[0];
        (options, var next) = ([], 1);
        for (var i = 0; i < wanted.Count; i++)
        {
            options[wanted[i].Key] = (models[i].Model, models[i].Model is null ? null : tables[next++], models[i].Faults);
        }

        var supply = facts.Supplies.Count > 0 ? facts.Supplies[0].SupplyGroupId : null;
        Grade = facts.Supplies.Any(s => portfolio.FuelRecords.TryGetValue(s.SupplyGroupId, out var r) && r.Entries.Any(e => e.Held is null)) ? DataGrade.B : DataGrade.C;
        Contract = supply is not null ? portfolio.Contracts.GetValueOrDefault(supply) : null;
        Fuel = house.Heaters[0].Fuel;
    }

    public DataGrade Grade { get; }

    public ContractFacts? Contract { get; }

    public FuelKind Fuel { get; }

    private double BaseEfficiency(int season) =>
        set.FirstSeason + season >= house.Heaters[0].DueYear ? house.Heaters[0].NewEfficiency : house.Heaters[0].Efficiency;

    /// <summary>Loss multiplier of the house on a path, mean 1: B 15 %, C 30 %; common practice, no source.</summary>
    private double LossMultiplier(int path)
    {
        var sd = portfolio.Catalogue.Default(Grade == DataGrade.C ? "gradeCSd" : "gradeBSd");
        return Exp(sd * Noise.Normal(set.Seed, NoisePurpose.LossOwn, facts.DrawKey, path, 0) - sd * sd / 2);
    }

    /// <summary>Fuel of the house as it stands, by path over all replicates and season, US dollars.</summary>
    public double[] StandingCost(IReadOnlyList<FuturesBlock> futures)
    {
        var cost = new double[futures.Sum(b => b.Paths) * set.SeasonCount];
        (standingKwh, paidUsdPerKwh) = (new double[12 * cost.Length], new double[12 * cost.Length]);
        var pay = new PaidPrice(Contract, Fuel, set.FirstSeason);
        var at = 0;
        foreach (var block in futures)
        {
            var prices = block.Price(Fuel);
            for (var path = 0; path < block.Paths; path++)
            {
                var multiplier = LossMultiplier(block.Replicate * block.Paths + path);
                for (var s = 0; s < block.Seasons; s++, at++)
                {
                    var i = path * block.Seasons + s;
                    var sum = 0.0;
                    for (var m = 0; m < 12; m++)
                    {
                        standingKwh[12 * at + m] = standing.DemandKwh(block.Winter[i], m, block.OffsetK[i]);
                        paidUsdPerKwh[12 * at + m] = pay.UsdPerKwh(prices[12 * i + m], s, m);
                        sum += standingKwh[12 * at + m] * paidUsdPerKwh[12 * at + m];
                    }

                    cost[at] = sum * multiplier / BaseEfficiency(s) + pay.SeasonFeesUsd;
                }
            }
        }

        return cost;
    }

    /// <summary>One option through all futures; after <see cref="StandingCost"/>.</summary>
    public (OptionResult? Result, float[]? SavingByPath, IReadOnlyList<Fault> Faults) Option(OptionFacts option, IReadOnlyList<FuturesBlock> futures)
    {
        var (model, table, faults) = options[option.Key];
        if (model is null || table is null)
        {
            return (null, null, faults);
        }

        var quotes = portfolio.Quotes.GetValueOrDefault(facts.FarmId) ?? [];
        var costs = OptionCosts.Of(house, farm, option, quotes, set, table.NightsInUse, table.HeatedDays, table.Uses.LightLostShare);
        var plan = CashPlan.Of(house, option, costs, set, model.Efficiency);
        var factor = new RealisedFactor(house, option, pool, set);
        var flows = new OptionFlows(futures.Sum(b => b.Paths), set.SeasonCount, set.ReplicateCount);
        var at = 0;
        Span<double> net = stackalloc double[set.SeasonCount];
        foreach (var block in futures)
        {
            for (var path = 0; path < block.Paths; path++)
            {
                var number = block.Replicate * block.Paths + path;
                var multiplier = LossMultiplier(number);
                var realised = factor.OnPath(number, facts.DrawKey);
                for (var s = 0; s < block.Seasons; s++, at += 12)
                {
                    var i = path * block.Seasons + s;
                    var (baseShare, optionShare) = (1 / BaseEfficiency(s), 1 / plan.Efficiency[s]);
                    var saved = 0.0;
                    if (s >= plan.StartSeason)
                    {
                        for (var m = 0; m < 12; m++)
                        {
                            var (w, o) = (block.Winter[i], block.OffsetK[i]);
                            saved += (standingKwh[at + m] * baseShare - table.DemandKwh(w, m, o) * optionShare) * paidUsdPerKwh[at + m];
                        }
                    }

                    net[s] = saved * multiplier * realised * factor.Season(s - plan.StartSeason) * (1 - set.TakeBackShare) - plan.CostUsd[s];
                }

                flows.Add(number, net, plan, OutlayOn(number, costs), set.DiscountRate);
            }
        }

        var (baseHeat, heat) = (MeanSeason(standing), MeanSeason(table));
        var fuelSaved = (baseHeat / BaseEfficiency(plan.StartSeason) - heat / plan.Efficiency[plan.StartSeason]) * factor.Mean;
        var result = flows.Result(houseId, option.Key, Fuel, Grade, plan, costs, baseHeat, (baseHeat - heat) * factor.Mean, factor.Mean, fuelSaved, fuelSaved * HeatingValues.Co2KgPerKwh(Fuel));
        return (result, flows.SavingByPath, []);
    }

    private double OutlayOn(int path, OptionCosts costs)
    {
        var sd = costs.SpreadSd;
        var z = Sqrt(set.CommonShare) * Noise.Normal(set.Seed, NoisePurpose.OutlayCommon, costs.QuoteYear, path, 0) +
            Sqrt(1 - set.CommonShare) * Noise.Normal(set.Seed, NoisePurpose.OutlayOwn, facts.DrawKey, path, 0);
        return costs.OutlayUsd * Exp(sd * z - sd * sd / 2);
    }

    private double MeanSeason(DemandTable table)
    {
        var sum = 0.0;
        for (var w = 0; w < pool.Count; w++)
        {
            sum += table.SeasonKwh(w, set.OffsetK) / pool.Count;
        }

        return sum;
    }
}
