namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>When a movable retrofit is in place: due by its <see cref="ClosingTime"/> AND colder outside than T_on, OR colder than T_keep at any hour.</summary>
/// <param name="OnBelowC">T_on: used only while it is colder outside than this, C.</param>
/// <param name="KeepBelowC">T_keep: kept in place, by day too, while it is colder than this, C; minus infinity = never.</param>
/// <param name="KeepSunBelowWPerM2">By day kept only while the sun gives less than this, W/m2; infinite = whatever the sun.</param>
/// <param name="SunThrough">Share of the sun that passes while it is in place, 0 to 1.</param>
public sealed record OperationRule(
    double OnBelowC, double KeepBelowC = double.NegativeInfinity, double KeepSunBelowWPerM2 = double.PositiveInfinity, double SunThrough = 1)
{
    /// <summary>When it is due.</summary>
    public ClosingTime Closing { get; init; } = new();

    /// <summary>How far it is in place in an hour.</summary>
    /// <param name="hours">When it is due.</param>
    /// <param name="outsideC">Outside temperature, C.</param>
    /// <param name="radiation">Sun on the horizontal, W/m2.</param>
    /// <param name="h">Hour of the season.</param>
    /// <returns>Share of the hour in place, and share of the hour's sun that passes.</returns>
    internal (double Share, double SunThrough) At(RuleHours hours, double outsideC, double radiation, int h)
    {
        var (share, inSun) = outsideC < OnBelowC ? (hours.Due[h], hours.DueInSun[h]) : (0, 0);
        (share, inSun) = outsideC < KeepBelowC && radiation < KeepSunBelowWPerM2 ? (1, 1) : (share, inSun);
        return (share, 1 - inSun * (1 - SunThrough));
    }
}

/// <summary>A movable retrofit on a house.</summary>
/// <param name="Code">Catalogue code.</param>
/// <param name="Rule">When it is in place.</param>
public sealed record Movable(string Code, OperationRule Rule);
