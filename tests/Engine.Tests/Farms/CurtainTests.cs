using CsCheck;
using FarmPortfolio.Engine.Farms;

namespace FarmPortfolio.Engine.Tests.Farms;

/// <summary>Cloth and the space above it against the line and outline drawn finely.</summary>
public class CurtainTests
{
    private static readonly Gen<(HouseGeometry House, CurtainShape Shape, double Edge, double Top)> Any = Gen.Select(
        Gen.Int[0, 2].Select(i => (HouseShape)i), Gen.Double[4, 12], Gen.Double[0, 2.5], Gen.Double[1.5, 5], Gen.Int[1, 4],
        Gen.Int[0, 2].Select(i => (CurtainShape)i), Gen.Double[0.2, 0.8], Gen.Double[0, 1], (roof, width, wall, rise, bays, shape, at, slope) =>
        {
            var house = new HouseGeometry(roof, width, 20, wall, wall + rise, bays);
            var edge = at * house.RidgeM;
            return (house, shape, edge, edge + slope * 0.95 * (house.RidgeM - edge));
        });

    [Fact]
    public void Cloth_is_the_length_of_its_line() => Any.Sample(x =>
    {
        var space = x.House.Curtain(x.Shape, x.Edge, x.Top);
        var length = 0.0;
        for (var i = 1; i < space.Line.Count; i++)
        {
            // the last point of a bay and the first of the next are two hems, not cloth
            var (a, b) = (space.Line[i - 1], space.Line[i]);
            length += i % 4 == 0 ? 0 : Math.Sqrt((b.X - a.X) * (b.X - a.X) + (b.Y - a.Y) * (b.Y - a.Y));
        }

        Assert.Equal(length * x.House.LengthM, space.ClothM2, 1e-9 * space.ClothM2);
    });

    [Fact]
    public void The_space_above_is_what_the_outline_leaves_over_the_line() => Any.Sample(x =>
    {
        var space = x.House.Curtain(x.Shape, x.Edge, x.Top);
        var line = space.Line.Take(4).ToArray();
        double Cloth(double t)
        {
            var i = t < line[1].X ? 0 : t < line[2].X ? 1 : 2;
            var (a, b) = (line[i], line[i + 1]);
            return b.X - a.X < 1e-12 ? b.Y : a.Y + (b.Y - a.Y) * (t - a.X) / (b.X - a.X);
        }

        var profile = x.House.Profile(6000);
        var bay = profile.Where(p => p.X <= x.House.BayWidthM + 1e-9).ToArray();
        var area = 0.0;
        for (var i = 1; i < bay.Length; i++)
        {
            var t = (bay[i].X + bay[i - 1].X) / 2;
            if (t > line[0].X && t < line[3].X)
            {
                area += (bay[i].X - bay[i - 1].X) * Math.Max(0, (bay[i].Y + bay[i - 1].Y) / 2 - Cloth(t));
            }
        }

        Assert.Equal(2 * x.House.Bays * area, space.EndsAboveM2, 5e-3 * x.House.EndWallsM2);
        Assert.Equal(space.EndsAboveM2 / 2 * x.House.LengthM, space.VolumeAboveM3, 1e-9);
    }, iter: 60);

    [Fact]
    public void A_sloped_curtain_has_more_cloth_and_less_space_above_than_a_flat_one_of_the_same_edge()
    {
        var house = new HouseGeometry(HouseShape.Hoop, 9, 30, 0, 4.5);
        var (flat, sloped) = (house.Curtain(CurtainShape.Flat, 2.1, 0), house.Curtain(CurtainShape.Sloped, 2.1, 4.2));
        Assert.True(sloped.ClothM2 > flat.ClothM2);
        Assert.True(sloped.VolumeAboveM3 < flat.VolumeAboveM3);
        Assert.Equal(flat.RoofAboveM2, sloped.RoofAboveM2, 1e-9);
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(5, 5)]
    [InlineData(2, 1)]
    [InlineData(2, 6)]
    public void A_curtain_outside_the_house_is_refused(double edge, double top) =>
        Assert.ThrowsAny<ArgumentOutOfRangeException>(() => new HouseGeometry(HouseShape.Hoop, 9, 30, 0, 4.5).Curtain(CurtainShape.Sloped, edge, top));
}
