using Dapper;
using FarmPortfolio.Host.Accounts;

namespace FarmPortfolio.Host.Storage.Items;

/// <summary>Changes and revisions, and what differs between them.</summary>
/// <param name="database">Database.</param>
public sealed class HistoryStore(Database database)
{
    private const string Change =
        """
        SELECT c.id AS Id, c.seq AS Seq, c.at_utc AS AtUtc, COALESCE(a.name, c.account_id) AS By, c.said AS Said, c.undoes_id AS UndoesId, (SELECT count(*) FROM revision r WHERE r.change_id = c.id) AS ItemCount
        FROM change c LEFT JOIN account a ON a.id = c.account_id
        """;

    private const string Revision =
        """
        SELECT r.item_id AS ItemId, h.kind AS Kind, r.revision AS Revision, r.change_id AS ChangeId, c.at_utc AS AtUtc, COALESCE(a.name, c.account_id) AS By, c.said AS Said, c.undoes_id AS UndoesId, r.facts AS Facts, r.remarks AS Remarks
        FROM item_scope h JOIN revision r ON r.item_id = h.item_id JOIN change c ON c.id = r.change_id LEFT JOIN account a ON a.id = c.account_id
        """;

    /// <summary>Changes of a co-op, newest first.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="coopId">Co-op.</param>
    /// <param name="first">How many.</param>
    /// <param name="before">Only those with a lower number; null = from the newest.</param>
    /// <returns>Changes; none for a viewer limited to farms, who asks for the history of an item.</returns>
    public IReadOnlyList<ChangeRow> Changes(Viewer viewer, string coopId, int first, long? before = null)
    {
        if (!MayReadAll(viewer, coopId))
        {
            return [];
        }

        using var db = database.Open();
        return [.. db.Query<ChangeRow>($"{Change} WHERE c.coop_id = @coopId AND c.seq < @before ORDER BY c.seq DESC LIMIT @first", new { coopId, first, before = before ?? long.MaxValue })];
    }

    /// <summary>Changes after a number, oldest first.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="coopId">Co-op.</param>
    /// <param name="afterSeq">Number of the last one known.</param>
    /// <returns>Changes.</returns>
    public IReadOnlyList<ChangeRow> ChangesAfter(Viewer viewer, string coopId, long afterSeq)
    {
        if (!MayReadAll(viewer, coopId))
        {
            return [];
        }

        using var db = database.Open();
        return [.. db.Query<ChangeRow>($"{Change} WHERE c.coop_id = @coopId AND c.seq > @afterSeq ORDER BY c.seq", new { coopId, afterSeq })];
    }

    /// <summary>Number of the newest change.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="coopId">Co-op.</param>
    /// <returns>Number; 0 = none.</returns>
    public long LastSeq(Viewer viewer, string coopId)
    {
        using var db = database.Open();
        return MayReadAll(viewer, coopId) ? db.QueryFirstOrDefault<long>("SELECT last_seq FROM coop WHERE id = @coopId", new { coopId }) : 0;
    }

    /// <summary>One change.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="changeId">Change.</param>
    /// <returns>The change; null where there is none that the viewer may see.</returns>
    public ChangeRow? Find(Viewer viewer, string changeId)
    {
        using var db = database.Open();
        return db.QueryFirstOrDefault<string>("SELECT coop_id FROM change WHERE id = @changeId", new { changeId }) is { } coop && Policy.MayRead(viewer, coop)
            ? db.QueryFirst<ChangeRow>($"{Change} WHERE c.id = @changeId", new { changeId })
            : null;
    }

    /// <summary>History of an item, newest first, deleted ones included.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="itemId">Item.</param>
    /// <param name="first">How many.</param>
    /// <param name="before">Only lower revisions; null = from the newest.</param>
    /// <returns>Revisions.</returns>
    public IReadOnlyList<RevisionRow> History(Viewer viewer, string itemId, int first = int.MaxValue, long? before = null)
    {
        using var db = database.Open();
        return [.. db.Query<RevisionRow>($"{Revision} WHERE h.item_id = @itemId AND r.revision < @before AND {Policy.Sees(viewer, "h")} ORDER BY r.revision DESC LIMIT @first",
            new { itemId, first, before = before ?? long.MaxValue, viewerCoops = viewer.CoopIds, viewerFarms = viewer.FarmIds })];
    }

    /// <summary>One revision of an item.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="itemId">Item.</param>
    /// <param name="revision">Revision; null = the newest.</param>
    /// <returns>The revision; null where there is none that the viewer may see.</returns>
    public RevisionRow? At(Viewer viewer, string itemId, long? revision = null) =>
        History(viewer, itemId, 1, revision is { } r ? r + 1 : null) is [var found] && (revision is null || found.Revision == revision) ? found : null;

    /// <summary>All revisions of a change.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="changeId">Change.</param>
    /// <returns>Each revision with the one before it, where there is one.</returns>
    public IReadOnlyList<(RevisionRow Now, RevisionRow? Before)> Of(Viewer viewer, string changeId)
    {
        using var db = database.Open();
        var scope = new { changeId, viewerCoops = viewer.CoopIds, viewerFarms = viewer.FarmIds };
        var now = db.Query<RevisionRow>($"{Revision} WHERE r.change_id = @changeId AND {Policy.Sees(viewer, "h")} ORDER BY r.item_id", scope).ToList();
        var before = db.Query<RevisionRow>($"{Revision} JOIN revision n ON n.item_id = r.item_id AND n.revision = r.revision + 1 WHERE n.change_id = @changeId AND {Policy.Sees(viewer, "h")}", scope).ToDictionary(r => r.ItemId);
        return [.. now.Select(n => (n, before.GetValueOrDefault(n.ItemId)))];
    }

    private static bool MayReadAll(Viewer viewer, string coopId) => viewer.FarmIds is null && Policy.MayRead(viewer, coopId);
}
