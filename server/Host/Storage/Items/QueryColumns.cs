using System.Data.Common;
using Dapper;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.HeatDemand;

namespace FarmPortfolio.Host.Storage.Items;

/// <summary>Writes the query tables from an item's text, in the transaction that saves it.</summary>
internal static class QueryColumns
{
    /// <summary>Names are compared trimmed and folded.</summary>
    internal static string NameKey(string? name) => string.Join(' ', (name ?? string.Empty).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).ToLowerInvariant();

    internal static void Write(DbConnection db, DbTransaction transaction, string coopId, string id, string kind, string? facts, Remarks remarks)
    {
        if (facts is null)
        {
            db.Execute("UPDATE farm SET live = 0 WHERE id = @id; UPDATE house SET live = 0 WHERE id = @id", new { id }, transaction);
            return;
        }

        var (name, key) = (remarks.Name ?? string.Empty, NameKey(remarks.Name));
        if (kind == ItemKind.Farm)
        {
            var farm = CanonicalJson.Read<FarmFacts>(facts);
            db.Execute(
                """
                INSERT INTO farm (id, coop_id, live, name, name_key, weather_station_id, related_key) VALUES (@id, @coopId, 1, @name, @key, @WeatherStationId, @RelatedKey)
                ON CONFLICT (id) DO UPDATE SET live = 1, name = @name, name_key = @key, weather_station_id = @WeatherStationId, related_key = @RelatedKey
                """, new { id, coopId, name, key, farm.WeatherStationId, farm.RelatedKey }, transaction);
        }
        else if (kind == ItemKind.House)
        {
            var house = CanonicalJson.Read<HouseFacts>(facts);
            var floor = house.Bays * house.WidthM * house.LengthM;
            db.Execute(
                """
                INSERT INTO house (id, coop_id, live, farm_id, name, name_key, shape, floor_area_m2, draw_key) VALUES (@id, @coopId, 1, @FarmId, @name, @key, @shape, @floor, @DrawKey)
                ON CONFLICT (id) DO UPDATE SET live = 1, farm_id = @FarmId, name = @name, name_key = @key, shape = @shape, floor_area_m2 = @floor, draw_key = @DrawKey
                """, new { id, coopId, house.FarmId, name, key, shape = house.Shape.ToString(), floor, house.DrawKey }, transaction);
        }
    }
}
