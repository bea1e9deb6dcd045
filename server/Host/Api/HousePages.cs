using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>Which houses to list; what is left out does not limit.</summary>
public sealed record HouseFilterInput(string? Text, FuelKind? Fuel, HouseShape? Shape, string? RoofCoveringCode, DataGrade? Grade, string? HeatingPlanCode, [property: Id] string? FarmId);

/// <summary>A page of houses.</summary>
public sealed record HousePage(IEnumerable<HouseView> Items, string? Next, int Total);

/// <summary>Houses of the whole co-op.</summary>
public sealed partial class CoopView
{
    private const int MostAPage = 200;

    /// <summary>Houses by farm and name; the cursor holds the last one's names and identifier.</summary>
    public HousePage Houses(HouseFilterInput? filter = null, int first = 50, string? after = null)
    {
        var all = register.Houses.Values.Select(h => (Item: h, Key: Key(h))).Where(h => Fits(h.Item, filter)).OrderBy(h => h.Key, StringComparer.Ordinal).ToList();
        var page = all.Where(h => after is null || string.CompareOrdinal(h.Key, after) > 0).Take(Math.Clamp(first, 1, MostAPage)).ToList();
        return new([.. page.Select(h => new HouseView(register, h.Item))], page.Count > 0 && page[^1].Item.Id != all[^1].Item.Id ? page[^1].Key : null, all.Count);
    }

    private string Key(Item<HouseFacts> h) => $"{register.Farms[h.Facts.FarmId].Remarks.Name}\n{h.Remarks.Name}\n{h.Id}";

    private bool Fits(Item<HouseFacts> h, HouseFilterInput? f) =>
        f is null ||
        ((string.IsNullOrWhiteSpace(f.Text) || $"{register.Farms[h.Facts.FarmId].Remarks.Name} {h.Remarks.Name}".Contains(f.Text.Trim(), StringComparison.OrdinalIgnoreCase)) &&
        (f.FarmId is null || h.Facts.FarmId == f.FarmId) &&
        (f.Fuel is not { } fuel || register.Fuel(h.Facts) == fuel) &&
        (f.Shape is not { } shape || h.Facts.Shape == shape) &&
        (f.RoofCoveringCode is not { } code || (h.Facts.Surfaces.FirstOrDefault(s => s.Part == SurfacePart.Roof)?.CoveringCode ?? "doublefilm") == code) &&
        (f.HeatingPlanCode is not { } plan || (h.Facts.HeatingPeriods.Count == 0 && (h.Facts.HeatingPlanCode ?? "spring") == plan)) &&
        (f.Grade is not { } grade || new HouseView(register, h).DataGrade == grade));
}
