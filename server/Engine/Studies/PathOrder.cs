using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Engine.Studies;

/// <summary>The paths of each replicate from the least of a score to the most.</summary>
internal sealed class PathOrder
{
    /// <summary>Weight of a season against the one before: paybacks are decided early.</summary>
    private const double Fading = 1 / 1.15;

    private const int Steps = 1024;

    private readonly int[][] byReplicate;

    private PathOrder(double[] score, int[][] byReplicate) => (Score, this.byReplicate) = (score, byReplicate);

    /// <summary>Score by path.</summary>
    public double[] Score { get; }

    /// <summary>The paths of a replicate in order.</summary>
    /// <param name="replicate">Replicate.</param>
    /// <returns>Paths within the replicate.</returns>
    public ReadOnlySpan<int> Of(int replicate) => byReplicate[replicate];

    /// <summary>The paths in the order of their numbers.</summary>
    /// <param name="paths">Paths.</param>
    /// <returns>0, 1, 2 and so on.</returns>
    public static int[] AsDrawn(int paths) => [.. Enumerable.Range(0, paths)];

    /// <summary>Paths by a score.</summary>
    /// <param name="score">One a path, replicate after replicate.</param>
    /// <param name="replicates">Equal replicates.</param>
    /// <returns>The order.</returns>
    public static PathOrder By(double[] score, int replicates)
    {
        var (each, orders) = (score.Length / replicates, new int[replicates][]);
        var keys = new double[each];
        for (var r = 0; r < replicates; r++)
        {
            score.AsSpan(r * each, each).CopyTo(keys);
            orders[r] = AsDrawn(each);
            Array.Sort(keys, orders[r]);
        }

        return new(score, orders);
    }

    /// <summary>Paths from cheap to dear: the fuel's price, no price case laid over it, weighted by the load of the month and the hardness of the winter, early seasons more: a case moves no house's own draws.</summary>
    /// <param name="blocks">Replicates.</param>
    /// <param name="fuel">Fuel.</param>
    /// <param name="spec">What names the futures.</param>
    /// <returns>The order.</returns>
    public static PathOrder ByPrice(IReadOnlyList<FuturesBlock> blocks, FuelKind fuel, FuturesSpec spec)
    {
        var (paths, months) = (blocks[0].Paths, 12 * blocks[0].Seasons);
        var (score, weights) = (new double[blocks.Count * paths], new double[months]);
        var season = 1.0;
        var laid = PriceShape.Factors(spec.Set.Shapes, fuel, blocks[0].Seasons);
        for (var m = 0; m < months; m++)
        {
            weights[m] = season * spec.LoadShare[m % 12] / laid[m / 12];
            season *= m % 12 == 11 ? Fading : 1;
        }

        for (var p = 0; p < score.Length; p++)
        {
            var (block, first) = (blocks[p / paths], p % paths * blocks[0].Seasons);
            var prices = block.Price(fuel).AsSpan(12 * first, months);
            for (var s = 0; s < block.Seasons; s++)
            {
                var cost = 0.0;
                for (var m = 12 * s; m < 12 * s + 12; m++)
                {
                    cost += weights[m] * prices[m];
                }

                score[p] += cost * spec.Hardness[block.DrawnWinter[first + s]];
            }
        }

        return By(score, blocks.Count);
    }

    /// <summary>Paths by a score to a thousandth of its range, those alike in the order of their numbers: as good for spreading draws, and several times faster.</summary>
    /// <param name="score">One a path, replicate after replicate; finite.</param>
    /// <param name="replicates">Equal replicates.</param>
    /// <returns>The order.</returns>
    public static PathOrder Roughly(double[] score, int replicates)
    {
        var (each, orders, places) = (score.Length / replicates, new int[replicates][], new int[score.Length / replicates]);
        Span<int> next = stackalloc int[Steps + 1];
        for (var r = 0; r < replicates; r++)
        {
            var row = score.AsSpan(r * each, each);
            var (least, most) = (double.PositiveInfinity, double.NegativeInfinity);
            foreach (var value in row)
            {
                (least, most) = (Math.Min(least, value), Math.Max(most, value));
            }

            var scale = most > least ? (Steps - 1) / (most - least) : 0;
            next.Clear();
            for (var p = 0; p < each; p++)
            {
                places[p] = (int)((row[p] - least) * scale);
                next[places[p] + 1]++;
            }

            for (var i = 1; i < next.Length; i++)
            {
                next[i] += next[i - 1];
            }

            var order = orders[r] = new int[each];
            for (var p = 0; p < each; p++)
            {
                order[next[places[p]]++] = p;
            }
        }

        return new(score, orders);
    }
}
