using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>
/// Heat demand of one option by recorded winter, month and temperature offset: a quadratic a + b o + c o^2 through exact balances at
/// -4 F, 0 and +4 F, never below zero.
/// </summary>
public sealed class DemandTable
{
    /// <summary>Distance of the exact balances, K.</summary>
    public const double StepK = 4 * Us.DegreeK;

    private readonly double[] coefficients;

    internal DemandTable(int winters, double[] coefficients, MovableUses uses) => (Winters, this.coefficients, Uses) = (winters, coefficients, uses);

    /// <summary>Winters in the pool.</summary>
    public int Winters { get; }

    /// <summary>How the option's movables are used.</summary>
    public MovableUses Uses { get; }

    /// <summary>Mean nights a season on which the movable used most is used; 0 = nothing moves.</summary>
    public double NightsInUse => Uses.NightsByPart.Count > 0 ? Uses.NightsByPart.Values.Max() : 0;

    /// <summary>Days heated a season.</summary>
    public int HeatedDays => Uses.HeatedDays;

    /// <summary>Coefficients a, b, c by winter and month: winters x 12 x 3, kWh, kWh/K, kWh/K2.</summary>
    public ReadOnlySpan<double> Coefficients => coefficients;

    /// <summary>Demand of a month.</summary>
    /// <param name="winter">Index into the pool.</param>
    /// <param name="month">0 = July.</param>
    /// <param name="offsetK">Offset of the outside temperature, K.</param>
    /// <returns>kWh, 0 or more.</returns>
    public double DemandKwh(int winter, int month, double offsetK)
    {
        var i = 3 * (12 * winter + month);
        return Math.Max(0, coefficients[i] + offsetK * (coefficients[i + 1] + offsetK * coefficients[i + 2]));
    }

    /// <summary>Demand of a season.</summary>
    /// <param name="winter">Index into the pool.</param>
    /// <param name="offsetK">Offset, K.</param>
    /// <returns>kWh.</returns>
    public double SeasonKwh(int winter, double offsetK)
    {
        var sum = 0.0;
        for (var m = 0; m < 12; m++)
        {
            sum += DemandKwh(winter, m, offsetK);
        }

        return sum;
    }
}
