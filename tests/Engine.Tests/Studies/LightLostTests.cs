using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Tests.Studies;

/// <summary>Light that an option takes, from its shading to the money of the study: the crop's loss each season, and the sun that no longer warms the house.</summary>
public class LightLostTests
{
    private const double CropUsdPerM2 = 100;
    private const double YieldPerLight = 0.7;
    private const double FloorM2 = 30 * 96 * Us.SquareFootM2;
    private static readonly Dictionary<string, double> KeptByCold = new() { ["foam.keepBelowC"] = -2, ["foam.keepSunBelowWPerM2"] = 300, ["foam.sunThrough"] = 0.6 };

    [Theory]
    [InlineData(0.05)]
    [InlineData(0.02)]
    public void What_an_option_shades_is_a_row_of_money_and_comes_off_every_season(double lost)
    {
        var option = new OptionFacts("film", ["irfilm"], Overrides: new() { LightLostShare = lost });
        var (priced, free) = (Run(option, CropUsdPerM2), Run(option, null));
        var usd = lost * YieldPerLight * CropUsdPerM2 * FloorM2;
        var row = priced.Costs.Running.Single(l => l.Field == "lightLostShare");
        Near(usd, row.Usd, 1e-9 * usd, "row");
        Near(lost, row.Quantity!.Value, 1e-12, "share of light");
        for (var s = 0; s < priced.SavingBySeason.Count; s++)
        {
            Near(usd * Math.Pow(1.03, s), free.SavingBySeason[s].Mean - priced.SavingBySeason[s].Mean, 1e-6 * usd, $"season {s}");
        }

        Assert.Contains("light lost to the crop", free.Costs.NotCounted);
        Assert.DoesNotContain("light lost to the crop", priced.Costs.NotCounted);
        Assert.Equal(free.HeatSavedKwh, priced.HeatSavedKwh);
    }

    [Fact]
    public void Less_sun_is_more_heat_to_burn()
    {
        double Saved(double lost) => Run(new("film", ["irfilm"], Overrides: new() { LightLostShare = lost }), null).HeatSavedKwh;
        Assert.True(Saved(0) > Saved(0.05) && Saved(0.05) > Saved(0.10), $"{Saved(0)}, {Saved(0.05)}, {Saved(0.10)} kWh");
    }

    [Fact]
    public void Foam_kept_in_place_by_cold_days_shades_beyond_what_stands_in_the_catalogue()
    {
        OptionResult Foam(bool kept) => Run(new("foam", ["foam"], Overrides: kept ? new() { Physics = KeptByCold } : null), CropUsdPerM2);
        double Light(OptionResult r) => r.Costs.Running.Single(l => l.Field == "lightLostShare").Quantity!.Value;
        var (dark, kept) = (Light(Foam(false)), Light(Foam(true)));
        Assert.InRange(dark, Catalogue.BuiltIn.Value(CatalogueKind.Retrofit, "foam", "lightLost"), 0.04);
        Assert.True(kept > dark + 0.01, $"{kept} against {dark}");
        Near(kept * YieldPerLight * CropUsdPerM2 * FloorM2, Foam(true).Costs.Running.Single(l => l.Field == "lightLostShare").Usd, 1e-6, "row of the foam kept in place");
    }

    private static OptionResult Run(OptionFacts option, double? cropUsdPerM2)
    {
        var portfolio = SmallPortfolio.Of(1);
        portfolio = portfolio with
        {
            Houses = portfolio.Houses.ToDictionary(h => h.Key, h => h.Value with { CropUsdPerM2 = cropUsdPerM2, YieldPerLight = cropUsdPerM2 is null ? null : YieldPerLight, RetrofitsInstalled = [] }),
            Options = portfolio.Houses.Keys.ToDictionary(id => id, _ => (IReadOnlyList<OptionFacts>)[option]),
        };
        var (study, faults) = StudyRun.Run(portfolio, 1, null, CancellationToken.None);
        Assert.Empty(faults);
        return Assert.Single(study!.Options);
    }

    private static void Near(double expected, double actual, double tolerance, string what) => Assert.True(Math.Abs(expected - actual) <= tolerance, $"{what}: {actual}, not {expected} within {tolerance}");
}
