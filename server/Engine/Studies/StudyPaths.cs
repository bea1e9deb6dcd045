using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Engine.Studies;

/// <summary>Reckons the single futures of a study again, bit for bit, where only its figures were kept: distributions are not counted anew.</summary>
public static class StudyPaths
{
    /// <summary>A study's result with its single futures.</summary>
    /// <param name="portfolio">What the study read.</param>
    /// <param name="result">Its result, of this <see cref="StudyRun.NumbersVersion"/>.</param>
    /// <param name="means">Threads, futures already drawn, single futures at hand and room for those reckoned.</param>
    /// <param name="progress">Told how far it is; null = nobody.</param>
    /// <param name="cancel">Stops it within a second.</param>
    /// <returns>The result and the futures it was drawn from; null when a fault stops all.</returns>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static (StudyResult Result, StudyFutures Futures)? Again(Portfolio portfolio, StudyResult result, StudyMeans means, IProgress<StudyProgress>? progress, CancellationToken cancel)
    {
        if (StudyFutures.Of(portfolio).Futures is not { } futures)
        {
            return null;
        }

        futures.WithDrawsOf(means.Futures);
        progress?.Report(new(0.02, "drawing the futures", 0, result.Options.Count));
        var context = new StudyContext(portfolio, futures, futures.Layouts(means.Threads, cancel));
        var units = StudyUnits.Of(portfolio, futures, [], threads: means.Threads);
        var (found, done) = (new IReadOnlyList<OptionPaths>?[units.Count], 0);
        var most = new ParallelOptions { MaxDegreeOfParallelism = means.Threads, CancellationToken = cancel };
        Parallel.For(0, units.Count, most, () => new UnitRun(context, new Workspace(context.Paths, context.Seasons)), (i, _, run) =>
        {
            found[i] = means.Paths?.Find(units[i].Sha256) ?? run.Singles(units[i], means.Paths, cancel);
            var now = Interlocked.Add(ref done, found[i]!.Count);
            progress?.Report(new(0.05 + 0.95 * now / Math.Max(1, result.Options.Count), $"{now} of {result.Options.Count} options", now, result.Options.Count));
            return run;
        }, _ => { });
        var byOption = found.SelectMany(f => f!).ToDictionary(p => (p.HouseId, p.Key), p => p.SavingUsd);
        return (result with { SavingByPath = [.. result.Options.Select(o => byOption[(o.HouseId, o.Key)])] }, futures);
    }
}
