using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Engine.Studies;

/// <summary>Paths of one season that meet the same winter.</summary>
/// <param name="Season">Season.</param>
/// <param name="Winter">Index into the pool.</param>
/// <param name="From">First cell.</param>
/// <param name="Count">Cells, a multiple of eight.</param>
internal readonly record struct WinterGroup(int Season, int Winter, int From, int Count);

/// <summary>
/// A replicate laid out for the kernel, once for all houses: season by season, winter by winter, so that many paths share one row of demand, and prices month by
/// month with the paths beside each other. The last path of a group is repeated to fill a vector of eight; it is reckoned again to the same bits.
/// </summary>
internal sealed class WinterOrder
{
    private readonly FuturesBlock block;
    private readonly Lazy<double[]>[] index;

    private WinterOrder(FuturesBlock block, WinterGroup[] groups, int[] path, double[] offsetK)
    {
        (this.block, Groups, Path, OffsetK) = (block, groups, path, offsetK);
        index = [.. Enumerable.Range(0, FuturesBlock.Fuels).Select(f => new Lazy<double[]>(() => Lay(block.Price((FuelKind)f))))];
    }

    /// <summary>The replicate path by path.</summary>
    public FuturesBlock Block => block;

    /// <summary>Groups in order.</summary>
    public WinterGroup[] Groups { get; }

    /// <summary>Path of the replicate, by cell.</summary>
    public int[] Path { get; }

    /// <summary>Temperature offset by cell, K.</summary>
    public double[] OffsetK { get; }

    /// <summary>Paths of the replicate.</summary>
    public int Paths => block.Paths;

    /// <summary>First path of the replicate among all.</summary>
    public int FirstPath => block.Replicate * block.Paths;

    /// <summary>Lays a replicate out.</summary>
    /// <param name="block">The replicate.</param>
    /// <returns>Its layout.</returns>
    public static WinterOrder Of(FuturesBlock block)
    {
        var (groups, path, offset) = (new List<WinterGroup>(), new List<int>(), new List<double>());
        for (var s = 0; s < block.Seasons; s++)
        {
            foreach (var group in Enumerable.Range(0, block.Paths).GroupBy(p => block.Winter[p * block.Seasons + s]).OrderBy(g => g.Key))
            {
                var from = path.Count;
                path.AddRange(group);
                while (path.Count % 8 != 0)
                {
                    path.Add(path[^1]);
                }

                offset.AddRange(path[from..].Select(p => block.OffsetK[p * block.Seasons + s]));
                groups.Add(new(s, group.Key, from, path.Count - from));
            }
        }

        return new(block, [.. groups], [.. path], [.. offset]);
    }

    /// <summary>Index of a fuel: group by group, in it month by month (July first) a row of cells; US dollars a kWh of fuel.</summary>
    /// <param name="fuel">Fuel.</param>
    /// <returns>Twelve numbers a cell.</returns>
    public double[] Index(FuelKind fuel) => index[(int)fuel].Value;

    private double[] Lay(double[] byPath)
    {
        var laid = new double[12 * Path.Length];
        foreach (var g in Groups)
        {
            for (var i = 0; i < g.Count; i++)
            {
                var cell = 12 * (Path[g.From + i] * block.Seasons + g.Season);
                for (var m = 0; m < 12; m++)
                {
                    laid[12 * g.From + m * g.Count + i] = byPath[cell + m];
                }
            }
        }

        return laid;
    }
}
