using System.Collections.Concurrent;
using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Engine.Studies;

/// <summary>What an option brings season by season in every single future, bit for bit as the study reckoned it.</summary>
/// <param name="HouseId">House.</param>
/// <param name="Key">Option's key.</param>
/// <param name="StartSeason">Season of the study, from 0, before which it is built.</param>
/// <param name="NetUsd">Net saving, season by season a row of paths, US dollars.</param>
/// <param name="SpentUsd">What of it is running and renewals less renewals spared, by season and the same on every path: net + spent = saving of fuel.</param>
public sealed record SeasonNet(string HouseId, string Key, int StartSeason, double[] NetUsd, double[] SpentUsd);

/// <summary>Nets of some options, and what heating their farms costs as they stand.</summary>
/// <param name="Options">By house and key; an option that the study leaves out is not there.</param>
/// <param name="FarmUsd">Fuel of all houses of a farm as they stand, season by season a row of paths, US dollars; by farm.</param>
public sealed record SeasonNets(IReadOnlyDictionary<(string HouseId, string Key), SeasonNet> Options, IReadOnlyDictionary<string, double[]> FarmUsd);

/// <summary>
/// Reckons the seasons of wanted options again from what a study read. A thread holds one house at a time, so memory grows with the options wanted, not with the
/// houses of the co-op; the units are added in their order, so the bits do not depend on the threads.
/// </summary>
public static class StudySeasons
{
    /// <summary>The seasons of some options and of their farms.</summary>
    /// <param name="portfolio">What the study read.</param>
    /// <param name="futures">Its futures, or the same with something fixed.</param>
    /// <param name="wanted">House and key of the options.</param>
    /// <param name="threads">Threads, 1 or more.</param>
    /// <param name="cancel">Stops it.</param>
    /// <returns>Nets and costs.</returns>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static SeasonNets Of(Portfolio portfolio, StudyFutures futures, IReadOnlySet<(string HouseId, string Key)> wanted, int threads, CancellationToken cancel)
    {
        var farms = wanted.Where(w => portfolio.Houses.ContainsKey(w.HouseId)).Select(w => portfolio.Houses[w.HouseId].FarmId).ToHashSet(StringComparer.Ordinal);
        var houses = portfolio.Houses.Where(h => farms.Contains(h.Value.FarmId)).Select(h => h.Key).ToHashSet(StringComparer.Ordinal);
        var units = StudyUnits.Of(portfolio, futures, [], houses, threads);
        var context = new StudyContext(portfolio, futures, units.Count > 0 ? futures.Layouts(threads, cancel) : []);
        var (nets, costs) = (new ConcurrentDictionary<(string, string), SeasonNet>(), new double[units.Count][]);
        Parallel.For(
            0, units.Count, new ParallelOptions { MaxDegreeOfParallelism = threads, CancellationToken = cancel }, () => new Workspace(context.Paths, context.Seasons), (i, _, work) =>
            {
                costs[i] = Unit(context, units[i], work, wanted, nets, cancel);
                return work;
            },
            _ => { });
        var usd = farms.ToDictionary(f => f, _ => new double[context.Paths * context.Seasons], StringComparer.Ordinal);
        for (var i = 0; i < units.Count; i++)
        {
            Rows.Add(usd[units[i].Houses[0].Model.Facts.FarmId], costs[i]);
        }

        return new(nets, usd);
    }

    /// <summary>Fills the nets of the options wanted; gives what the unit's fuel costs as it stands.</summary>
    private static double[] Unit(
        StudyContext context, StudyUnit unit, Workspace work, IReadOnlySet<(string HouseId, string Key)> wanted, ConcurrentDictionary<(string, string), SeasonNet> nets, CancellationToken cancel)
    {
        var byFuel = new double[]?[FuturesBlock.Fuels];
        double[] Into(FuelKind fuel) => byFuel[(int)fuel] ??= new double[context.Paths * context.Seasons];
        var volumes = GroupVolume.Of(context, unit, work, cancel);
        foreach (var house in unit.Houses)
        {
            cancel.ThrowIfCancellationRequested();
            var heat = new HouseHeat(house, [.. house.Options.Where(o => wanted.Contains((house.Id, o.Key)))]);
            var run = new HouseRun(context, house, heat, work, volumes);
            run.AddStandingCost(Into);
            for (var i = 0; i < heat.Options.Length; i++)
            {
                cancel.ThrowIfCancellationRequested();
                var (terms, money) = run.Option(i);
                nets[(house.Id, terms.Option.Key)] = new(house.Id, terms.Option.Key, terms.Plan.StartSeason, [.. money.Net], Spent(terms.Plan, terms.Moved));
            }
        }

        var cost = new double[context.Paths * context.Seasons];
        foreach (var fuel in byFuel.OfType<double[]>())
        {
            Rows.Add(cost, fuel);
        }

        AddCharges(context, unit, volumes, cost);
        return cost;
    }

    private static double[] Spent(CashPlan plan, SwitchLine? moved) =>
        [.. plan.CostUsd.Select((usd, s) => s < plan.StartSeason ? 0 : usd + (s < plan.EndSeason ? moved?.FeesUsd(s) ?? 0 : 0))];

    /// <summary>Charges that do not depend on the volume come once a tank or meter; a bill of the season whole.</summary>
    private static void AddCharges(StudyContext context, StudyUnit unit, IReadOnlyDictionary<string, GroupVolume> volumes, double[] cost)
    {
        foreach (var supply in unit.Houses.SelectMany(h => h.Supplies).Where(s => s.GroupId is not null).DistinctBy(s => s.GroupId))
        {
            if (volumes.GetValueOrDefault(supply.GroupId!)?.StandingUsd is { } whole)
            {
                Rows.Add(cost, whole);
                continue;
            }

            for (var s = 0; s < context.Seasons; s++)
            {
                var row = cost.AsSpan(s * context.Paths, context.Paths);
                Rows.Line(supply.Terms.FeesUsd(s), 1, row, row);
            }
        }
    }
}
