using System.Diagnostics;
using System.Text.Json.Nodes;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Studies;

/// <summary>Runs a done study again in the queue, from its frozen inputs, everything anew, and compares every figure with what is stored.</summary>
/// <param name="reader">Frozen inputs.</param>
/// <param name="studies">Studies.</param>
/// <param name="runs">Runs asked for.</param>
/// <param name="queue">Queue of long work.</param>
/// <param name="log">Log.</param>
public sealed partial class StudyAgain(PortfolioReader reader, StudyStore studies, StudyAgainStore runs, LongRuns queue, ILogger<StudyAgain> log) : IHostedService
{
    // how a result was come by, not what it is
    private static readonly string[] NotFigures = ["savingByPath", "unitsKnown", "discountRate"];

    /// <summary>Whether a study can be run again: it is done, and this version of the numbers made it.</summary>
    /// <param name="study">Study.</param>
    /// <returns>Whether it can.</returns>
    public static bool Can(StudyRow study) => study is { State: "done", NumbersVersion: StudyRun.NumbersVersion };

    /// <summary>Asks for a study to be run again.</summary>
    /// <param name="viewer">Who.</param>
    /// <param name="study">Study.</param>
    /// <returns>The run, one that waits or runs already instead of a new one; null where it cannot be run again.</returns>
    public AgainRow? Start(Viewer viewer, StudyRow study)
    {
        if (!Can(study) || runs.Add(viewer, study.Id) is not { } run)
        {
            return null;
        }

        Queue(run.Id);
        return run;
    }

    /// <summary>Cancels a run that waits or runs.</summary>
    /// <param name="viewer">Who.</param>
    /// <param name="id">Run.</param>
    /// <returns>The run as it is then; null where there is none.</returns>
    public AgainRow? Cancel(Viewer viewer, string id)
    {
        if (runs.Find(viewer, id) is not { } run)
        {
            return null;
        }

        queue.Cancel(id);
        runs.Move(viewer, run with { State = "cancelled" });
        return runs.Find(viewer, id);
    }

    /// <summary>How far a run is.</summary>
    /// <param name="id">Run.</param>
    /// <returns>Progress; null when it is not known.</returns>
    public StudyProgress? Progress(string id) => queue.Progress(id);

    /// <inheritdoc/>
    public Task StartAsync(CancellationToken cancellationToken)
    {
        foreach (var run in runs.Waiting(Viewer.Program))
        {
            Queue(run.Id);
        }

        return Task.CompletedTask;
    }

    /// <inheritdoc/>
    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    private void Queue(string id) => queue.Add(id, (report, cancel, stopping) => RunOne(id, report, cancel, stopping));

    private void RunOne(string id, IProgress<StudyProgress> report, CancellationToken cancel, CancellationToken stopping)
    {
        // asked for twice, it stands in the queue twice; cancelled, it no longer waits
        if (runs.Find(Viewer.Program, id) is not { State: "queued" } run || studies.Find(Viewer.Program, run.StudyId) is not { } study)
        {
            return;
        }

        runs.Move(Viewer.Program, run with { State = "running" });
        try
        {
            var clock = Stopwatch.StartNew();
            if (studies.Result(Viewer.Program, study.Id) is not { } stored || StudyRun.Run(reader.Read(Viewer.Program, study), Environment.ProcessorCount, report, cancel).Result is not { } again)
            {
                runs.Move(Viewer.Program, run with { State = "failed", Failure = "What the study read can no longer be reckoned." });
                return;
            }

            var (then, now) = (Figures(stored), Figures(again));
            var first = then == now ? null : FieldDifferences.Of(then, null, now, null).Select(d => $"{d.Field}: {d.Left} and {d.Right}").FirstOrDefault();
            runs.Move(Viewer.Program, run with
            {
                State = "done",
                Same = then == now ? 1 : 0,
                StoredSha256 = CanonicalJson.Sha256(then),
                AgainSha256 = CanonicalJson.Sha256(now),
                Seconds = clock.Elapsed.TotalSeconds,
                FirstDifference = first,
            });
        }
        catch (OperationCanceledException)
        {
            runs.Move(Viewer.Program, run with { State = stopping.IsCancellationRequested ? "queued" : "cancelled" });
        }
#pragma warning disable CA1031 // whatever went wrong, the run is marked failed and the queue goes on
        catch (Exception e)
#pragma warning restore CA1031
        {
            LogFailed(e, study.Number);
            runs.Move(Viewer.Program, run with { State = "failed", Failure = "The program met a fault of its own; the log says more." });
        }
    }

    private static string Figures(StudyResult result)
    {
        var node = JsonNode.Parse(CanonicalJson.Write(result with { SavingByPath = [] }))!.AsObject();
        foreach (var name in NotFigures)
        {
            node.Remove(name);
        }

        return node.ToJsonString();
    }

    [LoggerMessage(LogLevel.Error, "study {Number} could not be run again")]
    private partial void LogFailed(Exception e, long number);
}
