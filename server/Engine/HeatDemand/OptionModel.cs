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

    /// <summary>Up to two movable retrofits: a layer of the roof first, a curtain below it second.</summary>
    public required IReadOnlyList<Movable> Movables { get; init; }

    /// <summary>Heat of the air vented in a night against humidity, Wh/K.</summary>
    public required double PurgeWhPerK { get; init; }

    /// <summary>Useful sun, W per W/m2 on the horizontal.</summary>
    public required double SunM2 { get; init; }

    /// <summary>Share of daylight the option takes at all hours, 0 to 1; what it takes while in place by day comes on top.</summary>
    public required double LightLostShare { get; init; }

    /// <summary>Share of the day's surplus sun that serves the next night.</summary>
    public required double CarryOver { get; init; }

    /// <summary>Periods and set points, changed where the option changes the running.</summary>
    public required IReadOnlyList<HeatingPeriod> Periods { get; init; }

    /// <summary>Seasonal efficiency of the (first) heater with the option.</summary>
    public required double Efficiency { get; init; }

    /// <summary>Code of the part that moves the first heater to another fuel; null = none. It is sized to the output of the old one.</summary>
    public string? Switch { get; init; }

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
