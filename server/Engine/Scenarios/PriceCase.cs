namespace FarmPortfolio.Engine.Scenarios;

/// <summary>A named course that delivered prices could take, laid over the futures as factors by season.</summary>
public enum PriceCaseKind
{
    /// <summary>Gas, propane and oil half as dear again for two winters, then as before.</summary>
    SpikeOfTwoWinters,

    /// <summary>Gas, propane and oil rise by 4 % a year over what they would have cost.</summary>
    SlowRise,

    /// <summary>Gas, propane and oil fall by 40 % and stay there.</summary>
    Collapse,

    /// <summary>Propane comes down and gas goes up until, from the fifth season on, a unit of heat in either costs the same.</summary>
    SpreadCloses,

    /// <summary>Propane costs twice as much for one winter, everywhere at once.</summary>
    PropaneDoubled,
}

/// <summary>A price case laid over the futures of a study.</summary>
/// <param name="Kind">Which course.</param>
/// <param name="FirstSeason">Season of the study it begins in, from 0.</param>
public sealed record PriceCase(PriceCaseKind Kind, int FirstSeason = 0);
