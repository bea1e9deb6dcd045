namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>What tells a movable retrofit to go into place.</summary>
public enum ClosingKind
{
    /// <summary>A photocell: the sun is down, or gives less than a threshold.</summary>
    Light,

    /// <summary>A time switch, by month.</summary>
    Clock,

    /// <summary>A photocell's rule carried out by people: only inside the hours given by month.</summary>
    Staff,
}

/// <summary>Hours by the sun (12 = noon) between which something is in place, by month, over midnight where the first is the later.</summary>
/// <param name="closeAtH">Hour of closing by month, July first, 0 to 24; 12 values.</param>
/// <param name="openAtH">Hour of opening by month, July first, 0 to 24; 12 values.</param>
public sealed class ClockHours(IReadOnlyList<double> closeAtH, IReadOnlyList<double> openAtH) : IEquatable<ClockHours>
{
    /// <summary>Hour of closing by month, July first.</summary>
    public IReadOnlyList<double> CloseAtH { get; } = closeAtH;

    /// <summary>Hour of opening by month, July first.</summary>
    public IReadOnlyList<double> OpenAtH { get; } = openAtH;

    /// <summary>Share of an hour inside the window.</summary>
    /// <param name="month">0 = July.</param>
    /// <param name="hour">Hour of the day, 0 to 23.</param>
    /// <returns>0 to 1.</returns>
    public double Share(int month, int hour)
    {
        var (close, open) = (CloseAtH[month], OpenAtH[month]);
        static double Overlap(double from, double to, int h) => Math.Max(0, Math.Min(to, h + 1) - Math.Max(from, h));
        return close <= open ? Overlap(close, open, hour) : Overlap(close, 24, hour) + Overlap(0, open, hour);
    }

    /// <inheritdoc/>
    public bool Equals(ClockHours? other) => other is not null && CloseAtH.SequenceEqual(other.CloseAtH) && OpenAtH.SequenceEqual(other.OpenAtH);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as ClockHours);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(CloseAtH[0], CloseAtH[6], OpenAtH[0], OpenAtH[6]);
}

/// <summary>When a movable retrofit is due to be in place; the outside temperature decides whether it is (<see cref="OperationRule"/>).</summary>
/// <param name="Kind">Photocell, time switch or people.</param>
/// <param name="BelowWPerM2">With a photocell: closed while the sun gives less than this, W/m2; 0 = by dark alone.</param>
/// <param name="DelayHours">Hours lost at the beginning of every stretch, 0 to 12.</param>
/// <param name="Clock">Hours of the time switch or of the people; null only with <see cref="ClosingKind.Light"/>.</param>
public sealed record ClosingTime(ClosingKind Kind = ClosingKind.Light, double BelowWPerM2 = 0, double DelayHours = 0, ClockHours? Clock = null);
