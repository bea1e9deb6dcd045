namespace FarmPortfolio.Engine.Scenarios;

/// <summary>
/// Sobol points in 21 dimensions, direction numbers of Joe and Kuo (2008), table new-joe-kuo-6, in the order of the Gray code (Antonov and Saleev 1979).
/// Scrambled by nested permutations (Owen 1995): each binary digit is flipped or not by a keyed hash of the digits before it, so every point is uniform by
/// itself, the points of a replicate stay evenly spread, and the replicates are independent: their spread shows the error of computing. A digital shift would
/// keep that too, but leaves the error of smooth figures larger; at so few dimensions the nested permutations cost nothing that can be measured.
/// </summary>
public static class SobolPoints
{
    /// <summary>Dimensions there are.</summary>
    public const int Dimensions = 21;

    private const int Digits = 32;

    /// <summary>Degree s, coefficients a and initial numbers m of dimensions 2 to 21.</summary>
    private static readonly (int A, int[] M)[] Rows =
    [
        (0, [1]), (1, [1, 3]), (1, [1, 3, 1]), (2, [1, 1, 1]), (1, [1, 1, 3, 3]), (4, [1, 3, 5, 13]), (2, [1, 1, 5, 5, 17]), (4, [1, 1, 5, 5, 5]), (7, [1, 1, 7, 11, 19]),
        (11, [1, 1, 5, 1, 1]), (13, [1, 1, 1, 3, 11]), (14, [1, 3, 5, 5, 31]), (1, [1, 3, 3, 9, 7, 49]), (13, [1, 1, 1, 15, 21, 21]), (16, [1, 3, 1, 13, 27, 49]),
        (19, [1, 1, 1, 15, 7, 5]), (22, [1, 3, 1, 15, 13, 25]), (25, [1, 1, 5, 5, 19, 61]), (1, [1, 3, 7, 11, 23, 15, 103]), (4, [1, 3, 7, 13, 13, 15, 69]),
    ];

    private static readonly uint[][] Directions = [.. Enumerable.Range(0, Dimensions).Select(Direction)];

    /// <summary>A coordinate before scrambling, as 32 binary digits.</summary>
    /// <param name="point">Number of the point, 0 = the origin.</param>
    /// <param name="dimension">0 to 20.</param>
    /// <returns>The coordinate x 2^32.</returns>
    public static uint Plain(int point, int dimension)
    {
        var (bits, coordinate) = ((uint)(point ^ (point >> 1)), 0U);
        for (var i = 0; bits != 0; i++, bits >>= 1)
        {
            coordinate ^= (bits & 1) == 0 ? 0 : Directions[dimension][i];
        }

        return coordinate;
    }

    /// <summary>A scrambled coordinate, strictly between 0 and 1.</summary>
    /// <param name="seed">Seed of the scenario set.</param>
    /// <param name="replicate">Replicate: each has its own permutations.</param>
    /// <param name="point">Number of the point.</param>
    /// <param name="dimension">0 to 20.</param>
    /// <returns>Coordinate.</returns>
    public static double Scrambled(long seed, int replicate, int point, int dimension)
    {
        return Scrambled(KeyOf(seed, replicate, dimension), Plain(point, dimension));
    }

    /// <summary>A scrambled coordinate of all points of a replicate: the same as <see cref="Scrambled(long, int, int, int)"/> point by point.</summary>
    /// <param name="seed">Seed of the scenario set.</param>
    /// <param name="replicate">Replicate.</param>
    /// <param name="dimension">0 to 20.</param>
    /// <param name="coordinates">Filled, one a point.</param>
    internal static void Fill(long seed, int replicate, int dimension, Span<double> coordinates)
    {
        var key = KeyOf(seed, replicate, dimension);
        for (var point = 0; point < coordinates.Length; point++)
        {
            coordinates[point] = Scrambled(key, Plain(point, dimension));
        }
    }

    private static ulong KeyOf(long seed, int replicate, int dimension) => Philox.Mix(Noise.KeyOf(seed, NoisePurpose.SobolScramble, replicate) + (ulong)dimension);

    private static double Scrambled(ulong key, uint plain)
    {
        var scrambled = 0U;
        for (var digit = 0; digit < Digits; digit++)
        {
            // the digits before this one, with a leading 1 that tells how many they are
            var before = ((1UL << Digits) | plain) >> (Digits - digit);
            var flip = (uint)(Philox.Mix(key ^ Philox.Mix(before)) >> 63);
            scrambled = (scrambled << 1) | (((plain >> (Digits - 1 - digit)) & 1) ^ flip);
        }

        return (scrambled + 0.5) * (1.0 / 4294967296.0);
    }

    /// <summary>m(k) = 2 a1 m(k-1) xor 4 a2 m(k-2) xor ... xor 2^s m(k-s) xor m(k-s), each over 2^k: Bratley and Fox (1988), algorithm 659.</summary>
    private static uint[] Direction(int dimension)
    {
        var v = new uint[Digits];
        if (dimension == 0)
        {
            return [.. v.Select((_, i) => 1U << (Digits - 1 - i))];
        }

        var (a, m) = Rows[dimension - 1];
        for (var i = 0; i < Digits; i++)
        {
            if (i < m.Length)
            {
                v[i] = (uint)m[i] << (Digits - 1 - i);
                continue;
            }

            v[i] = v[i - m.Length] ^ (v[i - m.Length] >> m.Length);
            for (var k = 1; k < m.Length; k++)
            {
                v[i] ^= ((a >> (m.Length - 1 - k)) & 1) == 0 ? 0 : v[i - k];
            }
        }

        return v;
    }
}
