using FarmPortfolio.Engine.Fuel;

namespace FarmPortfolio.Engine.Tests.Fuel;

public class PriceRecordTests
{
    private static PriceSeriesFacts Series(FuelKind fuel, string unit, params double?[] prices) => new()
    {
        Fuel = fuel,
        Market = PriceMarket.Retail,
        Class = fuel == FuelKind.Electricity ? PriceClass.Electricity : PriceClass.RetailFuel,
        Unit = unit,
        FirstMonthOn = new(2024, 1, 1),
        UsdPerUnit = prices,
    };

    [Theory]
    [InlineData(FuelKind.Propane, "gal", 0, "A gal cannot cost 0 or less")]
    [InlineData(FuelKind.FuelOil, "gal", -2, "A gal cannot cost 0 or less")]
    [InlineData(FuelKind.Electricity, "kWh", -0.01, "Electricity at a market can be at 0 or below for hours")]
    public void Zero_and_below_are_refused_by_month_and_by_what_the_fuel_can_do(FuelKind fuel, string unit, double price, string remedy)
    {
        var (record, faults) = PriceRecord.Of(Series(fuel, unit, 1, price, 1));
        Assert.Null(record);
        var fault = Assert.Single(faults);
        Assert.Equal("NOT_POSITIVE", fault.Code);
        Assert.Contains("2024-02", fault.Message, StringComparison.Ordinal);
        Assert.StartsWith(remedy, fault.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_missing_months_are_filled_three_cut_the_record_and_the_later_of_equal_pieces_stands()
    {
        var (filled, _) = PriceRecord.Of(Series(FuelKind.Propane, "gal", 1, null, null, 8, 8));
        Assert.Equal((2, 0), (filled!.Filled, filled.Dropped));
        Assert.Equal([1.0, 2, 4, 8, 8], filled.LogPrices.Select(x => Math.Round(Math.Exp(x), 12)));
        var (cut, _) = PriceRecord.Of(Series(FuelKind.Propane, "gal", 1, 1, null, null, null, 3, 3));
        Assert.Equal((0, 2, new DateOnly(2024, 6, 1)), (cut!.Filled, cut.Dropped, cut.FirstMonthOn));
    }

    [Fact]
    public void Fourteen_months_take_the_volatility_of_the_class_and_no_shape()
    {
        var model = PriceFit.Of(PriceRecord.Of(Series(FuelKind.Propane, "gal", [.. Enumerable.Range(0, 14).Select(i => (double?)(2 + i % 3))])).Record!, PriceClass.RetailFuel);
        Assert.Equal((0.17, 1.0), (model.Volatility, model.PriorWeight));
        Assert.All(model.Shape, s => Assert.Equal(0, s));
        Assert.True(double.IsNaN(model.RawVolatility));
    }

    [Fact]
    public void The_free_fit_put_to_use_gives_back_its_own_factors_and_finds_those_of_a_made_record()
    {
        var (k1, sx, sc) = (1.5, 0.15, 0.45);
        var (xi, chi) = (0.0, 0.0);
        var f = Math.Exp(-k1 / 12);
        var logs = Enumerable.Range(0, 600).Select(t =>
        {
            xi += sx * Math.Sqrt(1 / 12.0) * Scenarios.Draw(t, 0) + 0.02 / 12;
            chi = f * chi + sc * Math.Sqrt((1 - f * f) / (2 * k1)) * Scenarios.Draw(t, 1);
            return xi + chi;
        }).ToArray();
        var record = new PriceRecord(new(1980, 1, 1), logs, 0, 0);
        var free = PriceFreeFit.Of(record, PriceClass.WholesaleFuel);
        Assert.InRange(k1, free.ReversionLow, free.ReversionHigh);
        Assert.Equal(sx, free.LongVolatility, 0.08);
        Assert.Equal(sc, free.ShortVolatility, 0.08);
        Assert.True(free.IsDetermined);
        var model = PriceFit.Of(record, PriceClass.WholesaleFuel, free.On(new() { Fuel = FuelKind.Propane }));
        Assert.Equal(free.LongVolatility, model.LongVolatility, 1e-12);
        Assert.Equal(free.ShortVolatility, model.ShortVolatility, 1e-12);
    }

    private static class Scenarios
    {
        internal static double Draw(int step, int key) => Engine.Scenarios.Noise.Normal(11, Engine.Scenarios.NoisePurpose.ShortFactor, key, 0, step);
    }
}
