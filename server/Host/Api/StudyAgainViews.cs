using System.Runtime.CompilerServices;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage;
using FarmPortfolio.Host.Studies;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>A run of a study over again. What came of it stands there once the state is done.</summary>
[Name("RunAgain")]
public sealed record RunAgainView([property: Id] string Id, string State, string AskedAt, double? Seconds, bool? Same, string? StoredSha256, string? AgainSha256, string? FirstDifference, string? Failure)
{
    /// <summary>From the store's row.</summary>
    internal static RunAgainView Of(AgainRow r) => new(r.Id, r.State, r.AskedUtc, r.Seconds, r.Same is { } s ? s == 1 : null, r.StoredSha256, r.AgainSha256, r.FirstDifference, r.Failure);
}

/// <summary>How far a run over again is.</summary>
[Name("RunAgainProgress")]
public sealed record RunAgainProgressView([property: Id] string RunId, string State, double Share, string Words);

/// <summary>What came of running a study again.</summary>
public sealed partial class StudyView
{
    /// <summary>Whether it can be run again: another version of the numbers cannot.</summary>
    public bool CanRunAgain => StudyAgain.Can(row);

    /// <summary>The newest run of it over again; null = none was asked for.</summary>
    public RunAgainView? NewestRunAgain => register.RunsAgain.TryGetValue(row.Id, out var run) ? RunAgainView.Of(run) : null;
}

/// <summary>Studies run again.</summary>
public sealed partial class Mutation
{
    /// <summary>Asks for a done study to be run again from its frozen inputs, everything anew, and compared in every figure; answers at once, the run waits its turn. Null where it cannot be.</summary>
    public static RunAgainView? RunStudyAgain([FromServices] Register register, [FromServices] StudyAgain again, [Id] string studyId) =>
        register.Studies.Find(register.Viewer, studyId) is { } study && again.Start(register.Viewer, study) is { } run ? RunAgainView.Of(run) : null;

    /// <summary>Stops a run over again; null where there is none.</summary>
    public static RunAgainView? CancelRunAgain([FromServices] Register register, [FromServices] StudyAgain again, [Id] string runId) =>
        again.Cancel(register.Viewer, runId) is { } run ? RunAgainView.Of(run) : null;
}

/// <summary>Runs over again as they go on.</summary>
public sealed partial class Subscription
{
    /// <summary>How far a run over again is, until it ends.</summary>
    public static async IAsyncEnumerable<RunAgainProgressView> RunAgainProgress(
        [FromServices] StudyAgain again, [FromServices] StudyAgainStore runs, [Id] string runId, [EnumeratorCancellation] CancellationToken cancellationToken)
    {
        while (runs.Find(Viewer.Local, runId) is { } run)
        {
            var p = run.State == "running" ? again.Progress(runId) : null;
            yield return new(runId, run.State, run.State == "done" ? 1 : p?.Share ?? 0, p?.Words ?? run.State);
            if (run.State is not ("queued" or "running"))
            {
                yield break;
            }

            await Task.Delay(Every, cancellationToken);
        }
    }
}
