using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Published;

/// <summary>
/// The two-factor price model (Schwartz 1997; Schwartz and Smith 2000, from memory) evaluated by an independent script: variance and mean over median of propane with a
/// volatility of 0.40. Wichura (1988), AS 241: normal quantiles of common tables. Cholesky root of a 3 x 3 correlation matrix, by numpy.
/// </summary>
public class PriceModelTests
{
    [Theory]
    [InlineData(1, .12247447, .07336442)]
    [InlineData(5, .37195642, .22789395)]
    [InlineData(15, .67260034, .42360612)]
    public void Variance_and_mean_over_median(double years, double variance, double k)
    {
        var d = PriceClassDefaults.Of(PriceClass.WholesaleFuel);
        var record = new PriceRecord(new(2020, 1, 1), [0.0, 0.01], 0, 0);
        var model = PriceFit.Of(record, PriceClass.WholesaleFuel, new() { Fuel = Engine.FuelKind.Propane, VolatilityPerYear = d.PriorVolatility });
        Assert.Equal(.298241754, model.ShortVolatility, 1e-7);
        Assert.Equal(variance, model.Variance(years), 1e-7);
        Assert.Equal(k, PriceModel.MeanOverMedian(model.Variance(years)), 1e-7);
    }

    /// <summary>Gas with a volatility of 0.50 and retail oil with 0.21, after fifteen years.</summary>
    [Theory]
    [InlineData(PriceClass.WholesaleFuel, .50, 1.05093804, .68537387)]
    [InlineData(PriceClass.RetailFuel, .21, .66150000, .41618969)]
    public void Other_fuels_after_fifteen_years(PriceClass priceClass, double volatility, double variance, double k)
    {
        var model = PriceFit.Of(new(new(2020, 1, 1), [0.0, 0.01], 0, 0), priceClass, new() { Fuel = Engine.FuelKind.NaturalGas, VolatilityPerYear = volatility });
        Assert.Equal(variance, model.Variance(15), 1e-7);
        Assert.Equal(k, PriceModel.MeanOverMedian(model.Variance(15)), 1e-7);
    }

    /// <summary>Propane with 0.40 after fifteen years: median over mean .655, P5 and P95 .233 and 4.286 of the median; a level taken as the mean moves the whole band down by the same factor.</summary>
    [Fact]
    public void An_expected_level_and_a_middle_level_lie_a_third_apart_after_fifteen_years()
    {
        var model = PriceFit.Of(new(new(2020, 1, 1), [0.0, 0.01], 0, 0), PriceClass.WholesaleFuel, new() { Fuel = Engine.FuelKind.Propane, VolatilityPerYear = .40 });
        var (middle, mean) = (PriceOutlook.Of(model, levelIsMean: false)[2], PriceOutlook.Of(model, levelIsMean: true)[2]);
        Assert.Equal((15, 15), (middle.Years, mean.Years));
        Assert.Equal(.655, middle.Middle / middle.Mean, .0006);
        Assert.Equal(.655, mean.Middle / middle.Middle, .0006);
        Assert.Equal(middle.Middle, mean.Mean, 1e-12);
        Assert.Equal(.233, Math.Exp(-PriceModel.P95 * Math.Sqrt(model.Variance(15))), .0006);
        Assert.Equal(4.286, Math.Exp(PriceModel.P95 * Math.Sqrt(model.Variance(15))), .0006);
        Assert.Equal(Math.Exp(PriceModel.P90 * Math.Sqrt(model.Variance(15))), middle.P90 / middle.Middle, 1e-12);
    }

    [Theory]
    [InlineData(0.975, 1.959963984540054)]
    [InlineData(0.5, 0)]
    [InlineData(0.001, -3.090232306167813)]
    [InlineData(1e-10, -6.361340902404056)]
    public void Normal_quantiles(double p, double expected) => Assert.Equal(expected, NormalQuantile.At(p), 1e-12);

    [Fact]
    public void Cholesky_root()
    {
        var root = Correlation.Cholesky([1, .369, .320, .369, 1, .656, .320, .656, 1], 3);
        double[] expected = [1, 0, 0, .369, .92942939, 0, .32, .5787637, .75008838];
        for (var i = 0; i < 9; i++)
        {
            Assert.Equal(expected[i], root[i], 1e-7);
        }
    }

    [Fact]
    public void An_impossible_correlation_is_refused_with_the_nearest_that_can_be()
    {
        double[] wrong = [1, .9, -.9, 0, .9, 1, .9, 0, -.9, .9, 1, 0, 0, 0, 0, 1];
        var fault = Assert.Single(Correlation.Check(wrong, "shortCorrelations"));
        Assert.Equal(Correlation.Impossible, fault.Code);
        var (nearest, distance) = Correlation.Nearest(wrong);
        Assert.Contains($"nearest that can be lies {distance.ToString("0.000", System.Globalization.CultureInfo.InvariantCulture)} away", fault.Remedy, StringComparison.Ordinal);
        Assert.Empty(Correlation.Check(nearest, "shortCorrelations"));
        Assert.Equal(0, Correlation.Nearest(nearest).Distance);
        Assert.Empty(Correlation.Check([.. Correlation.ShortDefault], "shortCorrelations"));
    }

    [Theory]
    [InlineData(0, 1, 1.4, 1.4, "Row 1, column 2 (gas with propane) is 1.4.")]
    [InlineData(0, 1, -1.01, -1.01, "Row 1, column 2 (gas with propane) is -1.01.")]
    [InlineData(1, 2, 0.7, 0.6, "Row 2, column 3 (propane with oil) is 0.7, row 3, column 2 is 0.6.")]
    [InlineData(2, 2, 0.9, 0.9, "Row 3, column 3 (oil with oil) is 0.9.")]
    [InlineData(0, 3, double.NaN, double.NaN, "Row 1, column 4 (gas with electricity) is NaN.")]
    public void A_number_that_is_no_correlation_is_named_by_its_place(int row, int column, double value, double mirrored, string message)
    {
        var matrix = Correlation.ShortDefault.ToArray();
        (matrix[4 * row + column], matrix[4 * column + row]) = (value, mirrored);
        var fault = Assert.Single(Correlation.Check(matrix, "shortCorrelations"));
        Assert.Equal(("NOT_A_CORRELATION", "shortCorrelations", message), (fault.Code, fault.Field, fault.Message));
        Assert.Contains("from -1 to 1, the same on both sides of the diagonal, and 1 on it", fault.Remedy, StringComparison.Ordinal);
        Assert.Equal("SIZE", Assert.Single(Correlation.Check([.. matrix[..9]], "shortCorrelations")).Code);
    }
}
