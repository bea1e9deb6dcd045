using System.Text.Json.Serialization;
using FarmPortfolio.Engine.Economics;

namespace FarmPortfolio.Engine.Studies;

/// <summary>A study's results.</summary>
public sealed record StudyResult
{
    /// <summary>Results of all options but "as it stands", house by house.</summary>
    public required IReadOnlyList<OptionResult> Options { get; init; }

    /// <summary>Houses and options left out, and why; item id and fault.</summary>
    public required IReadOnlyList<(string ItemId, Fault Fault)> LeftOut { get; init; }

    /// <summary>Fuel of all houses as they stand, by season.</summary>
    public required IReadOnlyList<Distribution> CostBySeason { get; init; }

    /// <summary>First season's fuel by kind, and houses on it.</summary>
    public required IReadOnlyList<(FuelKind Fuel, Distribution FirstSeasonUsd, int Houses)> CostByFuel { get; init; }

    /// <summary>First season's fuel of each unit's houses, in the order of the units: the bill of a tank or meter, or of those that share a house.</summary>
    public IReadOnlyList<UnitCost> CostByUnit { get; init; } = [];

    /// <summary>One single future of the whole co-op's cost.</summary>
    public required IReadOnlyList<double> OnePath { get; init; }

    /// <summary>Year of the July of the first season.</summary>
    public required int FirstSeason { get; init; }

    /// <summary>Replicates, each an equal share of the futures.</summary>
    public required int Replicates { get; init; }

    /// <summary>Futures drawn.</summary>
    public required int Futures { get; init; }

    /// <summary>Houses reckoned.</summary>
    public required int Houses { get; init; }

    /// <summary>Their floor, m2.</summary>
    public required double FloorM2 { get; init; }

    /// <summary>Name of the futures.</summary>
    public required string FuturesSha256 { get; init; }

    /// <summary>Mean net saving of a season by option, in the order of <see cref="Options"/>, and path; for funding. Empty where single futures are not at hand.</summary>
    public IReadOnlyList<float[]> SavingByPath { get; init; } = [];

    /// <summary>Names of the units it is made of, in order.</summary>
    public IReadOnlyList<string> UnitSha256s { get; init; } = [];

    /// <summary>Units that were at hand and not reckoned again.</summary>
    public int UnitsKnown { get; init; }

    /// <summary>Discount rate a year that it reckoned with; null = it was done before this was kept. It stands in every present value, so the checksum leaves it out.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? DiscountRate { get; init; }

    /// <summary>Checksum of all results and sums: equal inputs, equal bits.</summary>
    public string ResultSha256 { get; init; } = string.Empty;
}

/// <summary>What the fuel of some houses that settle together costs as they stand.</summary>
/// <param name="HouseIds">The houses.</param>
/// <param name="FirstSeasonUsd">First season, US dollars.</param>
public sealed record UnitCost(IReadOnlyList<string> HouseIds, Distribution FirstSeasonUsd);

/// <summary>An earlier study on the same futures, from whose sums a new one can start.</summary>
/// <param name="FuturesSha256">Its futures.</param>
/// <param name="NumbersVersion">Its version of the numbers.</param>
/// <param name="Units">Its units with their houses.</param>
/// <param name="Sums">Reads its sums over houses; asked only when they can be used.</param>
/// <param name="Inputs">Reads what it read; asked only when units have gone.</param>
public sealed record EarlierStudy(string FuturesSha256, int NumbersVersion, IReadOnlyDictionary<string, IReadOnlyList<string>> Units, Func<StudySums> Sums, Func<Portfolio?> Inputs);

/// <summary>How far a study has come.</summary>
/// <param name="Share">0 to 1.</param>
/// <param name="Words">What is being done.</param>
/// <param name="Done">Options done.</param>
/// <param name="Total">Options in all.</param>
/// <param name="Early">Results of the last unit: early figures, for show only.</param>
public sealed record StudyProgress(double Share, string Words, int Done, int Total, IReadOnlyList<OptionResult>? Early = null);
