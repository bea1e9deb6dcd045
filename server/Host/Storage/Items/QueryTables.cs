using System.Data.Common;
using Dapper;
using FarmPortfolio.Host.Storage.Kinds;

namespace FarmPortfolio.Host.Storage.Items;

/// <summary>The query tables hold nothing of their own: they can be written anew from heads and revisions.</summary>
internal static class QueryTables
{
    /// <summary>Writes every query table anew.</summary>
    /// <param name="db">Connection.</param>
    /// <param name="transaction">Transaction.</param>
    public static void Rebuild(DbConnection db, DbTransaction transaction)
    {
        db.Execute("DELETE FROM house_supply; DELETE FROM milestone; DELETE FROM blob_use", transaction: transaction);
        foreach (var table in KindTables.All.Reverse())
        {
            db.Execute($"DELETE FROM {table.Kind}", transaction: transaction);
        }

        foreach (var table in KindTables.All)
        {
            // a deleted item keeps the columns of its last text, so that what once pointed at it still does
            var rows = db.Query<Row>(
                """
                SELECT h.item_id AS Id, h.coop_id AS CoopId, h.live AS Live, r.facts AS Facts, r.remarks AS Remarks FROM head h
                JOIN revision r ON r.item_id = h.item_id AND r.revision = (SELECT max(x.revision) FROM revision x WHERE x.item_id = h.item_id AND x.facts IS NOT NULL)
                WHERE h.kind = @Kind ORDER BY h.item_id
                """, new { table.Kind }, transaction).ToList();
            foreach (var row in rows)
            {
                table.WriteRow(db, transaction, row.CoopId, row.Id, row.Live == 1, table.Columns(row.Facts, row.Remarks is null ? new() : CanonicalJson.Read<Remarks>(row.Remarks)));
                table.WriteParts(db, transaction, row.Id, row.Live == 1 ? row.Facts : null);
            }
        }

        foreach (var (kind, table) in KindTables.All.Select(t => (t.Kind, t)))
        {
            var texts = db.Query<(string Id, long Revision, string Facts)>(
                "SELECT r.item_id, r.revision, r.facts FROM revision r JOIN head h ON h.item_id = r.item_id WHERE h.kind = @kind AND r.facts IS NOT NULL ORDER BY r.item_id, r.revision", new { kind }, transaction).ToList();
            foreach (var (id, revision, facts) in texts)
            {
                foreach (var sha in table.Blobs(facts).Distinct(StringComparer.Ordinal))
                {
                    db.Execute("INSERT INTO blob_use (sha256, item_id, revision) VALUES (@sha, @id, @revision)", new { sha, id, revision }, transaction);
                }
            }
        }
    }

    private sealed record Row(string Id, string CoopId, long Live, string Facts, string? Remarks);
}
