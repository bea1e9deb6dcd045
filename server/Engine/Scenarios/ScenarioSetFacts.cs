using FarmPortfolio.Engine.Fuel;

namespace FarmPortfolio.Engine.Scenarios;

/// <summary>Whether an entered price level is the mean or the median of the futures.</summary>
public enum LevelMeaning
{
    /// <summary>Median: half the futures are lower.</summary>
    Middle,

    /// <summary>Mean of the futures.</summary>
    Expected,
}

/// <summary>How the paths are drawn.</summary>
public enum PathSampling
{
    /// <summary>Independent Philox draws, winters stratified.</summary>
    Plain,

    /// <summary>Unrest, eight leading price components, the hardness of the weather and the errors all houses share from scrambled Sobol points, a house's own errors evenly spread, the rest Philox, winters stratified.</summary>
    Sobol,
}

/// <summary>A deterministic shape laid over the price futures.</summary>
/// <param name="Fuel">Fuel it acts on; null = all.</param>
/// <param name="FirstSeason">Season of the study it starts in, from 0.</param>
/// <param name="SeasonFactors">Factor on the price season by season from then; the last one does not carry on.</param>
public sealed record PriceShape(FuelKind? Fuel, int FirstSeason, IReadOnlyList<double> SeasonFactors)
{
    /// <summary>Factor of all shapes together on a fuel's price, season by season.</summary>
    internal static double[] Factors(IReadOnlyList<PriceShape> shapes, FuelKind fuel, int seasons) =>
        [.. Enumerable.Range(0, seasons).Select(s => shapes.Where(c => c.Fuel is null || c.Fuel == fuel)
            .Aggregate(1.0, (f, c) => s >= c.FirstSeason && s - c.FirstSeason < c.SeasonFactors.Count ? f * c.SeasonFactors[s - c.FirstSeason] : f))];
}

/// <summary>The assumptions of a study.</summary>
public sealed record ScenarioSetFacts
{
    /// <summary>Year of the July of the first season.</summary>
    public required int FirstSeason { get; init; }

    /// <summary>Seasons reckoned, 1 to 30.</summary>
    public int SeasonCount { get; init; } = 15;

    /// <summary>Random seed.</summary>
    public long Seed { get; init; } = 1;

    /// <summary>Replicates, each a full set of futures, 2 to 40.</summary>
    public int ReplicateCount { get; init; } = 10;

    /// <summary>Paths a replicate; a power of two for Sobol points.</summary>
    public int PathCount { get; init; } = 1024;

    /// <summary>Plain or Sobol.</summary>
    public PathSampling Sampling { get; init; } = PathSampling.Sobol;

    /// <summary>Mean or median.</summary>
    public LevelMeaning LevelMeaning { get; init; } = LevelMeaning.Middle;

    /// <summary>Assumptions by fuel; a fuel that is missing takes its defaults.</summary>
    public IReadOnlyList<FuelPriceAssumption> Prices { get; init; } = [];

    /// <summary>Shapes laid over the futures.</summary>
    public IReadOnlyList<PriceShape> Shapes { get; init; } = [];

    /// <summary>Named price case laid over the futures as well; null = none.</summary>
    public PriceCase? PriceCase { get; init; }

    /// <summary>Own correlations of the short-term factor, order gas, propane, oil, electricity, row by row; null = default.</summary>
    public IReadOnlyList<double>? ShortCorrelations { get; init; }

    /// <summary>Own correlations of the long-term factor; null = default.</summary>
    public IReadOnlyList<double>? LongCorrelations { get; init; }

    /// <summary>Share weights of the fuels in the sampling of leading components, gas, propane, oil, electricity; null = equal over gas, propane, oil.</summary>
    public IReadOnlyList<double>? SamplingWeights { get; init; }

    /// <summary>Whether hard winters are dear winters for wholesale gas.</summary>
    public bool ColdMonthTerm { get; init; } = true;

    /// <summary>Seasons in the pool of winters; empty = every season that all stations used share.</summary>
    public IReadOnlyList<int> WinterPool { get; init; } = [];

    /// <summary>Mean of the temperature offset in the first season, K.</summary>
    public double OffsetK { get; init; }

    /// <summary>Trend of the offset, K a year.</summary>
    public double OffsetTrendKPerYear { get; init; } = 0.03;

    /// <summary>Spread of the offset, sd in K, drawn a season and common to all stations.</summary>
    public double OffsetSdK { get; init; } = 0.3;

    /// <summary>Nominal discount rate a year.</summary>
    public double DiscountRate { get; init; } = 0.05;

    /// <summary>Nominal growth of wages, upkeep and consumables a year.</summary>
    public double UpkeepGrowth { get; init; } = 0.03;

    /// <summary>Nominal growth of replacement costs a year.</summary>
    public double ReplacementGrowth { get; init; } = 0.03;

    /// <summary>Wage where the farm tells none, US dollars an hour.</summary>
    public double WageUsdPerHour { get; init; } = 20;

    /// <summary>Electricity for pumps and motors where the farm tells none, US dollars a kWh.</summary>
    public double ElectricityUsdPerKwh { get; init; } = 0.17;

    /// <summary>Share of a saving taken back as a warmer house, 0 to 0.3.</summary>
    public double TakeBackShare { get; init; }

    /// <summary>Share of the variance of the saving and outlay errors that is common to all houses, 0 to 1.</summary>
    public double CommonShare { get; init; } = 0.5;

    /// <summary>Share of a day's surplus sun carried into the next night, 0 to 1.</summary>
    public double CarryOver { get; init; } = 0.3;

    /// <summary>Volumes of air a day vented against humidity where the house tells none.</summary>
    public double PurgeVolumesPerDay { get; init; } = 1;

    /// <summary>Name of the dated set of emission factors that CO2 is reckoned by; null = <see cref="Units.FuelSets.EmissionsInUse"/>. Left out of texts where null, so that the names of units of earlier studies stand.</summary>
    [System.Text.Json.Serialization.JsonIgnore(Condition = System.Text.Json.Serialization.JsonIgnoreCondition.WhenWritingNull)]
    public string? EmissionSet { get; init; }

    /// <summary>Name of the dated set of heating values that prices, tickets and contracts are turned into kWh by; null = <see cref="Units.FuelSets.HeatingInUse"/>. Left out of texts where null, likewise.</summary>
    [System.Text.Json.Serialization.JsonIgnore(Condition = System.Text.Json.Serialization.JsonIgnoreCondition.WhenWritingNull)]
    public string? HeatingValueSet { get; init; }

    /// <summary>Level multiplier on U before bills.</summary>
    public double LossLevel { get; init; } = 1.10;
}
