namespace FarmPortfolio.Engine.Economics;

/// <summary>Student's t: the deviate with 2.5 % above it, by degrees of freedom.</summary>
internal static class StudentT
{
    private const int Kept = 64;
    private static readonly double[] Table = [.. Enumerable.Range(1, Kept).Select(d => MathNet.Numerics.Distributions.StudentT.InvCDF(0, 1, d, 0.975))];

    /// <summary>t(degrees; 97.5 %): 2.262 for nine.</summary>
    /// <param name="degrees">Degrees of freedom, 1 or more.</param>
    /// <returns>Deviate.</returns>
    public static double Upper975(int degrees) => degrees <= Kept ? Table[degrees - 1] : MathNet.Numerics.Distributions.StudentT.InvCDF(0, 1, degrees, 0.975);
}
