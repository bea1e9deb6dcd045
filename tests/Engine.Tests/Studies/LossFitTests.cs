using FarmPortfolio.Engine.HeatDemand.Calibration;
using FarmPortfolio.Engine.Studies;

namespace FarmPortfolio.Engine.Tests.Studies;

/// <summary>What the bills say of a house reaches the futures.</summary>
public class LossFitTests
{
    private static readonly LossFit Sure = new(1, 0, 1e-9, DataGrade.A, "g");

    [Fact]
    public void A_house_that_takes_a_third_more_costs_and_saves_a_third_more()
    {
        var (described, fitted) = (Run(1, Sure), Run(1, Sure with { Mean = 1.3 }));
        for (var s = 0; s < described.CostBySeason.Count; s++)
        {
            Near(1.3, fitted.CostBySeason[s].Mean / described.CostBySeason[s].Mean, 1e-6, $"cost of season {s}");
        }

        foreach (var option in described.Options)
        {
            var same = fitted.Options.Single(o => o.Key == option.Key);
            Near(1.3, same.HeatSavedKwh / option.HeatSavedKwh, 1e-9, option.Key + ", heat saved");
            Near(1.3, same.FuelSavingUsd / option.FuelSavingUsd, 1e-6, option.Key + ", fuel saved");
            Assert.Equal(DataGrade.A, same.Grade);
        }
    }

    [Fact]
    public void Better_bills_narrow_the_saving_and_no_record_is_grade_C()
    {
        var widths = new[] { 0.02, 0.30, 0.60 }.Select(sd => Run(1, new(1, 0, sd, DataGrade.A, "g"))).Select(r => r.Options[0].SavingBySeason[2]).Select(d => d.P90 - d.P10).ToList();
        Assert.True(widths[0] < widths[1] && widths[1] < widths[2], string.Join(" < ", widths));
        Assert.All(Run(1, null).Options, o => Assert.Equal(DataGrade.C, o.Grade));
    }

    [Fact]
    public void What_the_houses_of_a_tank_share_does_not_average_out()
    {
        static double Width(StudyResult r) => (r.CostBySeason[0].P90 - r.CostBySeason[0].P10) / r.CostBySeason[0].Mean;
        var (shared, own) = (Width(Run(4, new(1, 0.3, 0, DataGrade.B, "g"))), Width(Run(4, new(1, 0, 0.3, DataGrade.B, "g"))));
        Assert.True(shared > own * 1.15, $"shared {shared}, each house's own {own}");
    }

    private static StudyResult Run(int houses, LossFit? fit)
    {
        var portfolio = SmallPortfolio.Of(houses);
        portfolio = portfolio with { LossFits = fit is null ? portfolio.LossFits : portfolio.Houses.Keys.ToDictionary(id => id, _ => fit) };
        var (study, faults) = StudyRun.Run(portfolio, 2, null, CancellationToken.None);
        Assert.Empty(faults);
        return study!;
    }

    private static void Near(double expected, double actual, double tolerance, string what) => Assert.True(Math.Abs(expected - actual) <= tolerance, $"{what}: {actual}, not {expected} within {tolerance}");
}
