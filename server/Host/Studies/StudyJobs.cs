using System.Collections.Concurrent;
using System.Diagnostics;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage;

namespace FarmPortfolio.Host.Studies;

/// <summary>Runs studies in the queue, tells how far they are, and keeps the newest results at hand.</summary>
/// <param name="studies">Studies.</param>
/// <param name="units">Results of units between studies.</param>
/// <param name="reader">Inputs.</param>
/// <param name="queue">Queue of long work.</param>
/// <param name="log">Log.</param>
public sealed partial class StudyJobs(StudyStore studies, UnitStore units, PortfolioReader reader, LongRuns queue, ILogger<StudyJobs> log) : IHostedService
{
    private const long MostBytesOfSingles = 512L << 20;
    private readonly ConcurrentDictionary<string, StudyResult> results = new();
    private readonly ConcurrentDictionary<string, StudyProgress> again = new();
    private readonly Lock drawing = new();
    private readonly PathStore singles = new(MostBytesOfSingles);
    private StudyFutures? drawn;

    /// <summary>Version of the program.</summary>
    public static string ProgramVersion { get; } = typeof(StudyJobs).Assembly.GetName().Version?.ToString(3) ?? "0";

    /// <summary>The futures drawn last; null = none yet.</summary>
    internal StudyFutures? Drawn => drawn;

    /// <summary>Asks for a study of a co-op as it holds now.</summary>
    /// <param name="viewer">Who.</param>
    /// <param name="coopId">Co-op.</param>
    /// <returns>The study, and whether an equal one was there.</returns>
    public (StudyRow Study, bool SameAs) Start(Viewer viewer, string coopId)
    {
        var (study, same) = studies.Add(viewer, coopId, ProgramVersion);
        if (!same)
        {
            Queue(study.Id);
        }

        return (study, same);
    }

    /// <summary>Cancels a study that waits or runs.</summary>
    /// <param name="viewer">Who.</param>
    /// <param name="id">Study.</param>
    public void Cancel(Viewer viewer, string id)
    {
        queue.Cancel(id);
        studies.Move(viewer, id, "cancelled");
    }

    /// <summary>How far a study is.</summary>
    /// <param name="id">Study.</param>
    /// <returns>Progress; null when it is not known.</returns>
    public StudyProgress? Progress(string id) => queue.Progress(id);

    /// <summary>A study's result; after a restart without its single futures.</summary>
    /// <param name="viewer">Who.</param>
    /// <param name="id">Study.</param>
    /// <returns>The result, or null.</returns>
    public StudyResult? Result(Viewer viewer, string id)
    {
        if (studies.Find(viewer, id) is not { State: "done" })
        {
            return null;
        }

        return results.TryGetValue(id, out var known) ? known : studies.Result(viewer, id) is { } stored ? results.GetOrAdd(id, stored) : null;
    }

    /// <summary>A result with its single futures, drawn again from the frozen inputs where they are not at hand.</summary>
    /// <param name="viewer">Who.</param>
    /// <param name="study">Study.</param>
    /// <param name="cancel">Stops the drawing.</param>
    /// <returns>The result; null when another version of the numbers made it, so that it can be read but not drawn again.</returns>
    public StudyResult? WithFutures(Viewer viewer, StudyRow study, CancellationToken cancel)
    {
        lock (drawing)
        {
            var result = Result(viewer, study.Id);
            if (result is null || result.SavingByPath.Count == result.Options.Count)
            {
                return result;
            }

            if (study.NumbersVersion != StudyRun.NumbersVersion)
            {
                return null;
            }

            try
            {
                var means = new StudyMeans(Environment.ProcessorCount, Futures: drawn, Paths: singles);
                if (StudyPaths.Again(reader.Read(viewer, study), result, means, new Teller(p => again[study.Id] = p), cancel) is not { } whole)
                {
                    return null;
                }

                drawn = whole.Futures;
                return Keep(study.Id, whole.Result);
            }
            finally
            {
                again.TryRemove(study.Id, out _);
            }
        }
    }

    /// <summary>Whether a study's single futures are at hand.</summary>
    /// <param name="id">Study.</param>
    /// <returns>True where <see cref="WithFutures"/> answers at once.</returns>
    public bool AtHand(string id) => results.TryGetValue(id, out var known) && known.SavingByPath.Count == known.Options.Count;

    /// <summary>How far the drawing of a study's single futures is.</summary>
    /// <param name="id">Study.</param>
    /// <returns>Progress; null where they are not being drawn.</returns>
    public StudyProgress? Drawing(string id) => again.GetValueOrDefault(id);

    /// <inheritdoc/>
    public Task StartAsync(CancellationToken cancellationToken)
    {
        foreach (var waiting in studies.Waiting(Viewer.Program))
        {
            Queue(waiting.Id);
        }

        // whoever opens the newest study after a restart finds its single futures drawn, or half way
        if (studies.Newest(Viewer.Program) is { NumbersVersion: StudyRun.NumbersVersion } newest)
        {
            queue.Add($"futures of {newest.Id}", (_, cancel, _) =>
            {
                try
                {
                    WithFutures(Viewer.Program, newest, cancel);
                }
                catch (OperationCanceledException)
                {
                    // the program stops: the next start takes it up again
                }
            });
        }

        return Task.CompletedTask;
    }

    /// <inheritdoc/>
    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    private void Queue(string id) => queue.Add(id, (report, cancel, stopping) => RunOne(id, report, cancel, stopping));

    /// <summary>Single futures are large: only the newest result keeps its own in memory.</summary>
    private StudyResult Keep(string id, StudyResult result)
    {
        foreach (var (other, known) in results.Where(r => r.Key != id && r.Value.SavingByPath.Count > 0))
        {
            results.TryUpdate(other, known with { SavingByPath = [] }, known);
        }

        return results[id] = result;
    }

    private void RunOne(string id, IProgress<StudyProgress> report, CancellationToken cancel, CancellationToken stopping)
    {
        if (studies.Find(Viewer.Program, id) is not { State: "queued" } study)
        {
            return;
        }

        studies.Move(Viewer.Program, id, "running");
        var clock = Stopwatch.StartNew();
        try
        {
            var told = -10;
            var teller = new Teller(p =>
            {
                report.Report(p);
                var tenth = (int)(10 * p.Share);
                if (tenth > told)
                {
                    told = tenth;
                    LogProgress(study.Number, (int)(100 * p.Share), p.Words);
                }
            });
            var portfolio = reader.Read(Viewer.Program, study);
            var means = new StudyMeans(Environment.ProcessorCount, units.For(Viewer.Program), studies.Earlier(Viewer.Program, study.CoopId, earlier => reader.Read(Viewer.Program, earlier)), drawn, singles);
            var (outcome, faults) = StudyRun.Run(portfolio, means, teller, cancel);
            if (outcome is null)
            {
                studies.Move(Viewer.Program, id, "failed", string.Join(" ", faults.Select(f => $"{f.Message} {f.Remedy}")));
                return;
            }

            drawn = outcome.Futures;
            singles.Only(outcome.Result.UnitSha256s);
            // at hand before the study says that it is done: whoever sees it done finds its single futures, and nobody draws them again
            Keep(id, outcome.Result);
            if (!studies.Finish(Viewer.Program, id, outcome, house => portfolio.Houses[house].FarmId, clock.Elapsed.TotalSeconds))
            {
                results.TryRemove(id, out _);
                return;
            }

            LogDone(study.Number, outcome.Result.Options.Count, outcome.Result.UnitsKnown, clock.Elapsed.TotalSeconds);
        }
        catch (OperationCanceledException)
        {
            studies.Move(Viewer.Program, id, stopping.IsCancellationRequested ? "queued" : "cancelled");
        }
#pragma warning disable CA1031 // whatever went wrong, the study is marked failed and the queue goes on
        catch (Exception e)
#pragma warning restore CA1031
        {
            LogFailed(e, study.Number);
            studies.Move(Viewer.Program, id, "failed", "The program met a fault of its own; the log says more.");
        }
    }

    [LoggerMessage(LogLevel.Information, "study {Number}: {Percent} %, {Words}")]
    private partial void LogProgress(long number, int percent, string words);

    [LoggerMessage(LogLevel.Information, "study {Number} is done: {Options} options in {Seconds:0.0} s, {Known} tanks and meters of it known before")]
    private partial void LogDone(long number, int options, int known, double seconds);

    [LoggerMessage(LogLevel.Error, "study {Number} failed")]
    private partial void LogFailed(Exception e, long number);

    private sealed class Teller(Action<StudyProgress> tell) : IProgress<StudyProgress>
    {
        private readonly Lock gate = new();

        public void Report(StudyProgress value)
        {
            lock (gate)
            {
                tell(value);
            }
        }
    }
}
