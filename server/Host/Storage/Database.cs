using System.Data.Common;
using Dapper;
using FarmPortfolio.Host.Storage.Items;
using Microsoft.Data.Sqlite;

namespace FarmPortfolio.Host.Storage;

/// <summary>Opens the database file and brings it to the newest shape.</summary>
public sealed class Database
{
    private readonly string connectionString;
    private long opened;

    /// <summary>Opens or creates the file.</summary>
    /// <param name="path">Path of the file.</param>
    public Database(string path)
        : this(path, _ => true)
    {
    }

    /// <summary>Opens or creates the file with some of the migrations only.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="takes">Whether a migration, by its number and name, is run.</param>
    internal Database(string path, Func<string, bool> takes)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(path))!);
        connectionString = new SqliteConnectionStringBuilder { DataSource = path, ForeignKeys = true, Pooling = true }.ToString();
        using var db = Open();
        db.Execute("PRAGMA journal_mode=WAL");
        Migrate(db, takes);
    }

    /// <summary>Connections opened so far: one a call of a store, so that it tells a list that asks again for every row.</summary>
    public long Opened => Interlocked.Read(ref opened);

    /// <summary>Opens a connection. FULL, for an answered save must outlast a power cut.</summary>
    /// <returns>An open connection; the caller disposes it.</returns>
    public DbConnection Open()
    {
        var db = new SqliteConnection(connectionString);
        db.Open();
        Interlocked.Increment(ref opened);
        db.Execute("PRAGMA synchronous=FULL; PRAGMA busy_timeout=5000");
        return db;
    }

    private static void Migrate(DbConnection db, Func<string, bool> takes)
    {
        const string folder = ".migrations.";
        db.Execute("CREATE TABLE IF NOT EXISTS schema_version (name TEXT PRIMARY KEY)");
        var done = db.Query<string>("SELECT name FROM schema_version").ToHashSet(StringComparer.Ordinal);
        var assembly = typeof(Database).Assembly;
        var all = assembly.GetManifestResourceNames().Where(n => n.Contains(folder, StringComparison.Ordinal) && n.EndsWith(".sql", StringComparison.Ordinal)).Order(StringComparer.Ordinal).ToList();
        var wanted = all.Where(n => !done.Contains(n) && takes(n[(n.IndexOf(folder, StringComparison.Ordinal) + folder.Length)..])).ToList();
        foreach (var name in wanted)
        {
            using var reader = new StreamReader(assembly.GetManifestResourceStream(name)!);
            using var transaction = db.BeginTransaction();
            db.Execute(reader.ReadToEnd(), transaction: transaction);
            db.Execute("INSERT INTO schema_version (name) VALUES (@name)", new { name }, transaction);

            // a migration may make query tables anew, empty; the last one fills them, in its own transaction
            if (name == all[^1])
            {
                QueryTables.Rebuild(db, transaction);
            }

            transaction.Commit();
        }
    }
}
