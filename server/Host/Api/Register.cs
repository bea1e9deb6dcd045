using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Engine.Weather;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage;
using FarmPortfolio.Host.Storage.Items;
using FarmPortfolio.Host.Studies;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>One request's view of a co-op: each kind is read at most once, whatever is asked.</summary>
public sealed partial class Register
{
    /// <summary>Code of the fault where a request names a co-op that the viewer has not.</summary>
    public const string NoSuchCoop = "NO_SUCH_COOP";

    private readonly Lazy<IReadOnlyDictionary<string, Item<FarmFacts>>> farms;
    private readonly Lazy<IReadOnlyDictionary<string, Item<HouseFacts>>> houses;
    private readonly Lazy<IReadOnlyDictionary<string, Item<SupplyGroupFacts>>> groups;
    private readonly Lazy<IReadOnlyDictionary<string, Item<FuelRecordFacts>>> records;
    private readonly Lazy<IReadOnlyDictionary<string, Item<ContractFacts>>> contracts;
    private readonly Lazy<IReadOnlyDictionary<string, Item<OptionSetFacts>>> options;
    private readonly Lazy<IReadOnlyDictionary<string, Item<WeatherStationFacts>>> stations;
    private readonly Lazy<IReadOnlyDictionary<string, Item<PriceSeriesFacts>>> prices;
    private readonly Lazy<IReadOnlyDictionary<string, Item<ScenarioSetFacts>>> sets;
    private readonly Lazy<IReadOnlyDictionary<string, Item<QuoteFacts>>> quotes;
    private readonly Lazy<StudyRow?> newest;
    private readonly Lazy<IReadOnlyDictionary<string, AgainRow>> runsAgain;
    private readonly Lazy<StudyResult?> newestResult;
    private readonly Lazy<Dictionary<(string HouseId, string Key), OptionResult>> newestOptions;
    private readonly Lazy<Dictionary<string, Item<OptionSetFacts>>> optionSets;
    private readonly Lazy<Catalogue> catalogue;
    private readonly System.Collections.Concurrent.ConcurrentDictionary<string, StationWinters> winters = new();
    private readonly Lazy<IReadOnlyDictionary<string, StationWinters>> laid;

    /// <summary>Opens the co-op chosen, or the viewer's first.</summary>
    /// <param name="coops">Co-ops.</param>
    /// <param name="blobs">Blobs.</param>
    /// <param name="items">Items.</param>
    /// <param name="history">History.</param>
    /// <param name="studies">Studies.</param>
    /// <param name="jobs">Jobs.</param>
    /// <param name="again">Studies run over again.</param>
    /// <param name="reader">Reader.</param>
    /// <param name="ids">Source of identifiers.</param>
    /// <param name="chosen">The co-op the request names.</param>
    /// <exception cref="ExecutionError">The request names a co-op that the viewer has not.</exception>
    public Register(CoopStore coops, BlobStore blobs, ItemStore items, HistoryStore history, StudyStore studies, StudyJobs jobs, StudyAgainStore again, PortfolioReader reader, Ids ids, ChosenCoop chosen)
    {
        (Coops, Blobs, Items, History, Studies, Jobs, Reader, Ids) = (coops, blobs, items, history, studies, jobs, reader, ids);
        var all = coops.All(Viewer);
        Coop = chosen.Id is { } id
            ? all.FirstOrDefault(c => c.Id == id) ?? throw new ExecutionError("There is no such co-op. Choose one of yours.") { Code = NoSuchCoop }
            : all.Count > 0 ? all[0] : new("none", "no co-op yet", 0);
        Lazy<IReadOnlyDictionary<string, Item<T>>> Kind<T>(string kind) => new(() => items.All<T>(Viewer, Coop.Id, kind).ToDictionary(i => i.Id));
        (farms, houses, groups, records) = (Kind<FarmFacts>(ItemKind.Farm), Kind<HouseFacts>(ItemKind.House), Kind<SupplyGroupFacts>(ItemKind.SupplyGroup), Kind<FuelRecordFacts>(ItemKind.FuelRecord));
        (contracts, options, stations) = (Kind<ContractFacts>(ItemKind.Contract), Kind<OptionSetFacts>(ItemKind.OptionSet), Kind<WeatherStationFacts>(ItemKind.WeatherStation));
        quotes = Kind<QuoteFacts>(ItemKind.Quote);
        (prices, sets) = (Kind<PriceSeriesFacts>(ItemKind.PriceSeries), Kind<ScenarioSetFacts>(ItemKind.ScenarioSet));
        catalogue = new(() => Catalogue.BuiltIn.With(items.All<CatalogueFacts>(Viewer, Coop.Id, ItemKind.CatalogueEntry).Select(e => e.Facts)));
        laid = new(() => NormalsStations.Laid(Stations.ToDictionary(s => s.Key, s => s.Value.Facts.IsNormalsOnly() ? Reader.Winters(Viewer, s.Value.Facts) : Winters(s.Key)!), SetFacts.WinterPool));
        newest = new(() => studies.All(Viewer, Coop.Id).FirstOrDefault(s => s.State == "done"));
        runsAgain = new(() => again.Newest(Viewer, Coop.Id));
        newestResult = new(() => Newest is { } s ? jobs.Result(Viewer, s.Id) : null);
        newestOptions = new(() => (NewestResult?.Options ?? []).ToDictionary(o => (o.HouseId, o.Key)));
        optionSets = new(() => Options.Values.GroupBy(o => o.Facts.HouseId).ToDictionary(g => g.Key, g => g.First()));
    }

    /// <summary>Who asks.</summary>
    public Viewer Viewer { get; } = Viewer.Local;

    /// <summary>The co-op.</summary>
    public CoopRow Coop { get; }

    /// <summary>Co-ops.</summary>
    public CoopStore Coops { get; }

    /// <summary>Blobs.</summary>
    public BlobStore Blobs { get; }

    /// <summary>Items.</summary>
    public ItemStore Items { get; }

    /// <summary>History.</summary>
    public HistoryStore History { get; }

    /// <summary>Studies.</summary>
    public StudyStore Studies { get; }

    /// <summary>Jobs.</summary>
    public StudyJobs Jobs { get; }

    /// <summary>Reader.</summary>
    public PortfolioReader Reader { get; }

    /// <summary>The newest run over again of each study that has one.</summary>
    public IReadOnlyDictionary<string, AgainRow> RunsAgain => runsAgain.Value;

    /// <summary>Number of the co-op's last change: a name for all that its register says.</summary>
    public long LastSeq => History.LastSeq(Viewer, Coop.Id);

    /// <summary>Source of identifiers.</summary>
    public Ids Ids { get; }

    /// <summary>The catalogue, the co-op's own entries over the built-in ones.</summary>
    public Catalogue Catalogue => catalogue.Value;

    /// <summary>Farms.</summary>
    public IReadOnlyDictionary<string, Item<FarmFacts>> Farms => farms.Value;

    /// <summary>Houses.</summary>
    public IReadOnlyDictionary<string, Item<HouseFacts>> Houses => houses.Value;

    /// <summary>Supply groups.</summary>
    public IReadOnlyDictionary<string, Item<SupplyGroupFacts>> Groups => groups.Value;

    /// <summary>Fuel records.</summary>
    public IReadOnlyDictionary<string, Item<FuelRecordFacts>> Records => records.Value;

    /// <summary>Contracts.</summary>
    public IReadOnlyDictionary<string, Item<ContractFacts>> Contracts => contracts.Value;

    /// <summary>Quotes.</summary>
    public IReadOnlyDictionary<string, Item<QuoteFacts>> Quotes => quotes.Value;

    /// <summary>Option sets.</summary>
    public IReadOnlyDictionary<string, Item<OptionSetFacts>> Options => options.Value;

    /// <summary>Stations.</summary>
    public IReadOnlyDictionary<string, Item<WeatherStationFacts>> Stations => stations.Value;

    /// <summary>Price series.</summary>
    public IReadOnlyDictionary<string, Item<PriceSeriesFacts>> Prices => prices.Value;

    /// <summary>The assumptions in use: the newest set.</summary>
    public Item<ScenarioSetFacts>? Set => sets.Value.Values.LastOrDefault();

    /// <summary>Assumptions, or the defaults.</summary>
    public ScenarioSetFacts SetFacts => Set?.Facts ?? new() { FirstSeason = 2026 };

    /// <summary>Heating values that the co-op's prices, tickets and contracts are turned into kWh by.</summary>
    public Engine.Units.HeatingValueSet Heating => SetFacts.HeatingValues();

    /// <summary>Identifier of the price series in use, by fuel.</summary>
    public IReadOnlyDictionary<FuelKind, string> PricesInUse => PortfolioReader.PricesInUse(Prices.ToDictionary(p => p.Key, p => p.Value.Facts), SetFacts);

    /// <summary>Newest done study.</summary>
    public StudyRow? Newest => newest.Value;

    /// <summary>Its result.</summary>
    public StudyResult? NewestResult => newestResult.Value;

    /// <summary>What it found for an option.</summary>
    /// <param name="houseId">House.</param>
    /// <param name="key">Key of the option.</param>
    /// <returns>The result; null where it was not studied.</returns>
    public OptionResult? NewestOption(string houseId, string key) => newestOptions.Value.GetValueOrDefault((houseId, key));

    /// <summary>A house's options, "as it stands" not among them.</summary>
    /// <param name="houseId">House.</param>
    /// <returns>The set, or null.</returns>
    public Item<OptionSetFacts>? OptionSet(string houseId) => optionSets.Value.GetValueOrDefault(houseId);

    /// <summary>The model of a house.</summary>
    /// <param name="house">House.</param>
    /// <returns>Model and faults.</returns>
    public (HouseModel? Model, IReadOnlyList<Fault> Faults) Model(Item<HouseFacts> house)
    {
        var set = SetFacts;
        var (model, faults) = HouseModels.Of(house.Facts, Catalogue, set.Heat(), set.FirstSeason, Fuel(house.Facts));
        return (model is null ? null : model with { HouseId = house.Id }, model is not null && SetPoints(house.Facts, model) is { } cold ? [.. faults, cold] : faults);
    }

    /// <summary>Set points that the outside air of the house's station never falls under.</summary>
    /// <param name="house">House.</param>
    /// <param name="model">Its model.</param>
    /// <returns>The fault; null = none, or no winter to tell.</returns>
    public Fault? SetPoints(HouseFacts house, HouseModel model) =>
        Farms.TryGetValue(house.FarmId, out var farm) && Winters(farm.Facts.WeatherStationId) is { } station ? SetPointChecks.Of(model.Periods, [.. station.Years.Values]) : null;

    /// <summary>Fuel of a house.</summary>
    /// <param name="house">House.</param>
    /// <returns>Fuel.</returns>
    public FuelKind Fuel(HouseFacts house) => house.Heaters.Count > 0 ? house.Heaters[0].Fuel : house.Supplies.Count > 0 && Groups.TryGetValue(house.Supplies[0].SupplyGroupId, out var g) ? g.Facts.Fuel : FuelKind.Propane;

    /// <summary>Winters of a station, recorded or made from its monthly normals.</summary>
    /// <param name="stationId">Station.</param>
    /// <returns>Winters; null where there is no such station.</returns>
    public StationWinters? Winters(string? stationId) => stationId is not null && Stations.TryGetValue(stationId, out var s) ? winters.GetOrAdd(stationId, _ => s.Facts.IsNormalsOnly() ? laid.Value[stationId] : Reader.Winters(Viewer, s.Facts)) : null;

    /// <summary>The middling winter of a house's station.</summary>
    /// <param name="house">House.</param>
    /// <returns>The winter; null where there is none.</returns>
    public WeatherYear? Middling(HouseFacts house) => Farms.TryGetValue(house.FarmId, out var farm) ? Middling(farm.Facts.WeatherStationId) : null;

    /// <summary>The middling winter of a station.</summary>
    /// <param name="stationId">Station.</param>
    /// <returns>The winter; null where there is none.</returns>
    public WeatherYear? Middling(string? stationId)
    {
        var years = Winters(stationId)?.Years.Values;
        return years?.OrderBy(y => y.DegreeDaysK(15)).ElementAtOrDefault(years.Count() / 2);
    }
}
