namespace FarmPortfolio.Benchmarks;

/// <summary>The C++ loops of Reference/scenario.cpp.</summary>
internal sealed unsafe class NativeScenario : IDisposable
{
    private readonly NativeBuild build;
    private readonly delegate* unmanaged<int, int, int, int, double*, double*, byte*, double*, double*, double*, int*, void> bare;
    private readonly delegate* unmanaged<int, int, int, int, double*, double*, byte*, double*, double*, double*, int*, double*, void> offset;

    private NativeScenario(NativeBuild build)
    {
        this.build = build;
        bare = (delegate* unmanaged<int, int, int, int, double*, double*, byte*, double*, double*, double*, int*, void>)build.Export("scenario");
        offset = (delegate* unmanaged<int, int, int, int, double*, double*, byte*, double*, double*, double*, int*, double*, void>)build.Export("scenario_offset");
    }

    /// <summary>Builds it; null where there is no g++.</summary>
    public static NativeScenario? Build() => NativeBuild.Of("scenario", "-ffast-math", "-fopenmp") is { } built ? new(built) : null;

    /// <summary>Runs a loop over all options.</summary>
    public void Run(BareProblem p, BareResult result, bool withOffset)
    {
        result.Clear();
        fixed (double* load = withOffset ? p.Quadratic : p.Load, price = p.Price, outlay = p.Outlay, discount = p.Discount, present = result.PresentUsd, offsets = p.Offset)
        fixed (byte* winter = p.Winter)
        fixed (int* counts = result.Counts)
        {
            var tiles = p.Options / BareProblem.Tile;
            if (withOffset)
            {
                offset(tiles, p.Paths, p.Seasons, BareProblem.Winters, load, price, winter, outlay, discount, present, counts, offsets);
            }
            else
            {
                bare(tiles, p.Paths, p.Seasons, BareProblem.Winters, load, price, winter, outlay, discount, present, counts);
            }
        }
    }

    public void Dispose() => build.Dispose();
}
