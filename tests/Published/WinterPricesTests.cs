using FarmPortfolio.Engine.Fuel;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;

namespace FarmPortfolio.Published;

/// <summary>
/// Why wholesale prices are restless in winter and gas alone feels the cold: the public records (EIA, BLS) that ship and Central Park (NOAA). Computed by an independent script;
/// tolerance one in the last printed digit.
/// </summary>
public class WinterPricesTests
{
    private static readonly Lazy<IReadOnlyList<(DateOnly Month, double ColdK)>> Cold = new(() =>
    {
        var months = CentralPark.Days.GroupBy(d => new DateOnly(d.Day.Year, d.Day.Month, 1)).Where(g => g.Key.Month is >= 11 or <= 3).OrderBy(g => g.Key)
            .Select(g => (Month: g.Key, MeanK: g.Average(d => (d.MaxF + d.MinF) / 2) / 1.8)).ToList();
        var normal = months.GroupBy(m => m.Month.Month).ToDictionary(g => g.Key, g => g.Average(m => m.MeanK));
        return [.. months.Select(m => (m.Month, normal[m.Month.Month] - m.MeanK))];
    });

    /// <summary>Standard deviation of a month's change from November to March and in the other months; p of Levene's test about the medians (by a factor of 1.5).</summary>
    [Theory]
    [InlineData("gas-henry-hub", .200, .113, 2e-6)]
    [InlineData("propane-mont-belvieu", .117, .087, 2e-4)]
    [InlineData("oil-new-york-harbor", .101, .078, 5e-4)]
    public void Months_of_winter_are_more_restless(string code, double winter, double rest, double p)
    {
        var record = ShippedRecords.Of(code);
        var changes = Changes.Over(ShippedRecords.Plain(record), 1).Select((c, t) => (Month: (record.FirstMonthOn.Month + t) % 12 + 1, Change: c)).ToLookup(c => c.Month is >= 11 or <= 3, c => c.Change);
        double[][] groups = [[.. changes[true]], [.. changes[false]]];
        Assert.Equal(winter, groups[0].StandardDeviation(), .0011);
        Assert.Equal(rest, groups[1].StandardDeviation(), .0011);
        var away = groups.Select(g => g.Select(v => Math.Abs(v - g.Median())).ToArray()).ToArray();
        var (n, all) = (away.Sum(a => a.Length), away.SelectMany(a => a).Average());
        var f = away.Sum(a => a.Length * Math.Pow(a.Average() - all, 2)) / (away.Sum(a => a.Sum(v => Math.Pow(v - a.Average(), 2))) / (n - 2));
        Assert.InRange(1 - FisherSnedecor.CDF(1, n - 2, f), p / 1.5, p * 1.5);
    }

    /// <summary>Change of a record, so many months later, for each kelvin that a month from November to March is colder than its normal, with its plain standard error.</summary>
    [Theory]
    [InlineData("propane-mont-belvieu", 0, .002, .007)]
    [InlineData("oil-new-york-harbor", 0, .008, .005)]
    [InlineData("gas-piped-residential", 1, .003, .0016)]
    [InlineData("gas-commercial", 1, .007, .0018)]
    [InlineData("electricity-residential", 0, .000, .0005)]
    public void Of_the_other_records_only_commercial_gas_feels_the_cold(string code, int later, double slope, double error)
    {
        var fit = Slope(Rows(code, later));
        Assert.True(Math.Abs(fit.Slope - slope) <= .0006 && fit.Error / error is > 0.7 and < 1.4, $"{code}: {fit.Slope:0.0000} a kelvin, standard error {fit.Error:0.0000}, expected {slope} and {error}");
        Assert.Equal(code == "gas-commercial", Math.Abs(fit.Slope / fit.Error) > 3);
    }

    /// <summary>Henry Hub: rank correlation .52; 2.5 % a kelvin before the middle of 2016, 6.5 % after.</summary>
    [Fact]
    public void Gas_feels_the_cold_in_both_halves_of_the_record()
    {
        var rows = Rows("gas-henry-hub", 0);
        Assert.Equal(.52, Correlation.Spearman(rows.Select(r => r.ColdK), rows.Select(r => r.Change)), .006);
        var (before, after) = (Slope([.. rows.Where(r => r.Month < new DateOnly(2016, 7, 1))]), Slope([.. rows.Where(r => r.Month >= new DateOnly(2016, 7, 1))]));
        Assert.Equal(.025, before.Slope, .0006);
        Assert.Equal(.065, after.Slope, .0006);
        Assert.True(before.Slope > 3 * before.Error && after.Slope > 3 * after.Error, $"{before} before, {after} after");
    }

    /// <summary>Mean price of December to March over that of September to November by the coldness of December to March, fourteen winters: gas 8.7 % a kelvin (se 4.2), propane -.1 % (4.2).</summary>
    [Theory]
    [InlineData("gas-henry-hub", .087, .042)]
    [InlineData("propane-mont-belvieu", -.001, .042)]
    public void A_cold_winter_against_the_autumn_before_it(string code, double slope, double error)
    {
        var record = ShippedRecords.Of(code);
        var logs = ShippedRecords.Plain(record);
        double At(int year, int month) => logs[12 * (year - record.FirstMonthOn.Year) + month - record.FirstMonthOn.Month];
        var fit = Slope([.. Winters().Select(w => (
            new DateOnly(w.Season, 7, 1), w.ColdK,
            (At(w.Season, 12) + At(w.Season + 1, 1) + At(w.Season + 1, 2) + At(w.Season + 1, 3)) / 4 - (At(w.Season, 9) + At(w.Season, 10) + At(w.Season, 11)) / 3))]);
        Assert.Equal(slope, fit.Slope, .0011);
        Assert.Equal(error, fit.Error, .0006);
    }

    /// <summary>Months differ by 1.8 to 2.6 K, winters (December to March) by 1.7 K; a cold month is followed by another with a correlation of .34.</summary>
    [Fact]
    public void How_much_months_and_winters_differ()
    {
        var byMonth = Cold.Value.GroupBy(c => c.Month.Month).Select(g => g.Select(c => c.ColdK).StandardDeviation()).Order().ToList();
        Assert.Equal(1.8, byMonth[0], .06);
        Assert.Equal(2.6, byMonth[^1], .06);
        Assert.Equal(14, Winters().Count);
        Assert.Equal(1.7, Winters().Select(w => w.ColdK).StandardDeviation(), .06);
        var pairs = Cold.Value.Zip(Cold.Value.Skip(1)).Where(p => p.Second.Month == p.First.Month.AddMonths(1)).ToList();
        Assert.Equal(.34, Correlation.Pearson(pairs.Select(p => p.First.ColdK), pairs.Select(p => p.Second.ColdK)), .006);
    }

    private static List<(int Season, double ColdK)> Winters() =>
        [.. Cold.Value.GroupBy(c => c.Month.Month >= 7 ? c.Month.Year : c.Month.Year - 1).Where(g => g.Count() == 5).Select(g => (g.Key, g.Where(c => c.Month.Month != 11).Average(c => c.ColdK)))];

    private static List<(DateOnly Month, double ColdK, double Change)> Rows(string code, int later)
    {
        var record = ShippedRecords.Of(code);
        var logs = ShippedRecords.Plain(record);
        int Index(DateOnly m) => 12 * (m.Year - record.FirstMonthOn.Year) + m.Month - record.FirstMonthOn.Month + later;
        return [.. Cold.Value.Skip(1).Where(c => Index(c.Month) < logs.Length).Select(c => (c.Month, c.ColdK, logs[Index(c.Month)] - logs[Index(c.Month) - 1]))];
    }

    private static (double Slope, double Error) Slope(List<(DateOnly Month, double ColdK, double Change)> rows)
    {
        var (mx, my) = (rows.Average(r => r.ColdK), rows.Average(r => r.Change));
        var xx = rows.Sum(r => (r.ColdK - mx) * (r.ColdK - mx));
        var slope = rows.Sum(r => (r.ColdK - mx) * (r.Change - my)) / xx;
        var rest = rows.Sum(r => Math.Pow(r.Change - my - slope * (r.ColdK - mx), 2));
        return (slope, Math.Sqrt(rest / (rows.Count - 2) / xx));
    }
}
