using FarmPortfolio.Engine.Units;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Published.Weather;

/// <summary>
/// Severity of the fourteen whole seasons of Central Park (NOAA GHCN-Daily), July to June: coefficient of variation of degree days, computed on the record from (TMAX + TMIN) / 2;
/// here from shaped hours, so within a hundredth. The lower the base, the more winters differ.
/// </summary>
public class SeverityTests
{
    [Theory]
    [InlineData(60, 0.1213)]
    [InlineData(50, 0.2173)]
    public void Variation_of_winters(double baseF, double expected)
    {
        var severity = WinterSeverity.Of(CentralPark.Years(), Us.C(baseF));
        Assert.True(Math.Abs(severity.Variation - expected) <= 0.012, $"base {baseF} F: expected {expected}, reckoned {severity.Variation:0.0000}, tolerance 0.012");
    }

    [Fact]
    public void Fourteen_seasons_and_no_memory()
    {
        var severity = WinterSeverity.Of(CentralPark.Years(), Us.C(60));
        Assert.Equal(14, severity.Seasons.Count);
        Assert.InRange(severity.NextYearCorrelation, -0.5, 0.5);
        var byHand = CentralPark.Days.GroupBy(d => SeasonCalendar.SeasonOf(d.Day)).Where(g => CentralPark.Seasons.Contains(g.Key))
            .Select(g => (Season: g.Key, DegreeDaysF: g.Sum(d => Math.Max(0, 60 - (d.MaxF + d.MinF) / 2)))).OrderBy(g => g.DegreeDaysF).ToArray();
        var order = severity.Seasons.OrderBy(s => s.DegreeDaysK).Select(s => s.Season).ToArray();
        Assert.Equal(byHand.Take(2).Select(g => g.Season).Order(), order.Take(2).Order());
        Assert.Equal(byHand.TakeLast(2).Select(g => g.Season).Order(), order.TakeLast(2).Order());
        Assert.Contains(severity.Reference.Hard, byHand.TakeLast(3).Select(g => g.Season));
        Assert.Contains(severity.Reference.Mild, byHand.Take(3).Select(g => g.Season));
    }

    /// <summary>Base in F, mean degree days of a year in F, their coefficient of variation, 2009 to 2023 by calendar year; computed on the record.</summary>
    [Theory]
    [InlineData(65, 4433.1, 0.071)]
    [InlineData(60, 3353.1, 0.093)]
    [InlineData(50, 1654.8, 0.177)]
    public void The_lower_the_base_the_more_years_differ(double baseF, double mean, double variation)
    {
        var years = CentralPark.Days.Where(d => d.Day.Year <= 2023).GroupBy(d => d.Day.Year).Select(g => g.Sum(d => Math.Max(0, baseF - (d.MaxF + d.MinF) / 2))).ToArray();
        var found = years.Average();
        var sd = Math.Sqrt(years.Sum(y => (y - found) * (y - found)) / (years.Length - 1));
        Assert.True(Math.Abs(found - mean) <= 0.05, $"base {baseF} F: expected a mean of {mean}, reckoned {found:0.00}, tolerance 0.05");
        Assert.True(Math.Abs(sd / found - variation) <= 0.0006, $"base {baseF} F: expected a variation of {variation}, reckoned {sd / found:0.0000}, tolerance 0.0006");
    }
}
