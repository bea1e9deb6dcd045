using FarmPortfolio.Engine.Farms;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>Where heat leaves a house.</summary>
public enum HeatPath
{
    /// <summary>Roof or arch above 3 ft.</summary>
    Roof,

    /// <summary>Side walls, and the arch below 3 ft.</summary>
    Sides,

    /// <summary>Both ends.</summary>
    Ends,

    /// <summary>Edge of the floor.</summary>
    Perimeter,

    /// <summary>Leaks.</summary>
    Air,
}

/// <summary>When a movable retrofit is in place.</summary>
/// <param name="OnBelowC">Only while it is colder outside than this, C.</param>
/// <param name="KeepBelowC">Kept in place by day while it is colder than this, C; minus infinity = never.</param>
/// <param name="CloseBelowWPerM2">Closed while the sun gives less than this, W/m2; 0 = by dark alone.</param>
/// <param name="DelayHours">Hours lost at the beginning of a night.</param>
public sealed record OperationRule(double OnBelowC, double KeepBelowC = double.NegativeInfinity, double CloseBelowWPerM2 = 0, double DelayHours = 0);

/// <summary>The physics of one option on one house: conductances by what is in place, sun, periods, heater.</summary>
public sealed record OptionModel
{
    /// <summary>The option's key.</summary>
    public required string Key { get; init; }

    /// <summary>Catalogue codes of the option's own parts, without what is already installed.</summary>
    public required IReadOnlyList<string> Parts { get; init; }

    /// <summary>
    /// Conductance by what is in place (bit 0 = first movable, bit 1 = second) and path of heat, W/K: 4 rows of 5.
    /// </summary>
    public required double[][] ConductanceWPerK { get; init; }

    /// <summary>Rules of up to two movable retrofits.</summary>
    public required IReadOnlyList<OperationRule> Movables { get; init; }

    /// <summary>Heat of the air vented in a night against humidity, Wh/K.</summary>
    public required double PurgeWhPerK { get; init; }

    /// <summary>Useful sun, W per W/m2 on the horizontal.</summary>
    public required double SunM2 { get; init; }

    /// <summary>Share of daylight the option takes, 0 to 1.</summary>
    public required double LightLostShare { get; init; }

    /// <summary>Share of the day's surplus sun that serves the next night.</summary>
    public required double CarryOver { get; init; }

    /// <summary>Periods and set points, changed where the option changes the running.</summary>
    public required IReadOnlyList<HeatingPeriod> Periods { get; init; }

    /// <summary>Seasonal efficiency of the (first) heater with the option.</summary>
    public required double Efficiency { get; init; }

    /// <summary>Most heat the heaters can deliver, W.</summary>
    public required double OutputW { get; init; }

    /// <summary>Total conductance by state, W/K.</summary>
    /// <param name="state">Bits of what is in place.</param>
    /// <returns>W/K.</returns>
    public double TotalWPerK(int state)
    {
        var sum = 0.0;
        foreach (var part in ConductanceWPerK[state])
        {
            sum += part;
        }

        return sum;
    }
}
