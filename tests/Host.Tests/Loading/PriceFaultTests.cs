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

    public static TheoryData<string, string, int, int?, string, string> Bad => new()
    {
        { "month,price\n2024-01,$2.10\n2024-02,€2.10\n", "TWO_CURRENCIES", 3, 2, "in EUR, the file before it in USD (line 2)", "Bring the whole file to US dollars" },
        { "month,price,currency\n2024-01,2.10,USD\n2024-02,2.10,CAD\n", "TWO_CURRENCIES", 3, 3, "in CAD, the file before it in USD (line 2)", "Bring the whole file to US dollars" },
        { "month,price (EUR/L)\n2024-01,0.9\n", "NOT_DOLLARS", 1, null, "The prices are in EUR.", "Bring them to US dollars" },
        { "month,price,unit\n2024-01,2.10,gal\n2024-02,0.60,therm\n", "TWO_UNITS", 3, 3, "for a therm, the rows before are for a gal", "Give one unit a file" },
        { "month,price ($/gal),unit\n2024-01,2.10,gal\n2024-02,0.55,L\n", "TWO_UNITS", 3, 3, "for a L, the rows before are for a gal", "Give one unit a file" },
        { "month,price,unit\n2024-01,2.10,gal\n2024-02,88,barrel\n", "UNKNOWN_UNIT", 3, 3, "The price is for \"barrel\", and no fuel is sold by that here.", "Give prices by the gallon, litre" },
        { "month,price\n2024-01,2.10\n2024-02,210\n2024-03,2.11\n", "MIXED_UNIT", 3, 2, "from 2.1 to 210 dollars in 2024-02", "Bring the whole file to one unit" },
        { "month,price\n2024-01,2.10\n2024-02,0\n2024-03,2.11\n", "NOT_POSITIVE", 3, 2, "The price of 2024-02 is 0.", "Only electricity at a market can cost nothing or less" },
        { "month,price\n2024-01,2.10\n2024-02,-2\n2024-03,2.11\n", "NOT_POSITIVE", 3, 2, "The price of 2024-02 is -2.", "Only electricity at a market can cost nothing or less" },
        { "month,price\n2024-01,2.10\n2024-04,2.11\n", "GAP", 3, null, "2 months from 2024-02 to 2024-03 are missing.", "Gaps of up to two months are filled" },
        { "month,price\n2024-01,2.10\n2024-02,2.12\n2024-01,2.11\n", "DOUBLED", 4, 1, "2024-01 stands in the file twice, first in line 2.", "Keep one price a month; the first is taken." },
        { "month,price\n2024-01,2.10\n2024-02,2.12\n", "SHORT", 0, null, "The record has 2 months.", "under 24 months only its last price counts" },
    };

    /// <summary>Each names where and what would be right.</summary>
    [Theory, MemberData(nameof(Bad))]
    public void What_a_price_file_cannot_hold_is_named_with_its_place_and_what_would_be_right(string text, string code, int line, int? column, string words, string remedy)
    {
        var faults = Read(text, FuelKind.Propane).Faults;
        var fault = Assert.Single(faults, f => f.Code == code && f.Line == (line == 0 ? null : line));
        Assert.Equal((column, "p.csv"), (fault.Column, fault.File));
        Assert.Contains(words, fault.Message, StringComparison.Ordinal);
        Assert.Contains(remedy, fault.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("L", "L"), InlineData("$/l", "L"), InlineData("lb", "lb"), InlineData("USD per lbs", "lb"), InlineData("$/Dth", "MMBtu"), InlineData("Dollars per Gallon", "gal"), InlineData("$/MMBtu", "MMBtu"), InlineData("barrel", null), InlineData("price", null)]
    public void The_unit_of_a_price_is_told_by_its_words(string words, string? unit) => Assert.Equal(unit, PriceWords.Unit(words)?.Unit);

    /// <summary>Litres among gallons are a factor of 3.8: named where they begin and left out, though nobody wrote the unit; a spike that falls back is a price.</summary>
    [Fact]
    public void Litres_among_gallons_are_found_by_a_step_that_lasts_and_a_spike_is_not()
    {
        static string Months(Func<int, double> price) => "month,price\n" + string.Concat(Enumerable.Range(0, 36).Select(i => FormattableString.Invariant($"{2021 + i / 12}-{i % 12 + 1:00},{price(i):0.000}\n")));
        double Gallon(int i) => 2.4 + 0.3 * Math.Sin(i);
        var mixed = Read(Months(i => i < 25 ? Gallon(i) : Gallon(i) / 3.785), FuelKind.Propane);
        var fault = Assert.Single(mixed.Faults, f => f.Code == "MIXED_UNIT");
        Assert.Equal((27, 2), (fault.Line, fault.Column));
        Assert.Contains("2023-02", fault.Message, StringComparison.Ordinal);
        Assert.Equal(25, mixed.Value!.Prices.Count);
        var spike = Read(Months(i => Gallon(i) * (i is 13 or 14 ? 3.5 : 1)), FuelKind.Propane);
        Assert.DoesNotContain(spike.Faults, f => f.Code == "MIXED_UNIT");
        Assert.Equal(36, spike.Value!.Prices.Count(p => p is not null));
    }

    [Theory]
    [InlineData("$2.10", "2.10", "USD"), InlineData("2.10 €", "2.10", "EUR"), InlineData("C$ 2.10", "2.10", "CAD"), InlineData("2.10", "2.10", null), InlineData("2.10 CAD", "2.10", "CAD"), InlineData("dear", "dear", null)]
    public void A_mark_of_money_is_told_from_the_number(string cell, string number, string? code) => Assert.Equal((number, code), PriceCurrency.Split(cell));

    [Theory]
    [InlineData("price ($/gal)", "USD"), InlineData("price (EUR/L)", "EUR"), InlineData("Dollars per Gallon", "USD"), InlineData("Canadian cents per litre", "CAD"), InlineData("price", null), InlineData("Cadence", null)]
    public void Words_beside_a_price_name_its_money(string words, string? code) => Assert.Equal(code, PriceCurrency.Named(words));
}
