using Dapper;
using FarmPortfolio.Host.Accounts;

namespace FarmPortfolio.Host.Storage;

/// <summary>A co-op.</summary>
/// <param name="Id">Identifier.</param>
/// <param name="Name">Name.</param>
/// <param name="IsDemo">1 for the invented one.</param>
public sealed record CoopRow(string Id, string Name, long IsDemo);

/// <summary>Co-ops.</summary>
/// <param name="database">Database.</param>
public sealed class CoopStore(Database database)
{
    /// <summary>Co-ops of a viewer, the demo last.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <returns>Co-ops.</returns>
    public IReadOnlyList<CoopRow> All(Viewer viewer)
    {
        using var db = database.Open();
        return [.. db.Query<CoopRow>("SELECT id AS Id, name AS Name, is_demo AS IsDemo FROM coop WHERE id <> 'shared' ORDER BY is_demo, id").Where(c => Policy.MayRead(viewer, c.Id))];
    }

    /// <summary>Adds a co-op where it is not there yet.</summary>
    /// <param name="viewer">Who.</param>
    /// <param name="id">Identifier.</param>
    /// <param name="name">Name.</param>
    /// <param name="isDemo">Whether it is invented.</param>
    /// <returns>Whether it is new.</returns>
    public bool Add(Viewer viewer, string id, string name, bool isDemo)
    {
        using var db = database.Open();
        return Policy.MayWrite(viewer, id) && db.Execute("INSERT INTO coop (id, name, is_demo, last_seq) VALUES (@id, @name, @demo, 0) ON CONFLICT (id) DO NOTHING", new { id, name, demo = isDemo ? 1L : 0L }) > 0;
    }

    /// <summary>Gives a co-op another name.</summary>
    /// <param name="viewer">Who.</param>
    /// <param name="id">Identifier.</param>
    /// <param name="name">The new name.</param>
    /// <returns>Whether there is such a co-op that the viewer may change.</returns>
    public bool Rename(Viewer viewer, string id, string name)
    {
        using var db = database.Open();
        return Policy.MayWrite(viewer, id) && db.Execute("UPDATE coop SET name = @name WHERE id = @id", new { id, name }) > 0;
    }
}
