using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Engine.Exposure;

/// <summary>The heat that some houses need through all futures: what every fuel and contract is asked to deliver.</summary>
public sealed class SameHeat
{
    private readonly double[] kwh;

    private SameHeat(double[] kwh, int[] winter, int paths, int seasons) => (this.kwh, Winter, Paths, Seasons) = (kwh, winter, paths, seasons);

    /// <summary>Paths of all replicates.</summary>
    public int Paths { get; }

    /// <summary>Seasons.</summary>
    public int Seasons { get; }

    /// <summary>Winter of a path and season, index into the pool: path x seasons + season.</summary>
    public IReadOnlyList<int> Winter { get; }

    /// <summary>Reckons the heat.</summary>
    /// <param name="blocks">Futures.</param>
    /// <param name="houses">Demand of each house and what it is multiplied by (its loss multiplier).</param>
    /// <param name="seasons">Seasons from the first, at most those of the futures.</param>
    /// <returns>The heat by path, season and month.</returns>
    public static SameHeat Of(IReadOnlyList<FuturesBlock> blocks, IReadOnlyList<(DemandTable Demand, double Factor)> houses, int seasons)
    {
        var paths = blocks.Sum(b => b.Paths);
        var (kwh, winter) = (new double[paths * seasons * 12], new int[paths * seasons]);
        foreach (var block in blocks)
        {
            for (var p = 0; p < block.Paths; p++)
            {
                for (var s = 0; s < seasons; s++)
                {
                    var (from, to) = (p * block.Seasons + s, (block.Replicate * block.Paths + p) * seasons + s);
                    winter[to] = block.Winter[from];
                    foreach (var (demand, factor) in houses)
                    {
                        for (var m = 0; m < 12; m++)
                        {
                            kwh[12 * to + m] += factor * demand.DemandKwh(block.Winter[from], m, block.OffsetK[from]);
                        }
                    }
                }
            }
        }

        return new(kwh, winter, paths, seasons);
    }

    /// <summary>Heat of a season by month.</summary>
    /// <param name="path">Path over all replicates.</param>
    /// <param name="season">Season from 0.</param>
    /// <returns>Twelve months, July first, kWh.</returns>
    public ReadOnlySpan<double> Season(int path, int season) => kwh.AsSpan(12 * (path * Seasons + season), 12);

    /// <summary>Heat of a season.</summary>
    /// <param name="path">Path.</param>
    /// <param name="season">Season.</param>
    /// <returns>kWh.</returns>
    public double SeasonKwh(int path, int season)
    {
        var sum = 0.0;
        foreach (var month in Season(path, season))
        {
            sum += month;
        }

        return sum;
    }
}
