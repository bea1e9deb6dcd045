namespace FarmPortfolio.Engine;

/// <summary>What a heater burns or draws.</summary>
public enum FuelKind
{
    /// <summary>Piped natural gas.</summary>
    NaturalGas,

    /// <summary>Propane by truck.</summary>
    Propane,

    /// <summary>No. 2 fuel oil by truck.</summary>
    FuelOil,

    /// <summary>Electricity.</summary>
    Electricity,

    /// <summary>Wood pellets.</summary>
    WoodPellets,
}
