using FarmPortfolio.Engine.Fuel;

namespace FarmPortfolio.Published;

/// <summary>What the whole public records (EIA, BLS) that ship look like: computed by an independent script, tolerance the last printed digit.</summary>
public class RecordSpreadTests
{
    /// <summary>36-month changes over twelve times the 3-month ones, mean squares less 2 % a year.</summary>
    [Theory]
    [InlineData("gas-henry-hub", .35)]
    [InlineData("propane-mont-belvieu", .47)]
    [InlineData("oil-new-york-harbor", .56)]
    [InlineData("oil-retail", .65)]
    [InlineData("gas-piped-residential", .68)]
    [InlineData("electricity-residential", 1.11)]
    public void Spread_of_three_years_over_that_of_three_months(string code, double expected) =>
        Assert.Equal(expected, PriceDiagnostics.Spread(ShippedRecords.Plain(ShippedRecords.Of(code)), 0.02), 0.0055);

    /// <summary>The same of the default model of wholesale fuels.</summary>
    [Fact]
    public void Spread_in_the_model() =>
        Assert.Equal(.66, PriceDiagnostics.Of(ShippedRecords.Of("propane-mont-belvieu"), PriceClass.WholesaleFuel).ModelLongSpread, 0.0055);

    /// <summary>Seasonal shapes, January first; tolerance 0.0006.</summary>
    [Theory]
    [InlineData("gas-henry-hub", .064, -.004, -.060, -.040, -.009, .014, -.018, -.013, -.018, .015, .017, .053)]
    [InlineData("propane-mont-belvieu", .007, .011, -.019, -.020, -.020, -.039, -.022, .003, .048, .052, .013, -.014)]
    [InlineData("oil-new-york-harbor", .001, -.011, -.010, -.003, -.009, -.021, -.018, .002, .023, .042, .017, -.013)]
    [InlineData("oil-retail", .022, .033, .025, .008, -.003, -.016, -.028, -.031, -.015, .000, .004, .001)]
    [InlineData("gas-piped-residential", .021, .011, .003, -.006, -.005, -.006, -.004, -.010, -.012, -.008, .005, .011)]
    [InlineData("gas-commercial", -.007, -.005, -.007, -.003, .007, .024, .021, .015, .007, -.019, -.018, -.015)]
    [InlineData("electricity-residential", -.019, -.021, -.021, -.023, -.013, .038, .041, .039, .036, -.006, -.025, -.026)]
    public void Shape_of_the_year(string code, params double[] expected)
    {
        var record = ShippedRecords.Of(code);
        var shape = PriceFit.Shape(record.LogPrices, record.FirstMonthOn.Month, shrink: false);
        Assert.True(shape.Zip(expected).All(p => Math.Abs(p.First - p.Second) <= .0006), $"{code}: {string.Join(" ", shape.Select(v => v.ToString("0.0000")))}");
    }

    /// <summary>Correlation of monthly changes with the ones before: .24 to .35, Henry Hub -.05 (the mean of daily prices gives about .25: Working 1960, from memory).</summary>
    [Theory]
    [InlineData("gas-henry-hub", -.055, -.045)]
    [InlineData("propane-mont-belvieu", .225, .355)]
    [InlineData("oil-new-york-harbor", .225, .355)]
    [InlineData("oil-retail", .225, .355)]
    [InlineData("gas-piped-residential", .225, .355)]
    [InlineData("gas-commercial", .225, .355)]
    public void Changes_carry_on(string code, double low, double high) =>
        Assert.InRange(Changes.Lag(Changes.Over(ShippedRecords.Plain(ShippedRecords.Of(code)), 1)), low, high);
}
