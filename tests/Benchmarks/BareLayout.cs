namespace FarmPortfolio.Benchmarks;

/// <summary>
/// A block of paths laid out for <see cref="BareLoop"/>: its path-seasons sorted by winter, padded to whole groups that meet one winter (the last one repeated),
/// prices of a group month by month beside each other.
/// </summary>
internal sealed class BareLayout
{
    /// <summary>Paths a block.</summary>
    public const int Block = 128;

    private BareLayout(int paths, int[] groupWinter, int[] cell, double[] price, double[] offset) =>
        (Paths, GroupWinter, Cell, Price, Offset) = (paths, groupWinter, cell, price, offset);

    public int Paths { get; }

    public int[] GroupWinter { get; }

    /// <summary>Path in the block x seasons + season, by group and place.</summary>
    public int[] Cell { get; }

    /// <summary>By group, month, place.</summary>
    public double[] Price { get; }

    /// <summary>By group, place.</summary>
    public double[] Offset { get; }

    public static BareLayout[] Of(BareProblem p, int group) => [.. Enumerable.Range(0, (p.Paths + Block - 1) / Block).Select(b => Of(p, b * Block, Math.Min(Block, p.Paths - b * Block), group))];

    private static BareLayout Of(BareProblem p, int from, int paths, int group)
    {
        var (winters, cells, prices, offsets) = (new List<int>(), new List<int>(), new List<double>(), new List<double>());
        var met = Enumerable.Range(0, paths * p.Seasons).GroupBy(c => p.Winter[(from + c % paths) * p.Seasons + c / paths]).OrderBy(g => g.Key);
        foreach (var winter in met)
        {
            var members = winter.ToList();
            while (members.Count % group != 0)
            {
                members.Add(members[^1]);
            }

            foreach (var chunk in members.Chunk(group))
            {
                winters.Add(winter.Key);
                cells.AddRange(chunk.Select(c => c % paths * p.Seasons + c / paths));
                var source = chunk.Select(c => (from + c % paths) * p.Seasons + c / paths).ToArray();
                offsets.AddRange(source.Select(c => p.Offset[c]));
                for (var m = 0; m < BareProblem.Months; m++)
                {
                    prices.AddRange(source.Select(c => p.Price[c * BareProblem.Months + m]));
                }
            }
        }

        return new(paths, [.. winters], [.. cells], [.. prices], [.. offsets]);
    }
}
