using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Engine.Studies;

/// <summary>
/// A replicate laid out for the kernel, once for all houses: path by path and month by month the index of all seasons beside each other, so that a house reads
/// nothing of the months it does not heat.
/// </summary>
internal sealed class ReplicateLayout
{
    private readonly Lazy<double[]>[] index;

    /// <summary>Lays a replicate out.</summary>
    /// <param name="block">The replicate.</param>
    public ReplicateLayout(FuturesBlock block)
    {
        (Block, Stride) = (block, StrideOf(block.Seasons));
        index = [.. Enumerable.Range(0, FuturesBlock.Fuels).Select(f => new Lazy<double[]>(() => Lay(block.Price((FuelKind)f))))];
    }

    /// <summary>The replicate path by path.</summary>
    public FuturesBlock Block { get; }

    /// <summary>Numbers a month: the seasons, made up to whole vectors.</summary>
    public int Stride { get; }

    /// <summary>Paths of the replicate.</summary>
    public int Paths => Block.Paths;

    /// <summary>First path of the replicate among all.</summary>
    public int FirstPath => Block.Replicate * Block.Paths;

    /// <summary>Numbers a month of so many seasons.</summary>
    /// <param name="seasons">Seasons.</param>
    /// <returns>A multiple of four.</returns>
    public static int StrideOf(int seasons) => (seasons + 3) & ~3;

    /// <summary>Index of a fuel: path by path, month by month (July first), <see cref="Stride"/> seasons; US dollars a kWh of fuel.</summary>
    /// <param name="fuel">Fuel.</param>
    /// <returns>Twelve rows a path.</returns>
    public double[] Index(FuelKind fuel) => index[(int)fuel].Value;

    private double[] Lay(double[] byPath)
    {
        var laid = new double[12 * Stride * Paths];
        for (var p = 0; p < Paths; p++)
        {
            var from = byPath.AsSpan(12 * p * Block.Seasons, 12 * Block.Seasons);
            var to = laid.AsSpan(12 * p * Stride, 12 * Stride);
            for (var m = 0; m < 12; m++)
            {
                for (var s = 0; s < Block.Seasons; s++)
                {
                    to[m * Stride + s] = from[12 * s + m];
                }
            }
        }

        return laid;
    }
}
