using FarmPortfolio.Engine.HeatDemand;

namespace FarmPortfolio.Engine.Scenarios;

/// <summary>What a scenario set assumes of every house's heat.</summary>
public static class SetHeat
{
    /// <summary>The settings of its balances.</summary>
    /// <param name="set">Scenario set.</param>
    /// <returns>Settings.</returns>
    public static HeatSettings Heat(this ScenarioSetFacts set) => new(set.CarryOver, set.PurgeVolumesPerDay, set.LossLevel);
}
