using FarmPortfolio.Engine;

namespace FarmPortfolio.Host.Loading;

/// <summary>Faults of one file in the order found. The first thousand are kept and the rest counted, so that a file of nothing but faults stays small.</summary>
/// <param name="file">Name of the file.</param>
internal sealed class FaultList(string file)
{
    /// <summary>Faults kept one by one.</summary>
    public const int Most = 1000;

    private readonly List<Fault> kept = [];
    private readonly HashSet<string> codes = [];

    /// <summary>Faults found, kept or not.</summary>
    public int Count { get; private set; }

    /// <summary>The faults, with a last line for those that are only counted.</summary>
    public IReadOnlyList<Fault> All => Count <= Most
        ? kept
        : [.. kept, new("MORE", null, FormattableString.Invariant($"{Count - Most:#,0} more faults are not listed."), "Mend these first; many of the rest may be the same.", file)];

    /// <summary>Whether a fault of a code was found.</summary>
    public bool Has(string code) => codes.Contains(code);

    /// <summary>Adds a fault.</summary>
    public void Add(string code, string? field, string message, string remedy, int? line = null, int? column = null) => Add(new Fault(code, field, message, remedy, file, line, column));

    /// <summary>Adds a fault found elsewhere.</summary>
    public void Add(Fault fault)
    {
        Count++;
        codes.Add(fault.Code);
        if (kept.Count < Most)
        {
            kept.Add(fault);
        }
    }
}
