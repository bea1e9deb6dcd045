using FarmPortfolio.Engine.Economics;

namespace FarmPortfolio.Engine.Exposure;

/// <summary>
/// Several costs on the same futures, together. What one in twenty adds over the mean, part by part, is more than what it adds for the sum: the difference is
/// what spreading over fuels and contracts gives. The range of the sum is read from the sum, path by path, never from added percentiles.
/// </summary>
/// <param name="Cost">The sum, US dollars.</param>
/// <param name="PartsOverMeanUsd">P95 less mean, part by part, added.</param>
/// <param name="OverMeanUsd">P95 less mean of the sum.</param>
public sealed record JointExposure(Distribution Cost, double PartsOverMeanUsd, double OverMeanUsd)
{
    /// <summary>What the parts' dear seasons would be over the mean if all came at once, less what they are: 0 where all move as one.</summary>
    public double SpreadingGivesUsd => PartsOverMeanUsd - OverMeanUsd;

    /// <summary>Adds costs path by path.</summary>
    /// <param name="parts">Costs by path, equally long, at least one.</param>
    /// <param name="replicates">Equal replicates.</param>
    /// <returns>The sum.</returns>
    public static JointExposure Of(IReadOnlyList<double[]> parts, int replicates)
    {
        var sum = new double[parts[0].Length];
        var over = 0.0;
        foreach (var part in parts)
        {
            for (var p = 0; p < sum.Length; p++)
            {
                sum[p] += part[p];
            }

            var cost = Distribution.Of(part, replicates, worstIsHigh: true);
            over += cost.P95 - cost.Mean;
        }

        var whole = Distribution.Of(sum, replicates, worstIsHigh: true);
        return new(whole, over, whole.P95 - whole.Mean);
    }
}
