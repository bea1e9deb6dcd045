using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Published;

/// <summary>
/// Correlations of the public records (EIA, BLS) that ship, computed by an independent script, two decimals, tolerance 0.015; and the nearest correlation matrix of
/// Higham (2002), IMA Journal of Numerical Analysis 22:329-343, section 5, example, from memory.
/// </summary>
public class CorrelationTests
{
    private const string Gas = "gas-henry-hub", Propane = "propane-mont-belvieu", Oil = "oil-new-york-harbor";

    /// <summary>
    /// Changes over 3, 12 and 36 months. The 36-month figures of gas from 2009 on, .46 and .35, are those of the months to May 2022, where the retail records end; to August 2023, as the other
    /// figures of their rows, an independent script finds .57 and .47, and so does the program. Such a figure rests on four or five changes that do not overlap: its standard error is
    /// .2 to .4, so both say the same.
    /// </summary>
    [Theory]
    [InlineData(Gas, Propane, "1997-01", "2023-08", .48, .71, .63)]
    [InlineData(Gas, Oil, "1997-01", "2023-08", .45, .69, .55)]
    [InlineData(Propane, Oil, "1997-01", "2023-08", .72, .79, .87)]
    [InlineData(Gas, Propane, "2009-01", "2023-08", .32, .65, .571)]
    [InlineData(Gas, Oil, "2009-01", "2023-08", .36, .64, .468)]
    [InlineData(Propane, Oil, "2009-01", "2023-08", .59, .68, .81)]
    [InlineData("oil-retail", Oil, "1997-01", "2023-08", .87, .94, .97)]
    [InlineData("gas-piped-residential", Gas, "1997-01", "2023-08", .57, .79, .86)]
    [InlineData("electricity-residential", "gas-piped-residential", "1997-01", "2022-05", .14, .34, .22)]
    public void Changes_of_two_records(string a, string b, string from, string to, double three, double twelve, double thirtySix)
    {
        var (x, y) = Shared(a, b, from, to);
        double[] found = [CorrelationFit.Of(x, y, 3), CorrelationFit.Of(x, y, 12), CorrelationFit.Of(x, y, 36)];
        double[] expected = [three, twelve, thirtySix];
        Assert.True(found.Zip(expected).All(p => Math.Abs(p.First - p.Second) <= 0.015), $"{a} with {b} from {from}: expected {string.Join(" ", expected)}, found {string.Join(" ", found.Select(v => v.ToString("0.000")))}");
    }

    /// <summary>Changes over 36 months from January 2009 to May 2022; tolerance one in the last printed digit.</summary>
    [Theory]
    [InlineData(Gas, Propane, .46)]
    [InlineData(Gas, Oil, .35)]
    public void Three_years_of_gas_from_2009_to_the_end_of_the_retail_records(string a, string b, double expected)
    {
        var (x, y) = Shared(a, b, "2009-01", "2022-05");
        Assert.Equal(expected, CorrelationFit.Of(x, y, 36), 0.0055);
    }

    /// <summary>Correlation of the residuals of the one-level fits, 319 and 175 pairs; tolerance one in the last printed digit.</summary>
    [Theory]
    [InlineData("1997-01", .369, .320, .656)]
    [InlineData("2009-01", .167, .209, .576)]
    public void Residuals_of_the_fitted_returns(string from, double gasPropane, double gasOil, double propaneOil)
    {
        var (g, p, o) = (Residuals(Gas, from), Residuals(Propane, from), Residuals(Oil, from));
        Assert.Equal(gasPropane, Pearson(g, p), 0.0011);
        Assert.Equal(gasOil, Pearson(g, o), 0.0011);
        Assert.Equal(propaneOil, Pearson(p, o), 0.0011);
    }

    /// <summary>The same of retail records, 304 pairs to May 2022.</summary>
    [Theory]
    [InlineData("gas-commercial", "oil-retail", .334)]
    [InlineData("electricity-residential", "gas-commercial", -.03)]
    [InlineData("electricity-residential", "oil-retail", .04)]
    public void Residuals_of_retail_records(string a, string b, double expected)
    {
        var (x, y) = (Residuals(a, "1997-01", "2022-05"), Residuals(b, "1997-01", "2022-05"));
        Assert.Equal(304, x.Length);
        Assert.Equal(expected, Pearson(x, y), 0.0055);
    }

    [Fact]
    public void A_fit_lies_between_the_record_and_the_default_and_is_a_correlation()
    {
        var records = new Dictionary<FuelKind, PriceRecord> { [FuelKind.NaturalGas] = ShippedRecords.Of(Gas), [FuelKind.Propane] = ShippedRecords.Of(Propane), [FuelKind.FuelOil] = ShippedRecords.Of(Oil) };
        var fit = CorrelationFit.Of(records);
        // 321 shared months, 107 changes of three months: (107 x .48 + 20 x .4) / 127
        Assert.Equal((107 * .48 + 20 * .4) / 127, fit.ShortTerm[1], 0.01);
        Assert.Equal(321, fit.Months[1]);
        Assert.Equal(Correlation.LongDefault[3], fit.LongTerm[3]);
        Assert.Empty(Correlation.Check(fit.ShortTerm, "short"));
        Assert.Empty(Correlation.Check(fit.LongTerm, "long"));
    }

    [Fact]
    public void The_nearest_correlation_matrix_of_the_printed_example()
    {
        var (nearest, distance) = NearestCorrelation.Of([1, 1, 0, 1, 1, 1, 0, 1, 1], 3, 0);
        double[] expected = [1, .7607, .1573, .7607, 1, .7607, .1573, .7607, 1];
        Assert.True(nearest.Zip(expected).All(p => Math.Abs(p.First - p.Second) <= 6e-5), string.Join(" ", nearest.Select(v => v.ToString("0.00000"))));
        Assert.Equal(.5278, distance, 1e-4);
    }

    private static (double[] X, double[] Y) Shared(string a, string b, string from, string to)
    {
        var (one, two) = (ShippedRecords.Of(a, from, to), ShippedRecords.Of(b, from, to));
        var n = Math.Min(one.LogPrices.Length, two.LogPrices.Length);
        return (ShippedRecords.Plain(one)[..n], ShippedRecords.Plain(two)[..n]);
    }

    private static double[] Residuals(string code, string from, string to = "2023-08")
    {
        var x = ShippedRecords.Plain(ShippedRecords.Of(code, from, to));
        var b = OneFactorFit.Of(x).Persistence;
        return [.. Enumerable.Range(0, x.Length - 1).Select(t => x[t + 1] - b * x[t])];
    }

    private static double Pearson(double[] x, double[] y) => MathNet.Numerics.Statistics.Correlation.Pearson(x, y);
}
