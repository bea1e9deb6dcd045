namespace FarmPortfolio.Engine.Retrofits;

/// <summary>When an option is built.</summary>
public enum OptionTiming
{
    /// <summary>Before the first season of the study.</summary>
    Now,

    /// <summary>At the next film change.</summary>
    AtFilmChange,

    /// <summary>At the heater's end of life.</summary>
    AtHeaterChange,
}

/// <summary>What a house's own option sets instead of the catalogue's figure. Null = the catalogue's.</summary>
public sealed record OptionOverrides
{
    /// <summary>Outlay in whole cents.</summary>
    public long? OutlayCents { get; init; }

    /// <summary>Upkeep a year, US dollars.</summary>
    public double? UpkeepUsdPerYear { get; init; }

    /// <summary>Watching in the heating season, hours a week.</summary>
    public double? WatchingHoursPerWeek { get; init; }

    /// <summary>Soap, tape, antifreeze a year, US dollars.</summary>
    public double? ConsumablesUsdPerYear { get; init; }

    /// <summary>Electricity a winter, kWh.</summary>
    public double? ElectricityKwhPerYear { get; init; }

    /// <summary>Share of the floor lost to the crop, 0 to 1.</summary>
    public double? SpaceLostShare { get; init; }

    /// <summary>Share of daylight lost, 0 to 1.</summary>
    public double? LightLostShare { get; init; }

    /// <summary>Life in years.</summary>
    public double? LifeYears { get; init; }

    /// <summary>Whether it is given up at the end of its life instead of renewed; its saving ends there. Null = renewed.</summary>
    public bool? NotRenewed { get; init; }

    /// <summary>Tank or meter that a switch of fuel moves to; null = the farm's first of that fuel, else the monthly index.</summary>
    public string? SwitchSupplyGroupId { get; init; }

    /// <summary>Other numbers of the retrofit's physics by the catalogue's name for them, SI.</summary>
    public IReadOnlyDictionary<string, double> Physics { get; init; } = new Dictionary<string, double>();
}

/// <summary>One retrofit or compatible combination for one house.</summary>
/// <param name="Key">Sorted codes and timing: foam-seal-now, irfilm-film, none.</param>
/// <param name="Parts">Catalogue codes of its parts; empty = as it stands.</param>
/// <param name="Timing">When it is built.</param>
/// <param name="Overrides">Own figures; null = none.</param>
public sealed record OptionFacts(string Key, IReadOnlyList<string> Parts, OptionTiming Timing = OptionTiming.Now, OptionOverrides? Overrides = null);

/// <summary>The options of one house.</summary>
public sealed record OptionSetFacts
{
    /// <summary>The house.</summary>
    public required string HouseId { get; init; }

    /// <summary>Its options beside "as it stands".</summary>
    public IReadOnlyList<OptionFacts> Options { get; init; } = [];
}
