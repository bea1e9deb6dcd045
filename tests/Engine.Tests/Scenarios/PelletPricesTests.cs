using FarmPortfolio.Engine.Economics;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Tests.Studies;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Tests.Scenarios;

/// <summary>Wood pellets in the futures against closed forms: middle, spread, level of one's own, a record of one's own.</summary>
public class PelletPricesTests
{
    private static readonly double Ton = HeatingValues.KwhPerUnit(FuelKind.WoodPellets, "ton")!.Value;

    [Fact]
    public void Without_a_record_the_middle_grows_by_the_trend_and_the_spread_is_that_of_the_closed_form()
    {
        var prices = At(Spec(s => s), month: 12 * 9);
        // 109 months after June before the first season; unrest mixes the normal: P95 at 1.774523 standard deviations
        var years = 109 / 12.0;
        var middle = 290 * Math.Exp(0.02 * years);
        var sd = Math.Sqrt(0.10 * 0.10 * (1 - Math.Exp(-0.1 * years)) / 0.1);
        Assert.InRange(prices.P50 / middle, 0.98, 1.02);
        Assert.InRange(Math.Log(prices.P95 / prices.P5) / (2 * PriceModel.P95 * sd), 0.95, 1.05);
    }

    [Fact]
    public void An_own_level_trend_and_spread_are_taken()
    {
        var own = new FuelPriceAssumption { Fuel = FuelKind.WoodPellets, LevelUsdPerUnit = 240, GrowthPerYear = 0, VolatilityPerYear = 1e-9 };
        var prices = At(Spec(s => s with { Prices = [own] }), month: 50);
        Assert.Equal(240, prices.P5, 0.01);
        Assert.Equal(240, prices.P95, 0.01);
    }

    [Fact]
    public void An_imported_record_is_fitted_and_one_with_a_zero_is_refused()
    {
        var record = new PriceSeriesFacts { Fuel = FuelKind.WoodPellets, Market = PriceMarket.Retail, Class = PriceClass.RetailFuel, Unit = "ton", FirstMonthOn = new(2020, 7, 1), UsdPerUnit = [.. Enumerable.Range(0, 72).Select(i => (double?)(260 + 10 * Math.Sin(i)))] };
        var spec = Spec(s => s, record);
        Assert.Equal(72, spec.Of(FuelKind.WoodPellets).Model.Months);
        Assert.InRange(At(spec, 0).P50, 245, 280);
        var (none, faults) = FuturesSpec.Of(new() { FirstSeason = 2026 }, With(record with { UsdPerUnit = [200, 0, .. Enumerable.Repeat<double?>(200, 40)] }), [2015, 2016], [new double[12], new double[12]]);
        Assert.Null(none);
        Assert.Contains(faults, f => f.Code == "NOT_POSITIVE");
    }

    [Fact]
    public void Pellets_move_no_other_fuel_and_are_the_same_bits_again()
    {
        var (a, b) = (new Futures(Spec(s => s)).Draw(1), new Futures(Spec(s => s with { Prices = [new() { Fuel = FuelKind.WoodPellets, LevelUsdPerUnit = 400 }] })).Draw(1));
        Assert.Equal(a.Price(FuelKind.Propane), b.Price(FuelKind.Propane));
        Assert.Equal(a.Price(FuelKind.WoodPellets), new Futures(Spec(s => s)).Draw(1).Price(FuelKind.WoodPellets));
        Assert.NotEqual(a.Price(FuelKind.WoodPellets), b.Price(FuelKind.WoodPellets));
    }

    private static Dictionary<FuelKind, PriceSeriesFacts> With(PriceSeriesFacts? pellets)
    {
        var series = SmallPortfolio.Of().Prices.ToDictionary();
        if (pellets is not null)
        {
            series[FuelKind.WoodPellets] = pellets;
        }

        return series;
    }

    private static FuturesSpec Spec(Func<ScenarioSetFacts, ScenarioSetFacts> change, PriceSeriesFacts? pellets = null)
    {
        var (spec, faults) = FuturesSpec.Of(change(new() { FirstSeason = 2026, SeasonCount = 12, ReplicateCount = 2, PathCount = 4096, Seed = 3 }), With(pellets), [2015, 2016], [new double[12], new double[12]]);
        Assert.Empty(faults);
        return spec!;
    }

    private static Distribution At(FuturesSpec spec, int month)
    {
        var blocks = new[] { new Futures(spec).Draw(0), new Futures(spec).Draw(1) };
        return Distribution.Of([.. blocks.SelectMany(b => Enumerable.Range(0, b.Paths).Select(p => Ton * b.Price(FuelKind.WoodPellets)[12 * p * b.Seasons + month]))], 2);
    }
}
