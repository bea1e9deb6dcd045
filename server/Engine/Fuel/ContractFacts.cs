namespace FarmPortfolio.Engine.Fuel;

/// <summary>How a supply group pays.</summary>
public enum ContractKind
{
    /// <summary>a + b x index of the month.</summary>
    Indexed,

    /// <summary>One price for the term.</summary>
    Fixed,

    /// <summary>Indexed, never over a cap, for a fee.</summary>
    Capped,

    /// <summary>Indexed, between a floor and a cap.</summary>
    Collared,

    /// <summary>A block bought before the season.</summary>
    PreBought,
}

/// <summary>Whether a contract binds or is only on offer.</summary>
public enum ContractStanding
{
    /// <summary>Signed; a study prices the supply group by it.</summary>
    InForce,

    /// <summary>On offer; compared, never used.</summary>
    Offered,
}

/// <summary>What becomes of a pre-bought block that is left over.</summary>
public enum LeftoverRule
{
    /// <summary>Lost.</summary>
    Lost,

    /// <summary>Carried to the next season at the price paid.</summary>
    CarriedAtOldPrice,

    /// <summary>The money stays with the dealer and buys fuel later at the price of that day.</summary>
    CarriedAtNewPrice,

    /// <summary>Taken back, but for a share of its price that is billed.</summary>
    BilledToShare,
}

/// <summary>A step of a price that changes with the month's volume.</summary>
/// <param name="FromUnits">Volume of the month from which it holds, in price units.</param>
/// <param name="AdderUsdPerUnit">What is added to the price above it, US dollars a unit.</param>
public sealed record VolumeTier(double FromUnits, double AdderUsdPerUnit);

/// <summary>
/// How a supply group pays for its fuel. Prices are per <see cref="Unit"/>. "Index" is the price of the month, delivered, as the futures draw it for everybody.
/// </summary>
public sealed record ContractFacts
{
    /// <summary>The tank or meter.</summary>
    public required string SupplyGroupId { get; init; }

    /// <summary>Kind.</summary>
    public required ContractKind Kind { get; init; }

    /// <summary>In force or offered.</summary>
    public ContractStanding Standing { get; init; } = ContractStanding.InForce;

    /// <summary>Unit of its prices: gal, therm, kWh, ton, L.</summary>
    public required string Unit { get; init; }

    /// <summary>First day; null = already running.</summary>
    public DateOnly? StartsOn { get; init; }

    /// <summary>Last day; null = until given up.</summary>
    public DateOnly? EndsOn { get; init; }

    /// <summary>The price series it follows; null = the scenario set's series for the fuel.</summary>
    public string? PriceSeriesId { get; init; }

    /// <summary>a of paid = a + b x index, US dollars a unit; null = the fuel's default adder.</summary>
    public double? AdderUsdPerUnit { get; init; }

    /// <summary>b of paid = a + b x index, 0.3 to 1.5; null = 1.</summary>
    public double? IndexShare { get; init; }

    /// <summary>Standard deviation of what is paid about a + b x index, US dollars a unit, drawn once a season: what the farm's own tickets leave over their line. Null = none told. Left out of texts where null, so that the names of units of earlier studies stand.</summary>
    [System.Text.Json.Serialization.JsonIgnore(Condition = System.Text.Json.Serialization.JsonIgnoreCondition.WhenWritingNull)]
    public double? ScatterUsdPerUnit { get; init; }

    /// <summary>Fixed price or price of the pre-bought block, US dollars a unit.</summary>
    public double? PriceUsdPerUnit { get; init; }

    /// <summary>Cap, US dollars a unit.</summary>
    public double? CapUsdPerUnit { get; init; }

    /// <summary>Floor, US dollars a unit.</summary>
    public double? FloorUsdPerUnit { get; init; }

    /// <summary>
    /// Fixed, capped, collared, pre-bought: what the price or cap is over the index of July, agreed anew before each season, US dollars a unit.
    /// A floor stands as it is, and gives way to a cap that comes out below it. Null = price and cap hold as they stand.
    /// </summary>
    public double? OverIndexUsdPerUnit { get; init; }

    /// <summary>Block a season that the contract's price covers, in units; what is used over it pays a + b x index. Null = all that is used.</summary>
    public double? BlockUnits { get; init; }

    /// <summary>Month in which a block is paid, 1 to 12; null = the first month of the season.</summary>
    public int? BlockPaidMonth { get; init; }

    /// <summary>What becomes of an unused pre-bought block; null = lost.</summary>
    public LeftoverRule? Leftover { get; init; }

    /// <summary>Share billed under <see cref="LeftoverRule.BilledToShare"/>, 0 to 1.</summary>
    public double? BilledShare { get; init; }

    /// <summary>What money costs from paying a pre-bought block to using it, 0.06 = 6 % a year; null = the study's discount rate.</summary>
    public double? MoneyRatePerYear { get; init; }

    /// <summary>Least units a season; what is short is billed at the average price paid. Null = none.</summary>
    public double? MinimumTakeUnits { get; init; }

    /// <summary>Steps by monthly volume, lowest first.</summary>
    public IReadOnlyList<VolumeTier> Tiers { get; init; } = [];

    /// <summary>Charge a month, US dollars; null = 0.</summary>
    public double? MonthlyFeeUsd { get; init; }

    /// <summary>Fee a season, such as the price of a cap, US dollars; null = 0.</summary>
    public double? SeasonFeeUsd { get; init; }

    /// <summary>Charge a delivery, US dollars; null = 0.</summary>
    public double? DeliveryFeeUsd { get; init; }

    /// <summary>Units a delivery; null = 250 gal or its like.</summary>
    public double? UnitsPerDelivery { get; init; }

    /// <summary>Tank rent a year, US dollars; null = 0.</summary>
    public double? TankRentUsdPerYear { get; init; }

    /// <summary>Demand charge, US dollars a kW of the month's peak; null = 0.</summary>
    public double? DemandUsdPerKw { get; init; }

    /// <summary>Mean load over peak load of a month, above 0 to 1, by which the month's peak is reckoned; null = 0.3, common practice for heating.</summary>
    public double? LoadFactor { get; init; }

    /// <summary>Share of the volume under this contract, above 0 to 1; the rest pays the index. Null = 1.</summary>
    public double? VolumeShare { get; init; }

    /// <summary>Days a season on which an interruptible supply is cut and the stand-by fuel burns; null = 0.</summary>
    public double? InterruptedDays { get; init; }

    /// <summary>The contract it rolls into, itself to renew on the same terms; null = the index.</summary>
    public string? RollsIntoContractId { get; init; }
}
