using static System.Math;

namespace FarmPortfolio.Engine.HeatDemand.Calibration;

/// <summary>
/// The films' U-values and the air changes as the bills leave them, both as factors on what is described. Both lose heat in proportion to the same difference of temperature, so bills alone hardly tell
/// one from the other: the sum is fitted, and what is held of each before (<see cref="FitSpreads"/>) shares it out.
/// </summary>
/// <param name="AirFactor">Middle of the factor on air changes.</param>
/// <param name="AirSdLn">Spread of its logarithm after the bills.</param>
/// <param name="FilmFactor">Middle of the factor on U-values.</param>
/// <param name="FilmSdLn">Spread of its logarithm after the bills.</param>
/// <param name="BillsTell">Whether the bills took at least <see cref="Narrowed"/> off what was not known of the air changes.</param>
public sealed record FilmsAndAir(double AirFactor, double AirSdLn, double FilmFactor, double FilmSdLn, bool BillsTell)
{
    /// <summary>Share of the spread of ln N that bills must take away to have told leaks from films.</summary>
    public const double Narrowed = 0.3;

    private const int Steps = 12;

    /// <summary>
    /// Most likely factors and their spread (normal about it): fuel = rest + film e^u + air e^n + base x days, errors normal with the variances given, u and n normal about 0.
    /// </summary>
    /// <param name="use">Billed use, kWh.</param>
    /// <param name="modelled">Fuel as described, kWh.</param>
    /// <param name="film">Part of it through the films.</param>
    /// <param name="air">Part of it through leaks.</param>
    /// <param name="days">Days.</param>
    /// <param name="variances">Variances of the use.</param>
    /// <param name="baseKwhPerDay">Base use; moved with the rest where it is fitted.</param>
    /// <param name="fitBase">Whether the base is fitted.</param>
    /// <param name="spreads">What was held before.</param>
    /// <returns>Factors and spreads.</returns>
    internal static FilmsAndAir Of(double[] use, double[] modelled, double[] film, double[] air, int[] days, double[] variances, double baseKwhPerDay, bool fitBase, FitSpreads spreads)
    {
        var at = new[] { 0.0, 0.0, baseKwhPerDay };
        var held = new[] { 1 / Pow(Max(spreads.FilmLn, 1e-6), 2), 1 / Pow(Max(spreads.AirLn, 1e-6), 2), fitBase ? 0 : 1e12 };
        var normal = new double[3, 3];
        for (var step = 0; step < Steps; step++)
        {
            Array.Clear(normal);
            var pull = new[] { -held[0] * at[0], -held[1] * at[1], held[2] * (baseKwhPerDay - at[2]) };
            for (var i = 0; i < use.Length; i++)
            {
                var slope = new[] { film[i] * Exp(at[0]), air[i] * Exp(at[1]), days[i] };
                var miss = use[i] - (modelled[i] - film[i] - air[i]) - slope[0] - slope[1] - at[2] * days[i];
                for (var r = 0; r < 3; r++)
                {
                    pull[r] += slope[r] * miss / variances[i];
                    for (var c = 0; c < 3; c++)
                    {
                        normal[r, c] += slope[r] * slope[c] / variances[i];
                    }
                }
            }

            for (var r = 0; r < 3; r++)
            {
                normal[r, r] += held[r];
            }

            var inverse = Inverse(normal);
            for (var r = 0; r < 3; r++)
            {
                var move = inverse[r, 0] * pull[0] + inverse[r, 1] * pull[1] + inverse[r, 2] * pull[2];
                at[r] += r < 2 ? Clamp(move, -0.5, 0.5) : move;
            }
        }

        var spread = Inverse(normal);
        var airSd = Sqrt(spread[1, 1]);
        return new(Exp(at[1]), airSd, Exp(at[0]), Sqrt(spread[0, 0]), airSd <= (1 - Narrowed) * spreads.AirLn);
    }

    /// <summary>Inverse of a symmetric matrix of three rows, by cofactors.</summary>
    private static double[,] Inverse(double[,] m)
    {
        double Cofactor(int r, int c)
        {
            var (r1, r2, c1, c2) = ((r + 1) % 3, (r + 2) % 3, (c + 1) % 3, (c + 2) % 3);
            return m[r1, c1] * m[r2, c2] - m[r1, c2] * m[r2, c1];
        }

        var determinant = m[0, 0] * Cofactor(0, 0) + m[0, 1] * Cofactor(0, 1) + m[0, 2] * Cofactor(0, 2);
        var inverse = new double[3, 3];
        for (var r = 0; r < 3; r++)
        {
            for (var c = 0; c < 3; c++)
            {
                inverse[c, r] = Cofactor(r, c) / determinant;
            }
        }

        return inverse;
    }
}
