using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Tests.Units;

/// <summary>Factors by definition: international foot 0.3048 m, international table Btu 1055.05585262 J (ISO 31-4), US gallon 231 cubic inches.</summary>
public class UsTests
{
    public static TheoryData<string, double, double> Factors => new()
    {
        { "ft2 in m2", Us.SquareFootM2, 0.09290304 }, { "ft3 in m3", Us.CubicFootM3, 0.028316846592 }, { "MMBtu in kWh", Us.MmbtuKwh, 293.07107017 }, { "U in W/m2K", Us.UValue, 5.678263341 },
        { "R in m2K/W", Us.RValue, 0.1761101838 }, { "F-value in W/mK", Us.EdgeValue, 1.730734666 }, { "UA in W/K", Us.ConductanceWPerK, 0.5275279263 }, { "gallon in L", Us.GallonL, 231 * 0.0254 * 0.0254 * 0.0254 * 1000 },
    };

    [Theory, MemberData(nameof(Factors))]
    public void Factor(string name, double actual, double expected) =>
        Assert.True(Math.Abs(actual / expected - 1) <= 1e-9, $"{name}: expected {expected}, is {actual}, tolerance 1e-9");

    [Fact]
    public void Temperatures_there_and_back()
    {
        Assert.Equal(0, Us.C(32), 1e-12);
        Assert.Equal(100, Us.C(212), 1e-12);
        Assert.Equal(-40, Us.F(-40), 1e-12);
        Assert.Equal(61.7, Us.F(Us.C(61.7)), 1e-12);
    }
}
