using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Lending;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage;

namespace FarmPortfolio.Host.Studies;

/// <summary>An option's seasons on every path, with the fuel of its farm.</summary>
/// <param name="Net">Seasons of the option.</param>
/// <param name="FarmUsd">Fuel of the whole farm as it stands, season by season a row of paths.</param>
/// <param name="Set">Assumptions of the futures.</param>
/// <param name="LoadShare">Share of a winter's heat by month, July first.</param>
/// <param name="MeanUsdPerKwh">Mean index of the house's fuel by season of the study.</param>
public sealed record OptionSeasons(SeasonNet Net, double[] FarmUsd, ScenarioSetFacts Set, IReadOnlyList<double> LoadShare, IReadOnlyList<double> MeanUsdPerKwh);

/// <summary>
/// Seasons of options reckoned again on the inputs that a study froze, bit for bit the study's, or under a stress of fuel; those used last are kept at hand up to a
/// bound, so that terms can be changed and answered at once.
/// </summary>
/// <param name="reader">Frozen inputs.</param>
/// <param name="jobs">Futures drawn last.</param>
public sealed class LendingRuns(PortfolioReader reader, StudyJobs jobs)
{
    private const long MostBytes = 256L << 20;
    private readonly Lock gate = new();
    private readonly Dictionary<(string StudyId, StressKind Kind, int First, string HouseId, string Key), OptionSeasons> known = [];
    private (string StudyId, Portfolio Portfolio, StudyFutures Futures)? read;

    /// <summary>The seasons of some options.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="study">A done study.</param>
    /// <param name="kind">As drawn, cheap and mild, or dear and hard.</param>
    /// <param name="firstSeason">Season of the study in which such a stress begins.</param>
    /// <param name="wanted">House and key of the options.</param>
    /// <param name="cancel">Stops it.</param>
    /// <returns>By house and key; empty where another version of the numbers made the study, so that it can be read but not reckoned again.</returns>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public IReadOnlyDictionary<(string HouseId, string Key), OptionSeasons> Of(
        Viewer viewer, StudyRow study, StressKind kind, int firstSeason, IReadOnlyCollection<(string HouseId, string Key)> wanted, CancellationToken cancel)
    {
        if (study.NumbersVersion != StudyRun.NumbersVersion)
        {
            return new Dictionary<(string, string), OptionSeasons>();
        }

        lock (gate)
        {
            var first = kind == StressKind.AsDrawn ? 0 : firstSeason;
            var missing = wanted.Where(w => !known.ContainsKey((study.Id, kind, first, w.HouseId, w.Key))).ToHashSet();
            var fresh = missing.Count > 0 ? Reckon(viewer, study, kind, first, missing, cancel) : [];
            var found = wanted.Distinct().Select(w => (w, Seasons: fresh.GetValueOrDefault(w) ?? known.GetValueOrDefault((study.Id, kind, first, w.HouseId, w.Key)))).Where(f => f.Seasons is not null).ToDictionary(f => f.w, f => f.Seasons!);
            Keep(study.Id, kind, first, fresh);
            return found;
        }
    }

    private Dictionary<(string HouseId, string Key), OptionSeasons> Reckon(Viewer viewer, StudyRow study, StressKind kind, int firstSeason, HashSet<(string HouseId, string Key)> wanted, CancellationToken cancel)
    {
        if (read?.StudyId != study.Id)
        {
            var frozen = reader.Read(viewer, study);
            var (own, faults) = StudyFutures.Of(frozen);
            read = (study.Id, frozen, own is null ? throw new InvalidOperationException(faults[0].Message) : own.WithDrawsOf(jobs.Drawn));
        }

        var (portfolio, futures) = LoanFutures.Of(read.Value.Portfolio, read.Value.Futures, kind, firstSeason);
        var nets = StudySeasons.Of(portfolio, futures, wanted, Environment.ProcessorCount, cancel);
        var prices = new Dictionary<FuelKind, IReadOnlyList<double>>();
        IReadOnlyList<double> Price(string houseId)
        {
            var house = portfolio.Houses[houseId];
            var fuel = house.Supplies.Count > 0 && portfolio.SupplyGroups.TryGetValue(house.Supplies[0].SupplyGroupId, out var group) ? group.Fuel : house.Heaters.Count > 0 ? house.Heaters[0].Fuel : FuelKind.Propane;
            return prices.TryGetValue(fuel, out var mean) ? mean : prices[fuel] = LoanFutures.MeanUsdPerKwh(futures, fuel, Environment.ProcessorCount, cancel);
        }

        return nets.Options.ToDictionary(o => o.Key, o => new OptionSeasons(o.Value, nets.FarmUsd[portfolio.Houses[o.Key.HouseId].FarmId], portfolio.Set, futures.Spec.LoadShare, Price(o.Key.HouseId)));
    }

    /// <summary>Keeps what was reckoned; where it would be too much, what was there goes first.</summary>
    private void Keep(string studyId, StressKind kind, int first, Dictionary<(string HouseId, string Key), OptionSeasons> fresh)
    {
        static long Bytes(OptionSeasons s) => 8L * (s.Net.NetUsd.Length + s.FarmUsd.Length);
        var size = fresh.Values.Sum(Bytes);
        if (size > MostBytes)
        {
            return;
        }

        if (size + known.Values.Sum(Bytes) > MostBytes)
        {
            known.Clear();
        }

        foreach (var (option, seasons) in fresh)
        {
            known[(studyId, kind, first, option.HouseId, option.Key)] = seasons;
        }
    }
}
