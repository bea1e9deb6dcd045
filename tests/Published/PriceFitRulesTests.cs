using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Published;

/// <summary>
/// Rules and constants of the default price model. The class values were chosen on the public records (EIA, BLS) 1986 to 2026; what follows from them is computed by an independent script.
/// </summary>
public class PriceFitRulesTests
{
    /// <summary>Return of the short and of the long factor, share of the long one, volatility of the class, growth; half-lives of 1.0 and 14 years for wholesale fuels.</summary>
    [Theory]
    [InlineData(PriceClass.WholesaleFuel, 0.7, 0.05, 0.7, 0.40)]
    [InlineData(PriceClass.RetailFuel, 0, 0, 1, 0.17)]
    [InlineData(PriceClass.Electricity, 0, 0, 1, 0.045)]
    public void Defaults_of_a_class(PriceClass priceClass, double k1, double k2, double share, double prior)
    {
        Assert.Equal(new(k1, k2, share, prior, 0.02), PriceClassDefaults.Of(priceClass));
        if (k1 > 0)
        {
            Assert.Equal(1.0, Math.Log(2) / k1, 0.05);
            Assert.Equal(14, Math.Log(2) / k2, 0.5);
        }
    }

    /// <summary>Share of a short-term factor's yearly variance that three-month changes see, computed: .91738847 at the default return (.917388453 to nine digits), tolerance 1e-7.</summary>
    [Fact]
    public void What_three_months_see_of_the_short_factor() => Assert.Equal(.91738847, PriceFit.ThreeMonthShare(0.7), 1e-7);

    /// <summary>Whole records of electricity: .040 both.</summary>
    [Theory]
    [InlineData("electricity-residential")]
    [InlineData("electricity-commercial")]
    public void Volatility_of_electricity(string code)
    {
        var model = PriceFit.Of(ShippedRecords.Of(code), PriceClass.Electricity, shrinkShape: false);
        Assert.Equal(.040, model.Volatility, .0006);
        Assert.Equal((model.Volatility, 0.0), (model.LongVolatility, model.ShortVolatility));
    }

    /// <summary>Gas with a volatility of 0.50: after fifteen years the median is .504 of the mean.</summary>
    [Fact]
    public void Median_over_mean_of_gas() => Assert.Equal(.504, Math.Exp(-PriceModel.MeanOverMedian(1.05093804)), .0006);

    [Theory]
    [InlineData(0.0, 0.5)]
    [InlineData(1.0, 2)]
    public void A_volatility_stays_within_half_and_twice_the_class(double monthly, double times)
    {
        // thirty years that do not move at all, and thirty that move by a factor of e and back
        var model = PriceFit.Of(new(new(1990, 1, 1), [.. Enumerable.Range(0, 360).Select(t => monthly * (t % 7 < 3 ? 1 : 0))], 0, 0), PriceClass.WholesaleFuel);
        Assert.Equal(times * 0.40, model.Volatility, 1e-12);
    }

    [Fact]
    public void The_shape_of_a_short_record_is_shrunk_by_n_over_n_plus_60()
    {
        var logs = ShippedRecords.Of("gas-henry-hub").LogPrices[..84];
        var (whole, shrunk) = (PriceFit.Shape(logs, 1, shrink: false), PriceFit.Shape(logs, 1, shrink: true));
        Assert.Contains(whole, v => Math.Abs(v) > 0.02);
        Assert.All(whole.Zip(shrunk), p => Assert.Equal(p.First * 84 / 144, p.Second, 1e-12));
        Assert.Equal(0, whole.Sum(), 1e-12);
    }

    /// <summary>
    /// Relative standard error of a volatility from three-month changes of a walk: about 1.03 over the root of the months (overlapping changes, closed form); 1,500 made records,
    /// tolerance a tenth.
    /// </summary>
    [Theory]
    [InlineData(60)]
    [InlineData(324)]
    public void How_well_a_record_tells_its_volatility(int months)
    {
        var found = Enumerable.Range(0, 1500).Select(r =>
        {
            var at = 0.0;
            var logs = Enumerable.Range(0, months).Select(t => at += 0.4 / Math.Sqrt(12) * Noise.Normal(7, NoisePurpose.LongFactor, 0, r, t)).ToArray();
            return PriceFit.Of(new(new(2000, 1, 1), logs, 0, 0), PriceClass.WholesaleFuel).RawVolatility;
        }).ToArray();
        var mean = found.Average();
        var relative = Math.Sqrt(found.Average(v => (v - mean) * (v - mean))) / mean;
        Assert.True(Math.Abs(relative / (1.03 / Math.Sqrt(months)) - 1) <= 0.1, $"{months} months: spread {relative:0.0000} of the mean {mean:0.0000}, 1.03 over the root is {1.03 / Math.Sqrt(months):0.0000}");
    }

    /// <summary>Default correlations: rounded from the records; least eigenvalues .30 and .20.</summary>
    [Fact]
    public void Default_correlations_have_room_to_spare()
    {
        Assert.Equal([1, .4, .4, .1, .4, 1, .7, .1, .4, .7, 1, .1, .1, .1, .1, 1], Correlation.ShortDefault);
        Assert.Equal([1, .6, .55, .3, .6, 1, .8, .2, .55, .8, 1, .2, .3, .2, .2, 1], Correlation.LongDefault);
        Assert.Equal(.30, Eigenvalues(Correlation.ShortDefault, 4)[^1], .005);
        Assert.Equal(.20, Eigenvalues(Correlation.LongDefault, 4)[^1], .005);
    }

    /// <summary>Eigenvalues of the 3 x 3 matrix of the Cholesky check, by numpy; tolerance 1e-6.</summary>
    [Fact]
    public void Eigenvalues_of_a_correlation_matrix()
    {
        var found = Eigenvalues([1, .369, .320, .369, 1, .656, .320, .656, 1], 3);
        Assert.All(found.Zip([1.915488, .743023, .341488]), p => Assert.Equal(p.Second, p.First, 1e-6));
    }

    private static double[] Eigenvalues(IReadOnlyList<double> matrix, int size)
    {
        var square = new double[size, size];
        for (var i = 0; i < size * size; i++)
        {
            square[i / size, i % size] = matrix[i];
        }

        return [.. SymmetricEigen.Of(square).Select(e => e.Value)];
    }
}
