using System.Data.Common;
using System.Globalization;
using Dapper;
using FarmPortfolio.Engine;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage.Kinds;

namespace FarmPortfolio.Host.Storage.Items;

/// <summary>A text as it is stored.</summary>
/// <param name="Text">Canonical JSON.</param>
internal sealed record RawFacts(string Text);

/// <summary>Writes the items of one change inside one transaction; the caller commits when there is neither a conflict nor a fault.</summary>
internal sealed class ChangeWriter(DbConnection db, DbTransaction transaction, Viewer viewer, string coopId, string changeId, bool revives)
{
    private const long Format = 1;
    private readonly HashSet<string> broken = new(StringComparer.Ordinal);
    private readonly List<Fault> faults = [];

    /// <summary>What a user can mend.</summary>
    public IReadOnlyList<Fault> Faults => faults;

    /// <summary>The item somebody else saved first; null = none.</summary>
    public string? ConflictItemId { get; private set; }

    /// <summary>Writes items, those that are pointed at first.</summary>
    /// <param name="items">Items with their identifiers.</param>
    public void Write(IReadOnlyList<(string Id, ItemToSave Item)> items)
    {
        foreach (var doubled in items.GroupBy(i => i.Id).Where(g => g.Count() > 1))
        {
            faults.Add(new("DOUBLED", "id", $"\"{doubled.Last().Item.Remarks.Name ?? doubled.Key}\" stands twice in one change.", "Name each item once."));
        }

        // names may be exchanged within a change: no old row stands in the way of a new one
        foreach (var kind in items.GroupBy(i => i.Item.Kind))
        {
            foreach (var (id, _) in kind)
            {
                db.Execute($"UPDATE {KindTables.Of(kind.Key).Kind} SET live = 0 WHERE id = @id AND coop_id = @coopId", new { id, coopId }, transaction);
            }
        }

        foreach (var (id, item) in items.OrderBy(i => KindTables.Order(i.Item.Kind)))
        {
            if (faults.Any(f => f.Code == "DOUBLED") || !One(id, item))
            {
                return;
            }
        }

        foreach (var (id, item) in items.Where(i => i.Item.Facts is null))
        {
            Held(id, item);
        }
    }

    private bool One(string id, ItemToSave item)
    {
        var table = KindTables.Of(item.Kind);
        var facts = item.Facts switch { null => null, RawFacts raw => raw.Text, var f => CanonicalJson.Write(f) };
        if (facts is null && table.NeverDeleted is { } because && table.IsKept(db, transaction, id))
        {
            Add(item, "NOT_DELETED", "id", because, "Leave it as it is.");
            return false;
        }

        // an undo brings back what was; the name of an award is made of others by the program
        if (facts is not null && !revives && item.Kind != ItemKind.Award && RemarkChecks.Of(item.Remarks).ToList() is { Count: > 0 } wrong)
        {
            wrong.ForEach(w => Add(item, w.Code, w.Field ?? "name", w.Message, w.Remedy));
            broken.Add(id);
            return true;
        }

        if (facts is not null && !Refers(table, item, facts))
        {
            broken.Add(id);
            return true;
        }

        if (!Revision(id, item, facts))
        {
            return false;
        }

        if (facts is null)
        {
            table.WriteParts(db, transaction, id, null);
            return Farm(id, item);
        }

        var columns = table.Columns(facts, item.Remarks);
        if (table.Broken(db, transaction, coopId, id, columns) is { } rule)
        {
            Add(item, rule.Code, rule.Field, string.Format(CultureInfo.InvariantCulture, rule.Message, item.Remarks.Name), rule.Remedy);
            broken.Add(id);
            return true;
        }

        table.WriteRow(db, transaction, coopId, id, live: true, columns);
        table.WriteParts(db, transaction, id, facts);
        foreach (var sha in table.Blobs(facts).Distinct(StringComparer.Ordinal))
        {
            db.Execute("INSERT INTO blob_use (sha256, item_id, revision) SELECT @sha, item_id, revision FROM head WHERE item_id = @id ON CONFLICT (sha256, item_id, revision) DO NOTHING", new { sha, id }, transaction);
        }

        return Farm(id, item);
    }

    // every identifier that the facts name is a live item of the right kind, of this co-op or shared
    private bool Refers(KindTable table, ItemToSave item, string facts)
    {
        var before = faults.Count;
        foreach (var r in table.References(facts))
        {
            if (broken.Contains(r.Id))
            {
                return false;
            }

            var there = db.QueryFirstOrDefault<string>("SELECT item_id FROM head WHERE item_id = @Id AND kind = @Kind AND live = 1 AND coop_id IN (@coopId, @shared)", new { r.Id, r.Kind, coopId, shared = Policy.Shared }, transaction);
            if (there is null)
            {
                var what = r.Kind.Replace('_', ' ');
                Add(item, "NOT_FOUND", r.Field, $"There is no such {what}.", $"Choose a {what} of this co-op.");
            }
        }

        return faults.Count == before;
    }

    private bool Revision(string id, ItemToSave item, string? facts)
    {
        var (remarks, sha) = (CanonicalJson.Write(item.Remarks), facts is null ? string.Empty : CanonicalJson.Sha256(facts));
        var live = facts is null ? 0L : 1L;
        var now = db.QueryFirstOrDefault<HeadRow>("SELECT coop_id AS CoopId, kind AS Kind, revision AS Revision, live AS Live FROM head WHERE item_id = @id", new { id }, transaction);
        if (now is null)
        {
            if (item.Expected is not null || facts is null)
            {
                return Missing(item);
            }

            db.Execute("INSERT INTO revision (item_id, revision, change_id, format, facts, remarks, facts_sha256) VALUES (@id, 1, @changeId, @Format, @facts, @remarks, @sha)", new { id, changeId, Format, facts, remarks, sha }, transaction);
            db.Execute("INSERT INTO head (item_id, coop_id, kind, revision, facts_sha256, live) VALUES (@id, @coopId, @Kind, 1, @sha, 1)", new { id, coopId, item.Kind, sha }, transaction);
            return true;
        }

        if (now.CoopId != coopId || now.Kind != item.Kind || !MaySee(id))
        {
            return Missing(item);
        }

        var revision = db.QueryFirstOrDefault<long?>(
            """
            INSERT INTO revision (item_id, revision, change_id, format, facts, remarks, facts_sha256)
            SELECT item_id, revision + 1, @changeId, @Format, @facts, @remarks, @sha FROM head WHERE item_id = @id AND revision = @expected RETURNING revision
            """, new { id, changeId, Format, facts, remarks, sha, expected = item.Expected ?? now.Revision }, transaction);
        if (revision is null)
        {
            ConflictItemId = id;
            return false;
        }

        if (now.Live == 0 && !revives)
        {
            Add(item, "DELETED", "id", $"\"{item.Remarks.Name ?? id}\" was deleted.", "Undo the deletion first.");
            return false;
        }

        db.Execute("UPDATE head SET revision = @revision, facts_sha256 = @sha, live = @live WHERE item_id = @id", new { revision, sha, live, id }, transaction);
        return true;
    }

    private bool MaySee(string id) =>
        db.QueryFirstOrDefault<string>($"SELECT h.item_id FROM item_scope h WHERE h.item_id = @id AND {Policy.Sees(viewer, "h")}", new { id, viewerCoops = viewer.CoopIds, viewerFarms = viewer.FarmIds }, transaction) is not null;

    // a viewer limited to farms writes what belongs to them, before and after
    private bool Farm(string id, ItemToSave item)
    {
        var farm = viewer.FarmIds is null ? null : db.QueryFirstOrDefault<string>("SELECT farm_id FROM item_scope WHERE item_id = @id", new { id }, transaction);
        return Policy.MayWriteFarm(viewer, farm) || Missing(item);
    }

    private void Held(string id, ItemToSave item)
    {
        var users = (from table in KindTables.All
                     from link in table.Links.Where(l => l.Target == item.Kind)
                     from user in db.Query<string>(Referrers.Sql(table, link), new { id }, transaction)
                     select user).Distinct(StringComparer.Ordinal).ToList();
        if (users.Count > 0)
        {
            var names = db.Query<(string Kind, string? Remarks)>("SELECT h.kind, r.remarks FROM head h JOIN revision r ON r.item_id = h.item_id AND r.revision = h.revision WHERE h.item_id IN @users ORDER BY h.item_id LIMIT 3", new { users }, transaction)
                .Select(r => $"{r.Kind.Replace('_', ' ')} {(r.Remarks is null ? null : CanonicalJson.Read<Remarks>(r.Remarks).Name)}".TrimEnd());
            Add(item, "IN_USE", "id", $"\"{item.Remarks.Name ?? id}\" is still used by {users.Count} {(users.Count == 1 ? "item" : "items")}: {string.Join(", ", names)}.", "Change or delete those first.");
        }
    }

    private bool Missing(ItemToSave item)
    {
        Add(item, "NOT_FOUND", "id", $"There is no such {item.Kind.Replace('_', ' ')}.", "Reload the page and choose one of this co-op.");
        return false;
    }

    private void Add(ItemToSave item, string code, string field, string message, string remedy) => faults.Add(new(code, field, message, remedy, item.File, item.Line));

    private sealed record HeadRow(string CoopId, string Kind, long Revision, long Live);
}
