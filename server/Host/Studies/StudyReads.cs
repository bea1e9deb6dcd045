using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Trials;
using FarmPortfolio.Engine.Weather;
using FarmPortfolio.Host.Storage;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Studies;

/// <summary>Which of the items that a study froze can move one of its numbers: a price record that no fuel rolls on from cannot, nor a station that no farm takes.</summary>
public static class StudyReads
{
    /// <summary>The items that a study of these texts really reads.</summary>
    /// <param name="items">All texts.</param>
    /// <returns>Their identifiers.</returns>
    public static HashSet<string> Of(IReadOnlyList<InputText> items)
    {
        Dictionary<string, T> All<T>(string kind) => items.Where(i => i.Kind == kind).ToDictionary(i => i.ItemId, i => CanonicalJson.Read<T>(i.Facts));
        var read = new HashSet<string>(StringComparer.Ordinal);
        var set = items.LastOrDefault(i => i.Kind == ItemKind.ScenarioSet);
        var assumptions = set is null ? new ScenarioSetFacts { FirstSeason = 2026 } : CanonicalJson.Read<ScenarioSetFacts>(set.Facts);
        if (set is not null)
        {
            read.Add(set.ItemId);
        }

        var houses = All<HouseFacts>(ItemKind.House);
        var farms = All<FarmFacts>(ItemKind.Farm);
        var options = All<OptionSetFacts>(ItemKind.OptionSet).Where(o => houses.ContainsKey(o.Value.HouseId)).ToDictionary();
        var groups = houses.Values.SelectMany(h => h.Supplies).Select(s => s.SupplyGroupId).ToHashSet(StringComparer.Ordinal);
        var switches = options.Values.SelectMany(o => o.Options, (o, option) => (houses[o.HouseId].FarmId, Fuel: FuelSwitch.Of(option.Parts) is { } code ? FuelSwitch.FuelOf(code) : null)).Where(s => s.Fuel is not null).ToHashSet();
        groups.UnionWith(All<SupplyGroupFacts>(ItemKind.SupplyGroup).Where(g => switches.Contains((g.Value.FarmId, g.Value.Fuel))).Select(g => g.Key));
        var codes = options.Values.SelectMany(o => o.Options).SelectMany(o => o.Parts).Concat(houses.Values.SelectMany(h => h.RetrofitsInstalled)).ToHashSet(StringComparer.Ordinal);
        read.UnionWith(houses.Keys);
        read.UnionWith(options.Keys);
        read.UnionWith(groups);
        var used = houses.Values.Select(h => h.FarmId).ToHashSet(StringComparer.Ordinal);
        read.UnionWith(used);
        var stations = All<WeatherStationFacts>(ItemKind.WeatherStation);
        var taken = farms.Where(f => used.Contains(f.Key)).Select(f => f.Value.WeatherStationId).OfType<string>().ToHashSet(StringComparer.Ordinal);
        read.UnionWith(taken);

        // a station of monthly normals takes what differs from winter to winter from all that have a record
        read.UnionWith(stations.Where(s => !s.Value.IsNormalsOnly() && taken.Any(t => stations.TryGetValue(t, out var own) && own.IsNormalsOnly())).Select(s => s.Key));
        read.UnionWith(PortfolioReader.PricesInUse(All<PriceSeriesFacts>(ItemKind.PriceSeries), assumptions).Values);
        read.UnionWith(All<FuelRecordFacts>(ItemKind.FuelRecord).Where(r => groups.Contains(r.Value.SupplyGroupId)).Select(r => r.Key));
        var contracts = All<ContractFacts>(ItemKind.Contract).Where(c => c.Value.Standing == ContractStanding.InForce && groups.Contains(c.Value.SupplyGroupId)).ToDictionary();
        read.UnionWith(contracts.Keys);
        read.UnionWith(contracts.Values.Select(c => c.PriceSeriesId).OfType<string>());
        read.UnionWith(All<QuoteFacts>(ItemKind.Quote).Where(q => q.Value.Lines.Any(l => codes.Contains(l.RetrofitCode) && houses.ContainsKey(l.HouseId))).Select(q => q.Key));
        read.UnionWith(All<CatalogueFacts>(ItemKind.CatalogueEntry).Where(e => e.Value.Kind != CatalogueKind.Retrofit || codes.Contains(e.Value.Code)).Select(e => e.Key));
        read.UnionWith(All<EvidenceFacts>(ItemKind.Evidence).Where(e => codes.Contains(e.Value.RetrofitCode)).Select(e => e.Key));

        // kinds that are not weighed here count always, so that a new kind can never go unseen
        string[] weighed =
        [
            ItemKind.ScenarioSet, ItemKind.House, ItemKind.Farm, ItemKind.OptionSet, ItemKind.SupplyGroup, ItemKind.WeatherStation, ItemKind.PriceSeries, ItemKind.FuelRecord, ItemKind.Contract,
            ItemKind.Quote, ItemKind.CatalogueEntry, ItemKind.Evidence,
        ];
        read.UnionWith(items.Where(i => !weighed.Contains(i.Kind)).Select(i => i.ItemId));
        return read;
    }
}
