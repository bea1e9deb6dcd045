using FarmPortfolio.Engine.Fuel;

namespace FarmPortfolio.Published;

/// <summary>
/// Back-test of the price model on the public monthly records that ship with the program (EIA, BLS): forecasts from the first 120, 123, 126 ... months at horizons of one to five years,
/// everything fitted on what was known by then; how many outcomes fall inside P5 to P95 and P25 to P75. Expected: two independent implementations. Tolerance 1 in each count.
/// </summary>
public class PriceBackTests
{
    public static TheoryData<string, PriceClass, int[], int[], int[]> Records => new()
    {
        { "gas-henry-hub", PriceClass.WholesaleFuel, [66, 66, 67, 61, 59], [38, 34, 37, 39, 30], [75, 71, 67, 63, 59] },
        { "propane-mont-belvieu", PriceClass.WholesaleFuel, [68, 70, 73, 65, 61], [32, 25, 34, 44, 30], [82, 78, 74, 70, 66] },
        { "oil-new-york-harbor", PriceClass.WholesaleFuel, [90, 88, 91, 84, 83], [45, 37, 43, 43, 29], [106, 102, 98, 94, 90] },
        { "oil-retail", PriceClass.RetailFuel, [84, 84, 84, 79, 79], [40, 36, 43, 43, 33], [103, 99, 95, 91, 87] },
        { "gas-piped-residential", PriceClass.RetailFuel, [91, 92, 90, 87, 85], [60, 53, 50, 47, 36], [103, 99, 95, 91, 87] },
        { "gas-commercial", PriceClass.RetailFuel, [87, 91, 87, 82, 80], [56, 55, 46, 43, 37], [102, 98, 94, 90, 86] },
        { "electricity-residential", PriceClass.Electricity, [94, 85, 75, 75, 76], [63, 54, 47, 46, 41], [103, 99, 95, 91, 87] },
        { "electricity-commercial", PriceClass.Electricity, [80, 76, 75, 70, 67], [49, 42, 37, 35, 28], [86, 82, 78, 74, 70] },
    };

    [Theory, MemberData(nameof(Records))]
    public void Outcomes_inside_the_bands(string code, PriceClass priceClass, int[] ninety, int[] fifty, int[] origins)
    {
        var found = PriceBackTest.Of(ShippedRecords.Of(code), priceClass, shrinkShape: false);
        var (inNinety, inFifty, count) = (found.Select(h => h.InsideNinety).ToArray(), found.Select(h => h.InsideFifty).ToArray(), found.Select(h => h.Forecasts).ToArray());
        var words = $"{code}: inside 90 {string.Join(" ", inNinety)} (expected {string.Join(" ", ninety)}), inside 50 {string.Join(" ", inFifty)} (expected {string.Join(" ", fifty)}), of {string.Join(" ", count)}, tolerance 1";
        Assert.Equal(origins, count);
        Assert.True(Enumerable.Range(0, 5).All(h => Math.Abs(inNinety[h] - ninety[h]) <= 1 && Math.Abs(inFifty[h] - fifty[h]) <= 1), words);
    }

    /// <summary>Volatilities of the whole records: computed by an independent script, three decimals.</summary>
    [Theory]
    [InlineData("gas-henry-hub", PriceClass.WholesaleFuel, .500, .350, .372)]
    [InlineData("propane-mont-belvieu", PriceClass.WholesaleFuel, .403, .282, .300)]
    [InlineData("oil-new-york-harbor", PriceClass.WholesaleFuel, .359, .251, .267)]
    [InlineData("oil-retail", PriceClass.RetailFuel, .210, .210, 0)]
    [InlineData("gas-piped-residential", PriceClass.RetailFuel, .124, .124, 0)]
    [InlineData("gas-commercial", PriceClass.RetailFuel, .159, .159, 0)]
    public void Volatility_of_the_whole_record(string code, PriceClass priceClass, double ss, double sx, double sc)
    {
        var m = PriceFit.Of(ShippedRecords.Of(code), priceClass, shrinkShape: false);
        Assert.True(Math.Abs(m.Volatility - ss) <= .0006 && Math.Abs(m.LongVolatility - sx) <= .0006 && Math.Abs(m.ShortVolatility - sc) <= .0006,
            $"{code}: expected {ss} {sx} {sc}, fitted {m.Volatility:0.0000} {m.LongVolatility:0.0000} {m.ShortVolatility:0.0000}, tolerance 0.0006");
    }
}
