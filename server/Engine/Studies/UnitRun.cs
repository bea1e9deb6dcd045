using FarmPortfolio.Engine.Economics;
using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Engine.Studies;

/// <summary>Reckons one unit.</summary>
/// <param name="context">What all houses share.</param>
/// <param name="work">Arrays of the thread.</param>
internal sealed class UnitRun(StudyContext context, Workspace work)
{
    private readonly double[]?[] cost = new double[]?[FuturesBlock.Fuels];

    /// <summary>Heat of a house with all its options; reckoned anew unless somebody has it at hand.</summary>
    public Func<StudyHouse, HouseHeat> HeatOf { get; init; } = house => new(house, house.Options);

    /// <summary>Reckons a unit whole and adds what its fuel costs.</summary>
    /// <param name="unit">Unit.</param>
    /// <param name="sums">Takes its cost.</param>
    /// <param name="paths">Takes the single futures; null = they are not kept.</param>
    /// <param name="optionDone">Told after each option.</param>
    /// <param name="cancel">Stops it within an option's time.</param>
    /// <returns>The result.</returns>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public UnitResult Whole(StudyUnit unit, StudySums sums, PathStore? paths, Action optionDone, CancellationToken cancel)
    {
        var (options, left, singles) = (new List<OptionResult>(), new List<(string, Fault)>(), new List<OptionPaths>());
        Clear();
        var volumes = GroupVolume.Of(context, unit, work, cancel);
        foreach (var house in unit.Houses)
        {
            cancel.ThrowIfCancellationRequested();
            var heat = HeatOf(house);
            var run = new HouseRun(context, house, heat, work, volumes);
            run.AddStandingCost(Into);
            left.AddRange(heat.LeftOut);
            for (var i = 0; i < heat.Options.Length; i++)
            {
                cancel.ThrowIfCancellationRequested();
                var (terms, money) = run.Option(i);
                options.Add(OptionSummary.Of(context, house, terms, money, work));
                if (paths is not null)
                {
                    singles.Add(OptionPaths.Of(house.Id, terms.Option.Key, money.Payback, context.Seasons));
                }

                optionDone();
            }
        }

        Settle(unit, volumes, sums, 1);
        paths?.Keep(unit.Sha256, singles);
        return new(unit.Sha256, [.. unit.Houses.Select(h => h.Id)], options, left) { FirstSeasonUsd = FirstSeason(unit) };
    }

    /// <summary>The single futures of a unit's options alone.</summary>
    /// <param name="unit">Unit.</param>
    /// <param name="store">Takes them; null = they are not kept.</param>
    /// <param name="cancel">Stops it within an option's time.</param>
    /// <returns>In the order of houses and options.</returns>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public IReadOnlyList<OptionPaths> Singles(StudyUnit unit, PathStore? store, CancellationToken cancel)
    {
        var singles = new List<OptionPaths>();
        var volumes = GroupVolume.Of(context, unit, work, cancel);
        foreach (var house in unit.Houses)
        {
            var heat = HeatOf(house);
            var run = new HouseRun(context, house, heat, work, volumes);
            for (var i = 0; i < heat.Options.Length; i++)
            {
                cancel.ThrowIfCancellationRequested();
                var (terms, money) = run.Option(i);
                singles.Add(OptionPaths.Of(house.Id, terms.Option.Key, money.Payback, context.Seasons));
            }
        }

        store?.Keep(unit.Sha256, singles);
        return singles;
    }

    /// <summary>Adds or takes away what a unit's fuel costs as it stands.</summary>
    /// <param name="unit">Unit.</param>
    /// <param name="sums">Takes its cost.</param>
    /// <param name="sign">1 = add, -1 = take away.</param>
    /// <param name="cancel">Stops it within a house's time.</param>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public void CostOnly(StudyUnit unit, StudySums sums, int sign, CancellationToken cancel)
    {
        Clear();
        foreach (var house in unit.Houses)
        {
            cancel.ThrowIfCancellationRequested();
            new HouseRun(context, house, new(house, []), work).AddStandingCost(Into);
        }

        Settle(unit, GroupVolume.Of(context, unit, work, cancel), sums, sign);
    }

    private Distribution FirstSeason(StudyUnit unit)
    {
        var row = new double[context.Paths];
        foreach (var fuel in unit.Houses.SelectMany(h => h.Supplies).Select(s => s.Fuel).Distinct())
        {
            var usd = Into(fuel);
            for (var p = 0; p < row.Length; p++)
            {
                row[p] += usd[p];
            }
        }

        return Distribution.Of(row, context.Replicates, worstIsHigh: true);
    }

    private double[] Into(FuelKind fuel) => cost[(int)fuel] ??= new double[context.Paths * context.Seasons];

    private void Clear()
    {
        foreach (var sum in cost)
        {
            sum.AsSpan().Clear();
        }
    }

    /// <summary>Charges that do not depend on the volume come once a tank or meter; then each cell is rounded once.</summary>
    private void Settle(StudyUnit unit, IReadOnlyDictionary<string, GroupVolume> volumes, StudySums sums, int sign)
    {
        foreach (var supply in unit.Houses.SelectMany(h => h.Supplies).Where(s => s.GroupId is not null).DistinctBy(s => s.GroupId))
        {
            var (cost, whole) = (Into(supply.Fuel), volumes.GetValueOrDefault(supply.GroupId!)?.StandingUsd);
            for (var s = 0; s < context.Seasons; s++)
            {
                var (at, paths) = (s * context.Paths, context.Paths);
                if (whole is null)
                {
                    Rows.Line(supply.Terms.FeesUsd(s), 1, cost.AsSpan(at, paths), cost.AsSpan(at, paths));
                }
                else
                {
                    Rows.Add(cost.AsSpan(at, paths), whole.AsSpan(at, paths));
                }
            }
        }

        foreach (var fuel in unit.Houses.SelectMany(h => h.Supplies).Select(s => s.Fuel).Distinct())
        {
            sums.Add(fuel, Into(fuel), sign);
        }
    }
}
