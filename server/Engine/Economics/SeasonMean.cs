namespace FarmPortfolio.Engine.Economics;

/// <summary>A season's mean over all futures.</summary>
/// <param name="Mean">Mean.</param>
/// <param name="HalfWidth">Half of the 95 % interval of the mean, from the replicates; error of computing only.</param>
public sealed record SeasonMean(double Mean, double HalfWidth)
{
    /// <summary>The mean of values given path by path, replicate after replicate: to the bits of <see cref="Distribution.Of"/>.</summary>
    /// <param name="values">One value a path, at least one a replicate.</param>
    /// <param name="replicates">Equal replicates, at least 1.</param>
    /// <returns>The mean.</returns>
    public static SeasonMean Of(ReadOnlySpan<double> values, int replicates)
    {
        Span<double> means = stackalloc double[replicates];
        var each = values.Length / replicates;
        for (var r = 0; r < replicates; r++)
        {
            means[r] = OrderStatistics.Sum(values.Slice(r * each, each)) / each;
        }

        return new(OrderStatistics.Sum(means) / replicates, Distribution.HalfWidthOf(means));
    }
}
