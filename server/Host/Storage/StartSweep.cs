using FarmPortfolio.Host.Accounts;

namespace FarmPortfolio.Host.Storage;

/// <summary>
/// Drops at start what nothing uses: bulk numbers of saves that were refused or cut off, and units of studies that were never taken up again. Before requests are served, since a blob is kept a moment
/// before the revision that uses it.
/// </summary>
/// <param name="blobs">Bulk numbers.</param>
/// <param name="units">Results of units.</param>
/// <param name="log">Log.</param>
internal sealed partial class StartSweep(BlobStore blobs, UnitStore units, ILogger<StartSweep> log) : IHostedService
{
    /// <summary>How long a unit that no study uses is kept, so that a study cut short finds what it had reckoned.</summary>
    internal static TimeSpan UnitsKeptFor { get; } = TimeSpan.FromDays(7);

    /// <inheritdoc/>
    public Task StartAsync(CancellationToken cancellationToken)
    {
        var (dropped, old) = (blobs.Sweep(Viewer.Program), units.Sweep(Viewer.Program, UnitsKeptFor));
        if (dropped + old > 0)
        {
            LogSwept(dropped, old);
        }

        return Task.CompletedTask;
    }

    /// <inheritdoc/>
    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    [LoggerMessage(LogLevel.Information, "dropped what nothing uses: {Blobs} records of numbers, {Units} results of tanks and meters")]
    private partial void LogSwept(int blobs, int units);
}
