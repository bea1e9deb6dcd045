namespace FarmPortfolio.Engine.Retrofits;

/// <summary>What a catalogue entry describes.</summary>
public enum CatalogueKind
{
    /// <summary>A kind of improvement or a change of running.</summary>
    Retrofit,

    /// <summary>What a surface is made of.</summary>
    Covering,

    /// <summary>A kind of heater.</summary>
    Heater,

    /// <summary>A crop's periods and set points.</summary>
    HeatingPlan,

    /// <summary>Heating value, emission factor, default adder.</summary>
    Fuel,

    /// <summary>A number that stands in for what is not known.</summary>
    Default,
}

/// <summary>How far a number is known.</summary>
public enum ValueStatus
{
    /// <summary>Read in the source named.</summary>
    Read,

    /// <summary>Computed from the inputs named.</summary>
    Computed,

    /// <summary>From memory.</summary>
    FromMemory,

    /// <summary>Common practice, no source.</summary>
    CommonPractice,

    /// <summary>Entered by the user.</summary>
    Entered,
}

/// <summary>One number of a catalogue entry.</summary>
/// <param name="Value">Central value in <paramref name="Unit"/>.</param>
/// <param name="Unit">SI unit, or 1.</param>
/// <param name="Low">One in ten is lower; null = not told.</param>
/// <param name="High">One in ten is higher; null = not told.</param>
/// <param name="Status">How far it is known.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record CatalogueValue(double Value, string Unit, double? Low = null, double? High = null, ValueStatus Status = ValueStatus.CommonPractice, string? Source = null);

/// <summary>One entry; a co-op's own entry with the same kind and code overrides the built-in one.</summary>
public sealed record CatalogueFacts
{
    /// <summary>Kind.</summary>
    public required CatalogueKind Kind { get; init; }

    /// <summary>Code, unique within the kind: foam, curtain, double-film.</summary>
    public required string Code { get; init; }

    /// <summary>Plain name on pages.</summary>
    public required string Title { get; init; }

    /// <summary>Numbers by name.</summary>
    public IReadOnlyDictionary<string, CatalogueValue> Values { get; init; } = new Dictionary<string, CatalogueValue>();

    /// <summary>Periods, for a heating plan.</summary>
    public IReadOnlyList<Farms.HeatingPeriod> Periods { get; init; } = [];

    /// <summary>Drawbacks in plain sentences.</summary>
    public IReadOnlyList<string> Drawbacks { get; init; } = [];

    /// <summary>Cautions in plain sentences.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>Skills the work asks for.</summary>
    public IReadOnlyList<string> Skills { get; init; } = [];

    /// <summary>Codes that cannot stand beside it.</summary>
    public IReadOnlyList<string> Excludes { get; init; } = [];

    /// <summary>What it needs, by the engine's word: double-film, film-due, single-film, gas.</summary>
    public IReadOnlyList<string> Needs { get; init; } = [];
}
