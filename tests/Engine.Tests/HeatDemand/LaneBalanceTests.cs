using CsCheck;
using FarmPortfolio.Engine.HeatDemand;

namespace FarmPortfolio.Engine.Tests.HeatDemand;

/// <summary>The vectors against the plain loop: the same bits, on every width, whatever the options beside each other.</summary>
public class LaneBalanceTests
{
    private static readonly double[] OffsetsK = [-2.2, 0, 1.3];

    private static readonly (string Parts, (string, double)[] Physics)[] Kinds =
    [
        ("", []), ("irfilm+seal", []), ("foam", []), ("foam", [("foam.closeBelowWPerM2", 60)]), ("foam", [("foam.keepBelowC", -8), ("foam.keepSunBelowWPerM2", 300)]),
        ("curtain", []), ("curtain", [("curtain.closing", 1), ("curtain.closeAtH", 16), ("curtain.openAtH", 8), ("curtain.closeAtH.3", 18.5)]), ("blanket", []), ("foam+curtain", []),
        ("foam+curtain", [("foam.closeBelowWPerM2", 0), ("curtain.closeBelowWPerM2", 0)]), ("foam+blanket", []), ("foam+curtain", [("curtain.keepBelowC", -12)]),
        ("openlater", []), ("setback", []), ("closehouse", []), ("foam+openlater", []), ("service", []),
    ];

    private static readonly Gen<(int[] Kinds, double? InputKw, double CarryOver, double Purge)> Any =
        Gen.Select(Gen.Int[0, Kinds.Length - 1].Array[1, 12], Gen.Double[20, 90].Nullable(), Gen.Double[0, 1], Gen.Double[0, 6]);

    [Fact]
    public void Same_bits_as_the_plain_loop_on_every_width() => Any.Sample(x =>
    {
        var facts = TestHouse.Facts with { Heaters = x.InputKw is { } kw ? [new("power", FuelKind.Propane, kw)] : [] };
        var house = TestHouse.Model(facts, new(x.CarryOver, x.Purge));
        var options = x.Kinds.Select(k => TestHouse.Option(house, Kinds[k].Parts, Kinds[k].Physics)).ToArray();
        var year = TestHouse.Winters[x.Kinds[0] % 3];
        var plain = new double[12];
        foreach (var width in new[] { LaneWidth.Two, LaneWidth.Four, LaneWidth.Eight })
        {
            foreach (var group in LaneGroup.Of(options, OffsetsK))
            {
                var months = new double[12 * group.Lanes];
                LaneBalance.Season(group, year, months, width);
                for (var o = 0; o < group.Numbers.Length; o++)
                {
                    for (var k = 0; k < OffsetsK.Length; k++)
                    {
                        HeatBalance.PlainDemand(options[group.Numbers[o]], year, OffsetsK[k], plain);
                        for (var m = 0; m < 12; m++)
                        {
                            Assert.Equal(BitConverter.DoubleToInt64Bits(plain[m]), BitConverter.DoubleToInt64Bits(months[m * group.Lanes + group.Lane(o, k)] / 1000));
                        }
                    }
                }
            }
        }
    }, iter: 40);

    [Fact]
    public void A_table_does_not_depend_on_the_options_beside_it()
    {
        var house = TestHouse.Model();
        var options = Kinds.Select(k => TestHouse.Option(house, k.Parts, k.Physics)).ToArray();
        var together = DemandTables.Of(options, TestHouse.Winters);
        for (var o = 0; o < options.Length; o++)
        {
            Assert.Equal(DemandTables.Of(options[o], TestHouse.Winters).Coefficients.ToArray(), together[o].Coefficients.ToArray());
        }
    }

    [Fact]
    public void A_season_and_a_table_agree()
    {
        var option = TestHouse.Option(TestHouse.Model(), "foam+seal");
        var table = DemandTables.Of(option, TestHouse.Winters);
        foreach (var (offset, at) in new[] { (-DemandTable.StepK, 0), (0, 1), (DemandTable.StepK, 2) })
        {
            var season = HeatBalance.Season(option, TestHouse.Winters[at], offset);
            for (var m = 0; m < 12; m++)
            {
                Assert.Equal(season.DemandKwh[m], table.DemandKwh(at, m, offset), 1e-9 * (1 + season.DemandKwh[m]));
            }
        }

        Assert.Equal(TestHouse.Winters.Average(y => HeatBalance.Season(option, y).NightsInUse), table.NightsInUse, 1e-9);
        Assert.Equal(TestHouse.Winters.Average(y => HeatBalance.Season(option, y).HoursInPlace.Sum()), table.Uses.HoursByPart["foam"], 1e-6);
    }
}
