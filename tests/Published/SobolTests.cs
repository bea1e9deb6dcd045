using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Published;

/// <summary>
/// Sobol points. Direction numbers: Joe and Kuo (2008), Constructing Sobol sequences with better two-dimensional projections, table new-joe-kuo-6, rows 2 to 21
/// (read in public copies). First points in four dimensions: QuantLib 1.29, SobolRsg (its table agrees with Joe and Kuo's in the first four rows). Exact.
/// </summary>
public class SobolTests
{
    public static TheoryData<int, int, int, int[]> Rows => new()
    {
        { 2, 1, 0, [1] },
        { 3, 2, 1, [1, 3] },
        { 4, 3, 1, [1, 3, 1] },
        { 5, 3, 2, [1, 1, 1] },
        { 6, 4, 1, [1, 1, 3, 3] },
        { 7, 4, 4, [1, 3, 5, 13] },
        { 8, 5, 2, [1, 1, 5, 5, 17] },
        { 9, 5, 4, [1, 1, 5, 5, 5] },
        { 10, 5, 7, [1, 1, 7, 11, 19] },
        { 11, 5, 11, [1, 1, 5, 1, 1] },
        { 12, 5, 13, [1, 1, 1, 3, 11] },
        { 13, 5, 14, [1, 3, 5, 5, 31] },
        { 14, 6, 1, [1, 3, 3, 9, 7, 49] },
        { 15, 6, 13, [1, 1, 1, 15, 21, 21] },
        { 16, 6, 16, [1, 3, 1, 13, 27, 49] },
        { 17, 6, 19, [1, 1, 1, 15, 7, 5] },
        { 18, 6, 22, [1, 3, 1, 15, 13, 25] },
        { 19, 6, 25, [1, 1, 5, 5, 19, 61] },
        { 20, 7, 1, [1, 3, 7, 11, 23, 15, 103] },
        { 21, 7, 4, [1, 3, 7, 13, 13, 15, 69] },
    };

    /// <summary>The point whose Gray code is the single digit i shows direction number i alone: m(i) / 2^i, by the recurrence in whole numbers.</summary>
    [Theory, MemberData(nameof(Rows), DisableDiscoveryEnumeration = true)]
    public void Direction_numbers(int row, int s, int a, int[] initial)
    {
        var m = initial.Select(v => (long)v).ToList();
        while (m.Count < 30)
        {
            var next = m[^s] ^ (m[^s] << s);
            for (var k = 1; k < s; k++)
            {
                next ^= ((a >> (s - 1 - k)) & 1) == 1 ? m[^k] << k : 0;
            }

            m.Add(next);
        }

        for (var i = 1; i <= 30; i++)
        {
            var expected = (uint)(m[i - 1] << (32 - i));
            var actual = SobolPoints.Plain((int)((1U << i) - 1), row - 1);
            Assert.True(expected == actual, $"row {row}, direction number {i}: {expected:x8} expected, {actual:x8} found");
        }
    }

    [Fact]
    public void First_points_in_four_dimensions()
    {
        double[][] expected = [[.5, .5, .5, .5], [.75, .25, .25, .25], [.25, .75, .75, .75], [.375, .375, .625, .875], [.875, .875, .125, .375]];
        for (var i = 0; i < expected.Length; i++)
        {
            Assert.Equal(expected[i], Enumerable.Range(0, 4).Select(d => SobolPoints.Plain(i + 1, d) / 4294967296.0));
        }
    }
}
