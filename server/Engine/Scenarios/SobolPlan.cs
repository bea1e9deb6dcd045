namespace FarmPortfolio.Engine.Scenarios;

/// <summary>
/// Which dimension of the Sobol points stands for what. The first ones are the evenest in pairs, so what moves every figure comes first: the unrest, the first component of the prices, the
/// weather, the other components. The errors that all houses share come last. Found by trial: shared errors before the last components, or twelve components, make tails worse.
/// </summary>
internal static class SobolPlan
{
    /// <summary>Unrest of a path.</summary>
    public const int Unrest = 0;

    /// <summary>Hardness of a path's weather.</summary>
    public const int Weather = 2;

    /// <summary>First of the dimensions of errors that all houses share: the outlay's, then those of ten retrofits.</summary>
    public const int FirstSharedError = LeadingComponents.Most + 2;

    /// <summary>Dimension of a price component.</summary>
    /// <param name="number">0 = the leading one.</param>
    /// <returns>Dimension.</returns>
    public static int Component(int number) => number + 1 < Weather ? number + 1 : number + 2;
}
