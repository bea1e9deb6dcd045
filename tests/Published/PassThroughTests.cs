using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Fuel;
using MathNet.Numerics.LinearAlgebra;

namespace FarmPortfolio.Published;

/// <summary>
/// Retail prices on wholesale ones and Henry Hub on cold months, ordinary least squares on the public records (EIA, BLS, NOAA) that ship and that the tests carry.
/// Expected: an independent script; tolerance one in the last printed digit.
/// </summary>
public class PassThroughTests
{
    [Theory]
    [InlineData("oil-retail", "oil-new-york-harbor", "1997-02", 306, .961, .207, .95, .504, .622, .539)]
    [InlineData("oil-retail", "oil-new-york-harbor", "1997-04", 302, .958, .207, .96, .516, .655, .498)]
    [InlineData("oil-retail", "oil-new-york-harbor", "2009-01", 161, .937, .171, .94, 1.046, .808, .141)]
    [InlineData("gas-commercial", "gas-henry-hub", "2009-01", 161, .615, .62, .84, 5.80, .237, .302, .281)]
    [InlineData("gas-commercial", "gas-henry-hub", "2009-03", 159, .588, .615, .83, 5.882, .254, .298, .242)]
    [InlineData("gas-piped-residential", "gas-henry-hub", "2009-01", 161, .48, .085, .97, .78, .046, .026, .007, .005)]
    public void Retail_follows_wholesale(string retail, string wholesale, string from, int months, double r2, double sd, double ar, params double[] coefficients)
    {
        var fit = Fit(retail, wholesale, from, coefficients.Length - 2, months == 306 ? "2022-07" : "2022-05");
        var words = $"{retail} from {from}: n {fit.Months}, R2 {fit.R2:0.0000}, sd {fit.Sd:0.0000}, AR {fit.Ar:0.000}, {string.Join(" ", fit.Coefficients.Select(c => c.ToString("0.0000")))}";
        Assert.True(fit.Months == months && Math.Abs(fit.R2 - r2) <= .0051 && Math.Abs(fit.Sd - sd) <= .0031 && Math.Abs(fit.Ar - ar) <= .0051, words);
        Assert.True(fit.Coefficients.Zip(coefficients).All(p => Math.Abs(p.First - p.Second) <= .0031), words);
    }

    /// <summary>The program's own figures are those fits, rounded; the autocorrelation of oil's residual is that of the longer record.</summary>
    [Theory]
    [InlineData(FuelKind.NaturalGas, "gas-commercial", "gas-henry-hub")]
    [InlineData(FuelKind.FuelOil, "oil-retail", "oil-new-york-harbor")]
    public void The_figures_in_use_are_the_fits_from_2009(FuelKind fuel, string retail, string wholesale)
    {
        var used = PassThrough.Of(fuel);
        var fit = Fit(retail, wholesale, "2009-01", fuel == FuelKind.NaturalGas ? 2 : 1);
        double[] figures = fuel == FuelKind.NaturalGas ? [used.Constant, used.Now, used.Last, used.Before] : [used.Constant, used.Now, used.Last];
        Assert.True(fit.Coefficients.Zip(figures).All(p => Math.Abs(p.First - p.Second) <= .003), string.Join(" ", fit.Coefficients));
        Assert.Equal(used.ResidualSd, fit.Sd, .003);
        Assert.Equal(used.ResidualAr, fit.Ar, .02);
    }

    /// <summary>Electricity does not follow gas: R2 0.05.</summary>
    [Fact]
    public void Electricity_does_not_follow_gas() => Assert.InRange(Fit("electricity-residential", "gas-henry-hub", "2009-01", 3).R2, 0.04, 0.06);

    /// <summary>Henry Hub rises 4.0 % for each kelvin that a month from November to March is colder than its normal at Central Park (NOAA), n 76, R2 0.20.</summary>
    [Fact]
    public void Gas_rises_in_cold_months()
    {
        var record = ShippedRecords.Of("gas-henry-hub");
        var logs = ShippedRecords.Plain(record);
        var months = CentralPark.Days.GroupBy(d => new DateOnly(d.Day.Year, d.Day.Month, 1)).Where(g => g.Key.Month is >= 11 or <= 3).OrderBy(g => g.Key).Select(g => (Month: g.Key, MeanK: g.Average(d => (d.MaxF + d.MinF) / 2) / 1.8)).ToList();
        var normal = months.GroupBy(m => m.Month.Month).ToDictionary(g => g.Key, g => g.Average(m => m.MeanK));
        int Index(DateOnly m) => 12 * (m.Year - record.FirstMonthOn.Year) + m.Month - record.FirstMonthOn.Month;
        var rows = months.Skip(1).Select(m => (X: normal[m.Month.Month] - m.MeanK, Y: logs[Index(m.Month)] - logs[Index(m.Month) - 1])).ToList();
        var (mx, my) = (rows.Average(r => r.X), rows.Average(r => r.Y));
        var slope = rows.Sum(r => (r.X - mx) * (r.Y - my)) / rows.Sum(r => (r.X - mx) * (r.X - mx));
        var r2 = slope * rows.Sum(r => (r.X - mx) * (r.Y - my)) / rows.Sum(r => (r.Y - my) * (r.Y - my));
        Assert.Equal(76, rows.Count);
        Assert.Equal(.040, slope, .0006);
        Assert.Equal(.20, r2, .0051);
    }

    private static (int Months, double R2, double Sd, double Ar, double[] Coefficients) Fit(string retail, string wholesale, string from, int lags, string to = "2022-05")
    {
        var (r, w) = (ShippedRecords.Of(retail, from, to), ShippedRecords.Of(wholesale));
        var offset = 12 * (r.FirstMonthOn.Year - w.FirstMonthOn.Year) + r.FirstMonthOn.Month - w.FirstMonthOn.Month;
        var y = Vector<double>.Build.DenseOfEnumerable(r.LogPrices.Select(Math.Exp));
        var x = Matrix<double>.Build.Dense(y.Count, lags + 2, (t, j) => j == 0 ? 1 : Math.Exp(w.LogPrices[offset + t - j + 1]));
        var beta = x.TransposeThisAndMultiply(x).Solve(x.TransposeThisAndMultiply(y));
        var e = (y - x * beta).ToArray();
        var mean = y.Average();
        var rest = e.Sum(v => v * v);
        return (y.Count, 1 - rest / y.Sum(v => (v - mean) * (v - mean)), Math.Sqrt(rest / (y.Count - lags - 2)), Enumerable.Range(1, e.Length - 1).Sum(i => e[i] * e[i - 1]) / e.Take(e.Length - 1).Sum(v => v * v), beta.ToArray());
    }
}
