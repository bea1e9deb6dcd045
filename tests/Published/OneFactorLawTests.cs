using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Published;

/// <summary>
/// One log price that returns to a level (Ornstein and Uhlenbeck; Schwartz 1997, one factor): E = m + (x0 - m) e^-kT, variance s^2 (1 - e^-2kT) / 2k, the formulas as an open pricing
/// library (QuantLib, ornsteinuhlenbeckprocess.cpp) has them. Figures computed, mean and variance also by QuantLib's Python package 1.29; tolerance 1e-8, 1e-9 for the monthly step.
/// The two-factor model is held to them with its long-term factor silent.
/// </summary>
public class OneFactorLawTests
{
    private static readonly double LowTail = NormalQuantile.At(0.05);

    /// <summary>From 2.5 to a level of 3.5, k 0.6, s 0.5.</summary>
    [Theory]
    [InlineData(1 / 12.0, .93270068, .01982554, 2.56668054)]
    [InlineData(1, 1.06810309, .14558454, 3.12956920)]
    [InlineData(5, 1.23601100, .20781693, 3.81873595)]
    public void Mean_and_variance_after_some_years(double years, double mean, double variance, double price)
    {
        var model = Returning(0.6, 0.5, Math.Log(3.5), Math.Log(2.5 / 3.5));
        Assert.Equal(mean, model.Median(years), 1e-8);
        Assert.Equal(variance, model.Variance(years), 1e-8);
        Assert.Equal(price, Math.Exp(model.Median(years) + model.Variance(years) / 2), 1e-8);
    }

    [Fact]
    public void One_in_twenty_below_and_above_after_a_year()
    {
        var model = Returning(0.6, 0.5, Math.Log(3.5), Math.Log(2.5 / 3.5));
        double At(double z) => Math.Exp(model.Median(1) + z * Math.Sqrt(model.Variance(1)));
        Assert.Equal(1.553484, At(LowTail), 1e-6);
        Assert.Equal(5.450492, At(-LowTail), 1e-6);
    }

    /// <summary>Without a return the variance is s^2 T.</summary>
    [Fact]
    public void No_return_is_a_walk() => Assert.Equal(0.25 * 7, Returning(0, 0.5, 0, 0).Variance(7), 1e-12);

    /// <summary>What is left of a gap after a step, spread of the step, half-life in years, spread in the long run.</summary>
    [Theory]
    [InlineData(.6, .5, 1 / 12.0, .9512294245, .1408031886, 1.15524530, .45643546)]
    [InlineData(.29, .37, 1 / 12.0, .9761230090, .1055320835, 2.39016269, .48583380)]
    [InlineData(.13, .315, 1 / 52.0, .9975031224, .0436280940, 5.33190139, .61776583)]
    public void A_step_of_the_return(double k, double s, double step, double persistence, double spread, double halfLife, double longRun)
    {
        var model = Returning(k, s, 0, 1);
        Assert.Equal(persistence, model.Median(step), 1e-9);
        Assert.Equal(spread, Math.Sqrt(model.Variance(step)), 1e-9);
        Assert.Equal(0.5, model.Median(halfLife), 1e-8);
        Assert.Equal(longRun, Math.Sqrt(model.Variance(1000)), 1e-8);
        // the same map the other way, from the share left after a month to the return a year
        var fit = new OneFactorFit(Math.Pow(persistence, 1 / (12 * step)), 0, s, null, 0, 0, 0);
        Assert.Equal(k, fit.ReversionPerYear, 1e-8);
        Assert.Equal(12 * halfLife, fit.HalfLifeMonths!.Value, 1e-6);
    }

    /// <summary>Schwartz (1997), from memory: dS = k (mu - ln S) S dt + s S dz, so ln S returns to mu - s^2 / 2k; with a level of 3.5, k 0.6 and s 0.5 mu is 1.46109630.</summary>
    [Fact]
    public void Schwartz_s_own_parameter_lies_the_long_run_variance_over_the_level()
    {
        var model = Returning(0.6, 0.5, Math.Log(3.5), 0);
        Assert.Equal(1.46109630, model.Median(1000) + model.Variance(1000), 1e-8);
    }

    /// <summary>Schwartz (1997), tables, from memory: the volatility of crude oil about 0.33. Heating oil's record that ships has 0.315 and 0.311 since 2009: the same to a tenth.</summary>
    [Theory]
    [InlineData("1997-01")]
    [InlineData("2009-01")]
    public void The_volatility_of_oil_is_of_the_size_that_Schwartz_found(string from) =>
        Assert.Equal(0.33, OneFactorFit.Of(ShippedRecords.Plain(ShippedRecords.Of("oil-new-york-harbor", from, "2023-08"))).VolatilityPerYear, 0.033);

    private static PriceModel Returning(double k, double s, double level, double gap) => new()
    {
        ShortReversion = k,
        LongReversion = 0,
        ShortVolatility = s,
        LongVolatility = 0,
        Growth = 0,
        Level = level,
        Gap = gap,
        LevelVariance = 0,
        Shape = new double[12],
        RawVolatility = s,
        Volatility = s,
        PriorWeight = 0,
        Months = 0,
        LastMonthOn = new(2026, 1, 1),
    };
}
