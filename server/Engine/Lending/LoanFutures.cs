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
}
