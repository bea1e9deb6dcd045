using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Published;

/// <summary>
/// Two readings of the back-test on the public records (EIA) that ship, computed by an independent script: a basket of gas, propane and oil needs the correlations, and whether a level is
/// the mean or the middle the record cannot say. Points of the bands within 2 (how the level's own error is shared by the fuels is not printed), scores within 1 %.
/// </summary>
public class BasketTests
{
    private static readonly string[] Codes = ["gas-henry-hub", "propane-mont-belvieu", "oil-new-york-harbor"];

    /// <summary>Mean log price of the three, inside P5 to P95 and P25 to P75: independent fuels understate the tail, fuels that move as one overstate it.</summary>
    [Theory]
    [InlineData("default", 91, 49)]
    [InlineData("independent", 78, 36)]
    [InlineData("one", 96, 56)]
    public void A_basket_of_three_fuels(string correlations, double ninety, double fifty)
    {
        var records = Codes.Select(c => ShippedRecords.Of(c, "1997-01", "2023-08")).ToArray();
        var n = records.Min(r => r.LogPrices.Length);
        var (inNinety, inFifty, count) = (new double[5], new double[5], new int[5]);
        for (var t = PriceBackTest.FirstMonths; t <= n - 12; t += 3)
        {
            var models = records.Select(r => PriceFit.Of(new(r.FirstMonthOn, r.LogPrices[..t], 0, 0), PriceClass.WholesaleFuel, shrinkShape: false)).ToArray();
            for (var h = 1; h <= 5 && t - 1 + 12 * h <= n - 1; h++)
            {
                var at = t - 1 + 12 * h;
                var away = Math.Abs(Enumerable.Range(0, 3).Average(f => records[f].LogPrices[at] - models[f].Median(h) - models[f].Shape[at % 12]));
                var sd = Math.Sqrt(Variance(models, h, correlations));
                inNinety[h - 1] += away <= PriceModel.P95 * sd ? 1 : 0;
                inFifty[h - 1] += away <= PriceModel.P75 * sd ? 1 : 0;
                count[h - 1]++;
            }
        }

        var (a, b) = (inNinety.Zip(count, (k, c) => 100 * k / c).Average(), inFifty.Zip(count, (k, c) => 100 * k / c).Average());
        Assert.True(Math.Abs(a - ninety) <= 2 && Math.Abs(b - fifty) <= 2, $"{correlations}: {a:0.0}/{b:0.0}, expected {ninety}/{fifty}");
    }

    /// <summary>Forecasts moved down as if the level were the mean score about the same: .312 against .310 wholesale, .160 against .156 at retail.</summary>
    [Theory]
    [InlineData(PriceClass.WholesaleFuel, .312, "gas-henry-hub", "propane-mont-belvieu", "oil-new-york-harbor")]
    [InlineData(PriceClass.RetailFuel, .160, "oil-retail", "gas-piped-residential", "gas-commercial")]
    public void Mean_or_middle_the_record_cannot_say(PriceClass priceClass, double expected, params string[] codes)
    {
        var score = codes.Average(c => BackTestScore.Of(c, part =>
        {
            var model = PriceFit.Of(part, priceClass, shrinkShape: false);
            var middle = BackTestScore.Model(part, model);
            return (months, level) => middle(months, level) - PriceModel.MeanOverMedian(model.ForecastVariance(months / 12.0));
        }).Pinball);
        Assert.True(Math.Abs(score / expected - 1) <= 0.01 + 0.0006 / expected, $"{priceClass}: {score:0.0000}, expected {expected}");
    }

    /// <summary>Variance of the mean of the three log prices before the unrest; all return alike, and the levels' own errors are as correlated as the long-term factor.</summary>
    private static double Variance(PriceModel[] models, double years, string correlations)
    {
        var sum = 0.0;
        for (var i = 0; i < 3; i++)
        {
            for (var j = 0; j < 3; j++)
            {
                var (shortly, longly) = correlations switch
                {
                    "default" => (Correlation.ShortDefault[4 * i + j], Correlation.LongDefault[4 * i + j]),
                    "one" => (1, 1),
                    _ => i == j ? (1.0, 1.0) : (0, 0),
                };
                var (a, b) = (models[i], models[j]);
                var away = 1 - Math.Exp(-a.ShortReversion * years);
                sum += shortly * a.ShortVolatility * b.ShortVolatility * (1 - Math.Exp(-2 * a.ShortReversion * years)) / (2 * a.ShortReversion)
                    + longly * (a.LongVolatility * b.LongVolatility * (1 - Math.Exp(-2 * a.LongReversion * years)) / (2 * a.LongReversion) + away * away * Math.Sqrt(a.LevelVariance * b.LevelVariance));
            }
        }

        return sum / 9;
    }
}
