using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Published.Heat;

/// <summary>
/// Night curtain on the semicircle house over its ranges, north November to April. Expected: an independent script with the same inputs (tolerance 2.5 points).
/// Make the area of cloth small: Roberts, Mears, Simpkins and Cipolletti (Rutgers), movable thermal insulation for greenhouses.
/// </summary>
public class CurtainTests
{
    /// <summary>R, open share, low and high of the script's saving.</summary>
    public static TheoryData<double, double, double, double> Ranges => new()
    {
        { 1.5, 0.00, 24, 33 }, { 1.5, 0.03, 24, 33 }, { 2.5, 0.00, 24, 33 }, { 2.5, 0.03, 24, 33 }, { 1.0, 0.00, 18, 24 }, { 1.0, 0.03, 18, 24 }, { 1.0, 0.10, 16, 24 }, { 1.5, 0.10, 16, 24 }, { 2.5, 0.10, 16, 24 },
    };

    [Theory, MemberData(nameof(Ranges))]
    public void Resistance_and_open_share(double r, double open, double low, double high) =>
        Expect.Between(low, high, new SemicircleHouse().With("curtain", ("curtain.rValue", SemicircleHouse.RValue(r)), ("curtain.openShare", open)).SavingPct(), 0.5, $"R {r}, open {open}");

    [Theory]
    [InlineData(6, 28)]
    [InlineData(7, 25)]
    [InlineData(8, 23)]
    [InlineData(10, 18)]
    public void Height_of_a_flat_curtain(double feet, double expected) =>
        Expect.Near(expected, (new SemicircleHouse { CurtainFt = feet }).With("curtain").SavingPct(), 1, $"{feet} ft");

    [Fact]
    public void The_space_above_at_ten_degrees_outside_and_sixty_inside_is_at_32_F()
    {
        // heat through the cloth = heat from the space above: the roof's share of what is lost tells the space's temperature
        var house = new SemicircleHouse().With("curtain");
        var (open, closed) = (house.Option().ConductanceWPerK[0], house.Option().ConductanceWPerK[1]);
        var g = house.House().Geometry;
        var space = g.Curtain(CurtainShape.Flat, 7 * Us.FootM, 7 * Us.FootM);
        var above = 0.70 * Us.UValue * space.RoofAboveM2;
        var below = open[0] + open[1] - above;
        var share = (closed[0] + closed[1] - below) / above;
        Expect.Near(32, 10 + 50 * share, 2, "temperature of the space above, F");
    }

    [Fact]
    public void A_blanket_along_the_roof() =>
        Expect.Near(18, new SemicircleHouse().With("blanket", ("blanket.openShare", 0)).SavingPct(), 1, "R 0.85 over nine tenths");

    [Fact]
    public void Cloth_that_follows_the_slope_saves_less_than_a_flat_one_of_the_same_edge()
    {
        double Saving(CurtainShape shape) => (new SemicircleHouse { CurtainShape = shape }).With("curtain").SavingPct();
        var (flat, sloped, both) = (Saving(CurtainShape.Flat), Saving(CurtainShape.Sloped), Saving(CurtainShape.SlopeFlatSlope));
        Assert.True(flat > both && both > sloped, $"flat {flat:0.0}, slope-flat-slope {both:0.0}, sloped {sloped:0.0} %");
    }
}
