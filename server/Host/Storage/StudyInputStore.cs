using Dapper;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Storage;

/// <summary>An item as a study froze it, or as it holds now.</summary>
public sealed record InputText
{
    /// <summary>Item.</summary>
    public string ItemId { get; init; } = string.Empty;

    /// <summary>Kind.</summary>
    public string Kind { get; init; } = string.Empty;

    /// <summary>Facts.</summary>
    public string Facts { get; init; } = string.Empty;

    /// <summary>Remarks; null = none.</summary>
    public string? Remarks { get; init; }

    /// <summary>Hash of the facts.</summary>
    public string Sha256 { get; init; } = string.Empty;
}

/// <summary>Texts of a study's inputs, frozen and now.</summary>
/// <param name="database">Database.</param>
public sealed class StudyInputStore(Database database)
{
    /// <summary>All inputs of a study as it froze them.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="study">Study.</param>
    /// <returns>Texts in order of identifier.</returns>
    public IReadOnlyList<InputText> Frozen(Viewer viewer, StudyRow study)
    {
        using var db = database.Open();
        return Policy.MayRead(viewer, study.CoopId)
            ? [.. db.Query<InputText>(
                """
                SELECT i.item_id AS ItemId, h.kind AS Kind, r.facts AS Facts, r.remarks AS Remarks, i.facts_sha256 AS Sha256
                FROM study_input i JOIN head h ON h.item_id = i.item_id JOIN revision r ON r.item_id = i.item_id AND r.revision = i.revision
                WHERE i.study_id = @Id ORDER BY i.item_id
                """, new { study.Id })]
            : [];
    }

    /// <summary>What a study would freeze now.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="coopId">Co-op.</param>
    /// <returns>Texts in order of identifier.</returns>
    public IReadOnlyList<InputText> Now(Viewer viewer, string coopId)
    {
        using var db = database.Open();
        return Policy.MayRead(viewer, coopId)
            ? [.. db.Query<InputText>(
                """
                SELECT h.item_id AS ItemId, h.kind AS Kind, r.facts AS Facts, r.remarks AS Remarks, h.facts_sha256 AS Sha256
                FROM head h JOIN revision r ON r.item_id = h.item_id AND r.revision = h.revision
                WHERE h.coop_id IN (@coopId, 'shared') AND h.live = 1 AND h.kind IN @kinds ORDER BY h.item_id
                """, new { coopId, kinds = ItemKind.Studied })]
            : [];
    }
}
