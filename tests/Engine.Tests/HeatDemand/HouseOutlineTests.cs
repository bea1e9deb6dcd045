using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Tests.HeatDemand;

/// <summary>Heights that nobody told, at the widths that bow houses come in. The ranges of ridges are common practice, no source.</summary>
public class HouseOutlineTests
{
    [Theory]
    [InlineData(20, 4, 9.5, 11)]
    [InlineData(20, 6, 11.5, 13)]
    [InlineData(20, 8, 13, 15)]
    [InlineData(24, 4, 10.5, 12)]
    [InlineData(24, 6, 12, 14)]
    [InlineData(24, 8, 14, 16)]
    [InlineData(30, 4, 12, 14)]
    [InlineData(30, 6, 14, 16)]
    [InlineData(30, 8, 16, 18)]
    [InlineData(34, 4, 13, 15.5)]
    [InlineData(34, 6, 15.5, 17.5)]
    [InlineData(34, 8, 17, 19.5)]
    public void A_hoop_on_walls_is_as_high_as_such_houses_are(double widthFt, double wallFt, double lowFt, double highFt)
    {
        var ridgeFt = Ridge(HouseShape.Hoop, widthFt, wallFt);
        Assert.True(ridgeFt >= lowFt && ridgeFt <= highFt, $"{widthFt} ft wide, walls of {wallFt} ft: ridge {ridgeFt} ft, not {lowFt} to {highFt}");
    }

    [Theory]
    [InlineData(20)]
    [InlineData(24)]
    [InlineData(30)]
    [InlineData(34)]
    public void A_hoop_on_the_ground_is_half_a_circle_and_no_wall_makes_a_leap(double widthFt)
    {
        Assert.Equal(widthFt / 2, Ridge(HouseShape.Hoop, widthFt, null), 1e-9);
        Assert.Equal(widthFt / 2, Ridge(HouseShape.Hoop, widthFt, 0), 1e-9);
        var before = widthFt / 2;
        for (var wall = 0.1; wall <= 8; wall += 0.1)
        {
            var ridge = Ridge(HouseShape.Hoop, widthFt, wall);
            Assert.True(Math.Abs(ridge - before) < 0.2, $"{wall} ft of wall: {ridge} ft after {before}");
            before = ridge;
        }
    }

    [Fact]
    public void What_is_told_stands_and_bays_with_bows_are_no_barns()
    {
        var told = HouseOutline.Of(Facts(HouseShape.Hoop, 30, 4) with { RidgeM = 4.4 });
        Assert.Equal((HouseShape.Hoop, 4 * Us.FootM, 4.4), told);
        var (roof, side, ridge) = HouseOutline.Of(Facts(HouseShape.GutterConnected, 24, null) with { BayRoof = HouseShape.Hoop, Bays = 4 });
        Assert.Equal((HouseShape.Hoop, 3.0), (roof, side));
        Assert.InRange(ridge / Us.FootM, 15, 18.5);
    }

    [Fact]
    public void Arches_and_gables_keep_their_pitch()
    {
        Assert.Equal(6 + 0.4 * 30, Ridge(HouseShape.GothicArch, 30, 6), 1e-9);
        Assert.Equal(8 + 0.25 * 30, Ridge(HouseShape.Gable, 30, 8), 1e-9);
    }

    private static HouseFacts Facts(HouseShape shape, double widthFt, double? wallFt) =>
        new() { FarmId = "f", DrawKey = 1, Shape = shape, WidthM = widthFt * Us.FootM, LengthM = 96 * Us.FootM, SideWallM = wallFt * Us.FootM };

    private static double Ridge(HouseShape shape, double widthFt, double? wallFt) => HouseOutline.Of(Facts(shape, widthFt, wallFt)).RidgeM / Us.FootM;
}
