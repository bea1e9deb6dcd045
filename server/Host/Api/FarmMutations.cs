using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Host.Loading;
using FarmPortfolio.Host.Storage;
using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>A farm to save; facts the form does not show stay as they are, and so does the membership where it is left out.</summary>
public sealed record SaveFarmInput([property: Id] string? Id, int? ExpectedRevision, [property: Id] string RequestId, string Name, string? Place, [property: Id] string? StationId, double? SalesUsd, double? WageUsdPerHour, double? ElectricityUsdPerKwh, MembershipInput? Membership);

/// <summary>What came of saving a farm.</summary>
public sealed record SaveFarmPayload([property: Id] string? FarmId, [property: Id] string? ChangeId, bool Conflict, IEnumerable<FaultView> Faults);

/// <summary>Farms and houses added, copied, deleted, brought in.</summary>
public sealed partial class Mutation
{
    /// <summary>Saves a farm, or adds one.</summary>
    public static SaveFarmPayload SaveFarm([FromServices] Register register, SaveFarmInput input)
    {
        var known = input.Id is null ? null : register.Farms.GetValueOrDefault(input.Id);
        var faults = new List<Fault>();
        if (input.Id is not null && known is null)
        {
            faults.Add(new("NOT_FOUND", "id", "There is no such farm.", "Reload the page."));
        }

        if (string.IsNullOrWhiteSpace(input.Name))
        {
            faults.Add(new("EMPTY", "name", "The farm has no name.", "Give it a name."));
        }

        Range("salesUsd", input.SalesUsd, 0, 1e9);
        Range("wageUsdPerHour", input.WageUsdPerHour, 0, 500);
        Range("electricityUsdPerKwh", input.ElectricityUsdPerKwh, 0, 5);
        var facts = known?.Facts ?? new();
        if (input.Membership is { } membership)
        {
            (facts, var wrong) = membership.On(register, facts, input.Id);
            faults.AddRange(wrong);
        }

        if (faults.Count > 0)
        {
            return new(null, null, false, faults.Select(FaultView.Of));
        }

        facts = facts with
        {
            WeatherStationId = input.StationId,
            SalesCents = input.SalesUsd is { } usd ? (long)Math.Round(usd * 100) : null,
            WageUsdPerHour = input.WageUsdPerHour,
            ElectricityUsdPerKwh = input.ElectricityUsdPerKwh,
        };
        var name = input.Name.Trim();
        var outcome = register.Items.Save(register.Viewer, register.Coop.Id, known is null ? $"{name} joins" : $"{name} is changed", input.RequestId,
            [new(ItemKind.Farm, input.Id, input.ExpectedRevision, facts, (known?.Remarks ?? new()) with { Name = name, Place = input.Place?.Trim() })]);
        return new(outcome.Ids.Count > 0 ? outcome.Ids[0] : null, outcome.ChangeId, outcome.ConflictItemId is not null, outcome.Faults.Select(FaultView.Of));

        void Range(string field, double? value, double low, double high)
        {
            if (value is { } v && !(v >= low && v <= high))
            {
                faults.Add(new("OUT_OF_RANGE", field, $"{v:#,0.##} is outside {low:0} to {high:#,0}.", $"Give a figure between {low:0} and {high:#,0}, or leave it empty."));
            }
        }
    }

    /// <summary>Adds a house from nine answers, with its farm and its tank or meter where they are new; or only shows what it would need.</summary>
    public static NewHousePayload NewHouse([FromServices] Register register, NewHouseInput input)
    {
        var (items, faults, preview) = Api.NewHouse.Of(register, input);
        if (faults.Count > 0 || input.CheckOnly == true)
        {
            return new(null, null, preview, faults.Select(FaultView.Of));
        }

        var outcome = register.Items.Save(register.Viewer, register.Coop.Id, $"{input.Name.Trim()} is added", input.RequestId, items);
        var at = items.ToList().FindIndex(i => i.Kind == ItemKind.House);
        return new(outcome.Ids.ElementAtOrDefault(at), outcome.ChangeId, preview, outcome.Faults.Select(FaultView.Of));
    }

    /// <summary>Copies a house with its options onto its own farm under another name.</summary>
    public static NewHousePayload CopyHouse([FromServices] Register register, [Id] string houseId, string name, [Id] string requestId)
    {
        if (!register.Houses.TryGetValue(houseId, out var house))
        {
            return new(null, null, null, [new("NOT_FOUND", "id", "There is no such house.", "Reload the page.", null, null)]);
        }

        if (string.IsNullOrWhiteSpace(name))
        {
            return new(null, null, null, [new("EMPTY", "name", "The copy has no name.", "Give it a name of its own.", null, null)]);
        }

        var (id, farm) = (register.Ids.New("h"), register.Farms[house.Facts.FarmId].Remarks.Name);
        var items = new List<ItemToSave> { new(ItemKind.House, id, null, house.Facts with { DrawKey = Noise.Key($"{farm}/{name.Trim()}") }, house.Remarks with { Name = name.Trim() }) };
        if (register.OptionSet(houseId) is { } set)
        {
            items.Add(new(ItemKind.OptionSet, null, null, set.Facts with { HouseId = id }, set.Remarks));
        }

        var outcome = register.Items.Save(register.Viewer, register.Coop.Id, $"{name.Trim()} is copied from {house.Remarks.Name}", requestId, items);
        return new(outcome.Ids.Count > 0 ? outcome.Ids[0] : null, outcome.ChangeId, null, outcome.Faults.Select(FaultView.Of));
    }

    /// <summary>Deletes an item with all that goes with it; the history keeps it and undo brings it back.</summary>
    public static SavePayload DeleteItem([FromServices] Register register, [Id] string id, int expectedRevision, [Id] string requestId) =>
        Saved(register.Items.Delete(register.Viewer, id, expectedRevision, requestId, register.Coop.Id));

    /// <summary>Looks at a sheet of farms and houses, and adds them as one change when asked and sound.</summary>
    public static ImportPayload ImportFarms([FromServices] Register register, [FromServices] UploadStore uploads, ImportInput input)
    {
        using var source = ImportSource.Open(register, uploads, input);
        if (source.Text is not { } text)
        {
            return source.Nothing;
        }

        var loaded = HouseSheet.Read(text, register.Catalogue, input.Unit switch { "SI" => true, "US" => false, _ => null });
        var plan = new FarmsPlan(Api.NewHouse.Known(register), register.Catalogue, register.Ids, register.SetFacts.FirstSeason, source.FileName);
        plan.Add(loaded.Value?.All ?? []);
        List<Fault> faults = [.. loaded.Faults, .. plan.Faults];
        int Of(string kind) => plan.Items.Count(i => i.Kind == kind);
        var words = loaded.Value is null ? "Nothing could be read." : $"{Of(ItemKind.Farm)} new {(Of(ItemKind.Farm) == 1 ? "farm" : "farms")}, {Of(ItemKind.House)} {(Of(ItemKind.House) == 1 ? "house" : "houses")}, {Of(ItemKind.SupplyGroup)} {(Of(ItemKind.SupplyGroup) == 1 ? "tank or meter" : "tanks and meters")}{(Of(ItemKind.FuelRecord) == 0 ? string.Empty : $", a winter's fuel for {Of(ItemKind.FuelRecord)}")}.";
        if (plan.Items.Count == 0 || input.CheckOnly != false || (faults.Any(f => f.Code != "UNKNOWN_COLUMN") && input.GoodRowsOnly != true))
        {
            return new(false, loaded.Rows, words, faults.Select(FaultView.Of)) { CanImport = plan.Items.Count > 0 };
        }

        var outcome = register.Items.Save(register.Viewer, register.Coop.Id, $"{Of(ItemKind.House)} {(Of(ItemKind.House) == 1 ? "house is" : "houses are")} brought in from {source.FileName}", input.RequestId, plan.Items);
        return source.Done(new(outcome.ChangeId is not null, loaded.Rows, words, [.. faults.Concat(outcome.Faults).Select(FaultView.Of)]));
    }
}

/// <summary>Something that goes with a deletion.</summary>
[Name("GoingWith")]
public sealed record GoingWithView([property: Id] string Id, string Kind, string? Name);

/// <summary>What a deletion would take, and the sheet to fill in.</summary>
public sealed partial class Query
{
    /// <summary>What goes when an item is deleted, the item itself the last.</summary>
    public static IEnumerable<GoingWithView> GoingWith([FromServices] Register register, [Id] string id) => register.Items.GoingWith(register.Viewer, id).Select(g => new GoingWithView(g.Id, g.Kind.Replace('_', ' '), g.Name));

    /// <summary>A sheet of farms and houses to fill in, as CSV.</summary>
    public static string HouseSheetTemplate() => HouseSheet.Template();
}
