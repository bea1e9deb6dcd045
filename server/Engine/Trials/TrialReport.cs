namespace FarmPortfolio.Engine.Trials;

/// <summary>A share with its 90 % interval.</summary>
/// <param name="Value">Central value.</param>
/// <param name="Low">One in twenty is lower.</param>
/// <param name="High">One in twenty is higher.</param>
/// <param name="Sd">Standard deviation.</param>
public sealed record Measured(double Value, double Low, double High, double Sd);

/// <summary>Saving at a range of outside temperatures.</summary>
/// <param name="FromC">Coldest night mean of the range, C.</param>
/// <param name="ToC">Mildest, C.</param>
/// <param name="Nights">Nights.</param>
/// <param name="Saving">Saving of heat.</param>
public sealed record SavingAtCold(double FromC, double ToC, double Nights, Measured Saving);

/// <summary>A straight line: heat a day = AtZeroKwh + KwhPerK x (inside - outside).</summary>
/// <param name="AtZeroKwh">Heat a day at no lift, kWh.</param>
/// <param name="KwhPerK">Heat a day and kelvin, kWh.</param>
/// <param name="FromK">Smallest lift met, K.</param>
/// <param name="ToK">Largest lift met, K.</param>
public sealed record UseLine(double AtZeroKwh, double KwhPerK, double FromK, double ToK);

/// <summary>One treated house against the control.</summary>
public sealed record TrialComparison
{
    /// <summary>Treated house.</summary>
    public required string Label { get; init; }

    /// <summary>Retrofit.</summary>
    public required string RetrofitCode { get; init; }

    /// <summary>All pairs, those left out among them.</summary>
    public required IReadOnlyList<TrialPair> Pairs { get; init; }

    /// <summary>Saving of heat at equal inside temperature, share.</summary>
    public required Measured Saving { get; init; }

    /// <summary>Saving of heat as the houses were run, share; its own inside temperatures included.</summary>
    public required double AsRunSaving { get; init; }

    /// <summary>Heat saved over the nights in use, kWh.</summary>
    public required Measured SavedKwh { get; init; }

    /// <summary>Saving modelled for this house, weather and use, share; null where the station has no record.</summary>
    public double? ModelledSaving { get; init; }

    /// <summary>Measured over modelled; null where nothing could be modelled.</summary>
    public Measured? Factor { get; init; }

    /// <summary>Treated house over control, both as they stand.</summary>
    public required double HouseRatio { get; init; }

    /// <summary>Whether idle nights told it.</summary>
    public required bool IdleKnown { get; init; }

    /// <summary>Spread of a week's use, share: what a design is reckoned from.</summary>
    public required double WeekSd { get; init; }

    /// <summary>Nights in use, broken ones among them.</summary>
    public required double NightsInUse { get; init; }

    /// <summary>Nights broken or forgotten.</summary>
    public required double NightsBroken { get; init; }

    /// <summary>Nights idle.</summary>
    public required double NightsIdle { get; init; }

    /// <summary>Saving by outside temperature, coldest first.</summary>
    public required IReadOnlyList<SavingAtCold> ByCold { get; init; }

    /// <summary>Points of saving gained for each kelvin it is colder, with its interval; shares.</summary>
    public required Measured PerKelvinColder { get; init; }

    /// <summary>Line of the control.</summary>
    public required UseLine ControlLine { get; init; }

    /// <summary>Line of the treated house in use.</summary>
    public required UseLine TreatedLine { get; init; }

    /// <summary>What must be known of the answer, in sentences.</summary>
    public required IReadOnlyList<string> Words { get; init; }
}

/// <summary>What a trial shows.</summary>
/// <param name="Comparisons">By treated house.</param>
/// <param name="Faults">What stops it or a part of it.</param>
public sealed record TrialReport(IReadOnlyList<TrialComparison> Comparisons, IReadOnlyList<Fault> Faults);
