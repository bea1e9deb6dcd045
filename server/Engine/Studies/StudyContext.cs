using FarmPortfolio.Engine.Economics;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Engine.Studies;

/// <summary>What all houses of a study share.</summary>
/// <param name="portfolio">All that the study reads.</param>
/// <param name="futures">Futures.</param>
/// <param name="orders">Their replicates as the kernel reads them.</param>
internal sealed class StudyContext(Portfolio portfolio, StudyFutures futures, IReadOnlyList<WinterOrder> orders)
{
    private readonly Lazy<PathOrder>[] byPrice =
        [.. Enum.GetValues<FuelKind>().Select(f => new Lazy<PathOrder>(() => PathOrder.ByPrice([.. orders.Select(o => o.Block)], f, futures.Spec)))];

    /// <summary>All that the study reads.</summary>
    public Portfolio Portfolio { get; } = portfolio;

    /// <summary>Assumptions.</summary>
    public ScenarioSetFacts Set { get; } = portfolio.Set;

    /// <summary>Replicates as the kernel reads them.</summary>
    public IReadOnlyList<WinterOrder> Orders { get; } = orders;

    /// <summary>Paths of all replicates.</summary>
    public int Paths { get; } = futures.Paths;

    /// <summary>Seasons.</summary>
    public int Seasons { get; } = portfolio.Set.SeasonCount;

    /// <summary>Replicates.</summary>
    public int Replicates { get; } = portfolio.Set.ReplicateCount;

    /// <summary>Draws that all houses share.</summary>
    public PathNoise Shared { get; } = new(portfolio.Set);

    /// <summary>The paths from cheap to dear.</summary>
    /// <param name="fuel">Fuel.</param>
    /// <returns>Their order; null for plain paths.</returns>
    public PathOrder? ByPrice(FuelKind fuel) => Set.Sampling == PathSampling.Plain ? null : byPrice[(int)fuel].Value;
}

/// <summary>What of an option does not depend on the path.</summary>
/// <param name="Option">Option.</param>
/// <param name="Costs">Costs.</param>
/// <param name="Plan">When money is spent.</param>
/// <param name="Factor">True saving over modelled saving.</param>
/// <param name="BaseHeatKwh">Heat as the house stands, mean of the winters.</param>
/// <param name="HeatKwh">Heat with the option, mean of the winters.</param>
internal sealed record OptionTerms(OptionFacts Option, OptionCosts Costs, CashPlan Plan, RealisedFactor Factor, double BaseHeatKwh, double HeatKwh)
{
    /// <summary>Line that a switch of fuel moves to; null = none.</summary>
    public SupplyLine? Switch { get; init; }

    /// <summary>Fuel it burns there, mean of the winters, kWh at a realised factor of one.</summary>
    public double SwitchKwh { get; init; }
}
