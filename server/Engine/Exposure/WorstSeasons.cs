namespace FarmPortfolio.Engine.Exposure;

/// <summary>What made a season dear.</summary>
public enum DearBecause
{
    /// <summary>The price.</summary>
    Price,

    /// <summary>The winter.</summary>
    Winter,

    /// <summary>Price and winter.</summary>
    Both,
}

/// <summary>One dear season.</summary>
/// <param name="Usd">Its cost, US dollars.</param>
/// <param name="Because">What made it dear.</param>
/// <param name="Winter">Its winter, index into the pool.</param>
/// <param name="HeatFactor">Its heat over the middle one.</param>
/// <param name="PriceFactor">Its mean price paid over the middle one.</param>
public sealed record DearSeason(double Usd, DearBecause Because, int Winter, double HeatFactor, double PriceFactor);

/// <summary>
/// The dearest twentieth of all seasons, and what made them so: cost over the middle = heat over the middle x price over the middle, and the logarithm of each is its part.
/// A part of two thirds or more names the season; else both do.
/// </summary>
/// <param name="PriceShare">Share of the dear seasons that the price made, 0 to 1.</param>
/// <param name="WinterShare">Share that the winter made.</param>
/// <param name="BothShare">Share that both made.</param>
/// <param name="Worst">Examples at one in twenty, one in fifty, one in a hundred, the dearest last.</param>
public sealed record WorstSeasons(double PriceShare, double WinterShare, double BothShare, IReadOnlyList<DearSeason> Worst)
{
    private const double Names = 2.0 / 3;
    private static readonly double[] Shown = [0.95, 0.98, 0.99];

    /// <summary>Names the dearest seasons of a way.</summary>
    /// <param name="cost">Cost.</param>
    /// <param name="heat">Heat.</param>
    /// <param name="season">Season from 0.</param>
    /// <returns>The dearest seasons.</returns>
    public static WorstSeasons Of(WayCost cost, SameHeat heat, int season)
    {
        var n = cost.Usd.Length;
        var heats = new double[n];
        var prices = new double[n];
        for (var p = 0; p < n; p++)
        {
            heats[p] = heat.SeasonKwh(p, season);
            prices[p] = cost.Usd[p] / Math.Max(1e-9, heats[p]);
        }

        var (middleHeat, middlePrice) = (Middle(heats), Middle(prices));
        DearSeason Dear(int p)
        {
            var (h, f) = (heats[p] / middleHeat, prices[p] / middlePrice);
            return new(cost.Usd[p], Cause(h, f), heat.Winter[p * heat.Seasons + season], h, f);
        }

        var order = Enumerable.Range(0, n).OrderBy(p => cost.Usd[p]).ThenBy(p => p).ToArray();
        var dear = order[^Math.Max(1, n / 20)..].Select(Dear).ToList();
        double Share(DearBecause because) => dear.Count(d => d.Because == because) / (double)dear.Count;
        return new(Share(DearBecause.Price), Share(DearBecause.Winter), Share(DearBecause.Both), [.. Shown.Select(q => Dear(order[Math.Min(n - 1, (int)(q * n))]))]);
    }

    /// <summary>What made a season dear.</summary>
    /// <param name="heatFactor">Its heat over the middle one, above 0.</param>
    /// <param name="priceFactor">Its price over the middle one, above 0.</param>
    /// <returns>The cause.</returns>
    public static DearBecause Cause(double heatFactor, double priceFactor)
    {
        var (winter, price) = (Math.Log(heatFactor), Math.Log(priceFactor));
        var whole = winter + price;
        return price >= Names * whole ? DearBecause.Price : winter >= Names * whole ? DearBecause.Winter : DearBecause.Both;
    }

    private static double Middle(double[] values)
    {
        var sorted = (double[])values.Clone();
        Array.Sort(sorted);
        return sorted[sorted.Length / 2];
    }
}
