namespace FarmPortfolio.Engine.HeatDemand.Calibration;

/// <summary>One interval against the model.</summary>
/// <param name="Use">The interval.</param>
/// <param name="DescribedKwh">Fuel as the houses are described, base use included, kWh.</param>
/// <param name="FittedKwh">Fuel with the fitted multiplier and base use, kWh.</param>
/// <param name="ScatterDays">Days that its use a day is over: its own, of a total those on which the houses are heated.</param>
/// <param name="Outlying">Whether it stands out of the others by over two of their standard deviations.</param>
public sealed record IntervalFit(UseInterval Use, double DescribedKwh, double FittedKwh, int ScatterDays, bool Outlying)
{
    /// <summary>Billed less fitted, kWh.</summary>
    public double ResidualKwh => Use.KwhFuel - FittedKwh;
}

/// <summary>A fitted number with its 90 per cent interval.</summary>
/// <param name="Value">Value.</param>
/// <param name="Se">Standard error; null where the intervals do not tell it.</param>
/// <param name="Low">One in twenty is lower; null with <paramref name="Se"/>.</param>
/// <param name="High">One in twenty is higher; null with <paramref name="Se"/>.</param>
public sealed record Fitted(double Value, double? Se, double? Low, double? High);

/// <summary>The newest heating season that the intervals tell, before anything is fitted.</summary>
/// <param name="Season">Year of its July.</param>
/// <param name="FromOn">First day told.</param>
/// <param name="ToOn">Last day told.</param>
/// <param name="SeasonShare">Share of the season's reckoned fuel that falls on the days told.</param>
/// <param name="ReckonedKwh">Fuel reckoned for those days, houses as described, base use included: as told, or as the bills tell it where nobody did.</param>
/// <param name="BilledKwh">Fuel billed for those days.</param>
public sealed record BackCheck(int Season, DateOnly FromOn, DateOnly ToOn, double SeasonShare, double ReckonedKwh, double BilledKwh);

/// <summary>What would explain the multiplier if it were one thing alone: a bill cannot tell the films from the leaks.</summary>
/// <param name="AirChangesFactor">Factor on the air changes, films as described; null where no leak explains it.</param>
/// <param name="FilmFactor">Factor on every U-value, leaks as described; null where none explains it.</param>
public sealed record LossReasons(double? AirChangesFactor, double? FilmFactor);

/// <summary>What the bills of one tank or meter say of the houses behind it.</summary>
public sealed record GroupFit
{
    /// <summary>The record as intervals, with every line's fate.</summary>
    public required FuelUse Use { get; init; }

    /// <summary>Intervals whose weather is on record, against the model.</summary>
    public required IReadOnlyList<IntervalFit> Intervals { get; init; }

    /// <summary>Intervals whose weather is not on record.</summary>
    public required int WithoutWeather { get; init; }

    /// <summary>Loss multiplier; null where nothing could be fitted.</summary>
    public Fitted? Multiplier { get; init; }

    /// <summary>Fuel a day that does not follow the weather, kWh.</summary>
    public Fitted? BaseKwhPerDay { get; init; }

    /// <summary>Whether the base use was fitted, not told or assumed.</summary>
    public bool BaseIsFitted { get; init; }

    /// <summary>Films and leaks as the bills leave them; null where no multiplier is believed.</summary>
    public FilmsAndAir? Apart { get; init; }

    /// <summary>Bias and scatter with the fit.</summary>
    public Goodness? Fit { get; init; }

    /// <summary>Bias and scatter as described.</summary>
    public Goodness? AsDescribed { get; init; }

    /// <summary>The back-check.</summary>
    public BackCheck? Check { get; init; }

    /// <summary>Whether the multiplier lies within 0.6 to 1.6.</summary>
    public bool Believed { get; init; }

    /// <summary>Share of the best-told season's reckoned fuel on the days told.</summary>
    public double BestSeasonShare { get; init; }

    /// <summary>Data grade.</summary>
    public required DataGrade Grade { get; init; }

    /// <summary>Spread of the group's multiplier that the futures take, relative.</summary>
    public required double Sd { get; init; }

    /// <summary>The verdict, a sentence without its full stop.</summary>
    public required string Verdict { get; init; }

    /// <summary>What to check, first things first.</summary>
    public required IReadOnlyList<string> Checks { get; init; }

    /// <summary>What would raise the grade; empty at A.</summary>
    public required IReadOnlyList<string> Raise { get; init; }
}
