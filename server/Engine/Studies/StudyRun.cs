using FarmPortfolio.Engine.Economics;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.Studies;

/// <summary>Runs a study. The result does not depend on the number of threads: each house is reckoned by itself and sums are whole micro-dollars.</summary>
public static class StudyRun
{
    /// <summary>Raised by any change that can move a bit of a result.</summary>
    public const int NumbersVersion = 1;

    private const double Micro = 1e6;

    /// <summary>Runs a study over a portfolio.</summary>
    /// <param name="portfolio">All it reads.</param>
    /// <param name="threads">Threads, 1 or more.</param>
    /// <param name="progress">Told how far it is; null = nobody.</param>
    /// <param name="cancel">Stops it within a house's time.</param>
    /// <returns>The result, null when a fault stops all, and the faults.</returns>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static (StudyResult? Result, IReadOnlyList<Fault> Faults) Run(Portfolio portfolio, int threads, IProgress<StudyProgress>? progress, CancellationToken cancel)
    {
        var set = portfolio.Set;
        var left = new List<(string, Fault)>();
        progress?.Report(new(0, "reading the winters", 0, 0));
        var used = portfolio.Houses.Values.Select(h => portfolio.Farms[h.FarmId].WeatherStationId).OfType<string>().Distinct().Order(StringComparer.Ordinal)
            .Where(portfolio.Stations.ContainsKey).ToList();
        var shared = used.Count == 0 ? [] : used.Select(id => portfolio.Stations[id].Years.Keys.AsEnumerable()).Aggregate((a, b) => a.Intersect(b)).Order().ToList();
        var pool = set.WinterPool.Count > 0 ? [.. set.WinterPool.Order()] : shared;
        var complete = used.Where(id => pool.All(portfolio.Stations[id].Years.ContainsKey)).ToHashSet(StringComparer.Ordinal);
        var means = pool.Select(season => MonthMeans(complete.Order(StringComparer.Ordinal).Select(id => portfolio.Stations[id].Years[season]))).ToList();
        var (spec, specFaults) = FuturesSpec.Of(set, portfolio.Prices, pool, means);
        if (spec is null)
        {
            return (null, specFaults);
        }

        var futures = new Futures(spec);
        var blocks = new FuturesBlock[set.ReplicateCount];
        var options = new ParallelOptions { MaxDegreeOfParallelism = threads, CancellationToken = cancel };
        progress?.Report(new(0.02, "drawing the futures", 0, 0));
        Parallel.For(0, blocks.Length, options, r => blocks[r] = futures.Draw(r));
        var houses = new List<(string Id, HouseModel Model)>();
        foreach (var (id, facts) in portfolio.Houses.OrderBy(h => h.Key, StringComparer.Ordinal))
        {
            var fuel = facts.Supplies.Count > 0 && portfolio.SupplyGroups.TryGetValue(facts.Supplies[0].SupplyGroupId, out var group) ? group.Fuel : FuelKind.Propane;
            var (model, faults) = HouseModels.Of(facts, portfolio.Catalogue, new(set.CarryOver, set.PurgeVolumesPerDay, set.LossLevel), set.FirstSeason, fuel);
            var contract = facts.Supplies.Count > 0 ? portfolio.Contracts.GetValueOrDefault(facts.Supplies[0].SupplyGroupId) : null;
            if (contract is not null && contract.Kind is not (ContractKind.Indexed or ContractKind.Fixed))
            {
                faults = [.. faults, new("CONTRACT_KIND", "contract", $"A {contract.Kind} contract cannot be priced yet.", "Enter it as indexed or fixed; other kinds are refused rather than guessed.")];
            }

            if (portfolio.Farms[facts.FarmId].WeatherStationId is not { } station || !complete.Contains(station))
            {
                faults = [.. faults, new("NO_WINTERS", "weatherStationId", "The farm's station lacks a winter of the pool.", "Choose a station whose record covers the pool, or import what is missing.")];
            }

            left.AddRange(faults.Select(f => (id, f)));
            if (model is not null && faults.Count == 0)
            {
                houses.Add((id, model with { HouseId = id }));
            }
        }

        return (RunHouses(portfolio, houses, pool, blocks, left, spec, options, progress), []);
    }

    private static StudyResult RunHouses(
        Portfolio portfolio, List<(string Id, HouseModel Model)> houses, IReadOnlyList<int> pool, FuturesBlock[] blocks, List<(string, Fault)> left,
        FuturesSpec spec, ParallelOptions parallel, IProgress<StudyProgress>? progress)
    {
        var set = portfolio.Set;
        var cells = set.ReplicateCount * set.PathCount * set.SeasonCount;
        var sums = Enumerable.Range(0, Correlation.Fuels).Select(_ => new long[cells]).ToArray();
        var results = new List<(OptionResult Result, float[] ByPath)>[houses.Count];
        var faults = new List<(string, Fault)>[houses.Count];
        var total = houses.Sum(h => portfolio.Options.GetValueOrDefault(h.Id)?.Count ?? 0);
        var done = 0;
        var gate = new Lock();
        Parallel.For(0, houses.Count, parallel, i =>
        {
            var (id, model) = houses[i];
            var years = portfolio.Stations[portfolio.Farms[model.Facts.FarmId].WeatherStationId!].Years;
            var wanted = portfolio.Options.GetValueOrDefault(id) ?? [];
            var run = new HouseRun(portfolio, id, model, [.. pool.Select(season => years[season])], wanted);
            var cost = run.StandingCost(blocks);
            var sum = sums[(int)run.Fuel];
            lock (gate)
            {
                for (var c = 0; c < cells; c++)
                {
                    sum[c] += (long)Math.Round(cost[c] * Micro);
                }
            }

            (results[i], faults[i]) = ([], []);
            foreach (var option in wanted)
            {
                parallel.CancellationToken.ThrowIfCancellationRequested();
                var (result, byPath, optionFaults) = run.Option(option, blocks);
                faults[i].AddRange(optionFaults.Select(f => ($"{id}~{option.Key}", f)));
                if (result is not null)
                {
                    results[i].Add((result, byPath!));
                }

                var now = Interlocked.Increment(ref done);
                progress?.Report(new(0.05 + 0.9 * now / Math.Max(1, total), $"{model.Facts.Shape} house {i + 1} of {houses.Count}", now, total));
            }
        });
        left.AddRange(faults.SelectMany(f => f));
        var all = new double[cells];
        for (var c = 0; c < cells; c++)
        {
            all[c] = (sums[0][c] + sums[1][c] + sums[2][c] + sums[3][c]) / Micro;
        }

        double[] Season(Func<int, double> cell, int s) => [.. Enumerable.Range(0, cells / set.SeasonCount).Select(p => cell(p * set.SeasonCount + s))];
        var byHouse = houses.ToDictionary(h => h.Id, h => h.Model.Heaters[0].Fuel);
        return new()
        {
            Options = [.. results.SelectMany(r => r.Select(x => x.Result))],
            SavingByPath = [.. results.SelectMany(r => r.Select(x => x.ByPath))],
            LeftOut = left,
            CostBySeason = [.. Enumerable.Range(0, set.SeasonCount).Select(s => Distribution.Of(Season(c => all[c], s), set.ReplicateCount, worstIsHigh: true))],
            CostByFuel = [.. byHouse.Values.Distinct().Order().Select(f => (f, Distribution.Of(Season(c => sums[(int)f][c] / Micro, 0), set.ReplicateCount, worstIsHigh: true), byHouse.Values.Count(x => x == f)))],
            OnePath = MiddlePath(all, set.SeasonCount),
            FirstSeason = set.FirstSeason,
            Replicates = set.ReplicateCount,
            Futures = set.ReplicateCount * set.PathCount,
            Houses = houses.Count,
            FloorM2 = houses.Sum(h => h.Model.Geometry.FloorM2),
            FuturesSha256 = spec.Sha256(),
        };
    }

    /// <summary>The single future whose sum over the horizon is the middle one: an example that is neither calm nor wild.</summary>
    private static double[] MiddlePath(double[] all, int seasons)
    {
        double Total(int path)
        {
            var sum = 0.0;
            for (var s = 0; s < seasons; s++)
            {
                sum += all[path * seasons + s];
            }

            return sum;
        }

        var paths = all.Length / seasons;
        var middle = Enumerable.Range(0, paths).OrderBy(Total).ThenBy(p => p).ElementAt(paths / 2);
        return all[(middle * seasons)..((middle + 1) * seasons)];
    }

    private static double[] MonthMeans(IEnumerable<WeatherYear> years)
    {
        var (sums, count) = (new double[12], 0);
        foreach (var year in years)
        {
            count++;
            for (var m = 0; m < 12; m++)
            {
                var sum = 0.0;
                for (var h = year.MonthStart[m]; h < year.MonthStart[m + 1]; h++)
                {
                    sum += year.TempC[h];
                }

                sums[m] += sum / (year.MonthStart[m + 1] - year.MonthStart[m]);
            }
        }

        return [.. sums.Select(s => s / Math.Max(1, count))];
    }
}
