namespace FarmPortfolio.Engine.Tests.Economics;

/// <summary>Payback of one stream of money. First: ASTM E1121. Lasting: from then on the cumulated saving never falls below the outlay again.</summary>
internal static class PaybackOf
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
