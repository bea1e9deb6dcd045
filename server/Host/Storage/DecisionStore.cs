using Dapper;
using FarmPortfolio.Engine.Funding;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Storage;

/// <summary>A decision as it is stored.</summary>
public sealed record DecisionRow
{
    /// <summary>Identifier.</summary>
    public string Id { get; init; } = string.Empty;

    /// <summary>Co-op.</summary>
    public string CoopId { get; init; } = string.Empty;

    /// <summary>Number within the co-op, from 1.</summary>
    public long Number { get; init; }

    /// <summary>Round.</summary>
    public string RoundId { get; init; } = string.Empty;

    /// <summary>Study; null = none stands behind it.</summary>
    public string? StudyId { get; init; }

    /// <summary>The decision it corrects or follows.</summary>
    public string? CorrectsId { get; init; }

    /// <summary>Canonical text.</summary>
    public string Body { get; init; } = string.Empty;

    /// <summary>Hash of the text.</summary>
    public string BodySha256 { get; init; } = string.Empty;

    /// <summary>Hash of the decision before it; empty = the first.</summary>
    public string PreviousSha256 { get; init; } = string.Empty;

    /// <summary>When it was written.</summary>
    public string DecidedUtc { get; init; } = string.Empty;

    /// <summary>The text read.</summary>
    public RoundDecision Decision => CanonicalJson.Read<RoundDecision>(Body);
}

/// <summary>Decisions: written once, each naming the one before it by its hash; neither this store nor any other changes or deletes one.</summary>
/// <param name="database">Database.</param>
/// <param name="items">Items that a decision changes with it.</param>
/// <param name="ids">Identifiers and the clock.</param>
public sealed class DecisionStore(Database database, ItemStore items, Ids ids)
{
    private const string Select =
        """
        SELECT id AS Id, coop_id AS CoopId, number AS Number, round_id AS RoundId, study_id AS StudyId, corrects_id AS CorrectsId, body AS Body, body_sha256 AS BodySha256,
               previous_sha256 AS PreviousSha256, decided_utc AS DecidedUtc FROM decision
        """;

    /// <summary>Writes a decision and the items that follow from it as one change: all or nothing.</summary>
    /// <param name="viewer">Who.</param>
    /// <param name="coopId">Co-op.</param>
    /// <param name="said">What is done, in words.</param>
    /// <param name="requestId">Name of the request; a repeated one adds nothing.</param>
    /// <param name="decision">The decision; its number and the hash of the one before it are filled in here.</param>
    /// <param name="changes">The items, given the decision's identifier.</param>
    /// <returns>What came of it.</returns>
    public SaveOutcome Decide(Viewer viewer, string coopId, string said, string requestId, RoundDecision decision, Func<string, IReadOnlyList<ItemToSave>> changes)
    {
        var id = ids.New("dc");
        return items.Save(viewer, coopId, said, requestId, changes(id), (db, transaction, changeId) =>
        {
            if (decision.Kind == DecisionKind.Round && db.QueryFirstOrDefault<long?>("SELECT number FROM decision WHERE round_id = @RoundId ORDER BY number LIMIT 1", new { decision.RoundId }, transaction) is { } taken)
            {
                return new("DECIDED", "id", $"The round is decided already, by decision {taken}.", "Reload the page. A fault is put right by a correction, which makes a new decision that names the old one.");
            }

            var before = db.QueryFirstOrDefault<DecisionRow>($"{Select} WHERE coop_id = @coopId ORDER BY number DESC LIMIT 1", new { coopId }, transaction);
            var whole = decision with { Number = (before?.Number ?? 0) + 1, PreviousSha256 = before?.BodySha256 ?? string.Empty };
            var body = CanonicalJson.Write(whole);
            db.Execute(
                """
                INSERT INTO decision (id, coop_id, number, kind, round_id, study_id, corrects_id, change_id, body, body_sha256, previous_sha256, decided_utc)
                VALUES (@id, @coopId, @Number, @Kind, @RoundId, @StudyId, @CorrectsId, @changeId, @body, @sha, @PreviousSha256, @at)
                """,
                new { id, coopId, whole.Number, Kind = whole.Kind.ToString(), whole.RoundId, whole.StudyId, whole.CorrectsId, changeId, body, sha = CanonicalJson.Sha256(body), whole.PreviousSha256, at = ids.Now() }, transaction);
            return null;
        });
    }

    /// <summary>Decisions of a co-op, oldest first.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="coopId">Co-op.</param>
    /// <returns>Decisions; none for a viewer limited to farms.</returns>
    public IReadOnlyList<DecisionRow> All(Viewer viewer, string coopId)
    {
        using var db = database.Open();
        return Sees(viewer, coopId) ? [.. db.Query<DecisionRow>($"{Select} WHERE coop_id = @coopId ORDER BY number", new { coopId })] : [];
    }

    /// <summary>One decision.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="id">Identifier.</param>
    /// <returns>The decision; null where there is none that the viewer may see.</returns>
    public DecisionRow? Find(Viewer viewer, string id)
    {
        using var db = database.Open();
        return db.QueryFirstOrDefault<DecisionRow>($"{Select} WHERE id = @id", new { id }) is { } row && Sees(viewer, row.CoopId) ? row : null;
    }

    /// <summary>Whether the chain holds: each text hashes to its checksum and names the one before, numbers without a gap.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="coopId">Co-op.</param>
    /// <returns>Number of the first that does not; null = all hold.</returns>
    public long? Broken(Viewer viewer, string coopId)
    {
        var (before, number) = (string.Empty, 0L);
        foreach (var row in All(viewer, coopId))
        {
            var told = row.Decision;
            if (row.Number != ++number || told.Number != number || CanonicalJson.Sha256(row.Body) != row.BodySha256 || row.PreviousSha256 != before || told.PreviousSha256 != before)
            {
                return row.Number;
            }

            before = row.BodySha256;
        }

        return null;
    }

    private static bool Sees(Viewer viewer, string coopId) => viewer.FarmIds is null && Policy.MayRead(viewer, coopId);
}
