using FarmPortfolio.Engine.Farms;

namespace FarmPortfolio.Engine.Trials;

/// <summary>What a house does in a trial.</summary>
public enum TrialRole
{
    /// <summary>Left as it stands.</summary>
    Control,

    /// <summary>Has the retrofit.</summary>
    Treated,
}

/// <summary>What is read on a house.</summary>
public enum TrialMeasure
{
    /// <summary>A fuel meter that runs on.</summary>
    Meter,

    /// <summary>Fuel used since the last reading.</summary>
    Used,

    /// <summary>A counter of burner hours that runs on.</summary>
    BurnerHours,
}

/// <summary>State of the retrofit since the last reading.</summary>
public enum RetrofitState
{
    /// <summary>In use as meant.</summary>
    InUse,

    /// <summary>Left out on purpose, to see how alike the houses are.</summary>
    Idle,

    /// <summary>Broken or forgotten: such nights stay in.</summary>
    Broken,
}

/// <summary>A house of a trial.</summary>
public sealed record TrialHouse
{
    /// <summary>Name in the notebook, such as "A" or "middle house".</summary>
    public required string Label { get; init; }

    /// <summary>Control or treated.</summary>
    public required TrialRole Role { get; init; }

    /// <summary>Retrofit of a treated house.</summary>
    public string? RetrofitCode { get; init; }

    /// <summary>The house as it stands, without the retrofit; copied when the trial was entered.</summary>
    public required HouseFacts House { get; init; }

    /// <summary>Fuel its heater burns.</summary>
    public required FuelKind Fuel { get; init; }

    /// <summary>What is read.</summary>
    public required TrialMeasure Measure { get; init; }

    /// <summary>Fuel heat of one unit read, kWh on the higher heating value; for burner hours the firing rate in kW.</summary>
    public required double KwhPerUnit { get; init; }

    /// <summary>Whether a firing rate was clocked on the meter; a nameplate's rate is known to 5 % (common practice).</summary>
    public bool RateClocked { get; init; } = true;
}

/// <summary>A stretch of a house's readings that the adviser sets aside.</summary>
/// <param name="Label">House.</param>
/// <param name="From">First day.</param>
/// <param name="To">Last day.</param>
/// <param name="Reason">Why; never empty.</param>
public sealed record TrialExclusion(string Label, DateOnly From, DateOnly To, string Reason);

/// <summary>Houses run side by side, one left as it stands.</summary>
public sealed record TrialFacts
{
    /// <summary>Farm it stands on; null = a place that is no member.</summary>
    public string? FarmId { get; init; }

    /// <summary>Weather station whose hours the model takes.</summary>
    public string? WeatherStationId { get; init; }

    /// <summary>Houses, one control and one treated at least.</summary>
    public required IReadOnlyList<TrialHouse> Houses { get; init; }

    /// <summary>First reading.</summary>
    public required DateOnly StartsOn { get; init; }

    /// <summary>Last reading.</summary>
    public required DateOnly EndsOn { get; init; }

    /// <summary>Hash of the readings, as <see cref="TrialReadings"/> lays them out.</summary>
    public required string ReadingsSha256 { get; init; }

    /// <summary>Stretches set aside, each with its reason.</summary>
    public IReadOnlyList<TrialExclusion> Exclusions { get; init; } = [];
}
