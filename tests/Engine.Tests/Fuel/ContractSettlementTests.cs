using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Tests.Fuel;

/// <summary>
/// One winter settled under every kind of contract, reckoned by hand. November to March: 200, 400, 500, 400, 300 gal (1,800) at an index of $2.00, 2.10, 2.40, 2.60, 2.20:
/// 400 + 840 + 1,200 + 1,040 + 660 = $4,140 on the index.
/// </summary>
public class ContractSettlementTests
{
    private static readonly double Kwh = HeatingValues.KwhPerUnit(FuelKind.Propane, "gal")!.Value;
    private static readonly double[] Gallons = [0, 0, 0, 0, 200, 400, 500, 400, 300, 0, 0, 0];
    private static readonly double[] Index = [1.90, 1.90, 1.90, 1.90, 2.00, 2.10, 2.40, 2.60, 2.20, 2.00, 2.00, 2.00];

    public static TheoryData<string, ContractFacts, double> OneWinter => new()
    {
        { "index", Contract(ContractKind.Indexed), 4140 },
        { "0.15 + 0.95 x index: 270 + 3,933", Contract(ContractKind.Indexed) with { AdderUsdPerUnit = 0.15, IndexShare = 0.95 }, 4203 },
        { "fixed at 2.25", Contract(ContractKind.Fixed) with { PriceUsdPerUnit = 2.25 }, 4050 },
        { "fixed 0.10 over the index of July (1.90)", Contract(ContractKind.Fixed) with { OverIndexUsdPerUnit = 0.10 }, 3600 },
        { "fixed for the first 1,000 gal: 2,250 + 100 x 2.40 + 1,040 + 660", Contract(ContractKind.Fixed) with { PriceUsdPerUnit = 2.25, BlockUnits = 1000 }, 4190 },
        { "capped at 2.30 for a fee of 150: 3,970 + 150", Contract(ContractKind.Capped) with { CapUsdPerUnit = 2.30, SeasonFeeUsd = 150 }, 4120 },
        { "collared 2.15 to 2.30: 430 + 860 + 1,150 + 920 + 660", Contract(ContractKind.Collared) with { FloorUsdPerUnit = 2.15, CapUsdPerUnit = 2.30 }, 4020 },
        { "1,500 gal pre-bought at 2.10, March on the index", Block(1500, null), 3810 },
        { "2,000 gal pre-bought, 200 lost", Block(2000, LeftoverRule.Lost), 4200 },
        { "2,000 gal pre-bought, a fifth of the 200 billed: 3,780 + 84", Block(2000, LeftoverRule.BilledToShare) with { BilledShare = 0.2 }, 3864 },
        { "money at 6 % a year from August: 6.30 + 16.80 + 26.25 + 25.20", Block(1500, null) with { MoneyRatePerYear = 0.06, BlockPaidMonth = 8 }, 3884.55 },
        { "at least 2,000 gal: 200 short at the mean price of 2.30", Contract(ContractKind.Indexed) with { MinimumTakeUnits = 2000 }, 4600 },
        { "10 cents less over 300 gal a month: 400 gal", Contract(ContractKind.Indexed) with { Tiers = [new(300, -0.10)] }, 4100 },
        { "steps at 300 and 400 gal: 400 - 100 at 0.10 less, 100 at 0.30 less", Contract(ContractKind.Indexed) with { Tiers = [new(300, -0.10), new(400, -0.30)] }, 4080 },
        { "10 a month, rent 120, 6 deliveries at 25", Contract(ContractKind.Indexed) with { MonthlyFeeUsd = 10, TankRentUsdPerYear = 120, DeliveryFeeUsd = 25, UnitsPerDelivery = 300 }, 4530 },
        { "three fifths fixed at 2.25, the rest on the index", Contract(ContractKind.Fixed) with { PriceUsdPerUnit = 2.25, VolumeShare = 0.6 }, 4086 },
        { "fixed to December, then the index: 1,350 + 2,900", Contract(ContractKind.Fixed) with { PriceUsdPerUnit = 2.25, EndsOn = new(2026, 12, 31) }, 4250 },
        { "fixed from January, the index before: 1,240 + 2,700", Contract(ContractKind.Fixed) with { PriceUsdPerUnit = 2.25, StartsOn = new(2027, 1, 1) }, 3940 },
    };

    [Theory, MemberData(nameof(OneWinter))]
    public void A_winter_is_settled_to_the_cent(string name, ContractFacts contract, double usd)
    {
        var terms = Terms([contract]);
        var actual = Settle(terms, 0, new Carried[1]);
        Assert.True(Math.Abs(actual - usd) < 0.005, $"{name}: by hand {usd}, settled {actual}");
        if (terms.IsMonthly)
        {
            var byMonth = terms.FeesUsd(0) + Enumerable.Range(0, 12).Sum(m => terms.PriceOf(m).At(Index[m] / Kwh) * Gallons[m] * Kwh);
            Assert.Equal(usd, byMonth, 0.005);
        }
    }

    [Theory]
    [InlineData(LeftoverRule.Lost, 4200, 4200)]
    [InlineData(LeftoverRule.CarriedAtOldPrice, 4200, 4200)]
    [InlineData(LeftoverRule.CarriedAtNewPrice, 4200, 3780)]
    public void What_is_left_of_a_block_goes_on_into_the_next_season(LeftoverRule rule, double first, double second)
    {
        // old price: 200 gal come free in the second winter, so 400 of its own block are left; new price: $420 stand with the dealer
        var (terms, carried) = (Terms([Block(2000, rule)]), new Carried[1]);
        Assert.Equal(first, Settle(terms, 0, carried), 0.005);
        Assert.Equal(second, Settle(terms, 1, carried), 0.005);
        Assert.Equal(rule == LeftoverRule.CarriedAtOldPrice ? 400 * Kwh : 0, carried[0].Kwh, 1e-6);
        Assert.Equal(rule == LeftoverRule.CarriedAtNewPrice ? 420 : 0, carried[0].Usd, 1e-6);
    }

    [Fact]
    public void A_saving_below_the_minimum_take_saves_nothing()
    {
        var terms = Terms([Contract(ContractKind.Fixed) with { PriceUsdPerUnit = 2.25, MinimumTakeUnits = 1800 }]);
        var less = Settle(terms, 0, new Carried[1], 0.7);
        Assert.Equal(Settle(terms, 0, new Carried[1]), less, 0.005);
    }

    [Fact]
    public void A_saving_out_of_a_lost_block_saves_only_what_was_over_it()
    {
        var terms = Terms([Block(1500, LeftoverRule.Lost)]);
        Assert.Equal(3810, Settle(terms, 0, new Carried[1]), 0.005);
        Assert.Equal(3150, Settle(terms, 0, new Carried[1], 0.7), 0.005);
    }

    [Fact]
    public void The_stand_by_fuel_burns_in_the_greatest_month()
    {
        // 31 days: all of January, 500 gal by heat, at 3.00 instead of 2.40
        var terms = Terms([Contract(ContractKind.Indexed) with { InterruptedDays = 31 }], FuelKind.FuelOil);
        var standBy = Enumerable.Repeat(3.00 / Kwh, 12).ToArray();
        var usd = terms.SeasonUsd(0, [.. Index.Select(i => i / Kwh)], [.. Gallons.Select(g => g * Kwh)], standBy, new Carried[1]);
        Assert.Equal(4140 - 1200 + 1500, usd, 0.005);
    }

    [Fact]
    public void A_demand_charge_follows_the_peak_of_the_month()
    {
        // 7,305 kWh in a month is 10 kW in the mean, 20 kW at a load factor of one half: $200, and 7,305 kWh at 10 cents
        var contract = new ContractFacts { SupplyGroupId = "g", Kind = ContractKind.Indexed, Unit = "kWh", DemandUsdPerKw = 10, LoadFactor = 0.5 };
        var (terms, faults) = SupplyTerms.Of([contract], null, FuelKind.Electricity, null, 2026, 1);
        Assert.Empty(faults);
        var usd = terms!.SeasonUsd(0, [.. Enumerable.Repeat(0.10, 12)], [0, 0, 0, 0, 0, 0, 7305, 0, 0, 0, 0, 0], [], new Carried[1]);
        Assert.Equal(730.50 + 200, usd, 0.005);
    }

    [Fact]
    public void A_contract_rolls_into_the_next_and_can_renew_itself()
    {
        var next = Contract(ContractKind.Capped) with { CapUsdPerUnit = 2.30 };
        var first = Contract(ContractKind.Fixed) with { PriceUsdPerUnit = 2.25, EndsOn = new(2026, 12, 31), RollsIntoContractId = "next" };
        var (terms, faults) = SupplyTerms.Of([first], id => id == "next" ? next : null, FuelKind.Propane, null, 2026, 2);
        Assert.Empty(faults);
        Assert.Equal(600 * 2.25 + 1150 + 920 + 660, Settle(terms!, 0, new Carried[1]), 0.005);
        Assert.Equal(3970, Settle(terms!, 1, new Carried[1]), 0.005);
        var again = first with { RollsIntoContractId = "again" };
        Assert.Equal(4050, Settle(SupplyTerms.Of([again], _ => again, FuelKind.Propane, null, 2026, 2).Terms!, 1, new Carried[1]), 0.005);
    }

    [Fact]
    public void Many_prices_at_once_have_the_bits_of_one_at_a_time()
    {
        var terms = Terms([Contract(ContractKind.Collared) with { FloorUsdPerUnit = 2.15, CapUsdPerUnit = 2.30, AdderUsdPerUnit = 0.07, IndexShare = 0.93, VolumeShare = 0.55 }, Contract(ContractKind.Fixed) with { PriceUsdPerUnit = 2.2, VolumeShare = 0.3 }]);
        var index = Enumerable.Range(0, 1037).Select(i => (1.5 + 0.0013 * i) / Kwh).ToArray();
        var paid = new double[index.Length];
        terms.PriceOf(3).Pay(index, paid);
        Assert.All(Enumerable.Range(0, index.Length), i => Assert.Equal(terms.PriceOf(3).At(index[i]), paid[i]));
        Assert.True(paid[0] < paid[^1]);
    }

    private static ContractFacts Contract(ContractKind kind) => new() { SupplyGroupId = "g", Kind = kind, Unit = "gal" };

    private static ContractFacts Block(double gallons, LeftoverRule? rule) => Contract(ContractKind.PreBought) with { PriceUsdPerUnit = 2.10, BlockUnits = gallons, Leftover = rule };

    private static SupplyTerms Terms(IReadOnlyList<ContractFacts> contracts, FuelKind? standBy = null)
    {
        var (terms, faults) = SupplyTerms.Of(contracts, null, FuelKind.Propane, standBy, 2026, 2);
        Assert.Empty(faults);
        return terms!;
    }

    private static double Settle(SupplyTerms terms, int season, Carried[] carried, double use = 1) =>
        terms.SeasonUsd(season, [.. Index.Select(i => i / Kwh)], [.. Gallons.Select(g => use * g * Kwh)], [], carried);
}
