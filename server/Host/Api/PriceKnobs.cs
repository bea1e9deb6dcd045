using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Fuel;

namespace FarmPortfolio.Host.Api;

/// <summary>The parameters of a fuel's price in words: what is used where nothing is told, the range taken, what moves with it.</summary>
internal static class PriceKnobs
{
    /// <summary>The parameters, the plainest first.</summary>
    internal static IReadOnlyList<PriceKnobView> Of(FuelPriceAssumption? own, PriceModel usual, PriceSeriesFacts series, FuelKind fuel)
    {
        var through = series.Market == PriceMarket.Wholesale ? PassThrough.Of(fuel) : null;
        var knobs = new List<PriceKnobView>
        {
            new("levelUsdPerUnit", "price level of the first season", $"$/{series.Unit}", own?.LevelUsdPerUnit, null, 1e-4, 1e4, "Empty: the level that the record's last months say. All futures start from it."),
            new("growthPerYear", "growth of the level (mu)", "1/a", own?.GrowthPerYear, usual.Growth, -0.2, 0.2, "General inflation, 2 % a year; every price of the horizon moves with it."),
            new("volatilityPerYear", "yearly volatility (ss)", "1", own?.VolatilityPerYear, usual.Volatility, 0, 2, "Fitted to three-month changes and drawn towards such prices in general; widens every band."),
            new("shortReversionPerYear", "return of the short-term part (k1)", "1/a", own?.ShortReversionPerYear, usual.ShortReversion, 0, 20, "0.7 a year: half a spike is gone in twelve months. Higher: spikes die sooner, bands of later years narrow. 0: no short-term part."),
            new("longReversionPerYear", "return of the long-term part (k2)", "1/a", own?.LongReversionPerYear, usual.LongReversion, 0, 2, "0.05 a year for wholesale, none for retail. Higher: bands beyond ten years stop widening."),
            new("longShare", "long-term share of the volatility (l)", "1", own?.LongShare, usual.Volatility > 0 ? usual.LongVolatility / usual.Volatility : 1, 0, 1, "How much of a change stays. Higher: wider bands late, narrower early. Without a return of the short-term part all of it stays."),
        };
        if (through is not null)
        {
            knobs.Insert(1, new("retailAdderUsdPerUnit", "constant from this record to what is paid", $"$/{through.Unit}", own?.RetailAdderUsdPerUnit, through.Constant, -100, 100, $"{char.ToUpperInvariant(through.Words[0])}{through.Words[1..]}. A dealer's margin from one's own bills goes here."));
        }

        return knobs;
    }

    /// <summary>The parameters of wood pellets where no record of them is imported.</summary>
    internal static IReadOnlyList<PriceKnobView> OfPellets(FuelPriceAssumption? own, PriceModel usual) =>
    [
        new("levelUsdPerUnit", "price level of the first season", "$/ton", own?.LevelUsdPerUnit, Math.Exp(usual.Level), 1e-4, 1e4, "Delivered, a short ton. Common practice, no source: put in what is quoted to you; every switch to pellets moves with it."),
        new("growthPerYear", "growth of the level (mu)", "1/a", own?.GrowthPerYear, usual.Growth, -0.2, 0.2, "General inflation, 2 % a year; every price of the horizon moves with it."),
        new("volatilityPerYear", "yearly volatility (ss)", "1", own?.VolatilityPerYear, usual.Volatility, 0, 2, "A tenth a year; common practice, no source. Widens every band."),
        new("longReversionPerYear", "return of the long-term part (k2)", "1/a", own?.LongReversionPerYear, usual.LongReversion, 0, 2, "0.05 a year. Higher: bands beyond ten years stop widening."),
    ];
}
