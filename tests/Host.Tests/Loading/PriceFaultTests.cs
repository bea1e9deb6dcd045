using FarmPortfolio.Engine;
using FarmPortfolio.Host.Loading;

namespace FarmPortfolio.Host.Tests.Loading;

/// <summary>What a fault of a price file says would be right.</summary>
public class PriceFaultTests
{
    private static Loaded<MonthlyRecord> Read(string text, FuelKind? fuel)
    {
        using var source = new SourceText(new StringReader(text), "p.csv");
        return MonthlyPrices.Read(source, null, fuel);
    }

    [Theory]
    [InlineData(FuelKind.Electricity, "0", "Electricity at a market can cost nothing or less for hours")]
    [InlineData(FuelKind.Electricity, "-0.02", "Electricity at a market can cost nothing or less for hours")]
    [InlineData(FuelKind.Propane, "-1", "Only electricity at a market can cost nothing or less; fuel that is delivered cannot.")]
    [InlineData(FuelKind.FuelOil, "0", "Only electricity at a market can cost nothing or less; fuel that is delivered cannot.")]
    public void Zero_and_below_are_refused_by_what_the_fuel_can_do(FuelKind fuel, string price, string remedy)
    {
        var fault = Assert.Single(Read($"month,price\n2024-01,0.2\n2024-02,{price}\n2024-03,0.2\n", fuel).Faults, f => f.Code == "NOT_POSITIVE");
        Assert.Equal((3, 2), (fault.Line, fault.Column));
        Assert.StartsWith(remedy, fault.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("$2.10", "2.10", "USD"), InlineData("2.10 €", "2.10", "EUR"), InlineData("C$ 2.10", "2.10", "CAD"), InlineData("2.10", "2.10", null), InlineData("2.10 CAD", "2.10", "CAD"), InlineData("dear", "dear", null)]
    public void A_mark_of_money_is_told_from_the_number(string cell, string number, string? code) => Assert.Equal((number, code), PriceCurrency.Split(cell));

    [Theory]
    [InlineData("price ($/gal)", "USD"), InlineData("price (EUR/L)", "EUR"), InlineData("Dollars per Gallon", "USD"), InlineData("Canadian cents per litre", "CAD"), InlineData("price", null), InlineData("Cadence", null)]
    public void Words_beside_a_price_name_its_money(string words, string? code) => Assert.Equal(code, PriceCurrency.Named(words));
}
