using System.IO.Compression;
using Dapper;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Host.Accounts;

namespace FarmPortfolio.Host.Storage;

/// <summary>Results of units, each kept once by its name: what makes a study of one changed house quick and a study cut short go on where it stopped.</summary>
/// <param name="database">Database.</param>
/// <param name="ids">The clock.</param>
public sealed class UnitStore(Database database, Ids ids)
{
    private readonly Database database = database;
    private readonly Ids ids = ids;

    private const string Kind = "unit";

    /// <summary>The units at hand.</summary>
    /// <param name="viewer">The program; a unit's name is the hash of all its inputs, so it tells nobody anything he did not enter.</param>
    /// <returns>The memo.</returns>
    /// <exception cref="UnauthorizedAccessException">Somebody else asks.</exception>
    public IUnitMemo For(Viewer viewer) => viewer == Viewer.Program ? new Memo(this) : throw new UnauthorizedAccessException("units are kept by the program alone");

    /// <summary>Drops units that no study uses and that were not reckoned for some time: those of studies cut short or failed and never taken up again.</summary>
    /// <param name="viewer">The program.</param>
    /// <param name="unused">How long.</param>
    /// <returns>Units dropped.</returns>
    public int Sweep(Viewer viewer, TimeSpan unused)
    {
        using var db = database.Open();
        var beforeUtc = ids.Ago(unused);
        return viewer == Viewer.Program
            ? db.Execute("DELETE FROM computed WHERE kind = @Kind AND used_utc < @beforeUtc AND NOT EXISTS (SELECT 1 FROM study_unit u WHERE u.unit_sha256 = computed.key_sha256)", new { Kind, beforeUtc })
            : 0;
    }

    internal static byte[] Pack(byte[] text)
    {
        using var packed = new MemoryStream();
        using (var gzip = new GZipStream(packed, CompressionLevel.Fastest, leaveOpen: true))
        {
            gzip.Write(text);
        }

        return packed.ToArray();
    }

    internal static byte[] Unpack(byte[] bytes)
    {
        using var gzip = new GZipStream(new MemoryStream(bytes), CompressionMode.Decompress);
        using var text = new MemoryStream();
        gzip.CopyTo(text);
        return text.ToArray();
    }

    private sealed class Memo(UnitStore store) : IUnitMemo
    {
        public UnitResult? Find(string sha256)
        {
            using var db = store.database.Open();
            var bytes = db.QueryFirstOrDefault<byte[]>("SELECT bytes FROM computed WHERE key_sha256 = @sha256 AND kind = @Kind AND numbers_version = @version", new { sha256, Kind, version = StudyRun.NumbersVersion });
            return bytes is null ? null : UnitResult.Read(Unpack(bytes));
        }

        public void Keep(UnitResult result, byte[] text)
        {
            using var db = store.database.Open();
            db.Execute(
                "INSERT INTO computed (key_sha256, kind, numbers_version, used_utc, bytes) VALUES (@Sha256, @Kind, @version, @at, @bytes) ON CONFLICT (key_sha256) DO UPDATE SET used_utc = excluded.used_utc",
                new { result.Sha256, Kind, version = StudyRun.NumbersVersion, at = store.ids.Now(), bytes = Pack(text) });
        }
    }
}
