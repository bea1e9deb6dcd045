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
        var widths = new[] { 0.02, 0.30, 0.60 }.Select(sd => Run(1, new(1, 0, sd, DataGrade.A, "g"))).Select(r => r.Options[0].NetBySeason[2]).Select(d => d.P90 - d.P10).ToList();
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

    [Fact]
    public void A_leakier_house_of_the_same_bill_saves_less_by_foam_and_more_by_sealing()
    {
        var (described, leaky) = (Run(1, Sure with { AirSdLn = 0 }), Run(1, Sure with { AirFactor = 2, AirSdLn = 0 }));
        double Ratio(string key) => leaky.Options.Single(o => o.Key == key).FuelSavingUsd / described.Options.Single(o => o.Key == key).FuelSavingUsd;
        Assert.InRange(Ratio("foam-now"), 0.75, 0.92);
        Assert.InRange(Ratio("curtain-now"), 0.75, 1.0);
        Assert.True(Ratio("foam-seal-now") > Ratio("foam-now"), $"foam and sealing {Ratio("foam-seal-now")}, foam {Ratio("foam-now")}");
        for (var s = 0; s < described.CostBySeason.Count; s++)
        {
            Near(described.CostBySeason[s].Mean, leaky.CostBySeason[s].Mean, 1e-9 * described.CostBySeason[s].Mean, $"cost of season {s} as it stands");
        }
    }

    [Fact]
    public void Air_changes_not_measured_widen_a_saving_and_leave_the_cost_alone()
    {
        var (known, unknown) = (Run(1, Sure with { AirSdLn = 0 }), Run(1, Sure with { AirSdLn = 0.8 }));
        Assert.Equal(known.CostBySeason[3].P90, unknown.CostBySeason[3].P90);

        // path by path, for price and winter move a saving more than this does
        var (before, after) = (Saving(known), Saving(unknown));
        var apart = before.Zip(after, (b, a) => (double)(a - b)).ToArray();
        var mean = before.Average(v => (double)v);
        Assert.True(Math.Sqrt(apart.Average(d => d * d)) > 0.02 * mean, $"{Math.Sqrt(apart.Average(d => d * d))} of {mean}");
        Assert.Contains(apart, d => d < 0);
        Assert.Contains(apart, d => d > 0);
        static float[] Saving(StudyResult r) => r.SavingByPath[Enumerable.Range(0, r.Options.Count).Single(o => r.Options[o].Key == "foam-now")];
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
