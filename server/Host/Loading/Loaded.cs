using FarmPortfolio.Engine;

namespace FarmPortfolio.Host.Loading;

/// <summary>What a file gave: a value and its failures.</summary>
/// <typeparam name="T">Value.</typeparam>
/// <param name="Value">What could be read, faulty rows left out; null when nothing could.</param>
/// <param name="Rows">Rows read.</param>
/// <param name="Faults">What was wrong, with line and column.</param>
public sealed record Loaded<T>(T? Value, int Rows, IReadOnlyList<Fault> Faults)
    where T : class
{
    private static readonly HashSet<string> Notices = ["GAP", "SHORT", "OUT_OF_ORDER", "NOT_UTF8", "DEGREE_DAYS_DIFFER"];

    /// <summary>What was taken for granted and what was passed over, in plain sentences; no faults.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>Whether a fault leaves something of the file out or in doubt. A gap, a short record, rows out of order, a garbled letter and degree days that are only looked at are said, but nothing of them is lost.</summary>
    public bool LeavesOut => Faults.Any(f => !Notices.Contains(f.Code));
}
