using CsCheck;
using FarmPortfolio.Engine.Farms;

namespace FarmPortfolio.Engine.Tests.Farms;

/// <summary>Exact areas against sums over a fine outline of the same cross-section.</summary>
public class HouseGeometryTests
{
    private static readonly HouseShape[] Roofs = [HouseShape.Hoop, HouseShape.GothicArch, HouseShape.Gable];

    private static readonly Gen<HouseGeometry> Any = Gen.Select(
        Gen.Int[0, 2].Select(i => Roofs[i]), Gen.Double[3, 15], Gen.Double[5, 90], Gen.Double[0, 3], Gen.Double[0.5, 7], Gen.Int[1, 5], (roof, width, length, wall, rise, bays) => new HouseGeometry(roof, width, length, wall, wall + rise, bays));

    [Fact]
    public void Areas_and_volume_meet_a_fine_outline() => Any.Sample(g =>
    {
        var profile = g.Profile(4000);
        var (arc, area) = (0.0, 0.0);
        for (var i = 1; i < profile.Count; i++)
        {
            var (a, b) = (profile[i - 1], profile[i]);
            arc += Math.Sqrt((b.X - a.X) * (b.X - a.X) + (b.Y - a.Y) * (b.Y - a.Y));
            area += (b.X - a.X) * (a.Y + b.Y) / 2;
        }

        arc -= 2 * g.SideWallM;
        Assert.Equal(arc * g.LengthM, g.RoofM2, 1e-4 * g.RoofM2);
        Assert.Equal(2 * area, g.EndWallsM2, 1e-4 * g.EndWallsM2);
        Assert.Equal(area * g.LengthM, g.VolumeM3, 1e-4 * g.VolumeM3);
    }, iter: 200);

    [Fact]
    public void What_lies_below_a_height_grows_from_nothing_to_all() => Any.Sample(g =>
    {
        Assert.Equal(0, g.EndsBelowM2(0), 1e-9);
        Assert.Equal(g.EndWallsM2, g.EndsBelowM2(g.RidgeM), 1e-9);
        Assert.Equal(g.RoofM2, g.RoofBelowM2(g.RidgeM), 1e-9);
        var heights = Enumerable.Range(0, 40).Select(i => g.RidgeM * i / 39).ToArray();
        for (var i = 1; i < heights.Length; i++)
        {
            Assert.True(g.VolumeBelowM3(heights[i]) >= g.VolumeBelowM3(heights[i - 1]));
            Assert.True(g.RoofBelowM2(heights[i]) >= g.RoofBelowM2(heights[i - 1]));
        }
    }, iter: 200);

    [Fact]
    public void Bays_share_their_gutters()
    {
        var one = new HouseGeometry(HouseShape.Gable, 9, 30, 3, 5);
        var four = new HouseGeometry(HouseShape.Gable, 9, 30, 3, 5, 4);
        Assert.Equal(4 * one.RoofM2, four.RoofM2, 1e-9);
        Assert.Equal(4 * one.EndWallsM2, four.EndWallsM2, 1e-9);
        Assert.Equal(one.SideWallsM2, four.SideWallsM2, 1e-9);
        Assert.Equal(2 * (36 + 30), four.PerimeterM, 1e-9);
    }

    [Fact]
    public void A_pointed_arch_stands_upright_on_its_wall_where_the_rise_allows()
    {
        // a rise of half the width leaves a half circle: 60 degrees each way more makes it pointed
        var g = new HouseGeometry(HouseShape.GothicArch, 8, 10, 0, 5);
        Assert.InRange(g.RoofM2 / 10, 2 * Math.Sqrt(16 + 25), Math.PI * 5);
    }

    [Theory]
    [InlineData(-1, 10, 0, 2, 1)]
    [InlineData(5, 0, 0, 2, 1)]
    [InlineData(5, 10, -0.1, 2, 1)]
    [InlineData(5, 10, 3, 2, 1)]
    [InlineData(5, 10, 0, 2, 0)]
    public void Impossible_sizes_are_refused(double width, double length, double wall, double ridge, int bays) =>
        Assert.ThrowsAny<ArgumentOutOfRangeException>(() => new HouseGeometry(HouseShape.Hoop, width, length, wall, ridge, bays));
}
