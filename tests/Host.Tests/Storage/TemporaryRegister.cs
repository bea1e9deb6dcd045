using Dapper;
using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Funding;
using FarmPortfolio.Engine.Lending;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Trials;
using FarmPortfolio.Engine.Weather;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage;
using FarmPortfolio.Host.Storage.Items;
using FarmPortfolio.Host.Storage.Kinds;

namespace FarmPortfolio.Host.Tests.Storage;

/// <summary>Stores over a database file of their own, with two co-ops that each hold one item of every kind; an award, which keeps its farm and house from going, where it is wanted.</summary>
public sealed class TemporaryRegister : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("farm-portfolio-").FullName;

    public TemporaryRegister(bool filled = true, bool awarded = false)
    {
        Path = System.IO.Path.Combine(folder, "test.db");
        Database = new(Path);
        var ids = new Ids(TimeProvider.System);
        Feed = new();
        (Coops, Blobs, Items, History, Studies) = (new(Database), new(Database), new(Database, ids, Feed), new(Database), new(Database, ids));
        Decisions = new(Database, Items, ids);
        if (filled)
        {
            Coops.Add(Viewer.Program, Policy.Shared, "shared", isDemo: false);
            Fill("a", "Amber", awarded);
            Fill("b", "Birch", awarded);
        }
    }

    public string Path { get; }

    public Database Database { get; }

    public ChangeFeed Feed { get; }

    public CoopStore Coops { get; }

    public BlobStore Blobs { get; }

    public ItemStore Items { get; }

    public HistoryStore History { get; }

    public StudyStore Studies { get; }

    public DecisionStore Decisions { get; }

    public static HouseFacts House(string coop) => new()
    {
        FarmId = $"f_{coop}",
        DrawKey = Noise.Key(coop + "/house"),
        Shape = HouseShape.Hoop,
        WidthM = 9.144,
        LengthM = 29.2608,
        Surfaces = [new(SurfacePart.Roof, "doublefilm", new DateOnly(2024, 9, 1))],
        HeatingPlanCode = "spring",
        Heaters = [new("power", FuelKind.Propane, 100)],
        Supplies = [new($"sg_{coop}")],
    };

    public static AwardFacts Award(string coop) => new()
    {
        RoundId = $"fo_{coop}",
        FarmId = $"f_{coop}",
        HouseId = $"h_{coop}",
        OptionKey = "curtain-now",
        Title = "Curtain",
        GrantCapCents = 540_000,
        GrantShare = 0.6,
        OutlayCents = 900_000,
        AwardedOn = new(2026, 3, 10),
        Milestones = Milestones.Of(new(2026, 3, 10)),
    };

    public SaveOutcome Save(string coop, string kind, string? id, long? expected, object? facts, string? name, Viewer? viewer = null, string? request = null) =>
        Items.Save(viewer ?? Viewer.Local, coop, $"{name} is saved", request ?? Guid.NewGuid().ToString(), [new(kind, id, expected, facts, new(name))]);

    public Item<HouseFacts> HouseNow(string coop = "a") => Items.Find<HouseFacts>(Viewer.Local, ItemKind.House, $"h_{coop}")!;

    /// <summary>Every row of every query table, as text.</summary>
    public IReadOnlyList<string> QueryRows()
    {
        using var db = Database.Open();
        return [.. KindTables.All.Select(t => t.Kind).Concat(["house_supply", "milestone", "blob_use"]).SelectMany(t => db.Query($"SELECT * FROM {t}").Select(r => t + ": " + string.Join(", ", (IDictionary<string, object>)r))).Order(StringComparer.Ordinal)];
    }

    public IReadOnlyList<string> Heads()
    {
        using var db = Database.Open();
        return [.. db.Query<string>("SELECT item_id || ' ' || facts_sha256 || ' ' || live FROM head ORDER BY item_id")];
    }

    public IReadOnlyList<string> Revisions()
    {
        using var db = Database.Open();
        return [.. db.Query<string>("SELECT item_id || ' ' || revision || ' ' || change_id || ' ' || COALESCE(facts, '-') || ' ' || COALESCE(remarks, '-') || ' ' || facts_sha256 FROM revision ORDER BY item_id, revision")];
    }

    public void Dispose()
    {
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
    }

    private void Fill(string coop, string name, bool awarded)
    {
        Coops.Add(Viewer.Program, coop, $"{name} Growers", isDemo: false);
        var sha = Blobs.Save(Viewer.Local, [.. Enumerable.Range(0, 730).Select(i => coop[0] + i * 0.5)]);
        var outcome = Items.Save(Viewer.Local, coop, "the register is set up", $"fill {coop}",
        [
            new(ItemKind.WeatherStation, $"ws_{coop}", null, new WeatherStationFacts { LatitudeDeg = 44, LongitudeDeg = -73, ElevationM = 200, Seasons = [new(2022, RecordStep.Daily, sha, 365, 0)] }, new($"{name} station")),
            new(ItemKind.PriceSeries, $"ps_{coop}", null, new PriceSeriesFacts { Fuel = FuelKind.Propane, Market = PriceMarket.Retail, Class = PriceClass.RetailFuel, Unit = "gal", FirstMonthOn = new(2020, 1, 1), UsdPerUnit = [.. Enumerable.Range(0, 30).Select(i => (double?)(2 + i * 0.01))] }, new($"{name} prices")),
            new(ItemKind.ScenarioSet, $"sc_{coop}", null, new ScenarioSetFacts { FirstSeason = 2026 }, new("assumptions")),
            new(ItemKind.CatalogueEntry, $"ce_{coop}", null, new CatalogueFacts { Kind = CatalogueKind.Retrofit, Code = "curtain", Title = "own curtain", Values = new Dictionary<string, CatalogueValue> { ["leak"] = new(0.1, "1") } }, new()),
            new(ItemKind.Farm, $"f_{coop}", null, new FarmFacts { WeatherStationId = $"ws_{coop}" }, new($"{name} farm", "a valley")),
            new(ItemKind.SupplyGroup, $"sg_{coop}", null, new SupplyGroupFacts { FarmId = $"f_{coop}", Fuel = FuelKind.Propane, Kind = SupplyKind.Tank, TankSizeL = 3785 }, new("tank")),
            new(ItemKind.House, $"h_{coop}", null, House(coop), new("house 1")),
            new(ItemKind.FuelRecord, $"fr_{coop}", null, new FuelRecordFacts { SupplyGroupId = $"sg_{coop}", Entries = [new(FuelEntryKind.Delivery, new(2024, 1, 3), new(2024, 1, 3), 240, "gal", 6440)] }, new()),
            new(ItemKind.Contract, $"ct_{coop}", null, new ContractFacts { SupplyGroupId = $"sg_{coop}", Kind = ContractKind.Indexed, Unit = "gal", PriceSeriesId = $"ps_{coop}" }, new("index")),
            new(ItemKind.OptionSet, $"os_{coop}", null, new OptionSetFacts { HouseId = $"h_{coop}", Options = [new("curtain-now", ["curtain"])] }, new()),
            new(ItemKind.Quote, $"q_{coop}", null, new QuoteFacts { FarmId = $"f_{coop}", QuotedOn = new(2026, 3, 1), Firmness = QuoteFirmness.Firm, Lines = [new($"h_{coop}", "curtain", 900_000, "material")] }, new(Supplier: "a supplier")),
            new(ItemKind.Trial, $"tr_{coop}", null, new TrialFacts { FarmId = $"f_{coop}", WeatherStationId = $"ws_{coop}", StartsOn = new(2025, 11, 1), EndsOn = new(2026, 3, 1), ReadingsSha256 = sha, Houses = [new() { Label = "A", Role = TrialRole.Treated, RetrofitCode = "curtain", House = House(coop), Fuel = FuelKind.Propane, Measure = TrialMeasure.Meter, KwhPerUnit = 26.8 }] }, new("trial")),
            new(ItemKind.FundingRound, $"fo_{coop}", null, new FundingRoundFacts(), new("round 1")),
            .. awarded ? new[] { new ItemToSave(ItemKind.Award, $"aw_{coop}", null, Award(coop), new("award")) } : [],
            new(ItemKind.Evidence, $"ev_{coop}", null, new EvidenceFacts { RetrofitCode = "curtain", Kind = EvidenceKind.Trial, TrialId = $"tr_{coop}", FactorMean = 1.1, FactorSd = 0.1 }, new("trial")),
            new(ItemKind.Statement, $"sm_{coop}", null, new StatementFacts { FarmId = $"f_{coop}", Year = 2025, NetFarmIncomeCents = 20_000_00, HeatingCents = 9_000_00 }, new()),
            new(ItemKind.LoanCase, $"lc_{coop}", null, new LoanCaseFacts { FarmId = $"f_{coop}", HouseId = $"h_{coop}", OptionKey = "curtain-now", AmountCents = 9_000_00, RatePerYear = 0.075, TermYears = 7 }, new("curtain")),
        ]);
        Assert.Empty(outcome.Faults);
    }
}
