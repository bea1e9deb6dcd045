using System.Text;
using Dapper;
using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Storage;

/// <summary>Studies, their frozen inputs and results.</summary>
/// <param name="database">Database.</param>
/// <param name="ids">Identifiers and the clock.</param>
public sealed class StudyStore(Database database, Ids ids)
{
    private static readonly FuelKind[] SummedFuels = [FuelKind.NaturalGas, FuelKind.Propane, FuelKind.FuelOil, FuelKind.Electricity, FuelKind.WoodPellets];

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

    /// <summary>The study done last, whichever co-op's.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <returns>The study, or null.</returns>
    public StudyRow? Newest(Viewer viewer)
    {
        using var db = database.Open();
        return db.Query<StudyRow>($"SELECT {Columns} FROM study WHERE state = 'done' ORDER BY done_utc DESC, number DESC").FirstOrDefault(s => Policy.MayRead(viewer, s.CoopId));
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

    /// <summary>Keeps a result, whole: its units by name, a row an option to sort and page by, its sums, and the rest as one text.</summary>
    /// <param name="viewer">Who.</param>
    /// <param name="id">Study.</param>
    /// <param name="outcome">What the study found; its units are kept already.</param>
    /// <param name="farmOf">Farm of a house.</param>
    /// <param name="seconds">Seconds it took.</param>
    /// <returns>Whether it was kept; false where the study is not running any more.</returns>
    public bool Finish(Viewer viewer, string id, StudyOutcome outcome, Func<string, string> farmOf, double seconds)
    {
        if (Find(viewer, id) is null)
        {
            return false;
        }

        var head = CanonicalJson.Write(outcome.Result with { SavingByPath = [], Options = [] });
        using var db = database.Open();
        using var transaction = db.BeginTransaction();
        var moved = db.Execute("UPDATE study SET state = 'done', done_utc = @at, seconds = @seconds, futures_sha256 = @futures, result_sha256 = @sha, result = @bytes WHERE id = @id AND state = 'running'",
            new { id, at = ids.Now(), seconds, futures = outcome.Result.FuturesSha256, sha = outcome.Result.ResultSha256, bytes = UnitStore.Pack(Encoding.UTF8.GetBytes(head)) }, transaction);
        if (moved == 0)
        {
            return false;
        }

        db.Execute("INSERT INTO study_unit (study_id, unit_no, unit_sha256) VALUES (@id, @No, @Sha)", outcome.Units.Select((u, i) => new { id, No = (long)i, Sha = u.Sha256 }), transaction);
        db.Execute(
            """
            INSERT INTO study_option (study_id, option_id, house_id, farm_id, fuel, option_key, outlay_usd, npv_p10_usd, npv_p50_usd, npv_p90_usd, saving_p50_usd, lasting_p50_season, never_share, data_grade, unit_sha256)
            VALUES (@id, @OptionId, @HouseId, @FarmId, @Fuel, @Key, @OutlayUsd, @P10, @P50, @P90, @Saving, @Season, @NeverShare, @Grade, @Sha)
            """,
            outcome.Units.SelectMany(u => u.Options.Select(o => new
            {
                id,
                OptionId = $"{o.HouseId}~{o.Key}",
                o.HouseId,
                FarmId = farmOf(o.HouseId),
                Fuel = o.Fuel.ToString(),
                o.Key,
                o.OutlayUsd,
                o.NpvUsd.P10,
                o.NpvUsd.P50,
                o.NpvUsd.P90,
                Saving = o.SavingUsd.P50,
                Season = (long?)o.Lasting.SeasonOf(0.5),
                o.Lasting.NeverShare,
                Grade = o.Grade.ToString(),
                Sha = u.Sha256,
            })), transaction);
        db.Execute("INSERT INTO study_sum (study_id, name, bytes) VALUES (@id, @Name, @Bytes)",
            SummedFuels.Select(f => new { id, Name = f.ToString(), Bytes = UnitStore.Pack(outcome.Sums.Bytes(f)) }), transaction);
        transaction.Commit();
        return true;
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

        var result = CanonicalJson.Read<StudyResult>(Encoding.UTF8.GetString(UnitStore.Unpack(bytes)));
        var units = db.Query<byte[]>("SELECT c.bytes FROM study_unit u JOIN computed c ON c.key_sha256 = u.unit_sha256 WHERE u.study_id = @id ORDER BY u.unit_no", new { id });
        return result with { Options = [.. result.Options, .. units.SelectMany(u => UnitResult.Read(UnitStore.Unpack(u)).Options)] };
    }

    /// <summary>A page of a study's options, worth most first, then by identifier.</summary>
    /// <param name="viewer">Who.</param>
    /// <param name="study">Study.</param>
    /// <param name="first">Most options.</param>
    /// <param name="after">Worth and identifier of the last one of the page before; null = from the start.</param>
    /// <param name="farmId">Options of this farm alone; null = of all.</param>
    /// <returns>Number of all, and the page with whether there are more.</returns>
    public (int Total, (IReadOnlyList<StudyOptionRow> Rows, bool More) Page) Options(Viewer viewer, StudyRow study, int first, (double WorthUsd, string OptionId)? after, string? farmId)
    {
        if (!Policy.MayRead(viewer, study.CoopId))
        {
            return (0, ([], false));
        }

        using var db = database.Open();
        var values = new { study.Id, farmId, worth = after?.WorthUsd, option = after?.OptionId, most = first + 1 };
        var those = "FROM study_option WHERE study_id = @Id" + (farmId is null ? string.Empty : " AND farm_id = @farmId");
        var rows = db.Query<StudyOptionRow>(
            $"SELECT option_id AS OptionId, house_id AS HouseId, option_key AS Key, npv_p50_usd AS WorthUsd {those}{(after is null ? string.Empty : " AND (npv_p50_usd < @worth OR (npv_p50_usd = @worth AND option_id > @option))")} " +
            "ORDER BY npv_p50_usd DESC, option_id LIMIT @most", values).ToList();
        return (db.QuerySingle<int>($"SELECT count(*) {those}", values), ([.. rows.Take(first)], rows.Count > first));
    }

    /// <summary>The newest study of a co-op that a new one can start from.</summary>
    /// <param name="viewer">Who.</param>
    /// <param name="coopId">Co-op.</param>
    /// <param name="inputs">Reads what a study read.</param>
    /// <returns>Its units and, when asked, sums and inputs; null where there is none.</returns>
    public EarlierStudy? Earlier(Viewer viewer, string coopId, Func<StudyRow, Portfolio> inputs)
    {
        using var db = database.Open();
        var row = db.QueryFirstOrDefault<StudyRow>(
            $"SELECT {Columns} FROM study WHERE coop_id = @coopId AND state = 'done' AND numbers_version = @version AND EXISTS (SELECT 1 FROM study_sum s WHERE s.study_id = study.id) ORDER BY number DESC",
            new { coopId, version = StudyRun.NumbersVersion });
        if (row is null || !Policy.MayRead(viewer, coopId))
        {
            return null;
        }

        var houses = db.Query<(string Unit, string House)>("SELECT DISTINCT unit_sha256, house_id FROM study_option WHERE study_id = @Id", new { row.Id }).ToLookup(r => r.Unit, r => r.House);
        var units = db.Query<string>("SELECT unit_sha256 FROM study_unit WHERE study_id = @Id", new { row.Id }).ToDictionary(u => u, u => (IReadOnlyList<string>)[.. houses[u]]);
        return new(row.FuturesSha256 ?? string.Empty, (int)row.NumbersVersion, units, () => Sums(row.Id), () => inputs(row));
    }

    private StudySums Sums(string id)
    {
        using var db = database.Open();
        var bytes = db.Query<(string Name, byte[] Bytes)>("SELECT name, bytes FROM study_sum WHERE study_id = @id", new { id }).ToDictionary(s => s.Name, s => s.Bytes);
        return StudySums.From([.. SummedFuels.Select(f => UnitStore.Unpack(bytes[f.ToString()]))]);
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
