namespace FarmPortfolio.Engine.Farms;

/// <summary>Tank or meter.</summary>
public enum SupplyKind
{
    /// <summary>Filled by truck.</summary>
    Tank,

    /// <summary>Read by a utility.</summary>
    Meter,
}

/// <summary>Something else that burns from the same tank or meter.</summary>
/// <param name="What">Plain word: dwelling, hot water, dryer.</param>
/// <param name="KwhFuelPerYear">Its fuel heat a year in kWh; null = part of the base use.</param>
public sealed record OtherUse(string What, double? KwhFuelPerYear = null);

/// <summary>One tank bank or meter with the houses and other uses behind it.</summary>
public sealed record SupplyGroupFacts
{
    /// <summary>The farm it stands on.</summary>
    public required string FarmId { get; init; }

    /// <summary>Its fuel.</summary>
    public required FuelKind Fuel { get; init; }

    /// <summary>Tank or meter.</summary>
    public required SupplyKind Kind { get; init; }

    /// <summary>Size of the tank bank in litres; null for a meter or not known.</summary>
    public double? TankSizeL { get; init; }

    /// <summary>What else hangs on it.</summary>
    public IReadOnlyList<OtherUse> OtherUses { get; init; } = [];

    /// <summary>Use that does not follow the weather in kWh of fuel a day; null = not known.</summary>
    public double? BaseUseKwhPerDay { get; init; }

    /// <summary>Therms a hundred cubic feet on the bills; null = the published mean.</summary>
    public double? ThermsPerCcf { get; init; }

    /// <summary>Fuel that takes over when an interruptible supply is cut; null = firm.</summary>
    public FuelKind? StandByFuel { get; init; }
}
