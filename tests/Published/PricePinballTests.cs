using System.Globalization;
using FarmPortfolio.Engine.Fuel;

namespace FarmPortfolio.Published;

/// <summary>
/// The back-test's pinball score on the public records (EIA, BLS) that ship: mean over the levels .05, .10 to .95 of 2 max(q d, (q-1) d), d = ln outcome - ln quantile,
/// mean of the horizons 12 to 60 months; forecasts from the first T months only, T = 120, 123, 126 and so on. Computed by an independent script, tolerance 1 %.
/// </summary>
public class PricePinballTests
{
    [Theory]
    [InlineData("gas-henry-hub", PriceClass.WholesaleFuel, .310)]
    [InlineData("propane-mont-belvieu", PriceClass.WholesaleFuel, .316)]
    [InlineData("oil-new-york-harbor", PriceClass.WholesaleFuel, .303)]
    [InlineData("oil-retail", PriceClass.RetailFuel, .210)]
    [InlineData("gas-piped-residential", PriceClass.RetailFuel, .118)]
    [InlineData("gas-commercial", PriceClass.RetailFuel, .140)]
    [InlineData("electricity-residential", PriceClass.Electricity, .0437)]
    [InlineData("electricity-commercial", PriceClass.Electricity, .0358)]
    public void Score_of_the_forecasts(string code, PriceClass priceClass, double expected)
    {
        var (first, x) = Record(code);
        var score = 0.0;
        for (var h = 1; h <= 5; h++)
        {
            var (sum, count) = (0.0, 0);
            for (var t = 120; t <= x.Length - 12 && t - 1 + 12 * h <= x.Length - 1; t += 3)
            {
                var model = PriceFit.Of(new(first, x[..t], 0, 0), priceClass, shrinkShape: false);
                var at = t - 1 + 12 * h;
                var middle = model.Median(h) + model.Shape[(first.Month - 1 + at) % 12];
                sum += Pinball(x[at] - middle, Math.Sqrt(model.ForecastVariance(h)));
                count++;
            }

            score += sum / count / 5;
        }

        Assert.True(Math.Abs(score / expected - 1) <= 0.01 + 0.0006 / expected, $"{code}: expected {expected}, scored {score:0.0000}, tolerance 1 % and the last printed digit");
    }

    [Fact]
    public void The_quantiles_are_those_of_the_three_kinds_of_times()
    {
        Assert.Equal(1.774523, Quantile(0.95), 1e-6);
        Assert.Equal(0.669728, Quantile(0.75), 1e-6);
        Assert.Equal(PriceModel.P95, Quantile(0.95), 1e-6);
    }

    private static double Pinball(double away, double sd) => Enumerable.Range(1, 19).Average(i =>
    {
        var q = 0.05 * i;
        var d = away - sd * Quantile(q);
        return 2 * Math.Max(q * d, (q - 1) * d);
    });

    /// <summary>Quantile of a normal whose spread is 0.7, 1 or 1.5 with probability 1/4, 1/2, 1/4, by halving.</summary>
    private static double Quantile(double q)
    {
        var (low, high) = (-8.0, 8.0);
        for (var i = 0; i < 60; i++)
        {
            var z = (low + high) / 2;
            (low, high) = 0.25 * Below(z / 0.7) + 0.5 * Below(z) + 0.25 * Below(z / 1.5) < q ? (z, high) : (low, z);
        }

        return (low + high) / 2;
    }

    private static double Below(double z) => MathNet.Numerics.Distributions.Normal.CDF(0, 1, z);

    private static (DateOnly First, double[] Logs) Record(string code)
    {
        var lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "prices", code + ".csv")).Skip(1).Select(l => l.Split(',')).ToList();
        return (DateOnly.ParseExact(lines[0][0], "yyyy-MM", CultureInfo.InvariantCulture), [.. lines.Select(c => Math.Log(double.Parse(c[1], CultureInfo.InvariantCulture)))]);
    }
}
