namespace FarmPortfolio.Engine.Economics;

/// <summary>When the money is back, over all futures.</summary>
/// <param name="ShareBySeason">Share of futures whose payback is season i + 1 after installation.</param>
/// <param name="NeverShare">Share in which it is never within the seasons reckoned.</param>
/// <param name="HalfWidth">Widest half of the 95 % intervals of the shares paid back by each season, from the replicates; error of computing only.</param>
public sealed record Payback(double[] ShareBySeason, double NeverShare, double HalfWidth)
{
    /// <summary>Shares of seasons counted path by path, replicate after replicate.</summary>
    /// <param name="seasonByPath">Season from 1; 0 = never.</param>
    /// <param name="seasons">Seasons of the horizon.</param>
    /// <param name="replicates">Equal replicates.</param>
    /// <returns>The shares.</returns>
    public static Payback Of(ReadOnlySpan<byte> seasonByPath, int seasons, int replicates)
    {
        var each = seasonByPath.Length / replicates;
        var counts = new int[replicates * (seasons + 1)];
        for (var r = 0; r < replicates; r++)
        {
            var row = counts.AsSpan(r * (seasons + 1), seasons + 1);
            foreach (var season in seasonByPath.Slice(r * each, each))
            {
                row[season]++;
            }
        }

        var shares = new double[seasons + 1];
        for (var s = 0; s <= seasons; s++)
        {
            for (var r = 0; r < replicates; r++)
            {
                shares[s] += (double)counts[r * (seasons + 1) + s] / (replicates * each);
            }
        }

        return new(shares[1..], shares[0], WidestHalf(counts, seasons, replicates, each));
    }

    private static double WidestHalf(int[] counts, int seasons, int replicates, int each)
    {
        var (widest, paid, shares) = (0.0, new int[replicates], new double[replicates]);
        for (var s = 1; s <= seasons; s++)
        {
            for (var r = 0; r < replicates; r++)
            {
                paid[r] += counts[r * (seasons + 1) + s];
                shares[r] = (double)paid[r] / each;
            }

            widest = Math.Max(widest, Distribution.HalfWidthOf(shares));
        }

        return widest;
    }

    /// <summary>Share paid back by a season.</summary>
    /// <param name="season">1 = the first.</param>
    /// <returns>0 to 1.</returns>
    public double ShareBy(int season)
    {
        var sum = 0.0;
        for (var s = 0; s < Math.Min(season, ShareBySeason.Length); s++)
        {
            sum += ShareBySeason[s];
        }

        return sum;
    }

    /// <summary>First season by which a share of the futures has paid back.</summary>
    /// <param name="share">0 to 1.</param>
    /// <returns>Season from 1; null = never.</returns>
    public int? SeasonOf(double share)
    {
        var sum = 0.0;
        for (var s = 0; s < ShareBySeason.Length; s++)
        {
            sum += ShareBySeason[s];
            if (sum >= share - 1e-12)
            {
                return s + 1;
            }
        }

        return null;
    }
}
