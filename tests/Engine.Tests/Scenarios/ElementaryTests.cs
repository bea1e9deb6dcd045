using System.Runtime.Intrinsics;
using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Engine.Tests.Scenarios;

/// <summary>Our own exponential and logarithm against the runtime's, which are within 1 unit in the last place of the true value.</summary>
public class ElementaryTests
{
    private const double UnitsInTheLastPlace = 2;

    [Fact]
    public void The_exponential_is_the_runtimes_to_two_units_in_the_last_place()
    {
        var draw = new Random(1);
        var worst = 0.0;
        for (var i = 0; i < 200_000; i++)
        {
            var x = i < 100_000 ? 4 * draw.NextDouble() - 2 : 1400 * draw.NextDouble() - 700;
            worst = Math.Max(worst, Distance(Math.Exp(x), Elementary.Exp(x), $"e to the {x:R}"));
        }

        Assert.True(worst > 0, "two different ways to reckon cannot agree in every bit: the runtime's own is being tested");
    }

    [Fact]
    public void The_logarithm_is_the_runtimes_to_two_units_in_the_last_place()
    {
        var draw = new Random(2);
        for (var i = 0; i < 200_000; i++)
        {
            var x = i < 100_000 ? 0.5 + draw.NextDouble() : Math.Exp(1400 * draw.NextDouble() - 700);
            Distance(Math.Log(x), Elementary.Log(x), $"ln {x:R}");
        }
    }

    [Fact]
    public void Ends_are_as_they_should_be()
    {
        Assert.Equal(1, Elementary.Exp(0));
        Assert.Equal(0, Elementary.Exp(-800));
        Assert.Equal(double.PositiveInfinity, Elementary.Exp(720));
        Assert.True(double.IsNaN(Elementary.Exp(double.NaN)));
        Assert.Equal(5e-324, Elementary.Exp(-744.4400719213812));
        Assert.Equal(0, Elementary.Log(1));
        Assert.Equal(Math.E, Elementary.Exp(1), 4.5e-16);
    }

    [Fact]
    public void Draws_made_four_at_once_are_those_made_one_by_one()
    {
        var many = new double[4099];
        Noise.Normals(7, NoisePurpose.SavingOwn, 99, many);
        for (var path = 0; path < many.Length; path++)
        {
            Assert.Equal(Noise.Normal(7, NoisePurpose.SavingOwn, 99, path, 0), many[path]);
        }
    }

    [Fact]
    public void Every_lane_has_the_bits_of_a_lone_number()
    {
        var x = Vector256.Create(0.3, -12.7, 1.9, -0.004);
        Assert.Equal([Elementary.Exp(0.3), Elementary.Exp(-12.7), Elementary.Exp(1.9), Elementary.Exp(-0.004)], [.. Lanes(Elementary.Exp(x))]);
        var y = Vector256.Create(0.3, 12.7, 1.9, 1e-9);
        Assert.Equal([Elementary.Log(0.3), Elementary.Log(12.7), Elementary.Log(1.9), Elementary.Log(1e-9)], [.. Lanes(Elementary.Log(y))]);
    }

    private static double[] Lanes(Vector256<double> v) => [v[0], v[1], v[2], v[3]];

    private static double Distance(double expected, double found, string what)
    {
        var units = Math.Abs(expected - found) / Ulp(expected);
        Assert.True(units <= UnitsInTheLastPlace, $"{what}: {expected:R} by the runtime, {found:R} by us, {units:0.0} units apart, {UnitsInTheLastPlace} allowed");
        return units;
    }

    private static double Ulp(double x) => Math.BitIncrement(Math.Abs(x)) - Math.Abs(x);
}
