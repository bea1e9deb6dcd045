using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Studies;

namespace FarmPortfolio.Engine.Lending;

/// <summary>The futures of a study with two winters of a loan fixed and their prices multiplied, every path keeping its own draws otherwise.</summary>
public static class LoanFutures
{
    /// <summary>What a stress lays over a study.</summary>
    /// <param name="portfolio">What the study read.</param>
    /// <param name="futures">Its futures.</param>
    /// <param name="kind">Cheap and mild, dear and hard, or as drawn.</param>
    /// <param name="firstSeason">Season of the study, from 0, in which it begins.</param>
    /// <returns>Portfolio and futures; the study's own for any other stress.</returns>
    public static (Portfolio Portfolio, StudyFutures Futures) Of(Portfolio portfolio, StudyFutures futures, StressKind kind, int firstSeason)
    {
        if (kind is not (StressKind.CheapAndMild or StressKind.DearAndHard))
        {
            return (portfolio, futures);
        }

        var factor = kind == StressKind.CheapAndMild ? LoanStress.CheapFactor : LoanStress.DearFactor;
        var seasons = Enumerable.Range(firstSeason, LoanStress.Winters).Where(s => s < portfolio.Set.SeasonCount).ToList();
        var laid = portfolio with
        {
            Set = portfolio.Set with { WinterPool = futures.Pool, Shapes = [.. portfolio.Set.Shapes, new PriceShape(null, firstSeason, [.. seasons.Select(_ => factor)])] },
        };
        var (warmest, coldest) = futures.Extremes();
        var winter = kind == StressKind.CheapAndMild ? warmest : coldest;
        return (laid, StudyFutures.Of(laid).Futures!.WithWinters(seasons.ToDictionary(s => s, _ => winter)));
    }

    /// <summary>Mean index of a fuel over all futures, by season of the study, months weighed by their share of a winter's heat.</summary>
    /// <param name="futures">Futures.</param>
    /// <param name="fuel">Fuel.</param>
    /// <param name="threads">Threads, 1 or more.</param>
    /// <param name="cancel">Stops it.</param>
    /// <returns>US dollars a kWh of fuel as delivered.</returns>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static IReadOnlyList<double> MeanUsdPerKwh(StudyFutures futures, FuelKind fuel, int threads, CancellationToken cancel)
    {
        var mean = new double[futures.Spec.Set.SeasonCount];
        var months = 12 * mean.Length;
        foreach (var block in futures.Blocks(threads, cancel))
        {
            var price = block.Price(fuel);
            for (var i = 0; i < price.Length; i++)
            {
                mean[i % months / 12] += futures.Spec.LoadShare[i % 12] * price[i] / futures.Paths;
            }
        }

        return mean;
    }
}
