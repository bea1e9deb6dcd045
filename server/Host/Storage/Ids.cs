namespace FarmPortfolio.Host.Storage;

/// <summary>Makes identifiers: a kind's prefix and a UUID of version 7.</summary>
/// <param name="clock">Clock.</param>
public sealed class Ids(TimeProvider clock)
{
    /// <summary>A new identifier.</summary>
    /// <param name="prefix">h, f, c ...</param>
    /// <returns>prefix_uuid.</returns>
    public string New(string prefix) => $"{prefix}_{Guid.CreateVersion7(clock.GetUtcNow()):N}";

    /// <summary>The time now as stored.</summary>
    /// <returns>ISO 8601, UTC.</returns>
    public string Now() => Ago(TimeSpan.Zero);

    /// <summary>A time past as stored.</summary>
    /// <param name="span">How long ago.</param>
    /// <returns>ISO 8601, UTC.</returns>
    public string Ago(TimeSpan span) => (clock.GetUtcNow() - span).UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", System.Globalization.CultureInfo.InvariantCulture);
}
