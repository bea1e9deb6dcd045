using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Tests.Fuel;

/// <summary>
/// A past winter by month, reckoned by hand. Tickets of 412.3, 398.7, 505.0 and 287.5 gal in December to March (1,603.5 gal, 4 deliveries) at an index of
/// $2.1375, 2.4050, 2.6125 and 2.2200: 881.29 + 958.87 + 1,319.31 + 638.25 = $3,797.72.
/// </summary>
public class PastBillsTests
{
    public static TheoryData<string, ContractFacts, long> Winter => new()
    {
        { "on the index", Of(ContractKind.Indexed), 379772 },
        { "0.15 + 0.9 x index: 2.0738 (2.07375), 2.3145, 2.5013 (2.50125), 2.1480 = 855.03 + 922.79 + 1,263.16 + 617.55", Of(ContractKind.Indexed) with { AdderUsdPerUnit = 0.15, IndexShare = 0.9 }, 365853 },
        { "fixed at 2.29: 944.17 (944.167) + 913.02 (913.023) + 1,156.45 + 658.38 (658.375)", Of(ContractKind.Fixed) with { PriceUsdPerUnit = 2.29 }, 367202 },
        { "capped at 2.35 for 125: 881.29 + 936.95 (936.945) + 1,186.75 + 638.25 + 125", Of(ContractKind.Capped) with { CapUsdPerUnit = 2.35, SeasonFeeUsd = 125 }, 376824 },
        { "collared 2.25 to 2.45: 927.68 (927.675) + 958.87 + 1,237.25 + 646.88 (646.875)", Of(ContractKind.Collared) with { FloorUsdPerUnit = 2.25, CapUsdPerUnit = 2.45 }, 377068 },
        { "0.20 over July's 1.90 = 2.10: 865.83 + 837.27 + 1,060.50 + 603.75", Of(ContractKind.Fixed) with { OverIndexUsdPerUnit = 0.20 }, 336735 },
        { "collared 2.15 to 0.30 over July's 1.90: 886.45 (886.445) + 877.14 + 1,111.00 + 632.50", Of(ContractKind.Collared) with { FloorUsdPerUnit = 2.15, OverIndexUsdPerUnit = 0.30 }, 350709 },
        { "capped at 0.25 over July's 1.90 = 2.15: 881.29 + 857.21 (857.205) + 1,085.75 + 618.13 (618.125)", Of(ContractKind.Capped) with { OverIndexUsdPerUnit = 0.25 }, 344238 },
        { "index, 12 a month, rent 100 (8.33 x 12), 25 a delivery: 3,797.72 + 144 + 99.96 + 100", Of(ContractKind.Indexed) with { MonthlyFeeUsd = 12, TankRentUsdPerYear = 100, DeliveryFeeUsd = 25 }, 414168 },
        { "steps: over 300 gal 0.05 less, over 400 gal 0.12 less: 3,797.72 - 5.00 - 1.48 (1.476) - 4.94 (4.935, 98.7 gal) - 5.00 - 12.60", Of(ContractKind.Indexed) with { Tiers = [new(300, -0.05), new(400, -0.12)] }, 376870 },
        { "at least 2,000 gal: 396.5 short at the mean of 2.3684: 3,797.72 + 939.07", Of(ContractKind.Indexed) with { MinimumTakeUnits = 2000 }, 473679 },
        { "block of 1,200 gal at 2.05: 845.22 (845.215) + 817.34 (817.335) + 797.45 of 389.0 gal, then 116.0 gal at 2.6125 = 303.05 and 638.25", Block(1200, null), 340131 },
        { "block of 2,000 gal at 2.05, 396.5 lost: 845.22 + 817.34 + 1,035.25 + 589.38 + 812.83 (812.825)", Block(2000, LeftoverRule.Lost), 410002 },
        { "the same, its gallons still to be had", Block(2000, LeftoverRule.CarriedAtOldPrice), 410002 },
        { "the same, its money with the dealer", Block(2000, LeftoverRule.CarriedAtNewPrice), 410002 },
        { "the same, a quarter billed at 0.5125: 3,287.19 + 203.21 (203.20625)", Block(2000, LeftoverRule.BilledToShare) with { BilledShare = 0.25 }, 349040 },
        { "the same with money at 6 % a year from August, 4 to 7 months: 16.90 + 20.43 + 31.06 + 20.63", Block(2000, LeftoverRule.CarriedAtOldPrice) with { MoneyRatePerYear = 0.06, BlockPaidMonth = 8 }, 418904 },
        { "six tenths fixed at 2.29 (247.4, 239.2, 303.0, 172.5 gal): 566.55 + 547.77 + 693.87 + 395.03; the rest 352.47 (164.9) + 383.60 (159.5) + 527.73 (202.0) + 255.30 (115.0)", Of(ContractKind.Fixed) with { PriceUsdPerUnit = 2.29, VolumeShare = 0.6 }, 372232 },
        { "fixed from October to January, then the index: 944.17 + 913.02 + 1,319.31 + 638.25", Of(ContractKind.Fixed) with { PriceUsdPerUnit = 2.29, StartsOn = new(2026, 10, 1), EndsOn = new(2027, 1, 31) }, 381475 },
    };

    [Theory, MemberData(nameof(Winter))]
    public void A_past_winter_comes_to_the_cent_reckoned_by_hand(string name, ContractFacts contract, long cents)
    {
        var (bill, faults) = PastBills.Of(Season(), [contract]);
        Assert.Empty(faults);
        Assert.True(bill!.TotalCents == cents, $"{name}: by hand {cents}, settled {bill.TotalCents}: {string.Join("; ", bill.Lines.Select(l => $"{l.Month} {l.What} {l.Quantity} x {l.UsdPerUnit} = {l.Cents}"))}");
        Assert.Equal(cents, Enumerable.Range(0, 12).Sum(m => bill.Cents(m)) + bill.Cents(null));
    }

    [Theory, MemberData(nameof(Winter))]
    public void Studies_settle_the_same_winter_within_their_rounding(string name, ContractFacts contract, long cents)
    {
        var kwh = HeatingValues.KwhPerUnit(FuelKind.Propane, "gal")!.Value;
        var season = Season();
        // a study knows no tickets: 1,603.5 gal in 4 deliveries
        var (terms, _) = SupplyTerms.Of([contract with { UnitsPerDelivery = 1603.5 / 4, StartsOn = contract.StartsOn?.AddYears(-4), EndsOn = contract.EndsOn?.AddYears(-4) }], null, FuelKind.Propane, null, 2022, 1);
        var usd = terms!.SeasonUsd(0, [.. season.Index.Select(i => (double)i!.Value / kwh)], [.. season.Months.Select(m => (double)m.Units * kwh)], [], new Carried[1]);
        Assert.True(Math.Abs(100 * usd - cents) < 20, $"{name}: to the cent {cents}, in a study {100 * usd:0.0}");
    }

    [Fact]
    public void What_is_left_of_a_block_is_told_beside_its_cost()
    {
        Assert.Equal(396.5m, PastBills.Of(Season(), [Block(2000, LeftoverRule.CarriedAtOldPrice)]).Bill!.StillOwnUnits);
        Assert.Equal(81283, PastBills.Of(Season(), [Block(2000, LeftoverRule.CarriedAtNewPrice)]).Bill!.CreditCents);
        Assert.Equal(0, PastBills.Of(Season(), [Block(2000, LeftoverRule.Lost)]).Bill!.StillOwnUnits);
    }

    [Fact]
    public void A_month_without_a_price_is_named_and_only_asked_where_it_is_needed()
    {
        var season = Season() with { Index = [.. Season().Index.Select((v, m) => m == 7 ? null : v)] };
        var (bill, faults) = PastBills.Of(season, [Of(ContractKind.Indexed)]);
        Assert.Null(bill);
        Assert.Contains("2023-02", Assert.Single(faults).Message, StringComparison.Ordinal);
        Assert.Equal(367202, PastBills.Of(season, [Of(ContractKind.Fixed) with { PriceUsdPerUnit = 2.29 }]).Bill!.TotalCents);
    }

    [Fact]
    public void A_contract_that_ends_in_January_goes_on_in_the_one_it_rolls_into()
    {
        // fixed at 2.29: 944.17 + 913.02, then capped at 2.35: 1,186.75 + 638.25
        var next = Of(ContractKind.Capped) with { CapUsdPerUnit = 2.35 };
        var first = Of(ContractKind.Fixed) with { PriceUsdPerUnit = 2.29, StartsOn = new(2026, 10, 1), EndsOn = new(2027, 1, 31), RollsIntoContractId = "next" };
        Assert.Equal(94417 + 91302 + 118675 + 63825, PastBills.Of(Season(), [first], id => id == "next" ? next : null).Bill!.TotalCents);
    }

    [Fact]
    public void A_demand_charge_is_a_line_of_kilowatts_by_the_load_factor()
    {
        // January 7,305 kWh at $0.12 = 876.60, 10 kW in the mean, 20 kW at a load factor of a half, at $10.50 = 210.00; February 2,922 kWh = 350.64, 8 kW = 84.00
        var season = Season() with { Fuel = FuelKind.Electricity, Unit = "kWh", Months = [.. Enumerable.Range(0, 12).Select(m => new PastMonth(m, m == 6 ? 7305 : m == 7 ? 2922 : 0, 0, null))], Index = [.. Enumerable.Repeat<decimal?>(0.12m, 12)] };
        var bill = PastBills.Of(season, [Of(ContractKind.Indexed) with { Unit = "kWh", DemandUsdPerKw = 10.50, LoadFactor = 0.5 }]).Bill!;
        Assert.Equal(87660 + 21000 + 35064 + 8400, bill.TotalCents);
    }

    [Fact]
    public void A_cut_supply_burns_the_stand_by_fuel_in_the_greatest_month()
    {
        // 14 of February's 28 days: 252.5 gal by the heat at 3.10 = 782.75 instead of 659.66 (659.65625)
        var season = Season() with { StandBy = [.. Enumerable.Repeat<decimal?>(3.10m, 12)] };
        var bill = PastBills.Of(season, [Of(ContractKind.Indexed) with { InterruptedDays = 14 }], standBy: FuelKind.FuelOil).Bill!;
        Assert.Equal(88129 + 95887 + 78275 + 65966 + 63825, bill.TotalCents);
    }

    [Fact]
    public void A_contract_in_litres_is_settled_in_litres()
    {
        // 412.3 gal are 1,560.7 L, 398.7 are 1,509.2, 505.0 are 1,911.6, 287.5 are 1,088.3: 6,069.8 L at 0.60
        var bill = PastBills.Of(Season(), [Of(ContractKind.Fixed) with { Unit = "L", PriceUsdPerUnit = 0.60 }]).Bill!;
        Assert.Equal(93642 + 90552 + 114696 + 65298, bill.TotalCents);
    }

    private static PastSeason Season() => new()
    {
        Season = 2022,
        Fuel = FuelKind.Propane,
        Unit = "gal",
        Months = [.. new[] { 0, 0, 0, 0, 0, 412.3m, 398.7m, 505.0m, 287.5m, 0, 0, 0 }.Select((u, m) => new PastMonth(m, u, u > 0 ? 1 : 0, null))],
        Index = [1.90m, 1.90m, 1.90m, 1.95m, 2.00m, 2.1375m, 2.4050m, 2.6125m, 2.2200m, 2.00m, 1.95m, 1.90m],
    };

    private static ContractFacts Of(ContractKind kind) => new() { SupplyGroupId = "g", Kind = kind, Unit = "gal" };

    private static ContractFacts Block(double gallons, LeftoverRule? rule) => Of(ContractKind.PreBought) with { PriceUsdPerUnit = 2.05, BlockUnits = gallons, Leftover = rule };
}
