using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Studies;

namespace FarmPortfolio.Engine.Tests.Studies;

public class MoneyTests
{
    [Fact]
    public void All_money_doubled_doubles_the_net_present_value_and_leaves_the_payback()
    {
        var once = Run(SmallPortfolio.Of(1));
        var portfolio = SmallPortfolio.Of(1, priceFactor: 2, change: s => s with { WageUsdPerHour = 2 * s.WageUsdPerHour, ElectricityUsdPerKwh = 2 * s.ElectricityUsdPerKwh });
        var twice = Run(portfolio with { Catalogue = portfolio.Catalogue.With(portfolio.Catalogue.Entries.Select(e => e with { Values = e.Values.ToDictionary(v => v.Key, v => v.Value.Unit.Contains('$', StringComparison.Ordinal) ? v.Value with { Value = 2 * v.Value.Value } : v.Value) })) });
        Assert.All(once.Options.Zip(twice.Options), pair =>
        {
            var (a, b) = pair;
            Assert.True(a.OutlayUsd > 0);
            Assert.Equal(2 * a.OutlayUsd, b.OutlayUsd, 1e-6 * a.OutlayUsd);
            Assert.Equal(2 * a.NpvUsd.P50, b.NpvUsd.P50, 1e-6 * a.OutlayUsd);
            Assert.Equal(2 * a.NpvUsd.Mean, b.NpvUsd.Mean, 1e-6 * a.OutlayUsd);
            Assert.Equal(a.Lasting.ShareBySeason, b.Lasting.ShareBySeason);
            Assert.Equal(a.Lasting.NeverShare, b.Lasting.NeverShare);
        });
    }

    [Fact]
    public void Once_the_house_would_have_a_new_heater_only_the_difference_to_that_one_counts()
    {
        // set in 2014, it lives 15 years: due before the fourth season, which counts from 0 as the third
        var p = SmallPortfolio.Of(1);
        p = p with
        {
            Houses = new Dictionary<string, HouseFacts> { ["h0"] = p.Houses["h0"] with { Heaters = [new("gravity", FuelKind.Propane, 130, 0.62, new DateOnly(2014, 1, 1))] } },
            Options = new Dictionary<string, IReadOnlyList<OptionFacts>> { ["h0"] = [new("condensing-now", ["condensing"])] },
        };
        var model = HouseModels.Of(p.Houses["h0"], p.Catalogue, new(0.3, 1, 1.1), 2026, FuelKind.Propane).Model!;
        var due = model.Heaters[0].DueYear - 2026;
        Assert.InRange(due, 1, 8);
        var (old, standard) = (model.Heaters[0].Efficiency, model.Heaters[0].NewEfficiency);
        var condensing = OptionModels.Of(model, p.Options["h0"][0]).Model!.Efficiency;
        Assert.True(old < standard && standard < condensing);
        var option = Run(p).Options.Single();
        double Share(int s) => (option.SavingBySeason[s].Mean + Cost(s)) / Standing(p, s);
        double Cost(int s) => option.Costs.RunningUsd * Math.Pow(1.03, s);
        Assert.Equal(option.RealisedMean * (1 - old / condensing), Share(due - 1), 0.02);
        Assert.Equal(option.RealisedMean * (1 - standard / condensing), Share(due + 1), 0.02);
    }

    private static double Standing(Portfolio p, int season) => Run(p).CostBySeason[season].Mean;

    private static StudyResult Run(Portfolio portfolio)
    {
        var (result, faults) = StudyRun.Run(portfolio, 2, null, CancellationToken.None);
        Assert.Empty(faults);
        return result!;
    }
}
