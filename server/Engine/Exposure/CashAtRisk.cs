namespace FarmPortfolio.Engine.Exposure;

/// <summary>A season's heating against the cash that is set aside for it.</summary>
/// <param name="CashUsd">Cash, US dollars.</param>
/// <param name="OverShare">Share of futures in which the season costs more, 0 to 1.</param>
/// <param name="MeanShortUsd">What is short where it does not suffice, mean.</param>
/// <param name="ShortOneInTwentyUsd">What is short in one future of twenty, 0 where it suffices.</param>
public sealed record CashAtRisk(double CashUsd, double OverShare, double MeanShortUsd, double ShortOneInTwentyUsd)
{
    /// <summary>Holds a cost against cash.</summary>
    /// <param name="cost">Cost.</param>
    /// <param name="cashUsd">Cash, 0 or more.</param>
    /// <returns>What can be short.</returns>
    public static CashAtRisk Of(WayCost cost, double cashUsd)
    {
        var (count, sum) = (0, 0.0);
        foreach (var usd in cost.Usd)
        {
            if (usd > cashUsd)
            {
                count++;
                sum += usd - cashUsd;
            }
        }

        return new(cashUsd, (double)count / cost.Usd.Length, count > 0 ? sum / count : 0, Math.Max(0, cost.Cost.P95 - cashUsd));
    }
}
