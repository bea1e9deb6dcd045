namespace FarmPortfolio.Engine.Studies;

/// <summary>Arrays that one thread uses again for house after house, so that memory does not grow with the number of houses or options.</summary>
/// <param name="paths">Paths of all replicates.</param>
/// <param name="seasons">Seasons.</param>
internal sealed class Workspace(int paths, int seasons)
{
    private double[] paid = [];
    private readonly Dictionary<(int Supply, int Lane), double[]> costs = [];

    /// <summary>Prices paid in one replicate, as <see cref="WinterOrder.Index"/> lays them out.</summary>
    /// <param name="length">Numbers needed.</param>
    /// <returns>An array at least as long.</returns>
    public double[] Paid(int length) => paid.Length >= length ? paid : paid = new double[length];

    /// <summary>Net saving of the option at hand, season by season a row of paths.</summary>
    public double[] Net { get; } = new double[paths * seasons];

    /// <summary>Fuel of the house as it stands at a loss multiplier of 1, season by season a row of paths.</summary>
    public double[] Standing { get; } = new double[paths * seasons];

    /// <summary>Sum of a row of paths.</summary>
    public double[] Cumulated { get; } = new double[paths];

    /// <summary>One figure a path.</summary>
    public double[] PerPath { get; } = new double[paths];

    /// <summary>Factor on the saving a path.</summary>
    public double[] Factor { get; } = new double[paths];

    /// <summary>Outlay a path.</summary>
    public double[] Outlay { get; } = new double[paths];

    /// <summary>Paybacks a path.</summary>
    public Economics.PaybackSeasons Payback { get; } = new(paths);

    /// <summary>Cost of heat at a perfect heater, season by season a row of paths.</summary>
    /// <param name="supply">Supply line of the house.</param>
    /// <param name="lane">Lane of the tile.</param>
    /// <returns>The array.</returns>
    public double[] Cost(int supply, int lane) => costs.TryGetValue((supply, lane), out var known) ? known : costs[(supply, lane)] = new double[paths * seasons];
}
