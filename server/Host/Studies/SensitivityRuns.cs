using System.Collections.Concurrent;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage;

namespace FarmPortfolio.Host.Studies;

/// <summary>What moves an option most, reckoned on the inputs that a study froze and kept while the program runs.</summary>
/// <param name="reader">Frozen inputs.</param>
public sealed class SensitivityRuns(PortfolioReader reader)
{
    private const int Kept = 64;
    private readonly ConcurrentDictionary<(string StudyId, string HouseId, string Key), Sensitivity> known = new();

    /// <summary>The bars of an option under a study's inputs.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="study">A done study.</param>
    /// <param name="houseId">House.</param>
    /// <param name="key">Option.</param>
    /// <param name="cancel">Stops it.</param>
    /// <returns>The bars; null where the study has no such option, or another version of the numbers made it.</returns>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public Sensitivity? Of(Viewer viewer, StudyRow study, string houseId, string key, CancellationToken cancel)
    {
        if (study.NumbersVersion != StudyRun.NumbersVersion)
        {
            return null;
        }

        if (known.TryGetValue((study.Id, houseId, key), out var found))
        {
            return found;
        }

        if (Sensitivity.Of(reader.Read(viewer, study), houseId, key, Environment.ProcessorCount, cancel) is not { } fresh)
        {
            return null;
        }

        if (known.Count >= Kept)
        {
            known.Clear();
        }

        return known[(study.Id, houseId, key)] = fresh;
    }
}
