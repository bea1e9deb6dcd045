using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Engine.Studies;

/// <summary>What all houses of a study share.</summary>
/// <param name="portfolio">All that the study reads.</param>
/// <param name="futures">Futures.</param>
/// <param name="layouts">Their replicates as the kernel reads them.</param>
internal sealed class StudyContext(Portfolio portfolio, StudyFutures futures, IReadOnlyList<ReplicateLayout> layouts)
{
    private readonly Lazy<PathOrder>[] byPrice =
        [.. Enum.GetValues<FuelKind>().Select(f => new Lazy<PathOrder>(() => PathOrder.ByPrice([.. layouts.Select(l => l.Block)], f, futures.Spec)))];

    /// <summary>All that the study reads.</summary>
    public Portfolio Portfolio { get; } = portfolio;

    /// <summary>Assumptions.</summary>
    public ScenarioSetFacts Set { get; } = portfolio.Set;

    /// <summary>Replicates as the kernel reads them.</summary>
    public IReadOnlyList<ReplicateLayout> Layouts { get; } = layouts;

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
