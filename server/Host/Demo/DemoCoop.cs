using System.Globalization;
using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.HeatDemand.Calibration;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Units;
using FarmPortfolio.Engine.Weather;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage;
using FarmPortfolio.Host.Storage.Items;
using FarmPortfolio.Host.Studies;

namespace FarmPortfolio.Host.Demo;

/// <summary>Fills the database with the invented co-op, once.</summary>
/// <param name="coops">Co-ops.</param>
/// <param name="blobs">Blobs.</param>
/// <param name="items">Items.</param>
public sealed class DemoCoop(CoopStore coops, BlobStore blobs, ItemStore items)
{
    /// <summary>Identifier of the demo.</summary>
    public const string Id = "demo";

    private const int FirstSeason = 2026;
    private const long Seed = 7;
    private Dictionary<string, PriceSeriesFacts>? records;

    /// <summary>Adds the demo where it is not there yet.</summary>
    public void Fill()
    {
        if (!coops.Add(Viewer.Program, Id, DemoFarms.Coop, isDemo: true))
        {
            return;
        }

        var save = new List<ItemToSave>();
        var years = new List<Dictionary<int, WeatherYear>>();
        for (var s = 0; s < DemoFarms.Stations.Length; s++)
        {
            years.Add(Station(s, save));
        }

        save.Add(new(ItemKind.ScenarioSet, "sc_demo", null, new ScenarioSetFacts { FirstSeason = FirstSeason, Seed = 2026 }, new("Assumptions of the first study")));
        for (var f = 0; f < DemoFarms.All.Length; f++)
        {
            Farm(f, DemoFarms.All[f], years[DemoFarms.All[f].Station], save);
        }

        save.AddRange(DemoQuotes.Items());
        save.AddRange(DemoLoans.Items());
        save.AddRange(DemoTrial.Items(years[0][2024], "ws_demo0", blobs));
        items.Save(Viewer.Program, Id, "the demo co-op is set up", "demo", save);
    }

    private Dictionary<int, WeatherYear> Station(int number, List<ItemToSave> save)
    {
        var (name, latitude, elevation, mean, swing) = DemoFarms.Stations[number];
        var facts = new WeatherStationFacts { LatitudeDeg = latitude, LongitudeDeg = -73, ElevationM = elevation };
        var seasons = new List<StationSeason>();
        var years = new Dictionary<int, WeatherYear>();
        for (var season = DemoWeather.FirstSeason; season < DemoWeather.FirstSeason + DemoWeather.Seasons; season++)
        {
            var values = DemoWeather.Season(number, mean, swing, season);
            seasons.Add(new(season, RecordStep.Daily, blobs.Save(Viewer.Program, values), SeasonCalendar.Days(season), 0, "invented"));
            years[season] = WeatherYears.FromDaily(facts, season, values);
        }

        save.Add(new(ItemKind.WeatherStation, $"ws_demo{number}", null, facts with { Seasons = seasons }, new(name, Note: "an invented record")));
        return years;
    }

    private void Farm(int number, DemoFarm farm, Dictionary<int, WeatherYear> years, List<ItemToSave> save)
    {
        var (farmId, groupId) = ($"f_demo{number:00}", $"sg_demo{number:00}");
        save.Add(new(ItemKind.Farm, farmId, null, new FarmFacts
        {
            WeatherStationId = $"ws_demo{farm.Station}",
            SalesCents = farm.SalesUsd * 100L,
            Groups = farm.SalesUsd < 100_000 ? ["under $100,000 of sales"] : [],
        }, new(farm.Name, farm.Place, "invented")));
        var unit = HeatingValues.UnitsOf(farm.Fuel)[0];
        save.Add(new(ItemKind.SupplyGroup, groupId, null, new SupplyGroupFacts
        {
            FarmId = farmId,
            Fuel = farm.Fuel,
            Kind = farm.Fuel is FuelKind.Propane or FuelKind.FuelOil ? SupplyKind.Tank : SupplyKind.Meter,
            TankSizeL = farm.Fuel is FuelKind.Propane or FuelKind.FuelOil ? DemoBills.TankGallons(farm) * Us.GallonL : null,
            OtherUses = DemoBills.OtherUses(farm),
        }, new(farm.Fuel is FuelKind.Propane or FuelKind.FuelOil ? "tank bank" : "meter")));
        save.AddRange(DemoContracts.Of(number, farm, groupId, unit));
        if (farm.SecondFuel is { } second)
        {
            save.Add(new(ItemKind.SupplyGroup, $"sg_demo{number:00}b", null, new SupplyGroupFacts
            {
                FarmId = farmId,
                Fuel = second.Fuel,
                Kind = SupplyKind.Tank,
                TankSizeL = 1000 * Us.GallonL,
            }, new($"{second.House}'s own tank")));
        }

        var use = new double[DemoBills.Days];
        for (var h = 0; h < farm.Houses.Length; h++)
        {
            House(number, h, farm, farmId, groupId, years, use, save);
        }

        if (farm.Records != DemoRecords.None)
        {
            save.Add(new(ItemKind.FuelRecord, $"fr_demo{number:00}", null, DemoBills.Of(farm, groupId, unit, use, (season, month) => (double?)Index(farm.Fuel, unit, season)[month]), new(farm.Records == DemoRecords.Bills ? "bills of two winters" : "deliveries of two winters")));
        }
    }

    private IReadOnlyList<decimal?> Index(FuelKind fuel, string unit, int season)
    {
        records ??= items.All<PriceSeriesFacts>(Viewer.Program, Id, ItemKind.PriceSeries).ToDictionary(s => s.Id, s => s.Facts);
        return PastIndex.Of(StarterRecords.Ids.TryGetValue(fuel, out var id) ? records.GetValueOrDefault(id) : null, null, unit, season);
    }

    private static void House(int number, int h, DemoFarm farm, string farmId, string groupId, Dictionary<int, WeatherYear> years, double[] use, List<ItemToSave> save)
    {
        var d = farm.Houses[h];
        var id = $"h_demo{number:00}{h}";
        var heater = farm.Fuel switch { FuelKind.FuelOil => "oilfurnace", FuelKind.Electricity => "resistance", _ => d.Heater };
        var facts = new HouseFacts
        {
            FarmId = farmId,
            DrawKey = Noise.Key($"{farm.Name}/{d.Name}"),
            Shape = d.Shape,
            BayRoof = d.Shape == HouseShape.GutterConnected ? HouseShape.Gable : null,
            WidthM = d.WidthFt * Us.FootM,
            LengthM = d.LengthFt * Us.FootM,
            SideWallM = d.WallFt * Us.FootM,
            RidgeM = d.RidgeFt * Us.FootM,
            Bays = d.Bays,
            Surfaces = [new(SurfacePart.Roof, d.Covering, new DateOnly(2023 + (number + h) % 4, 9, 1))],
            HeatingPlanCode = d.Plan,
            Heaters = [new(heater, farm.Fuel, d.WidthFt * d.LengthFt * d.Bays * 0.046, null, new DateOnly(d.HeaterYear, 10, 1))],
            Supplies = [new(groupId)],
            RetrofitsInstalled = d.Installed,
        };
        if (farm.SecondFuel is { } second && second.House == d.Name)
        {
            facts = facts with
            {
                Heaters = [.. facts.Heaters, new("power", second.Fuel, 0.4 * facts.Heaters[0].InputKw, null, new DateOnly(d.HeaterYear, 10, 1))],
                Supplies = [new(groupId, 0, 1 - second.Share), new($"{groupId}b", 1, second.Share)],
            };
        }

        save.Add(new(ItemKind.House, id, null, facts, new(d.Name)));
        var (model, faults) = HouseModels.Of(facts, Catalogue.BuiltIn, new(), FirstSeason, farm.Fuel);
        if (model is null)
        {
            throw new InvalidOperationException($"demo house {farm.Name}, {d.Name}: {string.Join("; ", faults.Select(f => f.Message))}");
        }

        save.Add(new(ItemKind.OptionSet, $"os_demo{number:00}{h}", null, new OptionSetFacts { HouseId = id, Options = [.. UsualOptions.For(model), .. farm.Pellets ? new[] { UsualOptions.Option(["topellets"], OptionTiming.Now) } : []] }, new()));
        var option = OptionModels.AsItStands(model);
        var truth = farm.Truth * Math.Exp(0.06 * Noise.Normal(Seed, NoisePurpose.LossOwn, facts.DrawKey, 0, 0));
        var day = 0;
        foreach (var heat in DemoBills.Seasons.SelectMany(s => DailyHeat.Of(option, years[s])))
        {
            use[day++] += truth * facts.Supplies[0].Share * heat / model.Heaters[0].Efficiency;
        }
    }
}
