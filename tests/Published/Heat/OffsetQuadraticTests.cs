using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Published.Heat;

/// <summary>
/// The quadratic through exact balances at -4, 0 and +4 F, carried out to 8 F. Expected: an independent script: off by 0.3 % of a season for a house at 60 F, 0.5 % at 40 F, 1.4 % at 33 F;
/// single months by up to half a per cent of the season, all of the season as recorded. North, November to April, mean of fourteen winters; tolerance: half as much again.
/// </summary>
public class OffsetQuadraticTests
{
    [Theory]
    [InlineData(60, 65, 0.3)]
    [InlineData(40, 45, 0.5)]
    [InlineData(33, 40, 1.4)]
    public void Error_at_eight_degrees(double nightF, double dayF, double expectedPct)
    {
        var house = new SemicircleHouse { NightF = nightF, DayF = dayF };
        var (option, years) = (house.Option(), house.Years);
        var table = DemandTables.Of(option, years);
        var exact = new double[12];
        foreach (var offsetF in new[] { -8.0, 8.0 })
        {
            var (offset, season) = (offsetF * Us.DegreeK, 0.0);
            var months = new double[12];
            for (var w = 0; w < years.Count; w++)
            {
                HeatBalance.PlainDemand(option, years[w], offset, exact);
                season += table.SeasonKwh(w, 0);
                for (var m = 0; m < 12; m++)
                {
                    months[m] += table.DemandKwh(w, m, offset) - exact[m];
                }
            }

            Expect.Between(0, expectedPct, 100 * Math.Abs(months.Sum()) / season, 0.5 * expectedPct, $"{nightF}/{dayF} F moved by {offsetF} F, per cent of the season");
            Expect.Between(0, 0.5, 100 * months.Max(Math.Abs) / season, 0.25, $"{nightF}/{dayF} F moved by {offsetF} F, worst month, per cent of the season");
        }
    }
}
