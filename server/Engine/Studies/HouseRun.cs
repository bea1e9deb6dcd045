using FarmPortfolio.Engine.Economics;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Scenarios;
using static System.Math;

namespace FarmPortfolio.Engine.Studies;

/// <summary>
/// One house through all futures: what its fuel costs as it stands, and the net saving of each option, season by season and path by path.
/// Money of an option stays in the workspace until the next one is asked for.
/// </summary>
internal sealed class HouseRun
{
    private const int TileLanes = 16;
    private readonly StudyContext context;
    private readonly StudyHouse house;
    private readonly Workspace work;
    private readonly IReadOnlyDictionary<string, GroupVolume> volumes;
    private readonly OptionFacts[] options;
    private readonly DemandTable[] tables;
    private readonly OptionModel[] models;
    private readonly int[] months;
    private readonly PathNoise own;
    private readonly PartsAlone alone;
    private readonly SavingByAir air;
    private readonly double[] loss;
    private readonly OwnOrders orders;
    private (int From, int Count) tile;

    /// <summary>Makes the demand tables of a house and prices it as it stands.</summary>
    /// <param name="context">What all houses share.</param>
    /// <param name="house">House.</param>
    /// <param name="options">Options wanted, in order.</param>
    /// <param name="work">Arrays of the thread.</param>
    /// <param name="volumes">Tanks and meters of the unit that settle by the season; null = they are not asked for.</param>
    public HouseRun(StudyContext context, StudyHouse house, IReadOnlyList<OptionFacts> options, Workspace work, IReadOnlyDictionary<string, GroupVolume>? volumes = null)
    {
        (this.context, this.house, this.work) = (context, house, work);
        this.volumes = volumes ?? new Dictionary<string, GroupVolume>();
        var built = options.Select(o => (Option: o, Built: house.Switches.GetValueOrDefault(o.Key)?.Fault is { } wrong ? (Model: (OptionModel?)null, Faults: (IReadOnlyList<Fault>)[wrong]) : OptionModels.Of(house.Model, o))).ToList();
        LeftOut = [.. built.SelectMany(b => b.Built.Faults.Select(f => ($"{house.Id}~{b.Option.Key}", f)))];
        this.options = [.. built.Where(b => b.Built.Model is not null).Select(b => b.Option)];
        models = [OptionModels.AsItStands(house.Model), .. built.Where(b => b.Built.Model is not null).Select(b => b.Built.Model!)];
        tables = DemandTables.Of(models, house.Pool);
        months = CostKernel.HeatedMonths(tables);
        own = new(context.Set);
        alone = new(house);
        loss = Losses();
        orders = new(context, house, own, loss);
        air = new(house, this.options, models, own, orders.Air);
        Price(0);
        Standing();
    }

    /// <summary>Options left out, and why.</summary>
    public IReadOnlyList<(string ItemId, Fault Fault)> LeftOut { get; }

    /// <summary>Options reckoned.</summary>
    public IReadOnlyList<OptionFacts> Options => options;

    /// <summary>Adds the fuel of the house as it stands, by fuel; charges that do not depend on the volume are the unit's and not in it.</summary>
    /// <param name="into">By fuel: season by season a row of paths, US dollars.</param>
    public void AddStandingCost(Func<FuelKind, double[]> into)
    {
        for (var j = 0; j < house.Supplies.Count; j++)
        {
            var (supply, cost) = (house.Supplies[j], work.Cost(j, 0));
            if (!supply.Terms.IsMonthly)
            {
                continue;
            }

            var sum = into(supply.Fuel);
            for (var s = 0; s < context.Seasons; s++)
            {
                var (weight, at) = (supply.Share / StandingEfficiency(supply, s), s * context.Paths);
                Rows.Add(sum.AsSpan(at, context.Paths), weight, cost.AsSpan(at, context.Paths), loss);
            }
        }
    }

    /// <summary>Prices an option: its net saving fills <see cref="Workspace.Net"/>, its outlay <see cref="Workspace.Outlay"/>.</summary>
    /// <param name="number">Number among <see cref="Options"/>.</param>
    /// <returns>What does not depend on the path.</returns>
    public OptionTerms Option(int number)
    {
        var (option, table) = (options[number], tables[number + 1]);
        var costs = OptionCosts.Of(house.Model, house.Farm, option, house.Quotes, context.Set, table.Uses);
        var plan = CashPlan.Of(house.Model, option, costs, context.Set, models[number + 1].Efficiency);
        var factor = new RealisedFactor(house.Model.Catalogue, option, context.Set, alone.KwhOf);
        if (number + 1 >= tile.From + tile.Count)
        {
            Price(number + 1);
        }

        var share = work.PerPath;
        loss.CopyTo(share, 0);
        factor.Multiply(share, work.Factor, context.Shared, own, house.Model.Facts.DrawKey, orders.Saving);
        air.Multiply(share, number);
        var moved = house.Switches.GetValueOrDefault(option.Key);
        var burnt = moved is null ? null : Burnt(models[number + 1], table);
        if (moved?.Line is { Terms.IsMonthly: true } line)
        {
            Run(line, house.Supplies.Count, [burnt!]);
        }

        Net(number + 1 - tile.From, plan, factor, share, moved);
        foreach (var supply in house.Supplies.Where(l => !l.Terms.IsMonthly))
        {
            volumes[supply.GroupId!].AddSaving(supply, TakenOff(supply, moved is not null && supply.HeaterNo == 0 ? null : table, plan, factor, share), work.Net);
        }

        if (moved?.Line is { Terms.IsMonthly: false } settled)
        {
            volumes[settled.GroupId!].AddSaving(settled, Added(settled, burnt!, plan, factor, share), work.Net);
        }

        Outlay(costs, plan);
        return new(option, costs, plan, factor, MeanHeatKwh(tables[0]), MeanHeatKwh(table)) { Switch = moved?.Line, SwitchKwh = moved is null ? 0 : moved.Line!.Share * MeanHeatKwh(burnt!) / plan.Efficiency[plan.StartSeason] };
    }

    /// <summary>Adds the fuel the house uses as it stands on a line, month by month.</summary>
    /// <param name="supply">Line.</param>
    /// <param name="kwh">By path, season and month, kWh.</param>
    public void AddVolume(SupplyLine supply, double[] kwh)
    {
        foreach (var order in context.Orders)
        {
            var block = order.Block;
            for (var cell = 0; cell < block.Winter.Length; cell++)
            {
                var (path, s) = (order.FirstPath + cell / context.Seasons, cell % context.Seasons);
                var weight = supply.Share / StandingEfficiency(supply, s) * loss[path];
                var to = kwh.AsSpan(12 * (path * context.Seasons + s), 12);
                foreach (var m in months)
                {
                    to[m] += weight * tables[0].DemandKwh(block.Winter[cell], m, block.OffsetK[cell]);
                }
            }
        }
    }

    /// <summary>Fills what an option takes off the fuel of a line in a month of a path.</summary>
    private VolumeTaken TakenOff(SupplyLine supply, DemandTable? table, CashPlan plan, RealisedFactor factor, double[] share) => (block, path, s, kwh) =>
    {
        kwh.Clear();
        if (s < plan.StartSeason || s >= plan.EndSeason)
        {
            return;
        }

        var kept = factor.Season(s - plan.StartSeason) * (1 - context.Set.TakeBackShare) * share[block.Replicate * block.Paths + path] * supply.Share;
        var standing = StandingEfficiency(supply, s);
        var with = supply.HeaterNo == 0 ? plan.Efficiency[s] : standing;
        var (winter, offset) = (block.Winter[path * context.Seasons + s], block.OffsetK[path * context.Seasons + s]);
        foreach (var m in months)
        {
            kwh[m] = kept * (tables[0].DemandKwh(winter, m, offset) / standing - (table?.DemandKwh(winter, m, offset) ?? 0) / with);
        }
    };

    /// <summary>Fills what a switch of fuel puts on the line it moves to, as less than nothing taken off.</summary>
    private VolumeTaken Added(SupplyLine line, DemandTable burnt, CashPlan plan, RealisedFactor factor, double[] share) => (block, path, s, kwh) =>
    {
        kwh.Clear();
        if (s < plan.StartSeason || s >= plan.EndSeason)
        {
            return;
        }

        var weight = factor.Season(s - plan.StartSeason) * (1 - context.Set.TakeBackShare) * share[block.Replicate * block.Paths + path] * line.Share / plan.Efficiency[s];
        var (winter, offset) = (block.Winter[path * context.Seasons + s], block.OffsetK[path * context.Seasons + s]);
        foreach (var m in months)
        {
            kwh[m] = -weight * burnt.DemandKwh(winter, m, offset);
        }
    };

    /// <summary>What a heater on another fuel is asked for: heat, or a heat pump's electricity.</summary>
    private DemandTable Burnt(OptionModel model, DemandTable heat) => model.Switch == FuelSwitch.HeatPump
        ? FuelTables.Electricity(heat, house.Pool, FuelTables.InsideC(model.Periods), house.Model.Catalogue.Value(CatalogueKind.Retrofit, FuelSwitch.HeatPump, "copFactor", 1)) : heat;

    private void Net(int lane, CashPlan plan, RealisedFactor factor, double[] share, SwitchLine? moved)
    {
        var (net, standing, paths) = (work.Net, work.Standing, context.Paths);
        for (var s = 0; s < context.Seasons; s++)
        {
            var row = net.AsSpan(s * paths, paths);
            if (s < plan.StartSeason)
            {
                row.Clear();
                continue;
            }

            var kept = s < plan.EndSeason ? factor.Season(s - plan.StartSeason) * (1 - context.Set.TakeBackShare) : 0;
            var spent = plan.CostUsd[s] + (s < plan.EndSeason ? moved?.FeesUsd(s) ?? 0 : 0);
            if (moved is null && house.Supplies is [{ Terms.IsMonthly: true } only])
            {
                var efficiency = only.HeaterNo == 0 ? plan.Efficiency[s] : StandingEfficiency(only, s);
                Rows.Net(standing.AsSpan(s * paths, paths), -(only.Share / efficiency), work.Cost(0, lane).AsSpan(s * paths, paths), share, kept, spent, row);
                continue;
            }

            standing.AsSpan(s * paths, paths).CopyTo(row);
            for (var j = 0; j < house.Supplies.Count; j++)
            {
                var supply = house.Supplies[j];
                if (!supply.Terms.IsMonthly || (moved is not null && supply.HeaterNo == 0))
                {
                    continue;
                }

                var weight = supply.Share / (supply.HeaterNo == 0 ? plan.Efficiency[s] : StandingEfficiency(supply, s));
                Rows.Add(row, -weight, work.Cost(j, lane).AsSpan(s * paths, paths));
            }

            if (moved?.Line is { Terms.IsMonthly: true } line)
            {
                Rows.Add(row, -line.Share / plan.Efficiency[s], work.Cost(house.Supplies.Count, 0).AsSpan(s * paths, paths));
            }

            Rows.Scale(row, share, kept, spent);
        }
    }

    /// <summary>Outlay on each path: lognormal with mean as reckoned, half its variance common to a year's quotes; less what is spared at that moment.</summary>
    private void Outlay(OptionCosts costs, CashPlan plan)
    {
        var (sd, set) = (costs.SpreadSd, context.Set);
        var (common, mine) = (sd * Sqrt(set.CommonShare), sd * Sqrt(1 - set.CommonShare));
        var year = context.Shared.Of(NoisePurpose.OutlayCommon, costs.QuoteYear);
        var house1 = own.Of(NoisePurpose.OutlayOwn, house.Model.Facts.DrawKey, orders.Outlay);
        var outlay = work.Outlay.AsSpan();
        outlay.Clear();
        if (plan.OutlayUsd == 0)
        {
            return;
        }

        Rows.AddTwo(outlay, common, year, mine, house1);
        Rows.Line(-(sd * sd / 2), 1, outlay, outlay);
        Elementary.Exp(outlay);
        Rows.Line(-plan.SparedUsd, plan.OutlayUsd, outlay, outlay);
    }

    /// <summary>Loss multiplier by path: lognormal with the mean and spread of <see cref="StudyHouse.Loss"/>; what the houses of one tank or meter share is one draw for all of them.</summary>
    private double[] Losses()
    {
        var fit = house.Loss;
        var normals = own.Of(NoisePurpose.LossOwn, house.Model.Facts.DrawKey, () => context.ByPrice(house.Fuel));
        if (fit.SharedSd == 0 || fit.SupplyGroupId is null)
        {
            var multiplier = new double[normals.Length];
            Rows.Line(-(fit.Sd * fit.Sd / 2), fit.Sd, normals, multiplier);
            Elementary.Exp(multiplier);
            Rows.Line(0, fit.Mean, multiplier, multiplier);
            return multiplier;
        }

        var group = own.Of(NoisePurpose.LossGroup, Noise.Key(fit.SupplyGroupId), () => context.ByPrice(house.Supplies.First(s => s.GroupId == fit.SupplyGroupId).Fuel));
        return [.. normals.Select((z, p) => fit.Mean * Elementary.Exp(fit.SharedSd * group[p] + fit.OwnSd * z - fit.Sd * fit.Sd / 2))];
    }

    /// <summary>Runs the kernel over a tile of lanes from a table on.</summary>
    private void Price(int from)
    {
        tile = (from, Min(TileLanes, tables.Length - from));
        var lanes = tables.AsSpan(from, tile.Count);
        for (var j = 0; j < house.Supplies.Count; j++)
        {
            if (!house.Supplies[j].Terms.IsMonthly)
            {
                continue;
            }

            Run(house.Supplies[j], j, lanes);
        }
    }

    /// <summary>Runs the kernel on one line.</summary>
    private void Run(SupplyLine supply, int number, ReadOnlySpan<DemandTable> lanes)
    {
        var into = new double[lanes.Length][];
        for (var lane = 0; lane < into.Length; lane++)
        {
            into[lane] = work.Cost(number, lane);
        }

        foreach (var order in context.Orders)
        {
            var index = order.Index(supply.Fuel);
            var paid = work.Paid(index.Length);
            Lay(supply.Terms, order, index, paid);
            CostKernel.Run(lanes, months, order, paid, context.Paths, into);
        }
    }

    /// <summary>Prices paid in the months heated, laid out as the index is.</summary>
    private void Lay(SupplyTerms terms, WinterOrder order, double[] index, double[] paid)
    {
        foreach (var g in order.Groups)
        {
            foreach (var m in months)
            {
                terms.PriceOf(12 * g.Season + m).Pay(index.AsSpan(12 * g.From + m * g.Count, g.Count), paid.AsSpan(12 * g.From + m * g.Count, g.Count));
            }
        }
    }

    private void Standing()
    {
        var paths = context.Paths;
        Array.Clear(work.Standing);
        for (var j = 0; j < house.Supplies.Count; j++)
        {
            for (var s = 0; s < context.Seasons && house.Supplies[j].Terms.IsMonthly; s++)
            {
                var weight = house.Supplies[j].Share / StandingEfficiency(house.Supplies[j], s);
                var cost = work.Cost(j, 0).AsSpan(s * paths, paths);
                Rows.Add(work.Standing.AsSpan(s * paths, paths), weight, cost);
            }
        }
    }

    private double StandingEfficiency(SupplyLine supply, int season) => CashPlan.Standing(house.Model.Heaters[supply.HeaterNo], context.Set.FirstSeason, season);

    private double MeanHeatKwh(DemandTable table)
    {
        var sum = 0.0;
        for (var w = 0; w < table.Winters; w++)
        {
            sum += table.SeasonKwh(w, context.Set.OffsetK) / table.Winters;
        }

        return sum * house.Loss.Mean;
    }
}
