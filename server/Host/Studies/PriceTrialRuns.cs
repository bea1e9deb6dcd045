using System.Collections.Concurrent;
using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Studies;

/// <summary>One option under other price assumptions, on the houses that a study froze; kept while the program runs.</summary>
/// <param name="reader">Frozen inputs.</param>
public sealed class PriceTrialRuns(PortfolioReader reader)
{
    private const int Kept = 64;
    private readonly ConcurrentDictionary<string, IReadOnlyList<SensitivityEnd>> known = new();

    /// <summary>What the option comes to under each set of assumptions.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="study">A done study.</param>
    /// <param name="prices">Price record of each fuel, as they are now.</param>
    /// <param name="houseId">House.</param>
    /// <param name="key">Option.</param>
    /// <param name="sets">Sets of assumptions.</param>
    /// <param name="cancel">Stops it.</param>
    /// <returns>One end a set; null where the study has no such option, or another version of the numbers made it.</returns>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public IReadOnlyList<SensitivityEnd>? Of(
        Viewer viewer, StudyRow study, IReadOnlyDictionary<FuelKind, PriceSeriesFacts> prices, string houseId, string key, IReadOnlyList<ScenarioSetFacts> sets, CancellationToken cancel)
    {
        if (study.NumbersVersion != StudyRun.NumbersVersion)
        {
            return null;
        }

        var name = $"{study.Id}~{houseId}~{key}~{CanonicalJson.Sha256(CanonicalJson.Write(sets) + CanonicalJson.Write(prices))}";
        if (known.TryGetValue(name, out var found))
        {
            return found;
        }

        var portfolio = reader.Read(viewer, study) with { Prices = prices };
        if (SetTrials.Of(portfolio, houseId, key, sets, Environment.ProcessorCount, cancel) is not { } fresh)
        {
            return null;
        }

        if (known.Count >= Kept)
        {
            known.Clear();
        }

        return known[name] = fresh;
    }
}
