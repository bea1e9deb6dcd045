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

    [Fact]
    public void Example_10_day_length_and_radiation_at_Rio()
    {
        // FAO-56 example 10: 22.9 S, 15 May: Ra 25.1 MJ/m2 d, N 10.9 h (full precision 25.111028 and 10.895076, as public test suites print them)
        Assert.Equal(25.111028, SolarGeometry.ExtraterrestrialMjPerM2(-22.9, 135), 1e-4);
        Assert.Equal(10.895076, SolarGeometry.DaylightHours(-22.9, 135), 1e-4);
    }
}
