using FarmPortfolio.Engine.Economics;

namespace FarmPortfolio.Engine.Studies;

/// <summary>Money of one option over all paths; used again for option after option.</summary>
/// <param name="paths">Paths of all replicates.</param>
/// <param name="seasons">Seasons.</param>
internal sealed class OptionMoney(int paths, int seasons)
{
    /// <summary>Net saving, season by season a row of paths, US dollars.</summary>
    public double[] Net { get; } = new double[paths * seasons];

    /// <summary>What a modelled saving is multiplied by, a path: loss multiplier, realised factor, air changes.</summary>
    public double[] Share { get; } = new double[paths];

    /// <summary>Outlay a path, US dollars.</summary>
    public double[] Outlay { get; } = new double[paths];

    /// <summary>Paybacks a path.</summary>
    public PaybackSeasons Payback { get; } = new(paths);
}
