namespace FarmPortfolio.Engine.Lending;

/// <summary>The largest loan that keeps a cover in every season of the term with a given confidence.</summary>
/// <param name="Confidence">Share of futures asked.</param>
/// <param name="ProjectUsd">By the savings alone, whole dollars; null = none, not even the fees.</param>
/// <param name="FarmUsd">By the whole farm; null = none, or no statements.</param>
public sealed record LargestLoan(double Confidence, double? ProjectUsd, double? FarmUsd)
{
    private const double Most = 100_000_000;

    /// <summary>The largest amount whose share of futures with cover in every season is at least the confidence: bisection over whole dollars, for a larger loan never has a higher cover.</summary>
    /// <param name="usd">Money for the service, season by season a row of paths.</param>
    /// <param name="servicePerUsd">Service of a loan of one dollar by season.</param>
    /// <param name="otherUsd">Other service a season.</param>
    /// <param name="required">Cover asked.</param>
    /// <param name="confidence">Share of futures asked, above 0.</param>
    /// <returns>Whole dollars; null where a loan of one dollar fails.</returns>
    internal static double? Of(double[] usd, IReadOnlyList<double> servicePerUsd, double otherUsd, double required, double confidence)
    {
        var most = Limits(usd, servicePerUsd, otherUsd, required);
        var asked = (int)Math.Ceiling(confidence * most.Length - 1e-9);
        bool Holds(double amount)
        {
            var count = 0;
            foreach (var limit in most)
            {
                count += amount <= limit ? 1 : 0;
            }

            return count >= asked;
        }

        if (!Holds(1))
        {
            return null;
        }

        var (low, high) = (1.0, Most);
        while (high - low > 1)
        {
            var middle = Math.Floor((low + high) / 2);
            (low, high) = Holds(middle) ? (middle, high) : (low, middle);
        }

        return low;
    }

    /// <summary>By path the amount up to which the cover of every season is what is asked: (money / required - other service) / service of a dollar, the least over the seasons.</summary>
    private static double[] Limits(double[] usd, IReadOnlyList<double> servicePerUsd, double otherUsd, double required)
    {
        var paths = usd.Length / servicePerUsd.Count;
        var most = new double[paths];
        Array.Fill(most, double.MaxValue);
        for (var t = 0; t < servicePerUsd.Count; t++)
        {
            for (var p = 0; p < paths && servicePerUsd[t] > 0; p++)
            {
                most[p] = Math.Min(most[p], (usd[t * paths + p] / required - otherUsd) / servicePerUsd[t]);
            }
        }

        return most;
    }
}
