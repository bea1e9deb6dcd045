using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.HeatDemand.Calibration;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.Studies;

/// <summary>Fits every tank and meter of a portfolio to its fuel record and says what that means for each house.</summary>
public static class LossFits
{
    /// <summary>The fits by house; a house without a record is not among them.</summary>
    /// <param name="portfolio">All that the study reads.</param>
    /// <returns>By house.</returns>
    public static IReadOnlyDictionary<string, LossFit> Of(Portfolio portfolio)
    {
        var groups = portfolio.FuelRecords.Where(r => r.Value.Entries.Count > 0 && portfolio.SupplyGroups.ContainsKey(r.Key)).OrderBy(r => r.Key, StringComparer.Ordinal).ToList();
        var (fits, spreads) = (new Dictionary<string, (GroupFit Fit, int Houses)>(), FitSpreads.Of(portfolio.Catalogue));
        foreach (var (id, record) in groups)
        {
            var houses = Behind(portfolio, id);
            fits[id] = (Group(portfolio, id, record, houses), houses.Count);
        }

        var byHouse = new Dictionary<string, LossFit>();
        foreach (var (id, house) in portfolio.Houses)
        {
            // of two tanks or meters the one that gives most of the heat speaks for the house
            if (house.Supplies.Where(s => fits.ContainsKey(s.SupplyGroupId)).MaxBy(s => s.Share) is { } supply)
            {
                var (fit, houses) = fits[supply.SupplyGroupId];
                byHouse[id] = Calibrations.House(fit, supply.SupplyGroupId, houses, spreads);
            }
        }

        return byHouse;
    }

    /// <summary>The houses behind a tank or meter that can be reckoned.</summary>
    /// <param name="portfolio">All that the study reads.</param>
    /// <param name="groupId">Tank or meter.</param>
    /// <returns>Houses in order of their ids.</returns>
    public static IReadOnlyList<BehindTank> Behind(Portfolio portfolio, string groupId)
    {
        var fuel = portfolio.SupplyGroups[groupId].Fuel;
        return BehindTank.Of(groupId, portfolio.Houses, (id, facts) =>
            HouseModels.Of(facts, portfolio.Catalogue, portfolio.Set.Heat(), portfolio.Set.FirstSeason, fuel) is ({ } model, { Count: 0 }) ? model with { HouseId = id } : null);
    }

    private static GroupFit Group(Portfolio portfolio, string id, FuelRecordFacts record, IReadOnlyList<BehindTank> houses)
    {
        var group = portfolio.SupplyGroups[id];
        var station = portfolio.Farms.GetValueOrDefault(group.FarmId)?.WeatherStationId;
        var winters = station is null ? null : portfolio.Stations.GetValueOrDefault(station);
        return Calibrations.Of(
            group, record, houses, winters?.Recorded ?? new Dictionary<int, WeatherYear>(), FitSpreads.Of(portfolio.Catalogue), portfolio.Set.HeatingValues(), winters?.Facts.IsNormalsOnly() == true);
    }
}
