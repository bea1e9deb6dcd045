using FarmPortfolio.Engine.Economics;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Scenarios;
using static System.Math;

namespace FarmPortfolio.Engine.Studies;

/// <summary>
/// One house through all futures: what its fuel costs as it stands, and the net saving of each option, season by season and path by path.
/// Options are priced a tile at a time; the money of a tile stays in the workspace until an option of the next is asked for.
/// </summary>
internal sealed class HouseRun
{
    private readonly StudyContext context;
    private readonly StudyHouse house;
    private readonly Workspace work;
    private readonly IReadOnlyDictionary<string, GroupVolume> volumes;
    private readonly HouseHeat heat;
    private readonly PathNoise own;
    private readonly double[] air;
    private readonly double[] loss;
    private readonly OwnOrders orders;
    private (int From, OptionTerms[] Terms) tile;

    /// <summary>Makes a house ready.</summary>
    /// <param name="context">What all houses share.</param>
    /// <param name="house">House.</param>
    /// <param name="heat">Its heat, and that of the options wanted.</param>
    /// <param name="work">Arrays of the thread.</param>
    /// <param name="volumes">Tanks and meters of the unit that settle by the season; null = they are not asked for.</param>
    public HouseRun(StudyContext context, StudyHouse house, HouseHeat heat, Workspace work, IReadOnlyDictionary<string, GroupVolume>? volumes = null)
    {
        (this.context, this.house, this.heat, this.work) = (context, house, heat, work);
        this.volumes = volumes ?? new Dictionary<string, GroupVolume>();
        own = new(context.Set);
        loss = Losses();
        orders = new(context, house, own, loss);
        air = heat.Air.Factor(house, own, orders.Air);
    }

    /// <summary>Adds the fuel of the house as it stands, by fuel; charges that do not depend on the volume are the unit's and not in it.</summary>
    /// <param name="into">By fuel: season by season a row of paths, US dollars.</param>
    public void AddStandingCost(Func<FuelKind, double[]> into) => Price(0, into);

    /// <summary>Prices an option.</summary>
    /// <param name="number">Number among <see cref="HouseHeat.Options"/>.</param>
    /// <returns>What does not depend on the path, and its money, good until an option of another tile is asked for.</returns>
    public (OptionTerms Terms, OptionMoney Money) Option(int number)
    {
        if (tile.Terms is null || number < tile.From || number >= tile.From + tile.Terms.Length)
        {
            Price(number, null);
        }

        var (place, terms) = (number - tile.From, tile.Terms![number - tile.From]);
        var (money, settled) = (work.Option(place), false);
        foreach (var supply in house.Supplies.Where(l => !l.Terms.IsMonthly))
        {
            volumes[supply.GroupId!].AddSaving(supply, TakenOff(supply, terms, money.Share), money.Net);
            settled = true;
        }

        if (terms.Switch is { Terms.IsMonthly: false } line)
        {
            volumes[line.GroupId!].AddSaving(line, Added(line, terms, money.Share), money.Net);
            settled = true;
        }

        if (settled)
        {
            money.Payback.Count(money.Net, terms.Plan.StartSeason, context.Seasons, money.Outlay, context.Set.DiscountRate);
        }

        return (terms, money);
    }

    /// <summary>Adds the fuel the house uses as it stands on a line, month by month.</summary>
    /// <param name="supply">Line.</param>
    /// <param name="kwh">By path, season and month, kWh.</param>
    public void AddVolume(SupplyLine supply, double[] kwh)
    {
        foreach (var layout in context.Layouts)
        {
            var block = layout.Block;
            for (var cell = 0; cell < block.Winter.Length; cell++)
            {
                var (path, s) = (layout.FirstPath + cell / context.Seasons, cell % context.Seasons);
                var weight = supply.Share / house.StandingEfficiency(supply, s) * loss[path];
                var to = kwh.AsSpan(12 * (path * context.Seasons + s), 12);
                foreach (var m in heat.Months)
                {
                    to[m] += weight * heat.Tables[0].DemandKwh(block.Winter[cell], m, block.OffsetK[cell]);
                }
            }
        }
    }

    /// <summary>Fills what an option takes off the fuel of a line in a month of a path.</summary>
    private VolumeTaken TakenOff(SupplyLine supply, OptionTerms option, double[] share) => (block, path, s, kwh) =>
    {
        kwh.Clear();
        if (!option.Plan.Runs(s))
        {
            return;
        }

        var kept = option.Kept(context.Set, s) * share[block.Replicate * block.Paths + path] * supply.Share;
        var (standing, with) = (house.StandingEfficiency(supply, s), option.EfficiencyOf(house, supply, s));
        var (winter, offset) = (block.Winter[path * context.Seasons + s], block.OffsetK[path * context.Seasons + s]);
        var table = option.Moved is not null && supply.HeaterNo == 0 ? null : option.Table;
        foreach (var m in heat.Months)
        {
            kwh[m] = kept * (heat.Tables[0].DemandKwh(winter, m, offset) / standing - (table?.DemandKwh(winter, m, offset) ?? 0) / with);
        }
    };

    /// <summary>Fills what a switch of fuel puts on the line it moves to, as less than nothing taken off.</summary>
    private VolumeTaken Added(SupplyLine line, OptionTerms option, double[] share) => (block, path, s, kwh) =>
    {
        kwh.Clear();
        if (!option.Plan.Runs(s))
        {
            return;
        }

        var weight = option.Kept(context.Set, s) * share[block.Replicate * block.Paths + path] * line.Share / option.Plan.Efficiency[s];
        var (winter, offset) = (block.Winter[path * context.Seasons + s], block.OffsetK[path * context.Seasons + s]);
        foreach (var m in heat.Months)
        {
            kwh[m] = -weight * option.Burnt!.DemandKwh(winter, m, offset);
        }
    };

    /// <summary>What a heater on another fuel is asked for: heat, or a heat pump's electricity.</summary>
    private DemandTable Burnt(OptionModel model, DemandTable table) => model.Switch == FuelSwitch.HeatPump
        ? FuelTables.Electricity(table, house.Pool, FuelTables.InsideC(model.Periods), house.Model.Catalogue.Value(CatalogueKind.Retrofit, FuelSwitch.HeatPump, "copFactor", 1)) : table;

    /// <summary>Prices a tile of options, and the house as it stands beside them.</summary>
    private void Price(int from, Func<FuelKind, double[]>? costInto)
    {
        var terms = new OptionTerms[Min(OptionTile.Most, heat.Options.Length - from)];
        for (var i = 0; i < terms.Length; i++)
        {
            terms[i] = Terms(from + i, work.Option(i));
        }

        tile = (from, terms);
        new OptionTile(context, house, work, terms, loss).Price(heat.Tables[0], heat.Months, costInto);
    }

    /// <summary>What of an option does not depend on the path; fills its share and outlay.</summary>
    private OptionTerms Terms(int number, OptionMoney money)
    {
        var (option, table, model) = (heat.Options[number], heat.Tables[number + 1], heat.Models[number + 1]);
        var costs = OptionCosts.Of(house.Model, house.Farm, option, house.Quotes, context.Set, table.Uses);
        var plan = CashPlan.Of(house.Model, option, costs, context.Set, model.Efficiency);
        var factor = new RealisedFactor(house.Model.Catalogue, option, context.Set, heat.Alone.KwhOf);
        loss.CopyTo(money.Share, 0);
        factor.Multiply(money.Share, work.PerPath, context.Shared, own, house.Model.Facts.DrawKey, orders.Saving);
        heat.Air.Multiply(money.Share, air, number);
        Outlay(costs, plan, money.Outlay);
        var terms = new OptionTerms(option, costs, plan, factor, table, MeanHeatKwh(heat.Tables[0]), MeanHeatKwh(table));
        if (house.Switches.GetValueOrDefault(option.Key) is not { Line: { } line } moved)
        {
            return terms;
        }

        var burnt = Burnt(model, table);
        return terms with { Moved = moved, Burnt = burnt, SwitchKwh = line.Share * MeanHeatKwh(burnt) / plan.Efficiency[plan.StartSeason] };
    }

    /// <summary>Outlay on each path: lognormal with mean as reckoned, half its variance common to a year's quotes; less what is spared at that moment.</summary>
    private void Outlay(OptionCosts costs, CashPlan plan, Span<double> outlay)
    {
        var (sd, set) = (costs.SpreadSd, context.Set);
        var (common, mine) = (sd * Sqrt(set.CommonShare), sd * Sqrt(1 - set.CommonShare));
        var year = context.Shared.Of(NoisePurpose.OutlayCommon, costs.QuoteYear);
        var house1 = own.Of(NoisePurpose.OutlayOwn, house.Model.Facts.DrawKey, orders.Outlay);
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
