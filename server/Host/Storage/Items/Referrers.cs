using System.Data.Common;
using Dapper;
using FarmPortfolio.Host.Storage.Kinds;

namespace FarmPortfolio.Host.Storage.Items;

/// <summary>Who points at an item.</summary>
internal static class Referrers
{
    /// <summary>Live items that point at @id by a link.</summary>
    /// <param name="table">Kind that points.</param>
    /// <param name="link">Its link.</param>
    /// <returns>SQL.</returns>
    public static string Sql(KindTable table, Link link) => link.Table is null
        ? $"SELECT id FROM {table.Kind} WHERE live = 1 AND {link.Column} = @id ORDER BY id"
        : $"SELECT DISTINCT t.id FROM {table.Kind} t JOIN {link.Table} p ON p.{link.IdColumn} = t.id WHERE t.live = 1 AND p.{link.Column} = @id ORDER BY t.id";

    /// <summary>All that goes with an item when it is deleted, those that point before those pointed at.</summary>
    /// <param name="db">Connection.</param>
    /// <param name="kind">Kind.</param>
    /// <param name="id">Item.</param>
    /// <returns>Kind and identifier; the item itself is the last.</returns>
    public static IReadOnlyList<(string Kind, string Id)> GoingWith(DbConnection db, string kind, string id)
    {
        var found = new List<(string Kind, string Id)> { (kind, id) };
        for (var i = 0; i < found.Count; i++)
        {
            foreach (var table in KindTables.All)
            {
                foreach (var link in table.Links.Where(l => l.Bond == Bond.GoesWith && l.Target == found[i].Kind))
                {
                    found.AddRange(db.Query<string>(Sql(table, link), new { id = found[i].Id }).Select(x => (table.Kind, x)).Where(x => !found.Contains(x)));
                }
            }
        }

        found.Reverse();
        return found;
    }
}
