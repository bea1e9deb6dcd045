using System.Diagnostics;
using System.Text.Json.Nodes;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Studies;

/// <summary>What came of running a study again.</summary>
/// <param name="Same">Whether every figure is the same, bit for bit.</param>
/// <param name="StoredSha256">Checksum of the figures as stored.</param>
/// <param name="AgainSha256">Checksum of the figures run again.</param>
/// <param name="Seconds">Seconds it took.</param>
/// <param name="FirstDifference">The first field that differs; null = none.</param>
public sealed record AgainOutcome(bool Same, string StoredSha256, string AgainSha256, double Seconds, string? FirstDifference);

/// <summary>Runs a done study again from its frozen inputs, everything anew, and compares.</summary>
/// <param name="reader">Frozen inputs.</param>
/// <param name="studies">Studies.</param>
public sealed class StudyAgain(PortfolioReader reader, StudyStore studies)
{
    // how a result was come by, not what it is
    private static readonly string[] NotFigures = ["savingByPath", "unitsKnown"];

    /// <summary>Runs it.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="study">A done study.</param>
    /// <param name="cancel">Stops it.</param>
    /// <returns>The comparison; null where the study has no result, or another version of the numbers made it.</returns>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public AgainOutcome? Run(Viewer viewer, StudyRow study, CancellationToken cancel)
    {
        if (study.NumbersVersion != StudyRun.NumbersVersion || studies.Result(viewer, study.Id) is not { } stored)
        {
            return null;
        }

        var clock = Stopwatch.StartNew();
        if (StudyRun.Run(reader.Read(viewer, study), Environment.ProcessorCount, null, cancel).Result is not { } again)
        {
            return null;
        }

        var (then, now) = (Figures(stored), Figures(again));
        var same = then == now;
        var first = same ? null : FieldDifferences.Of(then, null, now, null).Select(d => $"{d.Field}: {d.Left} and {d.Right}").FirstOrDefault();
        return new(same, CanonicalJson.Sha256(then), CanonicalJson.Sha256(now), clock.Elapsed.TotalSeconds, first);
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
}
