using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Engine.Trials;
using FarmPortfolio.Engine.Weather;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Studies;

/// <summary>Reads all that a study needs from the stores.</summary>
/// <param name="studies">Frozen inputs.</param>
/// <param name="blobs">Blobs.</param>
public sealed class PortfolioReader(StudyStore studies, BlobStore blobs)
{
    /// <summary>The inputs of a study as it froze them, whatever was saved since.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="study">Study.</param>
    /// <returns>The portfolio.</returns>
    public Portfolio Read(Viewer viewer, StudyRow study)
    {
        Dictionary<string, T> All<T>(string kind) => studies.Inputs<T>(viewer, study, kind).ToDictionary(i => i.Id, i => i.Facts);
        var sets = studies.Inputs<ScenarioSetFacts>(viewer, study, ItemKind.ScenarioSet);
        var set = sets.Count > 0 ? sets[^1].Facts : new ScenarioSetFacts { FirstSeason = 2026 };
        var prices = All<PriceSeriesFacts>(ItemKind.PriceSeries);
        var catalogue = Catalogue.BuiltIn.With(All<CatalogueFacts>(ItemKind.CatalogueEntry).Values);
        var factors = FactorUpdate.All(catalogue, All<EvidenceFacts>(ItemKind.Evidence), set.CommonShare);
        var portfolio = new Portfolio
        {
            Set = set,
            RealisedFactors = factors,
            Catalogue = FactorUpdate.Laid(catalogue, factors),
            Farms = All<FarmFacts>(ItemKind.Farm),
            Houses = All<HouseFacts>(ItemKind.House),
            SupplyGroups = All<SupplyGroupFacts>(ItemKind.SupplyGroup),
            FuelRecords = All<FuelRecordFacts>(ItemKind.FuelRecord).Values.ToDictionary(r => r.SupplyGroupId),
            Contracts = All<ContractFacts>(ItemKind.Contract).Values.Where(c => c.Standing == ContractStanding.InForce).GroupBy(c => c.SupplyGroupId).ToDictionary(g => g.Key, g => g.Last()),
            ContractsById = All<ContractFacts>(ItemKind.Contract),
            Options = All<OptionSetFacts>(ItemKind.OptionSet).Values.ToDictionary(o => o.HouseId, o => o.Options),
            Quotes = All<QuoteFacts>(ItemKind.Quote).Values.GroupBy(q => q.FarmId).ToDictionary(g => g.Key, g => (IReadOnlyList<QuoteFacts>)[.. g]),
            Stations = NormalsStations.Laid(All<WeatherStationFacts>(ItemKind.WeatherStation).ToDictionary(s => s.Key, s => Winters(viewer, s.Value)), set.WinterPool),
            Prices = PricesInUse(prices, set).ToDictionary(p => p.Key, p => prices[p.Value]),
            OwnSeries = All<ContractFacts>(ItemKind.Contract).Values.Select(c => c.PriceSeriesId).OfType<string>().Distinct().Where(prices.ContainsKey).ToDictionary(s => s, s => prices[s]),
        };
        return portfolio with { LossFits = LossFits.Of(portfolio) };
    }

    /// <summary>The price series that a set of assumptions rolls on from: the one it names, else the starter record, else the first.</summary>
    /// <param name="series">Series by identifier.</param>
    /// <param name="set">Assumptions.</param>
    /// <returns>Identifier by fuel.</returns>
    public static Dictionary<FuelKind, string> PricesInUse(IReadOnlyDictionary<string, PriceSeriesFacts> series, ScenarioSetFacts set) =>
        series.GroupBy(s => s.Value.Fuel).ToDictionary(g => g.Key, g =>
        {
            var own = set.Prices.FirstOrDefault(p => p.Fuel == g.Key)?.PriceSeriesId;
            return own is not null && g.Any(s => s.Key == own) ? own : StarterRecords.Ids.GetValueOrDefault(g.Key) is { } starter && g.Any(s => s.Key == starter) ? starter : g.First().Key;
        });

    /// <summary>The winters of a station that can be made hourly; a season with a gap too long is left out. One of monthly normals has none: <see cref="NormalsStations"/> gives it some.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="station">Station.</param>
    /// <returns>Its winters.</returns>
    public StationWinters Winters(Viewer viewer, WeatherStationFacts station)
    {
        var years = new Dictionary<int, WeatherYear>();
        foreach (var season in station.Seasons.Where(s => s.MissingDays <= WeatherYears.LongestFilledDays))
        {
            if (blobs.Read(viewer, season.Sha256) is not { } values)
            {
                continue;
            }

            try
            {
                years[season.Season] = season.Step == RecordStep.Hourly ? WeatherYears.FromHourly(station, season.Season, values) : WeatherYears.FromDaily(station, season.Season, values);
            }
            catch (ArgumentException)
            {
                // the gap is too long to fill: the season is not in the pool
            }
        }

        return new(station, years);
    }
}
