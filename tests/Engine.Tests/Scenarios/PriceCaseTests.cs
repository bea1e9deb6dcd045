using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Engine.Tests.Studies;

namespace FarmPortfolio.Engine.Tests.Scenarios;

public class PriceCaseTests
{
    private const int Seasons = 12;

    private static FuturesSpec Spec(PriceCase? named, LevelMeaning meaning = LevelMeaning.Middle) =>
        StudyFutures.Of(SmallPortfolio.Of(priceFactor: 3, change: s => s with { PriceCase = named, LevelMeaning = meaning })).Futures!.Spec;

    private static double[] Factors(PriceCaseKind kind, int first, FuelKind fuel) =>
        [.. Enumerable.Range(0, Seasons).Select(s => PriceCases.Factor(Spec(new(kind, first)).Set.Shapes, fuel, s))];

    [Theory]
    [InlineData(FuelKind.NaturalGas), InlineData(FuelKind.Propane), InlineData(FuelKind.FuelOil)]
    public void Spike_rise_and_collapse_have_the_values_they_say(FuelKind fuel)
    {
        Assert.Equal([1, 1, 1.5, 1.5, 1, 1, 1, 1, 1, 1, 1, 1], Factors(PriceCaseKind.SpikeOfTwoWinters, 2, fuel));
        Assert.Equal([1, 1, 1, .6, .6, .6, .6, .6, .6, .6, .6, .6], Factors(PriceCaseKind.Collapse, 3, fuel));
        var rise = Factors(PriceCaseKind.SlowRise, 1, fuel);
        Assert.Equal(1, rise[0]);
        for (var s = 1; s < Seasons; s++)
        {
            Assert.Equal(Math.Pow(1.04, s), rise[s], 1e-12);
        }
    }

    [Fact]
    public void Propane_doubles_for_one_winter_and_nothing_else_moves()
    {
        Assert.Equal([1, 2, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1], Factors(PriceCaseKind.PropaneDoubled, 1, FuelKind.Propane));
        Assert.All(new[] { FuelKind.NaturalGas, FuelKind.FuelOil, FuelKind.Electricity }, f => Assert.All(Factors(PriceCaseKind.PropaneDoubled, 1, f), v => Assert.Equal(1, v)));
    }

    [Fact]
    public void Electricity_is_left_alone_by_every_case() =>
        Assert.All(PriceCases.All, k => Assert.All(Factors(k, 0, FuelKind.Electricity), v => Assert.Equal(1, v)));

    [Fact]
    public void The_spread_of_propane_over_gas_closes_in_five_equal_steps_and_stays_closed()
    {
        var spec = Spec(null);
        var gas = MiddlePrices.UsdPerKwh(spec.Fuels[0], spec.Set);
        var propane = MiddlePrices.UsdPerKwh(spec.Fuels[1], spec.Set);
        var (onGas, onPropane) = (Factors(PriceCaseKind.SpreadCloses, 1, FuelKind.NaturalGas), Factors(PriceCaseKind.SpreadCloses, 1, FuelKind.Propane));
        Assert.Equal((1, 1), (onGas[0], onPropane[0]));
        for (var s = 1; s < Seasons; s++)
        {
            var open = Math.Log(propane[s] / gas[s]);
            Assert.True(Math.Abs(open) > 0.1, "the records give no spread to close");
            Assert.Equal(open * (1 - Math.Min(1, s / 5.0)), Math.Log(propane[s] * onPropane[s] / (gas[s] * onGas[s])), 1e-12);
            Assert.Equal(0, Math.Log(onPropane[s] * onGas[s]), 1e-12);
        }
    }

    [Theory]
    [InlineData(LevelMeaning.Middle), InlineData(LevelMeaning.Expected)]
    public void The_future_in_which_nothing_happens_is_the_middle_of_those_drawn(LevelMeaning meaning)
    {
        var spec = Spec(null, meaning);
        var blocks = Enumerable.Range(0, 4).Select(new Futures(spec).Draw).ToList();
        foreach (var fuel in spec.Fuels)
        {
            var middle = MiddlePrices.UsdPerKwh(fuel, spec.Set);
            for (var s = 0; s < Seasons; s += 5)
            {
                var logs = blocks.SelectMany(b => Enumerable.Range(0, b.Paths).Select(p => Math.Log(Enumerable.Range(0, 12).Average(m => b.Price(fuel.Fuel)[(p * Seasons + s) * 12 + m])))).Order().ToArray();
                var median = (logs[logs.Length / 2 - 1] + logs[logs.Length / 2]) / 2;
                // standard error of a median of 256: 1.2533 sd / 16; the months' mean lies a little over the middle month
                var sd = Math.Sqrt(logs.Sum(l => (l - logs.Average()) * (l - logs.Average())) / logs.Length);
                Assert.True(Math.Abs(median - Math.Log(middle[s])) <= 4 * 1.2533 * sd / 16 + 0.01, $"{fuel.Fuel}, season {s}: drawn {median:0.0000}, middle {Math.Log(middle[s]):0.0000}, sd {sd:0.000}");
            }
        }
    }

    [Fact]
    public void A_case_multiplies_every_path_and_leaves_base_futures_other_fuels_and_earlier_seasons_to_the_bit()
    {
        var (plain, named) = (Spec(null), Spec(new(PriceCaseKind.PropaneDoubled, 3)));
        Assert.NotEqual(plain.Sha256(), named.Sha256());
        var (b, c) = (new Futures(plain).Draw(1), new Futures(named).Draw(1));
        Assert.Equal(b.Winter, c.Winter);
        Assert.Equal(b.OffsetK, c.OffsetK);
        foreach (var fuel in new[] { FuelKind.NaturalGas, FuelKind.FuelOil, FuelKind.Electricity })
        {
            Assert.Equal(b.Price(fuel), c.Price(fuel));
        }

        for (var i = 0; i < b.Price(FuelKind.Propane).Length; i++)
        {
            var (was, now) = (b.Price(FuelKind.Propane)[i], c.Price(FuelKind.Propane)[i]);
            Assert.Equal(i / 12 % Seasons == 3 ? 2 * was : was, now);
        }
    }

    [Fact]
    public void A_case_is_nothing_but_its_shapes_laid_over_the_same_futures()
    {
        PriceShape[] byHand = [.. new[] { FuelKind.NaturalGas, FuelKind.Propane, FuelKind.FuelOil }.Select(f => new PriceShape(f, 2, [1.5, 1.5]))];
        var shapes = StudyFutures.Of(SmallPortfolio.Of(priceFactor: 3, change: s => s with { Shapes = byHand })).Futures!;
        Assert.Equal(shapes.Sha256, Spec(new(PriceCaseKind.SpikeOfTwoWinters, 2)).Sha256());
    }

    [Fact]
    public void A_case_that_begins_after_the_horizon_is_refused_by_name()
    {
        var (futures, faults) = StudyFutures.Of(SmallPortfolio.Of(priceFactor: 3, change: s => s with { PriceCase = new(PriceCaseKind.Collapse, Seasons) }));
        Assert.Null(futures);
        var fault = Assert.Single(faults);
        Assert.Equal(("OUT_OF_RANGE", "priceCase"), (fault.Code, fault.Field));
        Assert.Contains("between 0 and 11", fault.Remedy, StringComparison.Ordinal);
    }
}
