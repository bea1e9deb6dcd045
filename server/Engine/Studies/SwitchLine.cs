using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Engine.Studies;

/// <summary>Where a switch of fuel moves a house's first heater: the tank, meter or index of the new fuel, and what changes in fees that do not follow the volume.</summary>
/// <param name="Line">Line; null with a fault.</param>
/// <param name="Replaces">Tanks and meters of the old fuel that nobody draws on after it, where the old heater goes.</param>
/// <param name="IsNew">Whether no house draws on the new tank or meter as things stand: its fees come with the switch.</param>
/// <param name="Fault">Why it cannot be.</param>
internal sealed record SwitchLine(SupplyLine? Line, IReadOnlyList<SupplyLine> Replaces, bool IsNew, Fault? Fault)
{
    /// <summary>The lines of a house's options.</summary>
    /// <param name="portfolio">All that the study reads.</param>
    /// <param name="house">House.</param>
    /// <param name="supplies">How it is fed.</param>
    /// <param name="options">Its options.</param>
    /// <param name="priceFactor">Factor on every price.</param>
    /// <returns>By key of the options that switch.</returns>
    public static IReadOnlyDictionary<string, SwitchLine> Of(Portfolio portfolio, HouseFacts house, IReadOnlyList<SupplyLine> supplies, IReadOnlyList<OptionFacts> options, double priceFactor)
    {
        var lines = new Dictionary<string, SwitchLine>(StringComparer.Ordinal);
        foreach (var option in options)
        {
            if (FuelSwitch.Of(option.Parts) is { } code)
            {
                lines[option.Key] = Of(portfolio, house, supplies, option, code, priceFactor);
            }
        }

        return lines;
    }

    /// <summary>Fees of a season that come less those that go, US dollars.</summary>
    /// <param name="season">Season.</param>
    public double FeesUsd(int season) => (IsNew && Line!.Terms.IsMonthly ? Line.Terms.FeesUsd(season) : 0) - Replaces.Where(l => l.Terms.IsMonthly).Sum(l => l.Terms.FeesUsd(season));

    private static SwitchLine Of(Portfolio portfolio, HouseFacts house, IReadOnlyList<SupplyLine> supplies, OptionFacts option, string code, double priceFactor)
    {
        var (fuel, set) = (FuelSwitch.FuelOf(code)!.Value, portfolio.Set);
        var chosen = option.Overrides?.SwitchSupplyGroupId;
        var id = chosen ?? portfolio.SupplyGroups.Where(g => g.Value.FarmId == house.FarmId && g.Value.Fuel == fuel).Select(g => g.Key).Order(StringComparer.Ordinal).FirstOrDefault();
        var group = id is null ? null : portfolio.SupplyGroups.GetValueOrDefault(id);
        if (chosen is not null && (group is null || group.Fuel != fuel || group.FarmId != house.FarmId))
        {
            return new(null, [], false, new("SWITCH_SUPPLY", "switchSupplyGroupId", $"The option moves to a tank or meter that is not there, or gives no {fuel}.", $"Choose a tank or meter of its farm with {fuel}, or none for the monthly index."));
        }

        var (terms, faults) = SupplyTerms.Of(
            id is null ? [] : portfolio.InForce(id), portfolio.Contract, fuel, group?.StandByFuel, set.FirstSeason, set.SeasonCount, set.DiscountRate, priceFactor, c => portfolio.BasisOf(c, fuel), set.HeatingValues());
        if (terms is null)
        {
            return new(null, [], false, faults[0]);
        }

        var share = supplies.Where(s => s.HeaterNo == 0).Sum(s => s.Share);
        var isNew = id is not null && !portfolio.Houses.Values.Any(h => h.Supplies.Any(s => s.SupplyGroupId == id)) && !BurnsElse(group!);
        var keepsOld = portfolio.Catalogue.Value(CatalogueKind.Retrofit, code, "keepsOld") > 0;
        var goes = keepsOld ? [] : supplies.Where(s => s.GroupId is { } old && s.HeaterNo == 0 && portfolio.SupplyGroups.TryGetValue(old, out var facts) && !BurnsElse(facts)
            && portfolio.Houses.Values.Sum(h => h.Supplies.Count(x => x.SupplyGroupId == old)) == 1).ToList();
        return new(new(id, fuel, 0, share, terms, group?.StandByFuel), goes, isNew, null);
    }

    private static bool BurnsElse(SupplyGroupFacts group) => group.OtherUses.Count > 0 || group.BaseUseKwhPerDay > 0;
}
