using System.Globalization;
using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Fuel;

namespace FarmPortfolio.Published;

/// <summary>
/// The trade's rule that the same heat costs about four times as much on propane and twice as much on oil as on natural gas: common practice, no source. Held against the
/// records that ship (EIA commercial gas; EIA Mont Belvieu with a dealer's margin of $1.60; BLS retail oil). A newspaper's report of Vermont's fuel prices of June 2013
/// ($3.02 a gallon of propane) gives 3.8 to 4.3. A look back only: nothing derives a price from it.
/// </summary>
public class HeatCostRatioTests
{
    private static readonly Lazy<IReadOnlyDictionary<int, HeatCostYear>> Years = new(() => HeatCostHistory.Of(
        Series("gas-commercial", FuelKind.NaturalGas, "mcf"), Series("propane-mont-belvieu", FuelKind.Propane, "gal"), Series("oil-retail", FuelKind.FuelOil, "gal"), 1.60).ToDictionary(y => y.Year));

    [Theory]
    [InlineData(2009)]
    [InlineData(2010)]
    [InlineData(2011)]
    [InlineData(2012)]
    [InlineData(2013)]
    public void Propane_is_near_four_times_and_oil_over_twice_in_2009_to_2013(int year)
    {
        var y = Years.Value[year];
        Assert.True(y.PropaneOverGas is > 2.7 and < 4.3 && y.OilOverGas is > 1.8 and < 3.6, Words(y));
    }

    [Theory]
    [InlineData(2005)]
    [InlineData(2006)]
    [InlineData(2007)]
    [InlineData(2015)]
    [InlineData(2016)]
    public void Oil_is_near_twice_in_other_years(int year)
    {
        var y = Years.Value[year];
        Assert.True(y.OilOverGas is > 1.4 and < 2.5, Words(y));
    }

    [Fact]
    public void Propane_as_Vermont_paid_it_in_June_2013_was_four_times_commercial_gas_of_that_year()
    {
        var gas = Years.Value[2013].GasUsdPerMmbtu * HeatCostHistory.GasEfficiency;
        var ratio = 3.02 / 0.091333 / gas;
        Assert.True(ratio is > 3.8 and < 4.4, $"$3.02 a gallon of 91,333 Btu over gas at {gas:0.00} $/MMBtu: {ratio:0.00} times");
    }

    [Fact]
    public void The_ratio_is_no_constant()
    {
        var whole = Years.Value.Values.Where(y => y.Months == 12).ToList();
        Assert.True(whole.Max(y => y.OilOverGas) > 1.7 * whole.Min(y => y.OilOverGas), string.Join("; ", whole.Select(Words)));
    }

    private static string Words(HeatCostYear y) => $"{y.Year}: gas {y.GasUsdPerMmbtu:0.00} $/MMBtu, propane {y.PropaneOverGas:0.00} times, oil {y.OilOverGas:0.00} times";

    private static PriceSeriesFacts Series(string code, FuelKind fuel, string unit)
    {
        var lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "prices", code + ".csv")).Skip(1).Select(l => l.Split(',')).ToList();
        return new()
        {
            Fuel = fuel,
            Market = PriceMarket.Retail,
            Class = PriceClass.RetailFuel,
            Unit = unit,
            FirstMonthOn = DateOnly.ParseExact(lines[0][0], "yyyy-MM", CultureInfo.InvariantCulture),
            UsdPerUnit = [.. lines.Select(c => (double?)double.Parse(c[1], CultureInfo.InvariantCulture))],
        };
    }
}
