using FarmPortfolio.Engine.HeatDemand;

namespace FarmPortfolio.Engine.Studies;

/// <summary>Demand tables of options side by side: one lane an option, padded to whole vectors of eight; months that nobody heats are left out.</summary>
internal sealed class LaneTable
{
    private LaneTable(int lanes, int[] months, double[] coefficients) => (Lanes, Months, Coefficients) = (lanes, months, coefficients);

    /// <summary>Lanes, a multiple of eight.</summary>
    public int Lanes { get; }

    /// <summary>Months with heat in any lane, July = 0, rising.</summary>
    public int[] Months { get; }

    /// <summary>By winter, month, coefficient a, b, c and lane: kWh, kWh/K, kWh/K2.</summary>
    public double[] Coefficients { get; }

    /// <summary>Lays tables side by side.</summary>
    /// <param name="tables">Tables over the same pool, one or more.</param>
    /// <returns>The lanes.</returns>
    public static LaneTable Of(IReadOnlyList<DemandTable> tables)
    {
        var (winters, lanes) = (tables[0].Winters, (tables.Count + 7) / 8 * 8);
        var months = Enumerable.Range(0, 12).Where(m => tables.Any(t => Heats(t, m))).ToArray();
        var coefficients = new double[winters * months.Length * 3 * lanes];
        for (var lane = 0; lane < tables.Count; lane++)
        {
            var abc = tables[lane].Coefficients;
            for (var w = 0; w < winters; w++)
            {
                for (var i = 0; i < months.Length; i++)
                {
                    for (var c = 0; c < 3; c++)
                    {
                        coefficients[((w * months.Length + i) * 3 + c) * lanes + lane] = abc[3 * (12 * w + months[i]) + c];
                    }
                }
            }
        }

        return new(lanes, months, coefficients);
    }

    private static bool Heats(DemandTable table, int month)
    {
        for (var w = 0; w < table.Winters; w++)
        {
            foreach (var c in table.Coefficients.Slice(3 * (12 * w + month), 3))
            {
                if (c != 0)
                {
                    return true;
                }
            }
        }

        return false;
    }
}
