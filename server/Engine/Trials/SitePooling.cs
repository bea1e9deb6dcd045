using static System.Math;

namespace FarmPortfolio.Engine.Trials;

/// <summary>What several sites say together.</summary>
/// <param name="Sites">Sites, k.</param>
/// <param name="Mean">Mean over the sites, m.</param>
/// <param name="Error">Standard error of the mean at those sites, s; the spread between sites not in it.</param>
/// <param name="Spread">Standard deviation between sites, t.</param>
/// <param name="SpreadFitted">Whether t was fitted; below three sites it is taken.</param>
public sealed record PooledSites(int Sites, double Mean, double Error, double Spread, bool SpreadFitted)
{
    /// <summary>Variance of the mean of all sites there could be: s^2 + t^2 / k.</summary>
    public double MeanVariance => Error * Error + Spread * Spread / Sites;

    /// <summary>Standard deviation of the factor of another house: sqrt(s^2 + t^2 + t^2 / k).</summary>
    public double PredictiveSd => Sqrt(MeanVariance + Spread * Spread);
}

/// <summary>Pools the factors of sites by random effects; DerSimonian and Laird (1986).</summary>
public static class SitePooling
{
    /// <summary>Spread between sites where fewer than three have reported; common practice, no source.</summary>
    public const double UsualSpread = 0.15;

    /// <summary>Sites from which the spread is fitted.</summary>
    public const int FittedFrom = 3;

    /// <summary>Pools sites.</summary>
    /// <param name="sites">Mean and standard deviation of each; at least one, each deviation above 0.</param>
    /// <returns>The pool.</returns>
    /// <exception cref="ArgumentException">No site, or a deviation that is not above 0.</exception>
    public static PooledSites Of(IReadOnlyList<(double Mean, double Sd)> sites)
    {
        if (sites.Count == 0 || sites.Any(s => !(s.Sd > 0) || !double.IsFinite(s.Mean)))
        {
            throw new ArgumentException("pooling needs one site or more, each with a standard deviation above 0", nameof(sites));
        }

        var spread = sites.Count < FittedFrom ? UsualSpread : Sqrt(BetweenVariance(sites));
        var weights = sites.Select(s => 1 / (s.Sd * s.Sd + spread * spread)).ToArray();
        var sum = weights.Sum();
        var mean = sites.Select((s, i) => weights[i] * s.Mean).Sum() / sum;
        var error = Sqrt(sites.Select((s, i) => Pow(weights[i] / sum * s.Sd, 2)).Sum());
        return new(sites.Count, mean, error, spread, sites.Count >= FittedFrom);
    }

    /// <summary>Variance between sites by moments: max(0, (Q - (k - 1)) / (S1 - S2 / S1)); DerSimonian and Laird (1986).</summary>
    internal static double BetweenVariance(IReadOnlyList<(double Mean, double Sd)> sites)
    {
        var weights = sites.Select(s => 1 / (s.Sd * s.Sd)).ToArray();
        var (one, two) = (weights.Sum(), weights.Sum(w => w * w));
        var mean = sites.Select((s, i) => weights[i] * s.Mean).Sum() / one;
        var q = sites.Select((s, i) => weights[i] * (s.Mean - mean) * (s.Mean - mean)).Sum();
        return Max(0, (q - (sites.Count - 1)) / (one - two / one));
    }
}
