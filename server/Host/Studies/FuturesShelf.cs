using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Studies;

namespace FarmPortfolio.Host.Studies;

/// <summary>Keeps the futures drawn last, so that page after page reads the same ones without drawing again.</summary>
public sealed class FuturesShelf
{
    private readonly Lock gate = new();
    private StudyFutures? last;

    /// <summary>The replicates of some futures, drawn where they are not at hand.</summary>
    /// <param name="futures">Futures.</param>
    /// <param name="cancel">Stops the drawing.</param>
    /// <returns>Blocks in order.</returns>
    public IReadOnlyList<FuturesBlock> Blocks(StudyFutures futures, CancellationToken cancel)
    {
        lock (gate)
        {
            if (last?.Sha256 != futures.Sha256)
            {
                last = futures;
            }

            return last.Blocks(Environment.ProcessorCount, cancel);
        }
    }
}
