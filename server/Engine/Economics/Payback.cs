namespace FarmPortfolio.Engine.Economics;

/// <summary>When the money is back, over all futures.</summary>
/// <param name="ShareBySeason">Share of futures whose payback is season i + 1 after installation.</param>
/// <param name="NeverShare">Share in which it is never within the seasons reckoned.</param>
/// <param name="HalfWidth">Half of the 95 % interval of the share paid back by half the horizon, from the replicates.</param>
public sealed record Payback(double[] ShareBySeason, double NeverShare, double HalfWidth)
{
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

/// <summary>Payback of one stream of money. First: ASTM E1121. Lasting: from then on the cumulated saving never falls below the outlay again.</summary>
public static class PaybackOf
{
    /// <summary>First season whose cumulated net saving covers the outlay.</summary>
    /// <param name="outlay">Outlay at the start, above 0.</param>
    /// <param name="net">Net saving by season.</param>
    /// <returns>Season from 1; 0 = never.</returns>
    public static int First(double outlay, ReadOnlySpan<double> net)
    {
        var sum = 0.0;
        for (var s = 0; s < net.Length; s++)
        {
            sum += net[s];
            if (sum >= outlay)
            {
                return s + 1;
            }
        }

        return 0;
    }

    /// <summary>Season from which the cumulated net saving never falls below the outlay again.</summary>
    /// <param name="outlay">Outlay at the start, above 0.</param>
    /// <param name="net">Net saving by season.</param>
    /// <returns>Season from 1; 0 = never.</returns>
    public static int Lasting(double outlay, ReadOnlySpan<double> net)
    {
        var (sum, since) = (0.0, 0);
        for (var s = 0; s < net.Length; s++)
        {
            sum += net[s];
            since = sum < outlay ? 0 : since > 0 ? since : s + 1;
        }

        return since;
    }
}
