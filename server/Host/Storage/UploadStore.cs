using System.Security.Cryptography;
using System.Text;
using FarmPortfolio.Host.Accounts;

namespace FarmPortfolio.Host.Storage;

/// <summary>A file that was sent and waits to be looked at or imported.</summary>
/// <param name="Id">Identifier; known to whoever sent it alone.</param>
/// <param name="FileName">Name on the sender's machine.</param>
/// <param name="Bytes">Size.</param>
public sealed record Upload(string Id, string FileName, long Bytes);

/// <summary>
/// Files on their way in, in the folder uploads beside the database: too large for a request of the API, and not yet kept. Each belongs to one co-op and is dropped when it is
/// imported, or after <see cref="KeptFor"/>.
/// </summary>
/// <param name="folder">Folder; made when the first file comes.</param>
/// <param name="mostBytes">Largest file taken.</param>
/// <param name="clock">Clock.</param>
public sealed class UploadStore(string folder, long mostBytes, TimeProvider clock)
{
    /// <summary>Bytes that come before a file is looked at for the first time.</summary>
    public const int HeadBytes = 64 * 1024;

    private const int IdBytes = 16;
    private const int LongestName = 200;
    private const string Part = ".part";

    /// <summary>How long a file that nobody imports is kept.</summary>
    internal static TimeSpan KeptFor { get; } = TimeSpan.FromDays(7);

    /// <summary>Largest file taken, bytes.</summary>
    internal long MostBytes => mostBytes;

    /// <summary>Takes a file as it comes, in bounded memory. Nothing of it stays where it is refused, too long or cut off.</summary>
    /// <param name="viewer">Who sends.</param>
    /// <param name="coopId">Co-op it is for.</param>
    /// <param name="fileName">Name on the sender's machine.</param>
    /// <param name="body">Its bytes.</param>
    /// <param name="refuses">Looks at the first <see cref="HeadBytes"/>: true = the rest is not read.</param>
    /// <param name="cancel">The sender gave up.</param>
    /// <returns>The file; null where it was refused by its head, is longer than may be, or may not be written by the viewer.</returns>
    public async Task<Upload?> Take(Viewer viewer, string coopId, string fileName, Stream body, Func<ReadOnlyMemory<byte>, bool> refuses, CancellationToken cancel)
    {
        if (!Policy.MayWrite(viewer, coopId))
        {
            return null;
        }

        Directory.CreateDirectory(folder);
        Sweep();
        var id = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(IdBytes));
        var path = PathOf(coopId, id);
        var whole = false;
        try
        {
            var head = new byte[HeadBytes];
            var bytes = (long)await body.ReadAtLeastAsync(head, HeadBytes, throwOnEndOfStream: false, cancel);
            if (refuses(head.AsMemory(0, (int)bytes)))
            {
                return null;
            }

            await using (var file = new FileStream(path + Part, FileMode.CreateNew, FileAccess.Write, FileShare.None, HeadBytes, useAsync: true))
            {
                await file.WriteAsync(head.AsMemory(0, (int)bytes), cancel);
                for (int read; bytes <= mostBytes && (read = await body.ReadAsync(head, cancel)) > 0; bytes += read)
                {
                    await file.WriteAsync(head.AsMemory(0, read), cancel);
                }
            }

            if (bytes > mostBytes)
            {
                return null;
            }

            var name = Short(fileName);
            await File.WriteAllTextAsync(path + ".name", name, Encoding.UTF8, cancel);
            File.Move(path + Part, path);
            whole = true;
            return new(id, name, bytes);
        }
        finally
        {
            if (!whole)
            {
                Remove(path);
            }
        }
    }

    /// <summary>Opens a file that was taken.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="coopId">Co-op it was sent for.</param>
    /// <param name="id">Identifier.</param>
    /// <returns>Its bytes and its name; null where there is none.</returns>
    public (Stream Bytes, string FileName)? Open(Viewer viewer, string coopId, string id)
    {
        if (!Policy.MayRead(viewer, coopId) || id.Length != 2 * IdBytes || !id.All(char.IsAsciiHexDigitLower) || PathOf(coopId, id) is var path && !File.Exists(path))
        {
            return null;
        }

        return (new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete), File.ReadAllText(path + ".name", Encoding.UTF8));
    }

    /// <summary>Drops a file.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="coopId">Co-op it was sent for.</param>
    /// <param name="id">Identifier.</param>
    public void Drop(Viewer viewer, string coopId, string id)
    {
        if (Policy.MayWrite(viewer, coopId) && id.Length == 2 * IdBytes && id.All(char.IsAsciiHexDigitLower))
        {
            Remove(PathOf(coopId, id));
        }
    }

    // the co-op is part of the name, so that an identifier of one co-op opens nothing of another
    private string PathOf(string coopId, string id) => Path.Combine(folder, Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"{coopId}\n{id}"))));

    private static string Short(string fileName)
    {
        var name = string.Concat(fileName.Where(c => !char.IsControl(c))).Trim();
        return name.Length == 0 ? "a file" : name[..Math.Min(name.Length, LongestName)];
    }

    private static void Remove(string path)
    {
        foreach (var end in new[] { string.Empty, Part, ".name" })
        {
            File.Delete(path + end);
        }
    }

    private void Sweep()
    {
        var old = clock.GetUtcNow().UtcDateTime - KeptFor;
        foreach (var path in Directory.EnumerateFiles(folder).Where(f => File.GetLastWriteTimeUtc(f) < old))
        {
            File.Delete(path);
        }
    }
}
