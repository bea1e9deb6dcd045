namespace FarmPortfolio.Engine.Units;

/// <summary>How far from the middle of a normal distribution a stated share lies beyond, in standard deviations.</summary>
public static class NormalEnds
{
    /// <summary>One in ten lies beyond on either side.</summary>
    public const double OneInTen = 1.2815515655446004;

    /// <summary>One in twenty lies beyond on either side: 90 of 100 lie between.</summary>
    public const double OneInTwenty = 1.6448536269514722;
}
