using FarmPortfolio.Engine.Economics;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Exposure;

/// <summary>Puts the exposure of some houses together.</summary>
internal sealed class ExposureWork
{
    private const double CapOverMiddle = 1.15;
    private readonly Portfolio portfolio;
    private readonly FuturesSpec spec;
    private readonly IReadOnlyList<FuturesBlock> blocks;
    private readonly List<StudyHouse> houses;
    private readonly IReadOnlyList<NamedContract> contracts;
    private readonly int season;
    private readonly List<(string, Fault)> left;
    private readonly Dictionary<string, DemandTable> standing;
    private readonly List<Group> groups;

    public ExposureWork(
        Portfolio portfolio, FuturesSpec spec, IReadOnlyList<FuturesBlock> blocks, List<StudyHouse> houses, IReadOnlyList<NamedContract> contracts, int season, List<(string, Fault)> left)
    {
        (this.portfolio, this.spec, this.blocks, this.houses, this.contracts, this.season, this.left) = (portfolio, spec, blocks, houses, contracts, season, left);
        standing = houses.ToDictionary(h => h.Id, h => DemandTables.Of(OptionModels.AsItStands(h.Model), h.Pool), StringComparer.Ordinal);
        groups = [.. houses.SelectMany(h => h.Supplies.Select(s => (h, s))).GroupBy(x => x.s.GroupId ?? $"none~{x.s.Fuel}").OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => Make(g.Key, [.. g]))];
    }

    public FarmExposure Do()
    {
        var heat = SameHeat.Of(blocks, [.. houses.Select(h => (standing[h.Id], h.Loss.Mean))], season + 1);
        var each = groups.Select(g => Cost(g, g.Terms, Fuel(g, null))).ToList();
        var own = Whole(each, "own", "as it is bought now");
        var (ways, fair) = Ways(heat, own, each);
        return new()
        {
            HeatKwh = Distribution.Of([.. Enumerable.Range(0, heat.Paths).Select(p => heat.SeasonKwh(p, season))], blocks.Count, worstIsHigh: true),
            Own = own,
            Worst = WorstSeasons.Of(own, heat, season),
            Ways = ways,
            Options = [.. houses.SelectMany(h => h.Options.Select(o => o.Key)).Distinct().Order(StringComparer.Ordinal).Select(k => Option(k, own)).OfType<TailCut>().OrderByDescending(t => t.TailOffUsd)],
            FairFixedUsdPerUnit = fair,
            LeftOut = left,
        };
    }

    private (List<OtherWay> Ways, double Fair) Ways(SameHeat heat, WayCost own, List<WayCost> each)
    {
        var ways = new List<OtherWay>();
        void Add(WayCost cost, bool reckoned, double heaterUsd = 0) => ways.Add(new(
            cost, reckoned, Distribution.Of([.. own.Usd.Zip(cost.Usd, (a, b) => a - b)], blocks.Count), FairTerms.BreakEvenUsdPerUnit(cost, own), heaterUsd));
        for (var i = 0; i < groups.Count; i++)
        {
            var g = groups[i];
            foreach (var offer in contracts.Where(c => c.Facts.SupplyGroupId == g.Id && c.Facts.Standing == ContractStanding.Offered))
            {
                if (Terms([offer.Facts], g, offer.Id) is { } terms)
                {
                    Add(Whole([.. each.Select((c, j) => j == i ? Cost(g, terms, Fuel(g, null)) : c)], offer.Id, offer.Name), false);
                }
            }
        }

        var first = groups[0];
        var index = Cost(first, FairTerms.Terms(null, first.Fuel, spec), Fuel(first, null));
        var fair = FairTerms.FixedUsdPerUnit(index);
        if (groups.Count == 1)
        {
            var fuel = Fuel(first, null);
            Add(Cost(first, FairTerms.Terms(null, first.Fuel, spec), fuel, "index", "on the monthly index"), true);
            var unit = new ContractFacts { SupplyGroupId = first.Id, Kind = ContractKind.Fixed, Unit = first.Unit, PriceUsdPerUnit = fair };
            Add(Cost(first, FairTerms.Terms(unit, first.Fuel, spec), fuel, "fixed", $"fixed at the index's own mean, ${fair:0.00} a {first.Unit}"), true);
            var cap = CapOverMiddle * index.Cost.P50 / index.Units;
            var capped = FairTerms.Terms(unit with { Kind = ContractKind.Capped, CapUsdPerUnit = cap }, first.Fuel, spec);
            var fee = FairTerms.SeasonFeeUsd(index, Cost(first, capped, fuel));
            Add(Cost(first, FairTerms.Terms(unit with { Kind = ContractKind.Capped, CapUsdPerUnit = cap, SeasonFeeUsd = fee }, first.Fuel, spec), fuel, "capped", $"capped at ${cap:0.00} a {first.Unit} for its fair fee, ${fee:#,0} a season"), true);
        }

        foreach (var (code, fuel, name) in new[]
        {
            ("power", FuelKind.NaturalGas, "natural gas"), ("power", FuelKind.Propane, "propane"), ("oilfurnace", FuelKind.FuelOil, "No. 2 oil"), ("resistance", FuelKind.Electricity, "electricity, resistance"),
            ("heatpump", FuelKind.Electricity, "electricity, heat pump"), ("pellet", FuelKind.WoodPellets, "wood pellets"),
        })
        {
            if (groups.Any(g => g.Fuel == fuel) && code != "heatpump")
            {
                continue;
            }

            var way = new HeatWay($"{fuel}-{code}", $"{name}, on its index", fuel, FairTerms.Terms(null, fuel, spec), code == "heatpump" ? HeatPumps() : HeatWay.At(portfolio.Catalogue.Value(CatalogueKind.Heater, code, "seasonalEfficiency")), HeatingValues.UnitsOf(fuel)[0]) { Heating = spec.Set.HeatingValues() };
            Add(WayCost.Of(blocks, heat, way, season), true, HeaterUsd(code));
        }

        return (ways, fair);
    }

    /// <summary>A heater of the design load of each house, or of the one that stands there.</summary>
    private double HeaterUsd(string code) => houses.Sum(h =>
    {
        var outputKw = h.Model.Heaters.Sum(x => x.OutputKw is > 0 and < 1e6 ? x.OutputKw : 60);
        return outputKw / portfolio.Catalogue.Value(CatalogueKind.Heater, code, "seasonalEfficiency") * portfolio.Catalogue.Value(CatalogueKind.Heater, code, "renewalUsdPerKw");
    });

    private List<double[]> HeatPumps()
    {
        var house = houses[0];
        var inside = house.Model.Periods.Count > 0 ? house.Model.Periods.Average(p => p.NightC) : 15;
        return [.. house.Pool.Select(w => HeatPump.ElectricityPerHeat(w, inside))];
    }

    /// <summary>One option on every house that has it, at the mean of its realised factor less what is taken back as warmth, as if it were built.</summary>
    private TailCut? Option(string key, WayCost own)
    {
        var tables = new Dictionary<string, (DemandTable Table, double Mean, double Efficiency)>(StringComparer.Ordinal);
        var yearly = 0.0;
        foreach (var house in houses)
        {
            // a switch of fuel is shown among the ways to meet the same heat
            if (house.Options.FirstOrDefault(o => o.Key == key) is not { } option || Retrofits.FuelSwitch.Of(option.Parts) is not null || OptionModels.Of(house.Model, option).Model is not { } model)
            {
                continue;
            }

            var table = DemandTables.Of(model, house.Pool);
            var costs = OptionCosts.Of(house.Model, house.Farm, option, house.Quotes, spec.Set, table.Uses);
            var life = Math.Max(1, costs.LifeYears);
            var rate = spec.Set.DiscountRate;

            // what the house would have renewed at that moment anyway is no cost of the option; running is in dollars of the season asked, as its prices are
            var outlay = CashPlan.Of(house.Model, option, costs, spec.Set, model.Efficiency).PremiumUsd;
            yearly += costs.RunningUsd * Math.Pow(1 + spec.Set.UpkeepGrowth, season) + outlay * (Math.Abs(rate) < 1e-9 ? 1 / life : rate / (1 - Math.Pow(1 + rate, -life)));
            var realised = new RealisedFactor(house.Model.Catalogue, option, spec.Set, new PartsAlone(house).KwhOf).Mean;
            tables[house.Id] = (table, realised * (1 - spec.Set.TakeBackShare), model.Efficiency);
        }

        if (tables.Count == 0)
        {
            return null;
        }

        var with = Whole([.. groups.Select(g => Cost(g, g.Terms, Fuel(g, tables)))], key, key);
        var saved = own.Units - with.Units;
        return new(key, tables.Count, with.Cost, own.Cost.Mean - with.Cost.Mean, own.Cost.P95 - with.Cost.P95, yearly, FairTerms.RetrofitUsdPerUnit(yearly, saved));
    }

    private WayCost Whole(List<WayCost> parts, string key, string name) => WayCost.Together(parts, parts[0].Way with { Key = key, Name = name }, blocks.Count);

    private WayCost Cost(Group g, SupplyTerms terms, SameHeat fuel, string key = "own", string name = "") =>
        WayCost.Of(blocks, fuel, new(key, name, g.Fuel, terms, HeatWay.At(1), g.Unit, g.StandBy) { Heating = spec.Set.HeatingValues(), OwnPrices = OwnPriceNoise.Of(spec.Set, terms.Scatter) }, season);

    /// <summary>Fuel of a tank or meter, kWh: heat of its houses over the efficiency of the heaters it feeds.</summary>
    private SameHeat Fuel(Group g, Dictionary<string, (DemandTable Table, double Mean, double Efficiency)>? with)
    {
        var parts = new List<(DemandTable, double)>();
        foreach (var (house, supply) in g.Lines)
        {
            var efficiency = CashPlan.Standing(house.Model.Heaters[supply.HeaterNo], spec.Set.FirstSeason, season);
            var factor = house.Loss.Mean * supply.Share / efficiency;
            if (with is not null && with.TryGetValue(house.Id, out var option))
            {
                var better = supply.HeaterNo == 0 ? Math.Max(option.Efficiency, efficiency) : efficiency;
                parts.Add((standing[house.Id], factor * (1 - option.Mean)));
                parts.Add((option.Table, factor * option.Mean * efficiency / better));
            }
            else
            {
                parts.Add((standing[house.Id], factor));
            }
        }

        return SameHeat.Of(blocks, parts, season + 1);
    }

    private Group Make(string id, List<(StudyHouse House, SupplyLine Supply)> lines)
    {
        var facts = portfolio.SupplyGroups.GetValueOrDefault(id);
        var g = new Group(id, lines[0].Supply.Fuel, facts?.StandByFuel, lines, HeatingValues.UnitsOf(lines[0].Supply.Fuel)[0], null!);
        var mine = contracts.Where(c => c.Facts.SupplyGroupId == id && c.Facts.Standing == ContractStanding.InForce).Select(c => c.Facts).ToList();
        return g with { Terms = Terms(mine, g, id) ?? FairTerms.Terms(null, g.Fuel, spec) };
    }

    private SupplyTerms? Terms(IReadOnlyList<ContractFacts> mine, Group g, string id)
    {
        var (terms, faults) = SupplyTerms.Of(mine, next => contracts.FirstOrDefault(c => c.Id == next)?.Facts, g.Fuel, g.StandBy, spec.Set.FirstSeason, spec.Set.SeasonCount, spec.Set.DiscountRate, basisOf: c => portfolio.BasisOf(c, g.Fuel), values: spec.Set.HeatingValues());
        left.AddRange(faults.Select(f => (id, f)));
        return terms;
    }

    private sealed record Group(string Id, FuelKind Fuel, FuelKind? StandBy, List<(StudyHouse House, SupplyLine Supply)> Lines, string Unit, SupplyTerms Terms);
}
