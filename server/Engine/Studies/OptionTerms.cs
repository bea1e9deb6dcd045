using FarmPortfolio.Engine.Economics;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Engine.Studies;

/// <summary>What of an option does not depend on the path.</summary>
/// <param name="Option">Option.</param>
/// <param name="Costs">Costs.</param>
/// <param name="Plan">When money is spent.</param>
/// <param name="Factor">True saving over modelled saving.</param>
/// <param name="Table">Heat with the option.</param>
/// <param name="BaseHeatKwh">Heat as the house stands, mean of the winters.</param>
/// <param name="HeatKwh">Heat with the option, mean of the winters.</param>
internal sealed record OptionTerms(OptionFacts Option, OptionCosts Costs, CashPlan Plan, RealisedFactor Factor, DemandTable Table, double BaseHeatKwh, double HeatKwh)
{
    /// <summary>Where a switch of fuel moves the first heater; null = it stays.</summary>
    public SwitchLine? Moved { get; init; }

    /// <summary>What the heater on the other fuel is asked for; null = it stays.</summary>
    public DemandTable? Burnt { get; init; }

    /// <summary>Fuel it burns there, mean of the winters, kWh at a realised factor of one.</summary>
    public double SwitchKwh { get; init; }

    /// <summary>Line that a switch of fuel moves to; null = none.</summary>
    public SupplyLine? Switch => Moved?.Line;

    /// <summary>What is kept of a modelled saving in a season in which the option runs, a path's errors aside.</summary>
    /// <param name="set">Assumptions.</param>
    /// <param name="season">Season.</param>
    public double Kept(ScenarioSetFacts set, int season) => Factor.Season(season - Plan.StartSeason) * (1 - set.TakeBackShare);

    /// <summary>Efficiency of the heater on a line of the house with the option.</summary>
    /// <param name="house">House.</param>
    /// <param name="supply">Line.</param>
    /// <param name="season">Season.</param>
    public double EfficiencyOf(StudyHouse house, SupplyLine supply, int season) => supply.HeaterNo == 0 ? Plan.Efficiency[season] : house.StandingEfficiency(supply, season);
}
