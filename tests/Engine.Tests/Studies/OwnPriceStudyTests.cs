using FarmPortfolio.Engine.Exposure;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Tests.Studies;

/// <summary>A farm whose own price lies off its line on the index: its season is wider in the study and on the fuel page, and nobody else's moves.</summary>
public class OwnPriceStudyTests
{
    private const double Sd = 0.15;
    private static readonly ContractFacts Indexed = new() { SupplyGroupId = "g", Kind = ContractKind.Indexed, Unit = "gal", AdderUsdPerUnit = 0.2 };
    private static readonly ContractFacts Off = Indexed with { ScatterUsdPerUnit = Sd };

    [Fact]
    public void Every_season_of_a_study_lies_off_by_its_gallons_times_one_draw()
    {
        var (on, off, units) = (Sums(Indexed), Sums(Off), Sums(new() { SupplyGroupId = "g", Kind = ContractKind.Fixed, Unit = "gal", PriceUsdPerUnit = 1 }));
        // 256 futures x 12 seasons, each a draw of its own: what it costs more over its gallons is normal about 0 with the spread told
        const int Cells = 256 * 12;
        var more = Enumerable.Range(0, Cells).Select(c => (off.Usd(c) - on.Usd(c)) / units.Usd(c)).ToArray();
        var (mean, n) = (more.Average(), more.Length);
        Assert.InRange(mean, -4 * Sd / Math.Sqrt(n), 4 * Sd / Math.Sqrt(n));
        Assert.InRange(Math.Sqrt(more.Sum(m => (m - mean) * (m - mean)) / (n - 1)), Sd * (1 - 4 / Math.Sqrt(2.0 * n)), Sd * (1 + 4 / Math.Sqrt(2.0 * n)));
    }

    [Fact]
    public void A_series_that_is_not_quite_the_index_is_settled_by_what_it_lies_off()
    {
        var small = SmallPortfolio.Of(1);
        var index = small.Prices[FuelKind.Propane];
        // 0.40 over the index and 0.20 up or down in a made-up order of months
        var own = index with { UsdPerUnit = [.. index.UsdPerUnit.Select((p, i) => p + 0.4 + 0.2 * Math.Sin(12.9898 * i))] };
        Portfolio With(PriceSeriesFacts series) => small with { Contracts = new Dictionary<string, ContractFacts> { ["g"] = Indexed with { AdderUsdPerUnit = null, PriceSeriesId = "s" } }, OwnSeries = new Dictionary<string, PriceSeriesFacts> { ["s"] = series } };
        var (plain, _) = StudyRun.Run(With(index with { UsdPerUnit = [.. index.UsdPerUnit.Select(p => p + 0.4)] }), 2, null, TestContext.Current.CancellationToken);
        var (wide, _) = StudyRun.Run(With(own), 2, null, TestContext.Current.CancellationToken);
        var (again, _) = StudyRun.Run(With(own), 8, null, TestContext.Current.CancellationToken);
        Assert.Equal(wide!.ResultSha256, again!.ResultSha256);
        Assert.NotEqual(plain!.ResultSha256, wide.ResultSha256);
        var basis = SeriesBasis.Of(own, index, null, FuelKind.Propane).Basis!;
        Assert.InRange(basis.SdUsdPerKwh * HeatingValues.KwhPerUnit(FuelKind.Propane, "gal")!.Value, 0.13, 0.15);
    }

    [Fact]
    public void The_fuel_page_sees_the_same_wider_season()
    {
        var (on, off) = (Exposed(Indexed), Exposed(Off));
        var more = off.Usd.Zip(on.Usd, on.FuelKwh).Select(x => (x.First - x.Second) / x.Third).ToArray();
        var perKwh = Sd / HeatingValues.KwhPerUnit(FuelKind.Propane, "gal")!.Value;
        var mean = more.Average();
        Assert.InRange(Math.Sqrt(more.Sum(m => (m - mean) * (m - mean)) / (more.Length - 1)), perKwh * (1 - 4 / Math.Sqrt(2.0 * more.Length)), perKwh * (1 + 4 / Math.Sqrt(2.0 * more.Length)));
        // the same draws as the study's: cost at risk is one figure, not two
        var study = Sums(Off);
        var onStudy = Sums(Indexed);
        Assert.Equal(study.Usd(7) > onStudy.Usd(7), off.Usd[7] > on.Usd[7]);
        Assert.Equal(study.Usd(8) > onStudy.Usd(8), off.Usd[8] > on.Usd[8]);
    }

    private static WayCost Exposed(ContractFacts contract)
    {
        var portfolio = With(contract);
        var futures = StudyFutures.Of(portfolio).Futures!;
        var (exposure, left) = FarmExposure.Of(portfolio, futures, futures.Blocks(2, TestContext.Current.CancellationToken), ["h0"], [new("c", "own", contract)], 0);
        Assert.Empty(left);
        return exposure!.Own;
    }

    private static StudySums Sums(ContractFacts contract)
    {
        var (outcome, faults) = StudyRun.Run(With(contract), new StudyMeans(2), null, TestContext.Current.CancellationToken);
        Assert.Empty(faults);
        return outcome!.Sums;
    }

    private static Portfolio With(ContractFacts contract) => SmallPortfolio.Of(1) with { Contracts = new Dictionary<string, ContractFacts> { ["g"] = contract } };
}
