using Dapper;
using FarmPortfolio.Host.Accounts;

namespace FarmPortfolio.Host.Storage;

/// <summary>One run of a study over again.</summary>
public sealed record AgainRow
{
    /// <summary>Identifier.</summary>
    public string Id { get; init; } = string.Empty;

    /// <summary>The study.</summary>
    public string StudyId { get; init; } = string.Empty;

    /// <summary>queued, running, done, failed, cancelled.</summary>
    public string State { get; init; } = string.Empty;

    /// <summary>When it was asked for.</summary>
    public string AskedUtc { get; init; } = string.Empty;

    /// <summary>Seconds it took; null until it is done.</summary>
    public double? Seconds { get; init; }

    /// <summary>1 where every figure is the same, bit for bit; null until it is done.</summary>
    public long? Same { get; init; }

    /// <summary>Checksum of the figures as stored; null until it is done.</summary>
    public string? StoredSha256 { get; init; }

    /// <summary>Checksum of the figures run again; null until it is done.</summary>
    public string? AgainSha256 { get; init; }

    /// <summary>The first field that differs; null = none.</summary>
    public string? FirstDifference { get; init; }

    /// <summary>Why it failed.</summary>
    public string? Failure { get; init; }
}

/// <summary>Studies run over again: what was asked, how far it is and what came of it.</summary>
/// <param name="database">Database.</param>
/// <param name="studies">Studies; who may read one may read its runs.</param>
/// <param name="ids">Identifiers and the clock.</param>
public sealed class StudyAgainStore(Database database, StudyStore studies, Ids ids)
{
    private const string Columns =
        "id AS Id, study_id AS StudyId, state AS State, asked_utc AS AskedUtc, seconds AS Seconds, same AS Same, stored_sha256 AS StoredSha256, again_sha256 AS AgainSha256, first_difference AS FirstDifference, failure AS Failure";

    /// <summary>Asks for a run.</summary>
    /// <param name="viewer">Who.</param>
    /// <param name="studyId">A study.</param>
    /// <returns>The run, one that waits or runs already instead of a new one; null where there is no such study.</returns>
    public AgainRow? Add(Viewer viewer, string studyId)
    {
        if (studies.Find(viewer, studyId) is null)
        {
            return null;
        }

        using var db = database.Open();
        using var transaction = db.BeginTransaction();
        if (db.QueryFirstOrDefault<AgainRow>($"SELECT {Columns} FROM study_again WHERE study_id = @studyId AND state IN ('queued', 'running')", new { studyId }, transaction) is { } waiting)
        {
            return waiting;
        }

        var id = ids.New("ag");
        db.Execute("INSERT INTO study_again (id, study_id, state, asked_by, asked_utc) VALUES (@id, @studyId, 'queued', @Name, @at)", new { id, studyId, viewer.Name, at = ids.Now() }, transaction);
        transaction.Commit();
        return Find(viewer, id);
    }

    /// <summary>One run.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="id">Identifier.</param>
    /// <returns>The run; null where there is none that the viewer may see.</returns>
    public AgainRow? Find(Viewer viewer, string id)
    {
        using var db = database.Open();
        return db.QueryFirstOrDefault<AgainRow>($"SELECT {Columns} FROM study_again WHERE id = @id", new { id }) is { } row && studies.Find(viewer, row.StudyId) is not null ? row : null;
    }

    /// <summary>The newest run of each of a co-op's studies that has one.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="coopId">Co-op.</param>
    /// <returns>Runs by study.</returns>
    public IReadOnlyDictionary<string, AgainRow> Newest(Viewer viewer, string coopId)
    {
        using var db = database.Open();
        return Policy.MayRead(viewer, coopId)
            ? db.Query<AgainRow>($"SELECT {Columns} FROM study_again WHERE study_id IN (SELECT s.id FROM study s WHERE s.coop_id = @coopId) ORDER BY asked_utc, id", new { coopId })
                .GroupBy(r => r.StudyId).ToDictionary(g => g.Key, g => g.Last())
            : new Dictionary<string, AgainRow>();
    }

    /// <summary>Runs that a stop of the program cut short are queued again.</summary>
    /// <param name="viewer">The program.</param>
    /// <returns>Runs waiting.</returns>
    public IReadOnlyList<AgainRow> Waiting(Viewer viewer)
    {
        using var db = database.Open();
        db.Execute("UPDATE study_again SET state = 'queued' WHERE state = 'running'");
        return [.. db.Query<AgainRow>($"SELECT {Columns} FROM study_again WHERE state = 'queued' ORDER BY asked_utc, id").Where(r => studies.Find(viewer, r.StudyId) is not null)];
    }

    /// <summary>Moves a run on that waits or runs; with what came of it where it is done.</summary>
    /// <param name="viewer">Who.</param>
    /// <param name="row">The run with its new state.</param>
    public void Move(Viewer viewer, AgainRow row)
    {
        if (studies.Find(viewer, row.StudyId) is null)
        {
            return;
        }

        using var db = database.Open();
        db.Execute(
            """
            UPDATE study_again SET state = @State, done_utc = @at, seconds = @Seconds, same = @Same, stored_sha256 = @StoredSha256, again_sha256 = @AgainSha256, first_difference = @FirstDifference, failure = @Failure
            WHERE id = @Id AND state IN ('queued', 'running')
            """,
            new { row.Id, row.State, at = row.State is "queued" or "running" ? null : ids.Now(), row.Seconds, row.Same, row.StoredSha256, row.AgainSha256, row.FirstDifference, row.Failure });
    }
}
