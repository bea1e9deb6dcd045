using System.Data.Common;
using Dapper;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Storage.Kinds;

/// <summary>Houses, and which supply groups feed them.</summary>
internal sealed class HouseTable() : KindTable<HouseFacts>(ItemKind.House, "h")
{
    /// <inheritdoc/>
    public override IReadOnlyList<Link> Links { get; } =
        [new("farm_id", ItemKind.Farm, Bond.GoesWith), new("supply_group_id", ItemKind.SupplyGroup, Bond.Holds, "house_supply", "house_id")];

    /// <inheritdoc/>
    public override IReadOnlyList<Unique> Uniques { get; } =
    [
        Unique.Name("farm_id"),
        new(["draw_key"], "DRAW_KEY_TAKEN", "drawKey", "Another house has the draw key of \"{0}\".", "Give each house a key of its own; a new house gets one by itself."),
    ];

    /// <inheritdoc/>
    public override void WriteParts(DbConnection db, DbTransaction transaction, string id, string? facts)
    {
        db.Execute("DELETE FROM house_supply WHERE house_id = @id", new { id }, transaction);
        if (facts is not null)
        {
            db.Execute(
                """
                INSERT INTO house_supply (house_id, supply_group_id, heater_no, share) VALUES (@id, @SupplyGroupId, @HeaterNo, @Share)
                ON CONFLICT (house_id, supply_group_id, heater_no) DO UPDATE SET share = house_supply.share + @Share
                """, CanonicalJson.Read<HouseFacts>(facts).Supplies.Select(s => new { id, s.SupplyGroupId, s.HeaterNo, s.Share }), transaction);
        }
    }

    /// <inheritdoc/>
    protected override Dictionary<string, object?> Columns(HouseFacts facts, Remarks remarks) => new(Named(remarks))
    {
        ["farm_id"] = facts.FarmId,
        ["shape"] = facts.Shape.ToString(),
        ["floor_area_m2"] = facts.Bays * facts.WidthM * facts.LengthM,
        ["draw_key"] = facts.DrawKey,
        ["film_due_year"] = facts.FilmDueYear,
    };

    /// <inheritdoc/>
    protected override IEnumerable<Reference> References(HouseFacts facts) =>
        [new("farmId", ItemKind.Farm, facts.FarmId), .. facts.Supplies.Select(s => new Reference("supplies", ItemKind.SupplyGroup, s.SupplyGroupId))];
}
