using CsCheck;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.HeatDemand;

namespace FarmPortfolio.Engine.Tests.HeatDemand;

/// <summary>What must hold for any house and option.</summary>
public class HeatPropertiesTests
{
    private static readonly string[] Always = ["irfilm", "seal", "kneewall", "endwalls", "perimeter"];
    private static readonly (string Name, double Value)[] SameLight = [.. Always.Append("foam").Append("curtain").Append("blanket").Select(c => (c + ".lightLost", 0.0)),
        .. new[] { "foam", "curtain", "blanket" }.SelectMany(c => new[] { (c + ".onBelowC", 99.0), (c + ".closeBelowWPerM2", 0.0), (c + ".delayHours", 0.0), (c + ".closing", 0.0) })];

    private static readonly Gen<HouseModel> Houses = Gen.Select(
        Gen.Int[0, 2], Gen.Double[4, 15], Gen.Double[8, 60], Gen.Double[0.3, 3], Gen.Int[1, 4], Gen.Double[0, 1], Gen.Double[0, 3], (shape, width, length, air, bays, carry, purge) => TestHouse.Model(
            TestHouse.Facts with
            {
                Shape = bays > 1 ? HouseShape.GutterConnected : (HouseShape)shape,
                BayRoof = bays > 1 ? (HouseShape)shape : null,
                Bays = bays,
                WidthM = width,
                LengthM = length,
                AirChangesPerHour = air,
            },
            new(carry, purge)));

    [Fact]
    public void More_insulation_never_raises_the_heat() => Gen.Select(Houses, Gen.Int[0, 31], Gen.Int[0, 4]).Sample((house, set, more) =>
    {
        var parts = Always.Where((_, i) => (set >> i & 1) == 1).ToArray();
        var with = parts.Union([Always[more]]).ToArray();
        var (less, all) = (TestHouse.Option(house, string.Join('+', parts), SameLight), TestHouse.Option(house, string.Join('+', with), SameLight));
        Assert.True(TestHouse.Heat(all) <= TestHouse.Heat(less) * (1 + 1e-12), $"{string.Join('+', with)} takes more than {string.Join('+', parts)}");
    }, iter: 60);

    [Fact]
    public void A_movable_that_only_adds_resistance_never_raises_the_heat() => Gen.Select(Houses, Gen.Int[0, 3]).Sample((house, which) =>
    {
        string[] parts = ["foam", "curtain", "blanket", "foam+curtain"];
        Assert.True(TestHouse.Heat(TestHouse.Option(house, parts[which], SameLight)) <= TestHouse.Heat(TestHouse.Option(house, string.Empty)) * (1 + 1e-12), parts[which]);
    }, iter: 60);

    [Fact]
    public void Demand_is_never_negative_and_colder_never_less() => Gen.Select(Houses, Gen.Double[-6, 6], Gen.Double[0, 3]).Sample((house, offset, colder) =>
    {
        var option = TestHouse.Option(house, "seal");
        foreach (var year in TestHouse.Winters)
        {
            var (mild, cold) = (HeatBalance.Season(option, year, offset), HeatBalance.Season(option, year, offset - colder));
            for (var m = 0; m < 12; m++)
            {
                Assert.True(mild.DemandKwh[m] >= 0);
                Assert.True(cold.DemandKwh[m] >= mild.DemandKwh[m] * (1 - 1e-12));
            }
        }
    }, iter: 60);

    [Fact]
    public void A_table_is_never_negative_at_any_offset() => Gen.Select(Houses, Gen.Double[-15, 15]).Sample((house, offset) =>
    {
        var table = DemandTables.Of(TestHouse.Option(house, "foam"), TestHouse.Winters);
        for (var i = 0; i < 36; i++)
        {
            Assert.True(table.DemandKwh(i / 12, i % 12, offset) >= 0);
        }
    }, iter: 20);

    [Fact]
    public void Heat_lost_is_heat_delivered_and_sun() => Houses.Sample(house =>
    {
        foreach (var parts in new[] { string.Empty, "foam", "curtain", "foam+curtain", "foam+blanket" })
        {
            var season = HeatBalance.Season(TestHouse.Option(house, parts), TestHouse.Winters[0]);
            var lost = season.Losses.PartsKwh.Sum() + season.Losses.PurgeKwh;
            var gained = season.TotalKwh + season.UndeliveredKwh + season.Losses.SunUsedKwh + season.Losses.CarriedKwh;
            Assert.Equal(lost, gained, 1e-9 * lost);
        }
    }, iter: 20);

    [Fact]
    public void A_quarter_of_resistance_added_to_a_quarter_halves_the_loss_and_another_takes_two_thirds()
    {
        // R 0.25, add 0.25, add 0.25 m2K/W on the whole roof, no other loss: 50 %, then 66.7 %, never 100 %
        var house = TestHouse.Model(TestHouse.Facts with { AirChangesPerHour = 0.05, PerimeterWPerMK = 0, FilmGapM = 0.25 }, new(0, 0, 1)) with { RoofU = 4, EndU = 0, AirChangesPerHour = 0 };
        (string, double)[] physics = [.. SameLight, ("foam.gapR", 0), ("foam.rPerM", 1), ("foam.filledShare", 1), ("blanket.rAdded", 0.25), ("blanket.coveredShare", 1), ("blanket.openShare", 0)];
        double Lost(string parts, int state) => 1 - TestHouse.Option(house, parts, physics).TotalWPerK(state) / TestHouse.Option(house, string.Empty).TotalWPerK(0);
        Assert.Equal(0.5, Lost("foam", 1), 1e-12);
        Assert.Equal(0.5, Lost("blanket", 1), 1e-12);
        Assert.Equal(2.0 / 3, Lost("foam+blanket", 3), 1e-12);
    }

    [Fact]
    public void A_combination_on_one_surface_never_saves_more_than_the_sum_of_its_parts() => Gen.Select(Houses, Gen.Int[0, 5]).Sample((house, pair) =>
    {
        string[][] pairs = [["foam", "curtain"], ["foam", "irfilm"], ["foam", "blanket"], ["curtain", "irfilm"], ["blanket", "irfilm"], ["kneewall", "foam"]];
        var standing = TestHouse.Heat(TestHouse.Option(house, string.Empty));
        double Saving(string parts) => standing - TestHouse.Heat(TestHouse.Option(house, parts, SameLight));
        var (both, sum) = (Saving(string.Join('+', pairs[pair])), pairs[pair].Sum(Saving));
        Assert.True(both <= sum * (1 + 1e-9), $"{string.Join('+', pairs[pair])} saves {both:0}, its parts {sum:0} kWh");
    }, iter: 60);

    [Fact]
    public void A_small_heater_leaves_heat_undelivered_and_says_so()
    {
        var house = TestHouse.Model(TestHouse.Facts with { Heaters = [new("power", FuelKind.Propane, 30)] });
        var (small, large) = (HeatBalance.Season(OptionModels.AsItStands(house), TestHouse.Winters[0]), HeatBalance.Season(OptionModels.AsItStands(TestHouse.Model()), TestHouse.Winters[0]));
        Assert.True(small.ColdHours > 0);
        Assert.Equal(large.TotalKwh, small.TotalKwh + small.UndeliveredKwh, 1e-6);
        Assert.Equal(0, large.ColdHours);
    }

    [Fact]
    public void What_the_day_left_serves_one_night_alone()
    {
        // all the surplus kept: no more can be saved in a night than the day before it had to spare
        var plain = TestHouse.Heat(OptionModels.AsItStands(TestHouse.Model(null, new(0, 0))));
        var kept = TestHouse.Winters.Select(y => HeatBalance.Season(OptionModels.AsItStands(TestHouse.Model(null, new(1, 0))), y)).ToArray();
        Assert.Equal(plain, kept.Sum(s => s.TotalKwh + s.Losses.CarriedKwh), 1e-6 * plain);
        Assert.True(kept.Sum(s => s.Losses.CarriedKwh) > 0);
    }
}
