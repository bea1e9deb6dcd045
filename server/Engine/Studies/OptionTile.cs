using FarmPortfolio.Engine.HeatDemand;

namespace FarmPortfolio.Engine.Studies;

/// <summary>
/// Some options of a house and the house as it stands, a lane each, through all futures: a stretch of paths is priced, netted and paid back through all seasons
/// before the next, so that what it needs stays in the second-level cache.
/// </summary>
/// <param name="context">What all houses share.</param>
/// <param name="house">House.</param>
/// <param name="work">Arrays of the thread; holds the options' money afterwards, their shares and outlays before.</param>
/// <param name="options">What of the options does not depend on the path.</param>
/// <param name="loss">Loss multiplier by path.</param>
internal sealed class OptionTile(StudyContext context, StudyHouse house, Workspace work, IReadOnlyList<OptionTerms> options, double[] loss)
{
    /// <summary>Options a tile at most: three vectors of four with the house as it stands.</summary>
    public const int Most = 11;

    private const int Stretch = CostKernel.Stretch;

    /// <summary>Prices all of it.</summary>
    /// <param name="standing">Table of the house as it stands.</param>
    /// <param name="months">Months heated.</param>
    /// <param name="costInto">Takes the fuel of the house as it stands, by fuel season by season a row of paths; null = it is not wanted.</param>
    public void Price(DemandTable standing, int[] months, Func<FuelKind, double[]>? costInto)
    {
        var tables = new LaneTables([standing, .. options.Select(o => o.Table)], months);
        var lines = house.Supplies.Where(s => s.Terms.IsMonthly).Select((s, j) => new PricedLine(s, tables, new(s.Terms, months, context.Seasons), work.Costs(j, tables.Lanes))).ToArray();
        var moved = new PricedLine?[options.Count];
        for (var o = 0; o < moved.Length; o++)
        {
            if (options[o].Switch is { Terms.IsMonthly: true } line)
            {
                var burnt = new LaneTables([options[o].Burnt!], months);
                moved[o] = new(line, burnt, new(line.Terms, months, context.Seasons), work.Costs(lines.Length + o, burnt.Lanes));
            }
        }

        var nets = options.Select((o, i) => new NetSeasons(context, house, o, lines, moved[i])).ToArray();
        foreach (var layout in context.Layouts)
        {
            for (var from = 0; from < layout.Paths; from += Stretch)
            {
                var (count, first) = (Math.Min(Stretch, layout.Paths - from), layout.FirstPath + from);
                foreach (var line in lines.Concat(moved.OfType<PricedLine>()))
                {
                    line.Run(layout, from, count, work);
                }

                Standing(lines, first, count, costInto);
                for (var o = 0; o < nets.Length; o++)
                {
                    nets[o].Run(o + 1, work.Standing, work.Option(o), first, count);
                }
            }
        }
    }

    /// <summary>Cost as the house stands at a loss multiplier of 1, kept for the options; with the multiplier added to the sums asked for.</summary>
    private void Standing(PricedLine[] lines, int first, int count, Func<FuelKind, double[]>? costInto)
    {
        Array.Clear(work.Standing);
        foreach (var line in lines)
        {
            var sum = costInto?.Invoke(line.Supply.Fuel);
            for (var s = 0; s < context.Seasons; s++)
            {
                var weight = line.Supply.Share / house.StandingEfficiency(line.Supply, s);
                var cost = line.Row(0, s, context.Seasons, count);
                Rows.Add(work.Standing.AsSpan(s * Stretch, count), weight, cost);
                if (sum is not null)
                {
                    Rows.Add(sum.AsSpan(s * context.Paths + first, count), weight, cost, loss.AsSpan(first, count));
                }
            }
        }
    }
}

/// <summary>A line with a month's prices, its lanes, and what they cost in the stretch at hand.</summary>
/// <param name="Supply">Line.</param>
/// <param name="Tables">Lanes.</param>
/// <param name="Prices">What it pays.</param>
/// <param name="Costs">By lane, season by season a row of a stretch.</param>
internal sealed record PricedLine(SupplyLine Supply, LaneTables Tables, PaidPrices Prices, double[] Costs)
{
    /// <summary>Prices a stretch.</summary>
    public void Run(ReplicateLayout layout, int from, int count, Workspace work) =>
        CostKernel.Run(Tables, Prices, layout.Index(Supply.Fuel), layout.Block, from, count, work.Paid(4 * Prices.Length), Costs);

    /// <summary>A lane's costs of a season.</summary>
    public Span<double> Row(int lane, int season, int seasons, int count) => Costs.AsSpan((lane * seasons + season) * CostKernel.Stretch, count);
}
