using System.Runtime.CompilerServices;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage;
using FarmPortfolio.Host.Storage.Items;
using FarmPortfolio.Host.Studies;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>What can be followed.</summary>
public sealed partial class Subscription
{
    private static readonly TimeSpan Every = TimeSpan.FromMilliseconds(250);

    /// <summary>How far a study is, until it ends.</summary>
    public static async IAsyncEnumerable<ProgressView> StudyProgress(
        [FromServices] StudyJobs jobs, [FromServices] StudyStore studies, [Id] string studyId, [EnumeratorCancellation] CancellationToken cancellationToken)
    {
        while (studies.Find(Viewer.Local, studyId) is { } row)
        {
            var p = jobs.Progress(studyId);
            yield return new(studyId, row.State, row.State == "done" ? 1 : p?.Share ?? 0, p?.Words ?? row.State, p?.Done ?? 0, p?.Total ?? 0, row.State == "running" ? EarlyFigureView.Of(p) : []);
            if (row.State is not ("queued" or "running"))
            {
                yield break;
            }

            await Task.Delay(Every, cancellationToken);
        }
    }

    /// <summary>How far the single futures of a done study are, which are reckoned again after a restart; ends when they are at hand, at once where another version of the numbers made the study, for then they never are.</summary>
    public static async IAsyncEnumerable<ProgressView> FuturesProgress(
        [FromServices] StudyJobs jobs, [FromServices] StudyStore studies, [Id] string studyId, [EnumeratorCancellation] CancellationToken cancellationToken)
    {
        while (studies.Find(Viewer.Local, studyId) is { State: "done" } row)
        {
            var atHand = jobs.AtHand(studyId);
            var p = jobs.Drawing(studyId);
            yield return new(studyId, row.State, atHand ? 1 : p?.Share ?? 0, atHand ? "done" : p?.Words ?? "waiting", p?.Done ?? 0, p?.Total ?? 0, []);
            if (atHand || row.NumbersVersion != StudyRun.NumbersVersion)
            {
                yield break;
            }

            await Task.Delay(Every, cancellationToken);
        }
    }

    /// <summary>Changes of a co-op as they are made, oldest first: after a number, or those to come. Ends only when the reader goes.</summary>
    public static async IAsyncEnumerable<ChangeView> Changes(
        [FromServices] HistoryStore history, [FromServices] ChangeFeed feed, [Id] string coopId, int? afterSeq, [EnumeratorCancellation] CancellationToken cancellationToken)
    {
        var known = afterSeq ?? history.LastSeq(Viewer.Local, coopId);
        while (true)
        {
            var next = feed.Next;
            foreach (var change in history.ChangesAfter(Viewer.Local, coopId, known))
            {
                known = change.Seq;
                yield return ChangeView.Of(change);
            }

            await next.WaitAsync(cancellationToken);
        }
    }
}
