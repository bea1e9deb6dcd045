using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Studies;

namespace FarmPortfolio.Engine.Tests.Studies;

/// <summary>What the house would renew anyway is no cost of an option, and what is given up before it has paid back never does.</summary>
public class RenewalTests
{
    private const double RoofFt2 = Math.PI * 15 * 96;

    /// <summary>Infrared film laid when the film is due costs its premium on the one layer that holds heat, 1.5 to 2.5 cents a square foot (Bartok; Wisconsin Extension): $90 on a house of 30 x 96 ft; laid early it costs both films.</summary>
    [Fact]
    public void Film_that_holds_heat_costs_its_premium_at_the_change_of_film()
    {
        var due = Run(new("irfilm-film", ["irfilm"], OptionTiming.AtFilmChange), filmDueYear: 2026);
        var early = Run(new("irfilm-now", ["irfilm"]), filmDueYear: 2029);
        Assert.Equal(90, due.OutlayUsd, 1.0);
        Assert.InRange(due.OutlayUsd / RoofFt2, 0.015, 0.025);
        Assert.True(early.OutlayUsd > 5 * due.OutlayUsd, $"{early.OutlayUsd:0} early, {due.OutlayUsd:0} at the change");
        Assert.Equal(due.SavingBySeason[0].Mean, early.SavingBySeason[0].Mean, 1e-6);
    }

    [Theory]
    [InlineData(2, true)]
    [InlineData(12, false)]
    public void Not_renewed_and_shorter_lived_than_its_payback_is_never(double lifeYears, bool never)
    {
        var option = Run(new("foam-now", ["foam"], Overrides: new() { OutlayCents = 15_000_00, LifeYears = lifeYears, NotRenewed = true }), filmDueYear: 2028);
        Assert.InRange(option.SavingBySeason[1].Mean, 800, 3_000);
        Assert.True(never == (option.Lasting.NeverShare == 1), $"life {lifeYears}: saves {option.SavingBySeason[1].Mean:0} a season, outlay {option.OutlayUsd:0}, never in {option.Lasting.NeverShare} of the futures");
        Assert.All(Enumerable.Range(0, 12), s => Assert.Equal(s >= lifeYears, option.SavingBySeason[s].Mean == 0));
    }

    private static OptionResult Run(OptionFacts option, int filmDueYear)
    {
        var p = SmallPortfolio.Of(1);
        p = p with
        {
            Houses = new Dictionary<string, HouseFacts> { ["h0"] = p.Houses["h0"] with { FilmDueYear = filmDueYear } },
            Options = new Dictionary<string, IReadOnlyList<OptionFacts>> { ["h0"] = [option] },
        };
        var (result, faults) = StudyRun.Run(p, 2, null, CancellationToken.None);
        Assert.Empty(faults);
        return result!.Options.Single();
    }
}
