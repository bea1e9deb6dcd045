using System.Globalization;
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
        var lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "prices", code + ".csv")).Skip(1).Select(l => l.Split(',')).ToList();
        var x = lines.Select(c => Math.Log(double.Parse(c[1], CultureInfo.InvariantCulture))).ToArray();
        var first = DateOnly.ParseExact(lines[0][0], "yyyy-MM", CultureInfo.InvariantCulture);
        var (inNinety, inFifty, count) = (new int[5], new int[5], new int[5]);
        for (var t = 120; t <= x.Length - 12; t += 3)
        {
            var model = PriceFit.Of(new(first, x[..t], 0, 0), priceClass, shrinkShape: false);
            for (var h = 0; h < 5 && t - 1 + 12 * (h + 1) <= x.Length - 1; h++)
            {
                var at = t - 1 + 12 * (h + 1);
                var away = Math.Abs(x[at] - model.Median(h + 1) - model.Shape[(first.Month - 1 + at) % 12]);
                var sd = Math.Sqrt(model.ForecastVariance(h + 1));
                inNinety[h] += away <= PriceModel.P95 * sd ? 1 : 0;
                inFifty[h] += away <= PriceModel.P75 * sd ? 1 : 0;
                count[h]++;
            }
        }

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
        var lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "prices", code + ".csv")).Skip(1).Select(l => l.Split(',')).ToList();
        var first = DateOnly.ParseExact(lines[0][0], "yyyy-MM", CultureInfo.InvariantCulture);
        var m = PriceFit.Of(new(first, [.. lines.Select(c => Math.Log(double.Parse(c[1], CultureInfo.InvariantCulture)))], 0, 0), priceClass, shrinkShape: false);
        Assert.True(Math.Abs(m.Volatility - ss) <= .0006 && Math.Abs(m.LongVolatility - sx) <= .0006 && Math.Abs(m.ShortVolatility - sc) <= .0006,
            $"{code}: expected {ss} {sx} {sc}, fitted {m.Volatility:0.0000} {m.LongVolatility:0.0000} {m.ShortVolatility:0.0000}, tolerance 0.0006");
    }
}
