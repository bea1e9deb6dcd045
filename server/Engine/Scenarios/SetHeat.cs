using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Scenarios;

/// <summary>What a scenario set assumes of every house's heat, and of the heat in its fuel.</summary>
public static class SetHeat
{
    /// <summary>The settings of its balances.</summary>
    /// <param name="set">Scenario set.</param>
    /// <returns>Settings.</returns>
    public static HeatSettings Heat(this ScenarioSetFacts set) => new(set.CarryOver, set.PurgeVolumesPerDay, set.LossLevel);

    /// <summary>The heating values by which the co-op's prices, tickets and contracts are turned into kWh.</summary>
    /// <param name="set">Scenario set that <see cref="ScenarioChecks"/> found sound; a name that is not there takes those in use where nothing is chosen, as the check stops every study.</param>
    /// <returns>The set.</returns>
    public static HeatingValueSet HeatingValues(this ScenarioSetFacts set) => FuelSets.HeatingNamed(set.HeatingValueSet) ?? FuelSets.HeatingInUse;
}
