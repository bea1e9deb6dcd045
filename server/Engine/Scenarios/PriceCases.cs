using static System.Math;

namespace FarmPortfolio.Engine.Scenarios;

/// <summary>
/// The named price cases as shapes. They are certain, not drawn: every path keeps its own draws and is multiplied by the same factors on the price as delivered.
/// Electricity is left alone: over the public records its price did not follow gas (R2 0.05).
/// </summary>
public static class PriceCases
{
    /// <summary>Factor of a spike. Two winters over the three before them: commercial gas 1.54 and retail oil 1.62 in 2004 to 2006 (EIA, BLS records that ship).</summary>
    public const double SpikeFactor = 1.5;

    /// <summary>Yearly rise over the base; common practice, no source.</summary>
    public const double RisePerYear = 0.04;

    /// <summary>Factor after a collapse. Two winters over the three before them: retail oil 0.62 in 2015 to 2017, commercial gas 0.79 in 2010 to 2012 (EIA, BLS records that ship).</summary>
    public const double CollapseFactor = 0.6;

    /// <summary>Factor on propane in the doubled winter; common practice, no source.</summary>
    public const double DoubledFactor = 2;

    /// <summary>Seasons in which the spread closes, by equal steps in logs; common practice, no source.</summary>
    public const int ClosingSeasons = 5;

    private static readonly FuelKind[] Burnt = [FuelKind.NaturalGas, FuelKind.Propane, FuelKind.FuelOil];

    /// <summary>All cases, in the order of a page.</summary>
    public static IReadOnlyList<PriceCaseKind> All { get; } = Enum.GetValues<PriceCaseKind>();

    /// <summary>The shapes of a case.</summary>
    /// <param name="priceCase">Case.</param>
    /// <param name="set">Assumptions: horizon, levels and what a level means.</param>
    /// <param name="fuels">Fuels of the futures; the spread is read from their middle prices.</param>
    /// <returns>Shapes to lay over the futures.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such case.</exception>
    public static IReadOnlyList<PriceShape> Shapes(PriceCase priceCase, ScenarioSetFacts set, IReadOnlyList<FuelSpec> fuels)
    {
        var (first, left) = (priceCase.FirstSeason, set.SeasonCount - priceCase.FirstSeason);
        if (left <= 0)
        {
            return [];
        }

        return priceCase.Kind switch
        {
            PriceCaseKind.SpikeOfTwoWinters => OnBurnt([.. Enumerable.Repeat(SpikeFactor, Min(2, left))]),
            PriceCaseKind.SlowRise => OnBurnt([.. Enumerable.Range(1, left).Select(i => Pow(1 + RisePerYear, i))]),
            PriceCaseKind.Collapse => OnBurnt([.. Enumerable.Repeat(CollapseFactor, left)]),
            PriceCaseKind.PropaneDoubled => [new(FuelKind.Propane, first, [DoubledFactor])],
            PriceCaseKind.SpreadCloses => Closing(),
            _ => throw new ArgumentOutOfRangeException(nameof(priceCase), priceCase.Kind, "no such price case"),
        };

        IReadOnlyList<PriceShape> OnBurnt(double[] factors) => [.. Burnt.Select(f => new PriceShape(f, first, factors))];

        IReadOnlyList<PriceShape> Closing()
        {
            var (gas, propane) = (Of(FuelKind.NaturalGas), Of(FuelKind.Propane));
            var halves = Enumerable.Range(0, left).Select(i => Pow(propane[first + i] / gas[first + i], 0.5 * Min(1.0, (i + 1.0) / ClosingSeasons))).ToList();
            return [new(FuelKind.NaturalGas, first, halves), new(FuelKind.Propane, first, [.. halves.Select(h => 1 / h)])];
        }

        double[] Of(FuelKind fuel) => MiddlePrices.UsdPerKwh(fuels.First(f => f.Fuel == fuel), set);
    }

    /// <summary>The factor that shapes lay on a fuel's price in a season.</summary>
    /// <param name="shapes">Shapes.</param>
    /// <param name="fuel">Fuel.</param>
    /// <param name="season">Season of the study, from 0.</param>
    /// <returns>Factor; 1 = none.</returns>
    public static double Factor(IEnumerable<PriceShape> shapes, FuelKind fuel, int season) =>
        shapes.Where(s => (s.Fuel is null || s.Fuel == fuel) && season >= s.FirstSeason && season - s.FirstSeason < s.SeasonFactors.Count).Aggregate(1.0, (f, s) => f * s.SeasonFactors[season - s.FirstSeason]);
}
