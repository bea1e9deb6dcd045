using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Studies;

namespace FarmPortfolio.Host.Api;

/// <summary>The register as a study would read it if it were started now.</summary>
public sealed partial class Register
{
    private Portfolio? portfolio;

    /// <summary>All facts as they stand, for what is reckoned without a study.</summary>
    public Portfolio Now => portfolio ??= new()
    {
        Set = SetFacts,
        Catalogue = Catalogue,
        Farms = Farms.ToDictionary(f => f.Key, f => f.Value.Facts),
        Houses = Houses.ToDictionary(h => h.Key, h => h.Value.Facts),
        SupplyGroups = Groups.ToDictionary(g => g.Key, g => g.Value.Facts),
        FuelRecords = Records.Values.GroupBy(r => r.Facts.SupplyGroupId).ToDictionary(g => g.Key, g => g.Last().Facts),
        Contracts = Contracts.Values.Select(c => c.Facts).Where(c => c.Standing == ContractStanding.InForce).GroupBy(c => c.SupplyGroupId).ToDictionary(g => g.Key, g => g.Last()),
        Options = Options.Values.GroupBy(o => o.Facts.HouseId).ToDictionary(g => g.Key, g => g.Last().Facts.Options),
        Quotes = Quotes.Values.Select(q => q.Facts).GroupBy(q => q.FarmId).ToDictionary(g => g.Key, g => (IReadOnlyList<QuoteFacts>)[.. g]),
        Stations = Stations.Keys.ToDictionary(s => s, s => Winters(s)!),
        Prices = PricesInUse.ToDictionary(p => p.Key, p => Prices[p.Value].Facts),
        OwnSeries = Contracts.Values.Select(c => c.Facts.PriceSeriesId).OfType<string>().Distinct().Where(Prices.ContainsKey).ToDictionary(s => s, s => Prices[s].Facts),
    };
}
