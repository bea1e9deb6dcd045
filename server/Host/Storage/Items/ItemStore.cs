using Dapper;
using FarmPortfolio.Engine;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage.Kinds;

namespace FarmPortfolio.Host.Storage.Items;

/// <summary>Items as they hold now; saving, deleting and undoing them. Revisions are only ever added.</summary>
/// <param name="database">Database.</param>
/// <param name="ids">Identifiers and the clock.</param>
/// <param name="feed">Told of every change.</param>
public sealed class ItemStore(Database database, Ids ids, ChangeFeed feed)
{
    private const string Select =
        """
        SELECT h.item_id AS Id, h.coop_id AS CoopId, h.revision AS Revision, c.at_utc AS AtUtc, COALESCE(a.name, c.account_id) AS ChangedBy, r.facts AS Facts, r.remarks AS Remarks, h.facts_sha256 AS Sha
        FROM item_scope h JOIN revision r ON r.item_id = h.item_id AND r.revision = h.revision JOIN change c ON c.id = r.change_id LEFT JOIN account a ON a.id = c.account_id
        """;

    /// <summary>All live items of a kind in a co-op that the viewer may see, the shared ones included.</summary>
    /// <typeparam name="T">Facts.</typeparam>
    /// <param name="viewer">Who asks.</param>
    /// <param name="coopId">Co-op.</param>
    /// <param name="kind">Kind.</param>
    /// <returns>Items in order of identifier.</returns>
    public IReadOnlyList<Item<T>> All<T>(Viewer viewer, string coopId, string kind)
    {
        using var db = database.Open();
        return [.. db.Query<Row>($"{Select} WHERE h.coop_id IN (@coopId, '{Policy.Shared}') AND h.kind = @kind AND h.live = 1 AND {Policy.Sees(viewer, "h")} ORDER BY h.item_id",
            new { coopId, kind, viewerCoops = viewer.CoopIds, viewerFarms = viewer.FarmIds }).Select(Read<T>)];
    }

    /// <summary>One live item.</summary>
    /// <typeparam name="T">Facts.</typeparam>
    /// <param name="viewer">Who asks.</param>
    /// <param name="kind">Kind.</param>
    /// <param name="id">Identifier.</param>
    /// <returns>The item; null where there is none that the viewer may see.</returns>
    public Item<T>? Find<T>(Viewer viewer, string kind, string id) => Some<T>(viewer, kind, [id]).GetValueOrDefault(id);

    /// <summary>Some live items, by one query.</summary>
    /// <typeparam name="T">Facts.</typeparam>
    /// <param name="viewer">Who asks.</param>
    /// <param name="kind">Kind.</param>
    /// <param name="itemIds">Identifiers.</param>
    /// <returns>Items by identifier; those that are not there, or not to be seen, are left out.</returns>
    public IReadOnlyDictionary<string, Item<T>> Some<T>(Viewer viewer, string kind, IReadOnlyCollection<string> itemIds)
    {
        using var db = database.Open();
        return db.Query<Row>($"{Select} WHERE h.item_id IN @itemIds AND h.kind = @kind AND h.live = 1 AND {Policy.Sees(viewer, "h")}",
            new { itemIds, kind, viewerCoops = viewer.CoopIds, viewerFarms = viewer.FarmIds }).Select(Read<T>).ToDictionary(i => i.Id);
    }

    /// <summary>The live items that point at others, by one query: the houses of some farms.</summary>
    /// <typeparam name="T">Facts.</typeparam>
    /// <param name="viewer">Who asks.</param>
    /// <param name="kind">Kind that points.</param>
    /// <param name="column">Column by which it points, such as farm_id.</param>
    /// <param name="owners">Identifiers of those pointed at.</param>
    /// <returns>Items by the identifier pointed at, in order of name where they have one.</returns>
    /// <exception cref="ArgumentException">The kind has no such column.</exception>
    public ILookup<string, Item<T>> PointingAt<T>(Viewer viewer, string kind, string column, IReadOnlyCollection<string> owners)
    {
        var table = KindTables.Of(kind);
        var link = table.Links.FirstOrDefault(l => l.Column == column) ?? throw new ArgumentException($"{kind} does not point by {column}", nameof(column));
        var join = link.Table is null ? $"JOIN {kind} p ON p.id = h.item_id" : $"JOIN {link.Table} p ON p.{link.IdColumn} = h.item_id";
        var order = link.Table is null && table.Uniques.Any(u => u.Field == "name") ? "p.name_key, h.item_id" : "h.item_id";
        using var db = database.Open();
        return db.Query<Row>($"{Select.Replace("SELECT ", $"SELECT p.{column} AS Owner, ", StringComparison.Ordinal)} {join} WHERE p.{column} IN @owners AND h.live = 1 AND {Policy.Sees(viewer, "h")} ORDER BY {order}",
            new { owners, viewerCoops = viewer.CoopIds, viewerFarms = viewer.FarmIds }).DistinctBy(r => (r.Owner, r.Id)).ToLookup(r => r.Owner!, Read<T>);
    }

    /// <summary>Co-op and kind of an item, deleted ones included.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="id">Identifier.</param>
    /// <returns>Both; null where there is none that the viewer may see.</returns>
    public (string CoopId, string Kind)? Where(Viewer viewer, string id)
    {
        using var db = database.Open();
        return db.Query<(string, string)>($"SELECT h.coop_id, h.kind FROM item_scope h WHERE h.item_id = @id AND {Policy.Sees(viewer, "h")}",
            new { id, viewerCoops = viewer.CoopIds, viewerFarms = viewer.FarmIds }).Select(x => ((string, string)?)x).FirstOrDefault();
    }

    /// <summary>Saves items as one change: all or nothing.</summary>
    /// <param name="viewer">Who saves.</param>
    /// <param name="coopId">Co-op.</param>
    /// <param name="said">What is done, in words.</param>
    /// <param name="requestId">Name of the request; a repeated one adds nothing and answers as the first time.</param>
    /// <param name="items">Items.</param>
    /// <param name="undoesId">The change this undoes.</param>
    /// <returns>What came of it.</returns>
    public SaveOutcome Save(Viewer viewer, string coopId, string said, string requestId, IReadOnlyList<ItemToSave> items, string? undoesId = null) => Save(viewer, coopId, said, requestId, items, undoesId, null);

    /// <summary>Saves items as one change together with rows that they point at.</summary>
    /// <param name="viewer">Who saves.</param>
    /// <param name="coopId">Co-op.</param>
    /// <param name="said">What is done, in words.</param>
    /// <param name="requestId">Name of the request.</param>
    /// <param name="items">Items.</param>
    /// <param name="first">Writes those rows, given the change; the transaction holds them too. A fault told by it stops the change.</param>
    /// <returns>What came of it.</returns>
    internal SaveOutcome Save(Viewer viewer, string coopId, string said, string requestId, IReadOnlyList<ItemToSave> items, Func<System.Data.Common.DbConnection, System.Data.Common.DbTransaction, string, Fault?> first) =>
        Save(viewer, coopId, said, requestId, items, null, first);

    private SaveOutcome Save(Viewer viewer, string coopId, string said, string requestId, IReadOnlyList<ItemToSave> items, string? undoesId, Func<System.Data.Common.DbConnection, System.Data.Common.DbTransaction, string, Fault?>? first)
    {
        if (!Policy.MayRead(viewer, coopId))
        {
            return NoCoop();
        }

        if (!Policy.MayWrite(viewer, coopId))
        {
            return SaveOutcome.Refused(new("NOT_ALLOWED", null, "These records may be read only.", "Make a copy in a co-op of your own."));
        }

        var change = ids.New("ch");
        var saved = items.Select(i => (Id: i.Id ?? ids.New(KindTables.Of(i.Kind).Prefix), Item: i)).ToList();
        using (var db = database.Open())
        {
            using var transaction = db.BeginTransaction();
            if (db.QueryFirstOrDefault<Earlier>("SELECT id AS Id, coop_id AS CoopId FROM change WHERE account_id = @AccountId AND request_id = @requestId", new { viewer.AccountId, requestId }, transaction) is { } before)
            {
                return before.CoopId == coopId
                    ? new(before.Id, [.. db.Query<string>("SELECT item_id FROM change_item WHERE change_id = @Id ORDER BY place", new { before.Id }, transaction)], null, [])
                    : SaveOutcome.Refused(new("REQUEST_USED", "requestId", "This name of a request was used for another act.", "Give each request a name of its own."));
            }

            // the row lock also puts writers in line
            var seq = db.QueryFirstOrDefault<long>("UPDATE coop SET last_seq = last_seq + 1 WHERE id = @coopId RETURNING last_seq", new { coopId }, transaction);
            if (seq == 0)
            {
                return NoCoop();
            }

            db.Execute("INSERT INTO change (id, coop_id, seq, at_utc, account_id, said, undoes_id, request_id) VALUES (@change, @coopId, @seq, @at, @AccountId, @said, @undoesId, @requestId)",
                new { change, coopId, seq, at = ids.Now(), viewer.AccountId, said, undoesId, requestId }, transaction);
            if (first?.Invoke(db, transaction, change) is { } against)
            {
                return SaveOutcome.Refused(against);
            }

            var writer = new ChangeWriter(db, transaction, viewer, coopId, change, revives: undoesId is not null);
            writer.Write(saved);
            if (writer.ConflictItemId is not null || writer.Faults.Count > 0)
            {
                return new(null, [], writer.ConflictItemId, writer.Faults);
            }

            db.Execute("INSERT INTO change_item (change_id, place, item_id) VALUES (@change, @place, @Id)", saved.Select((s, place) => new { change, place, s.Id }), transaction);
            transaction.Commit();
        }

        feed.Tell();
        return new(change, [.. saved.Select(s => s.Id)], null, []);
    }

    /// <summary>What a deletion would take with it.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="id">Item.</param>
    /// <returns>Kind, identifier and name of each, the item itself the last; empty where there is no such item.</returns>
    public IReadOnlyList<(string Kind, string Id, string? Name)> GoingWith(Viewer viewer, string id)
    {
        if (Where(viewer, id) is not { } found)
        {
            return [];
        }

        using var db = database.Open();
        var going = Referrers.GoingWith(db, found.Kind, id);
        var names = db.Query<(string Id, string? Remarks)>("SELECT h.item_id, r.remarks FROM head h JOIN revision r ON r.item_id = h.item_id AND r.revision = h.revision WHERE h.item_id IN @all", new { all = going.Select(g => g.Id) })
            .ToDictionary(r => r.Id, r => r.Remarks is null ? null : CanonicalJson.Read<Remarks>(r.Remarks).Name);
        return [.. going.Select(g => (g.Kind, g.Id, names.GetValueOrDefault(g.Id)))];
    }

    /// <summary>Deletes an item and all that goes with it, as one change; its history stays.</summary>
    /// <param name="viewer">Who deletes.</param>
    /// <param name="id">Item.</param>
    /// <param name="expected">Revision the viewer looked at.</param>
    /// <param name="requestId">Name of the request.</param>
    /// <param name="coopId">Co-op that it must be of; null = any that the viewer may change.</param>
    /// <returns>What came of it.</returns>
    public SaveOutcome Delete(Viewer viewer, string id, long expected, string requestId, string? coopId = null)
    {
        if (Where(viewer, id) is not { } found || (coopId is not null && found.CoopId != coopId))
        {
            return SaveOutcome.Refused(new("NOT_FOUND", "id", "There is no such item.", "Reload the page."));
        }

        var going = GoingWith(viewer, id);
        using var db = database.Open();
        var remarks = db.Query<(string Id, string? Remarks)>("SELECT h.item_id, r.remarks FROM head h JOIN revision r ON r.item_id = h.item_id AND r.revision = h.revision WHERE h.item_id IN @all", new { all = going.Select(g => g.Id) })
            .ToDictionary(r => r.Id, r => r.Remarks is null ? new() : CanonicalJson.Read<Remarks>(r.Remarks));
        var (kind, _, name) = going[^1];
        var said = $"{kind.Replace('_', ' ')} {name} is deleted{(going.Count > 1 ? $" with {going.Count - 1} items that go with it" : string.Empty)}";
        return Save(viewer, found.CoopId, said, requestId, [.. going.Select(g => new ItemToSave(g.Kind, g.Id, g.Id == id ? expected : null, null, remarks[g.Id]))]);
    }

    /// <summary>Undoes a change by saving each item's text before it, unless something was laid on top.</summary>
    /// <param name="viewer">Who.</param>
    /// <param name="changeId">Change.</param>
    /// <param name="requestId">Name of the request.</param>
    /// <param name="coopId">Co-op that it must be of; null = any that the viewer may change.</param>
    /// <returns>What came of it.</returns>
    public SaveOutcome Undo(Viewer viewer, string changeId, string requestId, string? coopId = null)
    {
        List<ItemToSave> items;
        Undone known;
        using (var db = database.Open())
        {
            if (db.QueryFirstOrDefault<Undone>("SELECT coop_id AS CoopId, said AS Said, seq AS Seq FROM change WHERE id = @changeId", new { changeId }) is not { } change || !Policy.MayRead(viewer, change.CoopId) || (coopId is not null && change.CoopId != coopId))
            {
                return SaveOutcome.Refused(new("NOT_FOUND", "changeId", "There is no such change.", "Choose one from the history."));
            }

            if (db.QueryFirstOrDefault<long?>("SELECT number FROM decision WHERE change_id = @changeId", new { changeId }) is { } number)
            {
                return SaveOutcome.Refused(new("DECIDED", "changeId", $"This change is decision {number}, and a decision is not undone.", "Correct it on the page of its round: that makes a new decision which names this one."));
            }

            if (DecidedOnIt(db, changeId, change.Seq) is { } later)
            {
                return SaveOutcome.Refused(new("DECIDED", "changeId", $"Decision {later} was made after this change to an award of its round, and rests on it.", "Correct the decision on the page of its round: that makes a new one which names it."));
            }

            known = change;
            if (db.QueryFirstOrDefault<string>("SELECT id FROM change WHERE account_id = @AccountId AND request_id = @requestId", new { viewer.AccountId, requestId }) is null && OnTop(db, changeId) is { } fault)
            {
                return SaveOutcome.Refused(fault);
            }

            items = [.. db.Query<UndoRow>(
                """
                SELECT r.item_id AS ItemId, h.kind AS Kind, r.revision AS Revision, p.facts AS Facts, COALESCE(p.remarks, r.remarks) AS Remarks
                FROM revision r JOIN head h ON h.item_id = r.item_id LEFT JOIN revision p ON p.item_id = r.item_id AND p.revision = r.revision - 1 WHERE r.change_id = @changeId ORDER BY r.item_id
                """, new { changeId }).Select(r => new ItemToSave(r.Kind, r.ItemId, r.Revision, r.Facts is null ? null : new RawFacts(r.Facts), r.Remarks is null ? new() : CanonicalJson.Read<Remarks>(r.Remarks)))];
        }

        return Save(viewer, known.CoopId, $"change {known.Seq} is undone: {known.Said}", requestId, items, changeId);
    }

    // money that came back may have been given again: a decision of the round since rests on how its awards stood
    private static long? DecidedOnIt(System.Data.Common.DbConnection db, string changeId, long seq) =>
        db.QueryFirstOrDefault<long?>(
            """
            SELECT d.number FROM revision r JOIN award a ON a.id = r.item_id JOIN decision d ON d.round_id = a.round_id JOIN change c ON c.id = d.change_id
            WHERE r.change_id = @changeId AND c.seq > @seq ORDER BY d.number DESC LIMIT 1
            """, new { changeId, seq });

    private static Fault? OnTop(System.Data.Common.DbConnection db, string changeId)
    {
        var later = db.Query<Later>(
            """
            SELECT h.item_id AS ItemId, n.remarks AS Remarks, c.seq AS Seq, c.said AS Said FROM revision r JOIN head h ON h.item_id = r.item_id
            JOIN revision n ON n.item_id = r.item_id AND n.revision = r.revision + 1 JOIN change c ON c.id = n.change_id WHERE r.change_id = @changeId AND h.revision <> r.revision ORDER BY c.seq
            """, new { changeId }).ToList();
        if (later.Count == 0)
        {
            return null;
        }

        var first = later[0];
        var name = (first.Remarks is null ? null : CanonicalJson.Read<Remarks>(first.Remarks).Name) ?? first.ItemId;
        return new("LAID_ON_TOP", "changeId", $"\"{name}\"{(later.Count > 1 ? $" and {later.Count - 1} more" : string.Empty)} changed again since, by change {first.Seq}: {first.Said}.", $"Undo change {first.Seq} first.");
    }

    private static SaveOutcome NoCoop() => SaveOutcome.Refused(new("NOT_FOUND", "coopId", "There is no such co-op.", "Choose one of your co-ops."));

    private static Item<T> Read<T>(Row r) => new(r.Id, r.Revision, r.AtUtc, r.ChangedBy, CanonicalJson.Read<T>(r.Facts), r.Remarks is null ? new() : CanonicalJson.Read<Remarks>(r.Remarks), r.Sha, r.CoopId);

    private sealed record Row
    {
        public string? Owner { get; init; }

        public string Id { get; init; } = string.Empty;

        public string CoopId { get; init; } = string.Empty;

        public long Revision { get; init; }

        public string AtUtc { get; init; } = string.Empty;

        public string ChangedBy { get; init; } = string.Empty;

        public string Facts { get; init; } = string.Empty;

        public string? Remarks { get; init; }

        public string Sha { get; init; } = string.Empty;
    }

    private sealed record Earlier(string Id, string CoopId);

    private sealed record Undone(string CoopId, string Said, long Seq);

    private sealed record Later(string ItemId, string? Remarks, long Seq, string Said);

    private sealed record UndoRow(string ItemId, string Kind, long Revision, string? Facts, string? Remarks);
}
