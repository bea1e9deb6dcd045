using FarmPortfolio.Engine.Units;
using FarmPortfolio.Engine.Weather;

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

    internal DemandTable(int winters, double[] coefficients, double nightsInUse, int heatedDays)
    {
        (Winters, this.coefficients, NightsInUse, HeatedDays) = (winters, coefficients, nightsInUse, heatedDays);
    }

    /// <summary>Winters in the pool.</summary>
    public int Winters { get; }

    /// <summary>Mean nights a season on which the first movable is used.</summary>
    public double NightsInUse { get; }

    /// <summary>Days heated a season.</summary>
    public int HeatedDays { get; }

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

/// <summary>Makes demand tables.</summary>
public static class DemandTables
{
    /// <summary>The table of one option over a pool of winters.</summary>
    /// <param name="option">The option.</param>
    /// <param name="pool">Recorded winters.</param>
    /// <returns>The table.</returns>
    public static DemandTable Of(OptionModel option, IReadOnlyList<WeatherYear> pool)
    {
        var coefficients = new double[pool.Count * 36];
        Span<double> low = stackalloc double[12];
        Span<double> mid = stackalloc double[12];
        Span<double> high = stackalloc double[12];
        var (nights, days) = (0.0, 0);
        for (var w = 0; w < pool.Count; w++)
        {
            HeatBalance.Demand(option, pool[w], -DemandTable.StepK, low);
            HeatBalance.Demand(option, pool[w], DemandTable.StepK, high);
            var season = HeatBalance.Season(option, pool[w]);
            season.DemandKwh.CopyTo(mid);
            nights += season.NightsInUse;
            days = Math.Max(days, season.HeatedDays);
            for (var m = 0; m < 12; m++)
            {
                var i = 3 * (12 * w + m);
                coefficients[i] = mid[m];
                coefficients[i + 1] = (high[m] - low[m]) / (2 * DemandTable.StepK);
                coefficients[i + 2] = (high[m] - 2 * mid[m] + low[m]) / (2 * DemandTable.StepK * DemandTable.StepK);
            }
        }

        return new(pool.Count, coefficients, pool.Count > 0 ? nights / pool.Count : 0, days);
    }
}
