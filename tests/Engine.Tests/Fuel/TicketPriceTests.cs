using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Tests.Fuel;

/// <summary>A farm's own price against the index: known lines found again, few tickets and slopes beyond belief refused by name.</summary>
public class TicketPriceTests
{
    private static readonly double[] Index = [1.8, 1.9, 2.0, 2.2, 2.5, 2.6, 2.4, 2.1];

    [Fact]
    public void A_line_is_found_with_its_count_and_spread_as_by_hand()
    {
        // 0.20 + 0.90 x index, and a cent up and down in turn: residuals sum to 0; by hand b 0.9 + sum(e dx)/sum(dx2)
        double[] off = [0.01, -0.01, 0.01, -0.01, 0.01, -0.01, 0.01, -0.01];
        var own = Of([.. Index.Select((x, i) => 0.20 + 0.90 * x + off[i])]);
        var mean = Index.Average();
        var b = 0.90 + Index.Select((x, i) => off[i] * (x - mean)).Sum() / Index.Sum(x => (x - mean) * (x - mean));
        Assert.Equal((8, 2), (own.Tickets, own.Winters));
        Assert.Equal(b, own.Share!.Value, 1e-9);
        Assert.Equal(0.20 + 0.90 * mean - b * mean, own.Adder!.Value, 1e-9);
        Assert.InRange(own.SameMonth!.Sd, 0.009, 0.013);
        Assert.Equal(own.SameMonth.Sd, own.Scatter);
        Assert.Empty(own.Faults);
        Assert.Contains("8 tickets over 2 winters", own.Verdict, StringComparison.Ordinal);
        // price less index is 0.20 - 0.10 x index + off: its mean is 0.20 - 0.10 x 2.1875
        Assert.Equal(0.20 - 0.10 * mean, own.MeanOver!.Value, 1e-9);
    }

    [Theory]
    [InlineData(2, "TOO_FEW_TICKETS", null, null)]
    [InlineData(5, "TOO_FEW_FOR_A_LINE", 0.35, 1.0)]
    public void Too_few_tickets_are_refused_by_name(int count, string code, double? adder, double? share)
    {
        var own = Of([.. Index.Take(count).Select(x => x + 0.35)]);
        Assert.Equal(code, Assert.Single(own.Faults).Code);
        Assert.Contains($"{count} priced tickets", own.Faults[0].Message, StringComparison.Ordinal);
        Assert.Equal(share, own.Share);
        Assert.Equal(adder ?? -1, own.Adder ?? -1, 1e-9);
        Assert.Equal(adder is null, own.Scatter is null);
    }

    [Fact]
    public void Six_tickets_of_one_winter_make_no_line()
    {
        var own = TicketPrice.Of([.. Index.Take(6).Select((x, i) => new TicketPoint(new DateOnly(2022, 10, 1).AddMonths(i), 0.1 + 0.8 * x))], "gal", Month);
        Assert.Equal("TOO_FEW_FOR_A_LINE", Assert.Single(own.Faults).Code);
        Assert.Equal(1, own.Share);
        double? Month(DateOnly m) => Index[(12 * (m.Year - 2022) + m.Month - 9) % 8];
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(1.8)]
    public void A_slope_beyond_belief_falls_back_on_the_mean_difference(double slope)
    {
        var own = Of([.. Index.Select(x => 2.3 + slope * (x - 2.1875))]);
        Assert.Equal("SLOPE", Assert.Single(own.Faults).Code);
        Assert.Equal(1, own.Share);
        Assert.Equal(2.3 - 2.1875, own.Adder!.Value, 1e-9);
        Assert.Equal(own.MeanOverSd, own.Scatter);
    }

    [Fact]
    public void A_dealer_who_follows_last_month_is_told_and_months_off_the_record_are_counted()
    {
        var late = Of([.. Index.Select((_, i) => 0.3 + 0.9 * Index[Math.Max(0, i - 1)])]);
        Assert.True(late.MonthBefore!.Sd < 1e-9 && late.SameMonth!.Sd > 0.05);
        Assert.Contains("month before", late.Verdict, StringComparison.Ordinal);
        var off = TicketPrice.Of([new(new(2030, 1, 1), 2), new(new(2030, 2, 1), 2)], "gal", _ => null);
        Assert.Equal(2, off.WithoutIndex);
        Assert.Contains("2 more lie in months without a price", Assert.Single(off.Faults).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_series_of_its_own_is_told_by_the_index_and_paid_in_the_contract()
    {
        // own = 0.30 + 0.80 x index a gallon; a fixed 0.10 over its own July, a cap on it
        var (basis, fault) = SeriesBasis.Of(Series(x => 0.30 + 0.80 * x), Series(x => x), null, FuelKind.Propane);
        Assert.Null(fault);
        var kwh = HeatingValues.KwhPerUnit(FuelKind.Propane, "gal")!.Value;
        Assert.Equal(0.80, basis!.Share, 1e-9);
        Assert.Equal(0.30, basis.UsdPerKwh * kwh, 1e-9);
        double Paid(ContractFacts contract) => SupplyTerms.Of([contract], null, FuelKind.Propane, null, 2026, 1, basisOf: _ => (basis, null)).Terms!
            .SeasonUsd(0, [.. Enumerable.Repeat(2.0 / kwh, 12)], [.. Enumerable.Repeat(100 * kwh, 12)], [], new Carried[1]) / 1200;
        var indexed = new ContractFacts { SupplyGroupId = "g", Kind = ContractKind.Indexed, Unit = "gal", AdderUsdPerUnit = 0.05, IndexShare = 0.5 };
        Assert.Equal(0.05 + 0.5 * (0.30 + 1.60), Paid(indexed), 1e-9);
        Assert.Equal(2.00, Paid(indexed with { Kind = ContractKind.Fixed, AdderUsdPerUnit = null, IndexShare = null, OverIndexUsdPerUnit = 0.10 }), 1e-9);
        Assert.Equal(1.85, Paid(indexed with { Kind = ContractKind.Capped, AdderUsdPerUnit = null, IndexShare = null, CapUsdPerUnit = 1.85 }), 1e-9);
    }

    [Fact]
    public void A_series_that_shares_too_few_months_or_another_fuel_is_refused()
    {
        var late = Series(x => x) with { FirstMonthOn = new(2020, 6, 1) };
        Assert.Equal("SERIES_TOO_SHORT", SeriesBasis.Of(late, Series(x => x), null, FuelKind.Propane).Fault!.Code);
        Assert.Equal("SERIES_OF_OTHER_FUEL", SeriesBasis.Of(late, Series(x => x), null, FuelKind.FuelOil).Fault!.Code);
        Assert.Equal("SERIES_AGAINST", SeriesBasis.Of(Series(x => 5 - x), Series(x => x), null, FuelKind.Propane).Fault!.Code);
    }

    private static PriceSeriesFacts Series(Func<double, double> of) => new()
    {
        Fuel = FuelKind.Propane,
        Market = PriceMarket.Retail,
        Class = PriceClass.RetailFuel,
        Unit = "gal",
        FirstMonthOn = new(2018, 1, 1),
        UsdPerUnit = [.. Enumerable.Range(0, 40).Select(i => (double?)of(2 + 0.4 * Math.Sin(0.7 * i)))],
    };

    /// <summary>Prices in every second month from October 2021: two winters; the index of a ticket's month is its number's, the month before that of the ticket before.</summary>
    private static TicketPrice Of(double[] prices) =>
        TicketPrice.Of([.. prices.Select((p, i) => new TicketPoint(Start.AddMonths(2 * i), p))], "gal", month => (12 * (month.Year - 2021) + month.Month - 10) is >= 0 and var n && n < 16 ? Index[n / 2] : Index[0]);

    private static readonly DateOnly Start = new(2021, 10, 1);
}
