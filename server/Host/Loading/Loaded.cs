using FarmPortfolio.Engine;

namespace FarmPortfolio.Host.Loading;

/// <summary>What a file gave: a value and its failures.</summary>
/// <typeparam name="T">Value.</typeparam>
/// <param name="Value">What could be read; null when nothing could.</param>
/// <param name="Rows">Rows read.</param>
/// <param name="Faults">What was wrong, with line and column.</param>
public sealed record Loaded<T>(T? Value, int Rows, IReadOnlyList<Fault> Faults)
    where T : class;
