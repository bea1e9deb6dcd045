using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>Makes demand tables.</summary>
public static class DemandTables
{
    private static readonly double[] OffsetsK = [-DemandTable.StepK, 0, DemandTable.StepK];

    /// <summary>The table of one option over a pool of winters.</summary>
    /// <param name="option">The option.</param>
    /// <param name="pool">Recorded winters.</param>
    /// <returns>The table.</returns>
    public static DemandTable Of(OptionModel option, IReadOnlyList<WeatherYear> pool) => Of([option], pool)[0];

    /// <summary>Tables of many options over a pool of winters, their hours reckoned side by side; an option's table does not depend on the others.</summary>
    /// <param name="options">Options, of one house or of several at the same station.</param>
    /// <param name="pool">Recorded winters.</param>
    /// <returns>Tables in the order of the options.</returns>
    public static DemandTable[] Of(IReadOnlyList<OptionModel> options, IReadOnlyList<WeatherYear> pool)
    {
        var coefficients = options.Select(_ => new double[pool.Count * 36]).ToArray();
        foreach (var group in LaneGroup.Of(options, OffsetsK))
        {
            var monthWh = new double[12 * group.Lanes];
            for (var w = 0; w < pool.Count; w++)
            {
                LaneBalance.Season(group, pool[w], monthWh);
                for (var o = 0; o < group.Numbers.Length; o++)
                {
                    for (var m = 0; m < 12; m++)
                    {
                        Fit(monthWh.AsSpan(m * group.Lanes + group.Lane(o, 0), 3), coefficients[group.Numbers[o]].AsSpan(3 * (12 * w + m), 3));
                    }
                }
            }
        }

        var uses = new Dictionary<(object, double, Movable?, Movable?), MovableUses>();
        return [.. options.Select((o, i) => new DemandTable(pool.Count, coefficients[i], Uses(o)))];

        MovableUses Uses(OptionModel o)
        {
            var key = (o.Periods, o.LightLostShare, o.Movables.ElementAtOrDefault(0), o.Movables.ElementAtOrDefault(1));
            return uses.TryGetValue(key, out var known) ? known : uses[key] = MovableUses.Of(o, pool);
        }
    }

    /// <summary>Heat of one season at the record's own temperatures, options side by side; an option's heat does not depend on the others.</summary>
    /// <param name="options">Options.</param>
    /// <param name="year">The season.</param>
    /// <returns>kWh in the order of the options.</returns>
    internal static double[] SeasonKwh(IReadOnlyList<OptionModel> options, WeatherYear year)
    {
        var kwh = new double[options.Count];
        foreach (var group in LaneGroup.Of(options, [0.0]))
        {
            var monthWh = new double[12 * group.Lanes];
            LaneBalance.Season(group, year, monthWh);
            for (var o = 0; o < group.Numbers.Length; o++)
            {
                for (var m = 0; m < 12; m++)
                {
                    kwh[group.Numbers[o]] += monthWh[m * group.Lanes + group.Lane(o, 0)] / 1000;
                }
            }
        }

        return kwh;
    }

    /// <summary>The quadratic through three exact balances, Wh to kWh.</summary>
    private static void Fit(ReadOnlySpan<double> wh, Span<double> abc)
    {
        var (low, mid, high) = (wh[0] / 1000, wh[1] / 1000, wh[2] / 1000);
        abc[0] = mid;
        abc[1] = (high - low) / (2 * DemandTable.StepK);
        abc[2] = (high - 2 * mid + low) / (2 * DemandTable.StepK * DemandTable.StepK);
    }
}
