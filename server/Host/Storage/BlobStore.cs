using System.Runtime.InteropServices;
using System.Security.Cryptography;
using Dapper;
using FarmPortfolio.Host.Accounts;

namespace FarmPortfolio.Host.Storage;

/// <summary>Bulk numbers, stored once under their hash: little-endian float64 as recorded, NaN = missing.</summary>
/// <param name="database">Database.</param>
public sealed class BlobStore(Database database)
{
    /// <summary>Keeps numbers. What no revision comes to use is swept at the next start.</summary>
    /// <param name="viewer">Who.</param>
    /// <param name="values">Numbers.</param>
    /// <returns>SHA-256 of their bytes.</returns>
    public string Save(Viewer viewer, double[] values)
    {
        ArgumentNullException.ThrowIfNull(viewer);
        var bytes = MemoryMarshal.AsBytes(values.AsSpan()).ToArray();
        var sha = Convert.ToHexStringLower(SHA256.HashData(bytes));
        using var db = database.Open();
        db.Execute("INSERT INTO blob (sha256, size_bytes, bytes) VALUES (@sha, @size, @bytes) ON CONFLICT (sha256) DO NOTHING", new { sha, size = (long)bytes.Length, bytes });
        return sha;
    }

    /// <summary>Reads numbers that an item uses which the viewer may see.</summary>
    /// <param name="viewer">Who.</param>
    /// <param name="sha">Hash.</param>
    /// <returns>Numbers; null where there are none.</returns>
    public double[]? Read(Viewer viewer, string sha)
    {
        using var db = database.Open();
        return db.QueryFirstOrDefault<byte[]>(
            $"SELECT b.bytes FROM blob b WHERE b.sha256 = @sha AND EXISTS (SELECT 1 FROM blob_use u JOIN item_scope h ON h.item_id = u.item_id WHERE u.sha256 = b.sha256 AND {Policy.Sees(viewer, "h")})",
            new { sha, viewerCoops = viewer.CoopIds, viewerFarms = viewer.FarmIds }) is { } bytes ? MemoryMarshal.Cast<byte, double>(bytes).ToArray() : null;
    }

    /// <summary>Drops what nothing uses. Only before requests are served: a blob is kept a moment before the revision that uses it.</summary>
    /// <param name="viewer">The program.</param>
    /// <returns>Blobs dropped.</returns>
    public int Sweep(Viewer viewer)
    {
        using var db = database.Open();
        return viewer.Role == ViewerRole.Program ? db.Execute("DELETE FROM blob WHERE sha256 NOT IN (SELECT sha256 FROM blob_use)") : 0;
    }
}
