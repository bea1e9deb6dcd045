using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Published.Heat;

/// <summary>Exact geometry in feet, computed by an independent script: a semicircle house and a gable house of 30 x 96 ft; Bartok, GM Sept 2011: walls to 3 ft are about 15 % of the surface.</summary>
public class GeometryTests
{
    private const double Tolerance = 1e-4;

    [Fact]
    public void Semicircle_30_by_96()
    {
        var g = new HouseGeometry(HouseShape.Hoop, 30 * Us.FootM, 96 * Us.FootM, 0, 15 * Us.FootM);
        Assert.Equal(4523.8934, g.RoofM2 / Us.SquareFootM2, Tolerance);
        Assert.Equal(706.8583, g.EndWallsM2 / Us.SquareFootM2, Tolerance);
        Assert.Equal(33929.2007, g.VolumeM3 / Us.CubicFootM3, 1e-3);
        Assert.Equal(252, g.PerimeterM / Us.FootM, Tolerance);
    }

    [Fact]
    public void Gable_30_by_96()
    {
        var g = new HouseGeometry(HouseShape.Gable, 30 * Us.FootM, 96 * Us.FootM, 8 * Us.FootM, 15.5 * Us.FootM);
        Assert.Equal(3219.9379, g.RoofM2 / Us.SquareFootM2, Tolerance);
        Assert.Equal(1536, g.SideWallsM2 / Us.SquareFootM2, Tolerance);
        Assert.Equal(705, g.EndWallsM2 / Us.SquareFootM2, Tolerance);
        Assert.Equal(33840, g.VolumeM3 / Us.CubicFootM3, 1e-3);
    }

    [Fact]
    public void Walls_to_three_feet_of_a_freestanding_house_are_about_15_per_cent()
    {
        // 30 x 100 ft with upright walls: sides and ends below 3 ft over the whole surface; 15.6 % by the article's own arithmetic, tolerance 1 point
        var g = new HouseGeometry(HouseShape.Hoop, 30 * Us.FootM, 100 * Us.FootM, 3 * Us.FootM, 15 * Us.FootM);
        var low = g.SideWallsBelowM2(3 * Us.FootM) + g.EndsBelowM2(3 * Us.FootM);
        var share = low / (g.RoofM2 + g.SideWallsM2 + g.EndWallsM2);
        Assert.InRange(share, 0.135, 0.166);
    }
}
