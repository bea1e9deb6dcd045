using FarmPortfolio.Engine.HeatDemand;

namespace FarmPortfolio.Engine.Studies;

/// <summary>Demand tables side by side, a lane each: vector by vector, winter by winter and month heated by month heated three rows of coefficients of four lanes.</summary>
internal sealed class LaneTables
{
    /// <summary>Lays tables side by side.</summary>
    /// <param name="tables">Demand by lane, over one pool.</param>
    /// <param name="months">Months in which any of them needs heat, July = 0, rising.</param>
    public LaneTables(ReadOnlySpan<DemandTable> tables, int[] months)
    {
        (Lanes, Months) = ((tables.Length + 3) & ~3, months.Length);
        (PerWinter, PerVector) = (12 * Months, 12 * Months * tables[0].Winters);
        Coefficients = new double[Lanes / 4 * PerVector];
        for (var lane = 0; lane < tables.Length; lane++)
        {
            var at = lane / 4 * PerVector + lane % 4;
            for (var w = 0; w < tables[lane].Winters; w++)
            {
                foreach (var m in months)
                {
                    foreach (var coefficient in tables[lane].Coefficients.Slice(3 * (12 * w + m), 3))
                    {
                        Coefficients[at] = coefficient;
                        at += 4;
                    }
                }
            }
        }
    }

    /// <summary>Lanes, made up to whole vectors; those beyond the tables need no heat.</summary>
    public int Lanes { get; }

    /// <summary>Months heated.</summary>
    public int Months { get; }

    /// <summary>Coefficients of a winter of four lanes.</summary>
    public int PerWinter { get; }

    /// <summary>Coefficients of four lanes.</summary>
    public int PerVector { get; }

    /// <summary>Coefficients by vector of four lanes, winter, month heated, power of the offset and lane: kWh, kWh/K, kWh/K2.</summary>
    public double[] Coefficients { get; }

    /// <summary>Months in which any of some tables needs heat.</summary>
    /// <param name="tables">Demand by option.</param>
    /// <returns>Months, July = 0, rising.</returns>
    public static int[] HeatedMonths(IReadOnlyList<DemandTable> tables) => [.. Enumerable.Range(0, 12).Where(m => tables.Any(t => Heats(t, m)))];

    private static bool Heats(DemandTable table, int month)
    {
        for (var w = 0; w < table.Winters; w++)
        {
            if (table.Coefficients.Slice(3 * (12 * w + month), 3).ContainsAnyExcept(0.0))
            {
                return true;
            }
        }

        return false;
    }
}
