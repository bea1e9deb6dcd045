using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Engine.Weather;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Studies;

/// <summary>Reads all that a study needs from the stores.</summary>
/// <param name="items">Items.</param>
/// <param name="blobs">Blobs.</param>
public sealed class PortfolioReader(ItemStore items, BlobStore blobs)
{
    /// <summary>A co-op as it holds now.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="coopId">Co-op.</param>
    /// <returns>The portfolio.</returns>
    public Portfolio Read(Viewer viewer, string coopId)
    {
        Dictionary<string, T> All<T>(string kind) => items.All<T>(viewer, coopId, kind).ToDictionary(i => i.Id, i => i.Facts);
        var sets = items.All<ScenarioSetFacts>(viewer, coopId, ItemKind.ScenarioSet);
        var set = sets.Count > 0 ? sets[^1].Facts : new ScenarioSetFacts { FirstSeason = 2026 };
        return new()
        {
            Set = set,
            Catalogue = Catalogue.BuiltIn.With(All<CatalogueFacts>(ItemKind.CatalogueEntry).Values),
            Farms = All<FarmFacts>(ItemKind.Farm),
            Houses = All<HouseFacts>(ItemKind.House),
            SupplyGroups = All<SupplyGroupFacts>(ItemKind.SupplyGroup),
            FuelRecords = All<FuelRecordFacts>(ItemKind.FuelRecord).Values.ToDictionary(r => r.SupplyGroupId),
            Contracts = All<ContractFacts>(ItemKind.Contract).Values.Where(c => c.Standing == ContractStanding.InForce).GroupBy(c => c.SupplyGroupId).ToDictionary(g => g.Key, g => g.Last()),
            Options = All<OptionSetFacts>(ItemKind.OptionSet).Values.ToDictionary(o => o.HouseId, o => o.Options),
            Quotes = All<QuoteFacts>(ItemKind.Quote).Values.GroupBy(q => q.FarmId).ToDictionary(g => g.Key, g => (IReadOnlyList<QuoteFacts>)[.. g]),
            Stations = items.All<WeatherStationFacts>(viewer, coopId, ItemKind.WeatherStation).ToDictionary(s => s.Id, s => Winters(viewer, s.Facts)),
            Prices = Prices(viewer, coopId, set),
        };
    }

    /// <summary>The price series that a set of assumptions rolls on from, by fuel.</summary>
    /// <param name="viewer">Who asks.</param>
    /// <param name="coopId">Co-op.</param>
    /// <param name="set">Assumptions.</param>
    /// <returns>Series by fuel.</returns>
    public Dictionary<FuelKind, PriceSeriesFacts> Prices(Viewer viewer, string coopId, ScenarioSetFacts set)
    {
        var series = items.All<PriceSeriesFacts>(viewer, coopId, ItemKind.PriceSeries);
        return series.GroupBy(s => s.Facts.Fuel).ToDictionary(g => g.Key, g =>
        {
            var own = set.Prices.FirstOrDefault(p => p.Fuel == g.Key)?.PriceSeriesId;
            return (g.FirstOrDefault(s => s.Id == own) ?? g.FirstOrDefault(s => s.Remarks.Note == "default") ?? g.First()).Facts;
        });
    }

    /// <summary>The winters of a station that can be made hourly; a season with a gap too long is left out.</summary>
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
                // the gap is too long: the season is not in the pool, and the Winters page says so
            }
        }

        return new(station, years);
    }
}
