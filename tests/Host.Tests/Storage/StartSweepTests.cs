using Dapper;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage;

namespace FarmPortfolio.Host.Tests.Storage;

/// <summary>A start drops from the file what nothing uses, and nothing else.</summary>
public sealed class StartSweepTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("farm-portfolio-").FullName;

    [Fact]
    public async Task A_start_drops_numbers_that_nothing_uses_and_units_that_were_never_taken_up_again()
    {
        var database = new Database(Path.Combine(folder, "farm-portfolio.db"));
        var blob = new BlobStore(database).Save(Viewer.Local, [1, 2, 3]);
        using (var db = database.Open())
        {
            var ids = new Ids(TimeProvider.System);
            var (old, young) = (StartSweep.UnitsKeptFor + TimeSpan.FromHours(1), StartSweep.UnitsKeptFor - TimeSpan.FromHours(1));
            db.Execute("INSERT INTO computed (key_sha256, kind, numbers_version, used_utc, bytes) VALUES (@key, 'unit', 1, @at, x'00')",
                new[] { new { key = "old", at = ids.Ago(old) }, new { key = "young", at = ids.Ago(young) }, new { key = "used", at = ids.Ago(old) } });
            db.Execute(
                """
                INSERT INTO coop (id, name, last_seq) VALUES ('c', 'kept', 0);
                INSERT INTO study (id, coop_id, number, state, asked_by, asked_utc, input_sha256, numbers_version, program_version) VALUES ('s', 'c', 1, 'cancelled', 'x', '2026-01-01T00:00:00.000Z', 'x', 1, '0');
                INSERT INTO study_unit (study_id, unit_no, unit_sha256) VALUES ('s', 0, 'used');
                """);
        }

        using (var host = new HostOn(folder, demo: false))
        {
            Assert.NotNull((string?)(await host.Ask("{ version }"))["data"]!["version"]);
        }

        using var after = database.Open();
        Assert.Equal(["used", "young"], after.Query<string>("SELECT key_sha256 FROM computed ORDER BY key_sha256"));
        Assert.DoesNotContain(blob, after.Query<string>("SELECT sha256 FROM blob"));
    }

    public void Dispose()
    {
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
    }
}
