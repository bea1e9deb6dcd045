using System.Data.Common;
using Dapper;
using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Host.Accounts;
using Microsoft.Data.Sqlite;

namespace FarmPortfolio.Host.Storage.Items;

/// <summary>Items, changes and revisions: save, conflict, history, undo. Revisions are only ever added.</summary>
/// <param name="database">Database.</param>
/// <param name="ids">Identifiers and the clock.</param>
public sealed class ItemStore(Database database, Ids ids)
{
    private const long Format = 1;

    /// <summary>All live items of a kind in a co-op, the shared ones included.</summary>
    /// <typeparam name="T">Facts.</typeparam>
    /// <param name="viewer">Who asks.</param>
    /// <param name="coopId">Co-op.</param>
    /// <param name="kind">Kind.</param>
    /// <returns>Items in order of identifier.</returns>
    public IReadOnlyList<Item<T>> All<T>(Viewer viewer, string coopId, string kind)
    {
        if (!viewer.May(coopId))
        {
            return [];
        }

        using var db = database.Open();
        return [.. db.Query<Row>(Select + " WHERE h.coop_id IN (@coopId, 'shared') AND h.kind = @kind AND h.live = 1 ORDER BY h.item_id", new { coopId, kind }).Select(Read<T>)];
    }

    /// <summary>One live item.</summary>
    /// <typeparam name="T">Facts.</typeparam>
    /// <param name="viewer">Who asks.</param>
    /// <param name="coopId">Co-op.</param>
    /// <param name="kind">Kind.</param>
    /// <param name="id">Identifier.</param>
    /// <returns>The item; null where there is none that the viewer may see.</returns>
    public Item<T>? Find<T>(Viewer viewer, string coopId, string kind, string id)
    {
        if (!viewer.May(coopId))
        {
            return null;
        }

        using var db = database.Open();
        return db.Query<Row>(Select + " WHERE h.coop_id IN (@coopId, 'shared') AND h.kind = @kind AND h.item_id = @id AND h.live = 1", new { coopId, kind, id }).Select(Read<T>).FirstOrDefault();
    }

    /// <summary>Saves items as one change: all or nothing.</summary>
    /// <param name="viewer">Who saves.</param>
    /// <param name="coopId">Co-op.</param>
    /// <param name="said">What is done, in words.</param>
    /// <param name="requestId">Name of the request; a repeated one adds nothing.</param>
    /// <param name="items">Items.</param>
    /// <param name="undoesId">The change this undoes.</param>
    /// <returns>What came of it.</returns>
    public SaveOutcome Save(Viewer viewer, string coopId, string said, string requestId, IReadOnlyList<ItemToSave> items, string? undoesId = null)
    {
        using var db = database.Open();
        using var transaction = db.BeginTransaction();
        if (db.QueryFirstOrDefault<string>("SELECT id FROM change WHERE account_id = @AccountId AND request_id = @requestId", new { viewer.AccountId, requestId }, transaction) is { } before)
        {
            return new(before, [.. db.Query<string>("SELECT item_id FROM revision WHERE change_id = @before ORDER BY rowid", new { before }, transaction)], null, []);
        }

        var seq = db.QueryFirstOrDefault<long>("UPDATE coop SET last_seq = last_seq + 1 WHERE id = @coopId RETURNING last_seq", new { coopId }, transaction);
        if (seq == 0)
        {
            return new(null, [], null, [new("NOT_FOUND", "coopId", "There is no such co-op.", "Choose one of your co-ops.")]);
        }

        var change = ids.New("ch");
        db.Execute("INSERT INTO change (id, coop_id, seq, at_utc, account_id, said, undoes_id, request_id) VALUES (@change, @coopId, @seq, @at, @AccountId, @said, @undoesId, @requestId)",
            new { change, coopId, seq, at = ids.Now(), viewer.AccountId, said, undoesId, requestId }, transaction);
        var saved = new List<string>();
        foreach (var item in items)
        {
            var id = item.Id ?? ids.New(ItemKind.Prefix(item.Kind));
            try
            {
                if (!SaveOne(db, transaction, coopId, change, id, item))
                {
                    return new(null, [], id, []);
                }
            }
            catch (SqliteException e) when (e.SqliteExtendedErrorCode == 2067)
            {
                return new(null, [], null, [new("NAME_TAKEN", "name", $"The name \"{item.Remarks.Name}\" is taken.", "Choose another name.")]);
            }

            saved.Add(id);
        }

        transaction.Commit();
        return new(change, saved, null, []);
    }

    /// <summary>Undoes a change by saving each item's text before it, unless something was laid on top.</summary>
    /// <param name="viewer">Who.</param>
    /// <param name="coopId">Co-op.</param>
    /// <param name="changeId">Change.</param>
    /// <param name="requestId">Name of the request.</param>
    /// <returns>What came of it.</returns>
    public SaveOutcome Undo(Viewer viewer, string coopId, string changeId, string requestId)
    {
        List<ItemToSave> items;
        string said;
        using (var db = database.Open())
        {
            var known = db.QueryFirstOrDefault<string>("SELECT said FROM change WHERE id = @changeId AND coop_id = @coopId", new { changeId, coopId });
            if (known is null || !viewer.May(coopId))
            {
                return new(null, [], null, [new("NOT_FOUND", "changeId", "There is no such change.", "Choose one from the history.")]);
            }

            said = "undo: " + known;
            var onTop = db.Query<string>("SELECT r.item_id FROM revision r JOIN head h ON h.item_id = r.item_id WHERE r.change_id = @changeId AND h.revision <> r.revision", new { changeId }).ToList();
            if (onTop.Count > 0)
            {
                return new(null, [], null, [new("LAID_ON_TOP", "changeId", $"{onTop.Count} of its items were changed again since.", "Undo the later change first.")]);
            }

            items = [.. db.Query<UndoRow>(
                """
                SELECT r.item_id AS ItemId, h.kind AS Kind, r.revision AS Revision, p.facts AS Facts, p.remarks AS Remarks
                FROM revision r JOIN head h ON h.item_id = r.item_id LEFT JOIN revision p ON p.item_id = r.item_id AND p.revision = r.revision - 1 WHERE r.change_id = @changeId
                """, new { changeId }).Select(r => new ItemToSave(r.Kind, r.ItemId, r.Revision, r.Facts is null ? null : new RawFacts(r.Facts), r.Remarks is null ? new() : CanonicalJson.Read<Remarks>(r.Remarks)))];
        }

        return Save(viewer, coopId, said, requestId, items, changeId);
    }

    /// <summary>Changes of a co-op, newest first.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="coopId">Co-op.</param>
    /// <param name="first">How many.</param>
    /// <returns>Changes.</returns>
    public IReadOnlyList<ChangeRow> Changes(Viewer viewer, string coopId, int first)
    {
        if (!viewer.May(coopId))
        {
            return [];
        }

        using var db = database.Open();
        return [.. db.Query<ChangeRow>(
            """
            SELECT id AS Id, seq AS Seq, at_utc AS AtUtc, account_id AS AccountId, said AS Said, undoes_id AS UndoesId, (SELECT count(*) FROM revision r WHERE r.change_id = change.id) AS ItemCount
            FROM change WHERE coop_id = @coopId ORDER BY seq DESC LIMIT @first
            """, new { coopId, first })];
    }

    /// <summary>History of an item, newest first.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="coopId">Co-op.</param>
    /// <param name="id">Item.</param>
    /// <returns>Revisions.</returns>
    public IReadOnlyList<RevisionRow> History(Viewer viewer, string coopId, string id)
    {
        if (!viewer.May(coopId))
        {
            return [];
        }

        using var db = database.Open();
        return [.. db.Query<RevisionRow>(
            """
            SELECT r.revision AS Revision, r.change_id AS ChangeId, c.at_utc AS AtUtc, c.account_id AS AccountId, c.said AS Said, r.facts AS Facts, r.remarks AS Remarks
            FROM revision r JOIN change c ON c.id = r.change_id WHERE r.item_id = @id AND c.coop_id IN (@coopId, 'shared') ORDER BY r.revision DESC
            """, new { coopId, id })];
    }

    private const string Select =
        """
        SELECT h.item_id AS Id, h.revision AS Revision, c.at_utc AS AtUtc, c.account_id AS AccountId, r.facts AS Facts, r.remarks AS Remarks, h.facts_sha256 AS Sha
        FROM head h JOIN revision r ON r.item_id = h.item_id AND r.revision = h.revision JOIN change c ON c.id = r.change_id
        """;

    private static Item<T> Read<T>(Row r) => new(r.Id, r.Revision, r.AtUtc, r.AccountId == Viewer.Program.AccountId ? Viewer.Program.Name : r.AccountId == Viewer.Local.AccountId ? Viewer.Local.Name : r.AccountId,
        CanonicalJson.Read<T>(r.Facts), r.Remarks is null ? new() : CanonicalJson.Read<Remarks>(r.Remarks), r.Sha);

    private static bool SaveOne(DbConnection db, DbTransaction transaction, string coopId, string change, string id, ItemToSave item)
    {
        var facts = item.Facts switch { null => null, RawFacts raw => raw.Text, var f => CanonicalJson.Write(f) };
        var remarks = CanonicalJson.Write(item.Remarks);
        var sha = facts is null ? string.Empty : CanonicalJson.Sha256(facts);
        var now = db.QueryFirstOrDefault<long?>("SELECT revision FROM head WHERE item_id = @id AND coop_id = @coopId", new { id, coopId }, transaction);
        if (now is null)
        {
            db.Execute("INSERT INTO revision (item_id, revision, change_id, format, facts, remarks, facts_sha256) VALUES (@id, 1, @change, @Format, @facts, @remarks, @sha)", new { id, change, Format, facts, remarks, sha }, transaction);
            db.Execute("INSERT INTO head (item_id, coop_id, kind, revision, facts_sha256, live) VALUES (@id, @coopId, @Kind, 1, @sha, @live)", new { id, coopId, item.Kind, sha, live = facts is null ? 0 : 1 }, transaction);
        }
        else
        {
            var expected = item.Expected ?? now;
            var revision = db.QueryFirstOrDefault<long?>(
                """
                INSERT INTO revision (item_id, revision, change_id, format, facts, remarks, facts_sha256)
                SELECT item_id, revision + 1, @change, @Format, @facts, @remarks, @sha FROM head WHERE item_id = @id AND revision = @expected RETURNING revision
                """, new { id, change, Format, facts, remarks, sha, expected }, transaction);
            if (revision is null)
            {
                return false;
            }

            db.Execute("UPDATE head SET revision = @revision, facts_sha256 = @sha, live = @live WHERE item_id = @id", new { revision, sha, live = facts is null ? 0 : 1, id }, transaction);
        }

        QueryColumns.Write(db, transaction, coopId, id, item.Kind, facts, item.Remarks);
        return true;
    }

    private sealed record RawFacts(string Text);

    private sealed record Row(string Id, long Revision, string AtUtc, string AccountId, string Facts, string? Remarks, string Sha);

    private sealed record UndoRow(string ItemId, string Kind, long Revision, string? Facts, string? Remarks);
}
