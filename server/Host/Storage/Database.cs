using System.Data.Common;
using Dapper;
using Microsoft.Data.Sqlite;

namespace FarmPortfolio.Host.Storage;

/// <summary>Opens the database file and brings it to the newest shape.</summary>
public sealed class Database
{
    private readonly string connectionString;

    /// <summary>Opens or creates the file.</summary>
    /// <param name="path">Path of the file.</param>
    public Database(string path)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(path))!);
        connectionString = new SqliteConnectionStringBuilder { DataSource = path, ForeignKeys = true, Pooling = true }.ToString();
        using var db = Open();
        db.Execute("PRAGMA journal_mode=WAL");
        Migrate(db);
    }

    /// <summary>Opens a connection.</summary>
    /// <returns>An open connection; the caller disposes it.</returns>
    public DbConnection Open()
    {
        var db = new SqliteConnection(connectionString);
        db.Open();
        db.Execute("PRAGMA synchronous=FULL; PRAGMA busy_timeout=5000");
        return db;
    }

    private static void Migrate(DbConnection db)
    {
        db.Execute("CREATE TABLE IF NOT EXISTS schema_version (name TEXT PRIMARY KEY)");
        var done = db.Query<string>("SELECT name FROM schema_version").ToHashSet(StringComparer.Ordinal);
        var assembly = typeof(Database).Assembly;
        foreach (var name in assembly.GetManifestResourceNames().Where(n => n.EndsWith(".sql", StringComparison.Ordinal)).Order(StringComparer.Ordinal).Where(n => !done.Contains(n)))
        {
            using var reader = new StreamReader(assembly.GetManifestResourceStream(name)!);
            using var transaction = db.BeginTransaction();
            db.Execute(reader.ReadToEnd(), transaction: transaction);
            db.Execute("INSERT INTO schema_version (name) VALUES (@name)", new { name }, transaction);
            transaction.Commit();
        }
    }
}
