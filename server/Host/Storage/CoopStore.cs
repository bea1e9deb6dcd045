using Dapper;
using FarmPortfolio.Host.Accounts;

namespace FarmPortfolio.Host.Storage;

/// <summary>A co-op.</summary>
/// <param name="Id">Identifier.</param>
/// <param name="Name">Name.</param>
/// <param name="IsDemo">1 for the invented one.</param>
public sealed record CoopRow(string Id, string Name, long IsDemo);

/// <summary>Co-ops and blobs.</summary>
/// <param name="database">Database.</param>
public sealed class CoopStore(Database database)
{
    /// <summary>Co-ops of a viewer, the demo last.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <returns>Co-ops.</returns>
    public IReadOnlyList<CoopRow> All(Viewer viewer)
    {
        using var db = database.Open();
        return [.. db.Query<CoopRow>("SELECT id AS Id, name AS Name, is_demo AS IsDemo FROM coop WHERE id <> 'shared' ORDER BY is_demo, id").Where(c => viewer.May(c.Id))];
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
        return viewer.May(id) && db.Execute("INSERT INTO coop (id, name, is_demo, last_seq) VALUES (@id, @name, @demo, 0) ON CONFLICT (id) DO NOTHING", new { id, name, demo = isDemo ? 1 : 0 }) > 0;
    }

    /// <summary>Keeps numbers under their hash.</summary>
    /// <param name="viewer">Who.</param>
    /// <param name="values">Numbers.</param>
    /// <returns>SHA-256 of their bytes.</returns>
    public string SaveBlob(Viewer viewer, double[] values)
    {
        var bytes = System.Runtime.InteropServices.MemoryMarshal.AsBytes(values.AsSpan()).ToArray();
        var sha = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(bytes));
        using var db = database.Open();
        if (viewer.May(sha))
        {
            db.Execute("INSERT INTO blob (sha256, size_bytes, bytes) VALUES (@sha, @size, @bytes) ON CONFLICT (sha256) DO NOTHING", new { sha, size = bytes.Length, bytes });
        }

        return sha;
    }

    /// <summary>Reads numbers.</summary>
    /// <param name="viewer">Who.</param>
    /// <param name="sha">Hash.</param>
    /// <returns>Numbers; null where there are none.</returns>
    public double[]? Blob(Viewer viewer, string sha)
    {
        using var db = database.Open();
        return viewer.May(sha) && db.QueryFirstOrDefault<byte[]>("SELECT bytes FROM blob WHERE sha256 = @sha", new { sha }) is { } bytes
            ? System.Runtime.InteropServices.MemoryMarshal.Cast<byte, double>(bytes).ToArray()
            : null;
    }
}
