namespace FarmPortfolio.Engine.Studies;

/// <summary>Arrays that one thread uses again for house after house, so that memory does not grow with the number of houses or options.</summary>
/// <param name="paths">Paths of all replicates.</param>
/// <param name="seasons">Seasons.</param>
internal sealed class Workspace(int paths, int seasons)
{
    private readonly List<OptionMoney> options = [];
    private readonly List<double[]> stretches = [];
    private double[] paid = [];

    /// <summary>Sum of a row of paths.</summary>
    public double[] Cumulated { get; } = new double[paths];

    /// <summary>One figure a path.</summary>
    public double[] PerPath { get; } = new double[paths];

    /// <summary>Cost of the house as it stands in a stretch of paths, season by season.</summary>
    public double[] Standing { get; } = new double[seasons * CostKernel.Stretch];

    /// <summary>Prices paid on four paths.</summary>
    /// <param name="length">Numbers needed.</param>
    /// <returns>An array at least as long.</returns>
    public double[] Paid(int length) => paid.Length >= length ? paid : paid = new double[length];

    /// <summary>Money of an option of the tile at hand.</summary>
    /// <param name="number">Place in the tile.</param>
    /// <returns>The arrays.</returns>
    public OptionMoney Option(int number)
    {
        while (options.Count <= number)
        {
            options.Add(new(paths, seasons));
        }

        return options[number];
    }

    /// <summary>Costs of a stretch of paths on a line, lane by lane, as <see cref="CostKernel.Run"/> fills them.</summary>
    /// <param name="line">Number of the line.</param>
    /// <param name="lanes">Lanes.</param>
    /// <returns>An array at least as long.</returns>
    public double[] Costs(int line, int lanes)
    {
        while (stretches.Count <= line)
        {
            stretches.Add([]);
        }

        var length = lanes * seasons * CostKernel.Stretch;
        return stretches[line].Length >= length ? stretches[line] : stretches[line] = new double[length];
    }
}
