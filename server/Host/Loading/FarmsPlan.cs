using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Host.Storage;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Loading;

/// <summary>What a co-op has already, for joining a sheet to it.</summary>
/// <param name="Farms">Farms.</param>
/// <param name="Houses">Houses.</param>
/// <param name="Groups">Tanks and meters.</param>
/// <param name="Stations">Weather stations.</param>
/// <param name="Recorded">Tanks and meters that have a fuel record.</param>
public sealed record KnownFarms(
    IEnumerable<Item<FarmFacts>> Farms, IEnumerable<Item<HouseFacts>> Houses, IEnumerable<Item<SupplyGroupFacts>> Groups, IEnumerable<Item<Engine.Weather.WeatherStationFacts>> Stations, IEnumerable<string> Recorded);

/// <summary>Turns rows of a houses' sheet into items that can be saved as one change: rows join on farm and house names, a name that is nearly another's is asked about.</summary>
/// <param name="known">What is there.</param>
/// <param name="catalogue">Catalogue.</param>
/// <param name="ids">Source of identifiers.</param>
/// <param name="firstSeason">First season of the co-op's assumptions.</param>
/// <param name="file">Name of the file, for the faults.</param>
public sealed class FarmsPlan(KnownFarms known, Catalogue catalogue, Ids ids, int firstSeason, string? file = null)
{
    private readonly List<Fault> faults = [];
    private readonly List<ItemToSave> items = [];
    private readonly UsedFuel used = new(known, firstSeason, file);
    private readonly Dictionary<string, (string Id, string Name)> farms = known.Farms.ToDictionary(f => Names.Key(f.Remarks.Name ?? f.Id), f => (f.Id, f.Remarks.Name ?? f.Id));
    private readonly HashSet<(string FarmId, string House)> houses = [.. known.Houses.Select(h => (h.Facts.FarmId, Names.Key(h.Remarks.Name ?? h.Id)))];
    private readonly Dictionary<string, List<(string Id, string Key, SupplyGroupFacts Facts)>> groups = known.Groups.GroupBy(g => g.Facts.FarmId)
        .ToDictionary(g => g.Key, g => g.Select(s => (s.Id, Names.Key(s.Remarks.Name ?? s.Id), s.Facts)).ToList());
    private readonly Dictionary<string, string> stations = known.Stations.GroupBy(s => Names.Key(s.Remarks.Name ?? s.Id)).ToDictionary(g => g.Key, g => g.First().Id);

    /// <summary>What cannot stand, with the line it comes from.</summary>
    public IReadOnlyList<Fault> Faults => faults;

    /// <summary>Items to save, in one change.</summary>
    public IReadOnlyList<ItemToSave> Items => items;

    /// <summary>Adds rows.</summary>
    /// <param name="rows">Rows.</param>
    public void Add(IEnumerable<HouseRow> rows)
    {
        foreach (var row in rows)
        {
            if (Farm(row) is { } farm && row.House is not null)
            {
                House(row, farm.Id, farm.Name);
            }
        }

        var (records, absurd) = used.Records(items);
        items.AddRange(records);
        faults.AddRange(absurd);
    }

    private (string Id, string Name)? Farm(HouseRow row)
    {
        var key = Names.Key(row.Farm);
        if (farms.TryGetValue(key, out var there))
        {
            return there;
        }

        if (farms.FirstOrDefault(f => HouseWords.Near(f.Key, key)) is { Value.Name: { } near })
        {
            Bad(row, "NEAR_NAME", "farm", $"\"{row.Farm}\" is nearly \"{near}\", which is there already.", $"Write \"{near}\" if it is the same farm; if it is another, add it on the Farms page first.");
            return null;
        }

        string? station = null;
        if (row.Station is { } told && !stations.TryGetValue(Names.Key(told), out station))
        {
            Bad(row, "NOT_FOUND", "weather station", $"There is no weather station \"{told}\" here.", stations.Count > 0 ? $"Write one of {string.Join(", ", known.Stations.Select(s => s.Remarks.Name))}, or import its record first." : "Import its record first, or leave the cell empty.");
            return null;
        }

        station ??= stations.Count == 1 ? stations.Values.First() : null;
        var id = ids.New("f");
        items.Add(new(ItemKind.Farm, id, null, new FarmFacts { WeatherStationId = station, SalesCents = row.SalesCents }, new(row.Farm, row.Place), file, row.Line));
        return farms[key] = (id, row.Farm);
    }

    private void House(HouseRow row, string farmId, string farmName)
    {
        if (!houses.Add((farmId, Names.Key(row.House!))))
        {
            Bad(row, "NAME_TAKEN", "house", $"{farmName} has a house \"{row.House}\" already.", "Give this one another name, or change the other on its page.");
            return;
        }

        if (Supply(row, farmId) is not { } supply)
        {
            return;
        }

        var facts = new HouseFacts
        {
            FarmId = farmId,
            DrawKey = Noise.Key($"{farmName}/{row.House}"),
            Shape = row.Shape,
            BayRoof = row.BayRoof,
            WidthM = row.WidthM,
            LengthM = row.LengthM,
            SideWallM = row.SideWallM,
            RidgeM = row.RidgeM,
            Bays = row.Bays,
            AirChangesPerHour = row.AirChangesPerHour,
            Surfaces = row.CoveringCode is null && row.FilmYear is null ? [] : [new(SurfacePart.Roof, row.CoveringCode ?? "doublefilm", row.FilmYear is { } y ? new(y, 9, 1) : null)],
            HeatingPlanCode = row.PlanCode,
            HeatingPeriods = row.Period is { } p ? [p] : [],
            Heaters = row.HeaterCode is null && row.HeaterYear is null && row.InputKw is null && row.Efficiency is null
                ? []
                : [new(row.HeaterCode ?? HeaterModels.UsualCode(supply.Fuel), supply.Fuel, row.InputKw, row.Efficiency, row.HeaterYear is { } set ? new(set, 10, 1) : null)],
            Supplies = [new(supply.Id)],
            RetrofitsInstalled = row.Installed,
        };
        var (model, found) = HouseModels.Of(facts, catalogue, new(), firstSeason, supply.Fuel);
        if (model is null || found.Count > 0)
        {
            faults.AddRange(found.Select(f => f with { File = file, Line = row.Line }));
            return;
        }

        if (used.Take(row, supply.Id, supply.Fuel, Today) is { } unusable)
        {
            faults.Add(unusable);
            return;
        }

        var id = ids.New("h");
        items.Add(new(ItemKind.House, id, null, facts, new(row.House), file, row.Line));
        items.Add(new(ItemKind.OptionSet, ids.New("os"), null, new OptionSetFacts { HouseId = id, Options = UsualOptions.For(model) }, new(), file, row.Line));
    }

    private DateOnly Today => DateOnly.ParseExact(ids.Now()[..10], "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);

    private (string Id, FuelKind Fuel)? Supply(HouseRow row, string farmId)
    {
        if (!groups.TryGetValue(farmId, out var own))
        {
            groups[farmId] = own = [];
        }

        if (row.Supply is { } named && own.FirstOrDefault(g => g.Key == Names.Key(named)) is { Id: { } id, Facts: { } there })
        {
            if (row.Fuel is { } other && other != there.Fuel)
            {
                Bad(row, "TWO_FUELS", "fuel", $"\"{named}\" holds {there.Fuel}, the row says {other}.", "Name another tank or meter, or mend the fuel.");
                return null;
            }

            return (id, there.Fuel);
        }

        var alike = own.Where(g => row.Fuel is null || g.Facts.Fuel == row.Fuel).ToList();
        if (row.Supply is null && alike.Count == 1)
        {
            return (alike[0].Id, alike[0].Facts.Fuel);
        }

        if (row.Supply is null && alike.Count > 1)
        {
            Bad(row, "WHICH_SUPPLY", "tank or meter", "The farm has several tanks or meters that could feed this house.", "Name the one that does.");
            return null;
        }

        if (row.Fuel is not { } fuel)
        {
            Bad(row, "EMPTY", "fuel", $"Nothing says what {row.House} burns.", $"Write {HouseWords.FuelNames}.");
            return null;
        }

        var kind = fuel is FuelKind.Propane or FuelKind.FuelOil or FuelKind.WoodPellets ? SupplyKind.Tank : SupplyKind.Meter;
        var name = row.Supply ?? (kind == SupplyKind.Tank ? $"{FuelWords.Of(fuel)} tank" : $"{FuelWords.Of(fuel)} meter");
        var facts = new SupplyGroupFacts { FarmId = farmId, Fuel = fuel, Kind = kind, TankSizeL = row.TankSizeL };
        var made = ids.New("sg");
        items.Add(new(ItemKind.SupplyGroup, made, null, facts, new(name), file, row.Line));
        own.Add((made, Names.Key(name), facts));
        return (made, fuel);
    }

    private void Bad(HouseRow row, string code, string field, string message, string remedy) => faults.Add(new(code, field, message, remedy, file, row.Line));
}

/// <summary>Plain names of fuels.</summary>
internal static class FuelWords
{
    /// <summary>Name in small letters.</summary>
    /// <param name="fuel">Fuel.</param>
    /// <returns>The name.</returns>
    public static string Of(FuelKind fuel) => fuel switch
    {
        FuelKind.NaturalGas => "gas",
        FuelKind.Propane => "propane",
        FuelKind.FuelOil => "oil",
        FuelKind.Electricity => "electric",
        _ => "pellet",
    };
}
