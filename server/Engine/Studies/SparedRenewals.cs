using FarmPortfolio.Engine.Economics;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Engine.Studies;

/// <summary>Renewals of the house's own heater or film that an option spares: they stand in its saving, and are no fuel.</summary>
public static class SparedRenewals
{
    /// <summary>What is spared, season by season.</summary>
    /// <param name="house">House.</param>
    /// <param name="option">Option.</param>
    /// <param name="costs">Its costs.</param>
    /// <param name="set">Assumptions.</param>
    /// <returns>Season of the study from 0, and US dollars of that season; what is spared when it is built comes off the outlay and is not among them.</returns>
    public static IReadOnlyList<(int Season, double Usd)> Of(HouseModel house, OptionFacts option, OptionCosts costs, ScenarioSetFacts set) =>
        [.. CashPlan.Of(house, option, costs, set, house.Heaters[0].Efficiency).SparedBySeason.Select((usd, season) => (season, usd)).Where(s => s.usd > 0)];
}
