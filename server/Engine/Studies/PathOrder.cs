using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Engine.Studies;

/// <summary>The paths of each replicate from the least of a score to the most.</summary>
internal sealed class PathOrder
{
    /// <summary>Weight of a season against the one before: paybacks are decided early.</summary>
    private const double Fading = 1 / 1.2;

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

    /// <summary>Paths from cheap to dear: the fuel's price, no price case laid over it, weighted by the load of the month, early seasons more: a case moves no house's own draws.</summary>
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
            var prices = blocks[p / paths].Price(fuel).AsSpan(p % paths * months, months);
            for (var m = 0; m < months; m++)
            {
                score[p] += weights[m] * prices[m];
            }
        }

        return By(score, blocks.Count);
    }
}
