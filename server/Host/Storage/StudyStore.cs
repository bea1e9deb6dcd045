using System.IO.Compression;
using System.Text;
using Dapper;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Storage;

/// <summary>A study as it is listed.</summary>
public sealed record StudyRow
{
    /// <summary>Identifier.</summary>
    public string Id { get; init; } = string.Empty;

    /// <summary>Co-op.</summary>
    public string CoopId { get; init; } = string.Empty;

    /// <summary>Number within the co-op.</summary>
    public long Number { get; init; }

    /// <summary>queued, running, done, failed, cancelled.</summary>
    public string State { get; init; } = string.Empty;

    /// <summary>Who asked.</summary>
    public string AskedBy { get; init; } = string.Empty;

    /// <summary>When.</summary>
    public string AskedUtc { get; init; } = string.Empty;

    /// <summary>When it ended.</summary>
    public string? DoneUtc { get; init; }

    /// <summary>Seconds it took.</summary>
    public double? Seconds { get; init; }

    /// <summary>Hash of its inputs.</summary>
    public string InputSha256 { get; init; } = string.Empty;

    /// <summary>Name of its futures.</summary>
    public string? FuturesSha256 { get; init; }

    /// <summary>Hash of its results.</summary>
    public string? ResultSha256 { get; init; }

    /// <summary>Version of the numbers.</summary>
    public long NumbersVersion { get; init; }

    /// <summary>Version of the program.</summary>
    public string ProgramVersion { get; init; } = string.Empty;

    /// <summary>Why it failed.</summary>
    public string? Failure { get; init; }
}

/// <summary>Studies, their frozen inputs and results.</summary>
/// <param name="database">Database.</param>
/// <param name="ids">Identifiers and the clock.</param>
public sealed class StudyStore(Database database, Ids ids)
{
    private const string Columns =
        "id AS Id, coop_id AS CoopId, number AS Number, state AS State, asked_by AS AskedBy, asked_utc AS AskedUtc, done_utc AS DoneUtc, seconds AS Seconds, input_sha256 AS InputSha256, " +
        "futures_sha256 AS FuturesSha256, result_sha256 AS ResultSha256, numbers_version AS NumbersVersion, program_version AS ProgramVersion, failure AS Failure";

    /// <summary>Freezes the inputs of a new study.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="coopId">Co-op.</param>
    /// <param name="programVersion">Version of the program.</param>
    /// <returns>The study; an equal one that is done, queued or running instead of a new one.</returns>
    public (StudyRow Study, bool SameAs) Add(Viewer viewer, string coopId, string programVersion)
    {
        using var db = database.Open();
        using var transaction = db.BeginTransaction();
        var id = ids.New("st");
        var lines = db.Query<string>(
            "SELECT kind || ' ' || item_id || ' ' || facts_sha256 FROM head WHERE coop_id IN (@coopId, 'shared') AND live = 1 AND kind IN @kinds ORDER BY kind, item_id",
            new { coopId, kinds = ItemKind.Studied }, transaction);
        var sha = CanonicalJson.Sha256(string.Join('\n', lines) + "\nnumbers " + StudyRun.NumbersVersion);
        var same = db.QueryFirstOrDefault<StudyRow>($"SELECT {Columns} FROM study WHERE coop_id = @coopId AND input_sha256 = @sha AND state IN ('done', 'queued', 'running')", new { coopId, sha }, transaction);
        if (same is not null)
        {
            return (same, true);
        }

        var number = db.QuerySingle<long>("SELECT coalesce(max(number), 0) + 1 FROM study WHERE coop_id = @coopId", new { coopId }, transaction);
        db.Execute(
            """
            INSERT INTO study (id, coop_id, number, state, asked_by, asked_utc, input_sha256, numbers_version, program_version)
            VALUES (@id, @coopId, @number, 'queued', @Name, @at, @sha, @version, @programVersion)
            """, new { id, coopId, number, viewer.Name, at = ids.Now(), sha, version = StudyRun.NumbersVersion, programVersion }, transaction);
        db.Execute(
            """
            INSERT INTO study_input (study_id, item_id, revision, facts_sha256)
            SELECT @id, item_id, revision, facts_sha256 FROM head WHERE coop_id IN (@coopId, 'shared') AND live = 1 AND kind IN @kinds
            """, new { id, coopId, kinds = ItemKind.Studied }, transaction);
        transaction.Commit();
        return (Find(viewer, id)!, false);
    }

    /// <summary>One study.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="id">Identifier.</param>
    /// <returns>The study, or null.</returns>
    public StudyRow? Find(Viewer viewer, string id)
    {
        using var db = database.Open();
        return db.QueryFirstOrDefault<StudyRow>($"SELECT {Columns} FROM study WHERE id = @id", new { id }) is { } row && Policy.MayRead(viewer, row.CoopId) ? row : null;
    }

    /// <summary>Studies of a co-op, newest first.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="coopId">Co-op.</param>
    /// <returns>Studies.</returns>
    public IReadOnlyList<StudyRow> All(Viewer viewer, string coopId)
    {
        using var db = database.Open();
        return Policy.MayRead(viewer, coopId) ? [.. db.Query<StudyRow>($"SELECT {Columns} FROM study WHERE coop_id = @coopId ORDER BY number DESC", new { coopId })] : [];
    }

    /// <summary>Studies that a stop of the program cut short are queued again.</summary>
    /// <param name="viewer">The program.</param>
    /// <returns>Studies waiting.</returns>
    public IReadOnlyList<StudyRow> Waiting(Viewer viewer)
    {
        using var db = database.Open();
        db.Execute("UPDATE study SET state = 'queued' WHERE state = 'running'");
        return [.. db.Query<StudyRow>($"SELECT {Columns} FROM study WHERE state = 'queued' ORDER BY asked_utc").Where(s => Policy.MayRead(viewer, s.CoopId))];
    }

    /// <summary>Moves a study on without a result.</summary>
    /// <param name="viewer">Who.</param>
    /// <param name="id">Study.</param>
    /// <param name="state">State.</param>
    /// <param name="failure">Why it failed.</param>
    public void Move(Viewer viewer, string id, string state, string? failure = null)
    {
        using var db = database.Open();
        if (Find(viewer, id) is not null)
        {
            db.Execute("UPDATE study SET state = @state, failure = @failure, done_utc = @at WHERE id = @id AND state IN ('queued', 'running')", new { id, state, failure, at = state is "running" or "queued" ? null : ids.Now() });
        }
    }

    /// <summary>Keeps a result, whole.</summary>
    /// <param name="viewer">Who.</param>
    /// <param name="id">Study.</param>
    /// <param name="result">Result.</param>
    /// <param name="seconds">Seconds it took.</param>
    public void Finish(Viewer viewer, string id, StudyResult result, double seconds)
    {
        var text = CanonicalJson.Write(result with { SavingByPath = [] });
        var paths = result.SavingByPath.SelectMany(p => System.Runtime.InteropServices.MemoryMarshal.AsBytes(p.AsSpan()).ToArray()).ToArray();
        var sha = CanonicalJson.Sha256(text + Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(paths)));
        using var packed = new MemoryStream();
        using (var gzip = new GZipStream(packed, CompressionLevel.Fastest, leaveOpen: true))
        {
            gzip.Write(Encoding.UTF8.GetBytes(text));
        }

        using var db = database.Open();
        if (Find(viewer, id) is not null)
        {
            db.Execute("UPDATE study SET state = 'done', done_utc = @at, seconds = @seconds, futures_sha256 = @futures, result_sha256 = @sha, result = @bytes WHERE id = @id AND state = 'running'",
                new { id, at = ids.Now(), seconds, futures = result.FuturesSha256, sha, bytes = packed.ToArray() });
        }
    }

    /// <summary>Reads a result, without its single futures.</summary>
    /// <param name="viewer">Who.</param>
    /// <param name="id">Study.</param>
    /// <returns>The result, or null.</returns>
    public StudyResult? Result(Viewer viewer, string id)
    {
        using var db = database.Open();
        if (Find(viewer, id) is null || db.QueryFirstOrDefault<byte[]>("SELECT result FROM study WHERE id = @id AND state = 'done'", new { id }) is not { } bytes)
        {
            return null;
        }

        using var reader = new StreamReader(new GZipStream(new MemoryStream(bytes), CompressionMode.Decompress), Encoding.UTF8);
        return CanonicalJson.Read<StudyResult>(reader.ReadToEnd());
    }

    /// <summary>The inputs of a kind as a study froze them.</summary>
    /// <typeparam name="T">Facts.</typeparam>
    /// <param name="viewer">Who.</param>
    /// <param name="study">Study.</param>
    /// <param name="kind">Kind.</param>
    /// <returns>Facts by identifier, in order of identifier.</returns>
    public IReadOnlyList<(string Id, T Facts)> Inputs<T>(Viewer viewer, StudyRow study, string kind)
    {
        using var db = database.Open();
        return Policy.MayRead(viewer, study.CoopId)
            ? [.. db.Query<(string Id, string Facts)>(
                """
                SELECT i.item_id, r.facts FROM study_input i JOIN head h ON h.item_id = i.item_id JOIN revision r ON r.item_id = i.item_id AND r.revision = i.revision
                WHERE i.study_id = @Id AND h.kind = @kind ORDER BY i.item_id
                """, new { study.Id, kind }).Select(r => (r.Id, CanonicalJson.Read<T>(r.Facts)))]
            : [];
    }

    /// <summary>Items changed, added or deleted since a study; asked, never stored.</summary>
    /// <param name="viewer">Who.</param>
    /// <param name="study">Study.</param>
    /// <returns>Item and kind.</returns>
    public IReadOnlyList<(string ItemId, string Kind, string? Name)> ChangedSince(Viewer viewer, StudyRow study)
    {
        using var db = database.Open();
        return Policy.MayRead(viewer, study.CoopId)
            ? [.. db.Query<(string, string, string?)>(
                """
                SELECT h.item_id, h.kind, r.remarks FROM head h JOIN revision r ON r.item_id = h.item_id AND r.revision = h.revision
                LEFT JOIN study_input i ON i.study_id = @Id AND i.item_id = h.item_id
                WHERE h.coop_id IN (@CoopId, 'shared') AND h.kind IN @kinds AND h.facts_sha256 <> COALESCE(i.facts_sha256, '')
                """, new { study.Id, study.CoopId, kinds = ItemKind.Studied })]
            : [];
    }
}
