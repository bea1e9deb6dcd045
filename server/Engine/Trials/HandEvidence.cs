using static System.FormattableString;

namespace FarmPortfolio.Engine.Trials;

/// <summary>A result typed by hand, from a report or a neighbour's trial: either the factor, measured over modelled, or the saving measured, each with its 90 per cent interval.</summary>
/// <param name="RetrofitCode">Catalogue code of the retrofit.</param>
/// <param name="Kind">Published or judged.</param>
/// <param name="Value">Factor, or saving of heat as a share.</param>
/// <param name="Low">One in twenty is lower.</param>
/// <param name="High">One in twenty is higher.</param>
/// <param name="ModelledSaving">Saving modelled for a house like the one measured, share, where <paramref name="Value"/> is a saving; null = it is a factor.</param>
/// <param name="Site">Where it was measured, so that pieces of one site count as one; null = a site of its own.</param>
public sealed record HandEvidence(string RetrofitCode, EvidenceKind Kind, double Value, double Low, double High, double? ModelledSaving, string? Site)
{
    /// <summary>Standard deviations from the middle to an end of a 90 per cent interval.</summary>
    private const double ToEnd = Units.NormalEnds.OneInTwenty;

    /// <summary>Least saving that a measured one is set against.</summary>
    private const double LeastModelled = 0.01;

    /// <summary>The evidence, or what is wrong with what was typed.</summary>
    /// <returns>Evidence, null when a fault stops it, and the faults.</returns>
    public (EvidenceFacts? Evidence, IReadOnlyList<Fault> Faults) Of()
    {
        var saving = ModelledSaving is not null;
        var faults = new List<Fault>();
        if (Kind is not (EvidenceKind.Published or EvidenceKind.Judged))
        {
            faults.Add(new("NOT_BY_HAND", "kind", "A trial's or an award's own evidence is reckoned by the program.", "Choose published or judged, or bring the trial's notebook in."));
        }

        if (!double.IsFinite(Value) || !double.IsFinite(Low) || !double.IsFinite(High))
        {
            faults.Add(new("NOT_A_NUMBER", "value", "The result or an end of its interval is no number.", "Give all three, such as 27, 22 and 32 %."));
        }
        else if (!(Low < Value && Value < High))
        {
            faults.Add(new("OUT_OF_ORDER", "low", saving ? Invariant($"An interval from {100 * Low:0.#} to {100 * High:0.#} % does not hold {100 * Value:0.#} % inside.") : Invariant($"An interval from {Low:0.###} to {High:0.###} does not hold {Value:0.###} inside."), "Give the lower end, the result and the upper end in rising order; no trial is certain."));
        }
        else if (saving && (Value is < -0.2 or > 0.95 || High > 1))
        {
            faults.Add(new("OUT_OF_RANGE", "value", Invariant($"A saving of {100 * Value:0} % ({100 * Low:0} to {100 * High:0} %) cannot be."), "Give the share of the heat saved, between -20 and 95 %."));
        }

        if (ModelledSaving is { } m && !(m >= LeastModelled))
        {
            faults.Add(new("NO_SAVING", "likeHouse", Invariant($"The model expects {100 * m:0.0} % of this retrofit on the house chosen: nothing to set the result against."), "Choose a house like the one measured, or give the factor."));
        }

        if (faults.Count > 0)
        {
            return (null, faults);
        }

        var scale = ModelledSaving ?? 1;
        var facts = new EvidenceFacts
        {
            RetrofitCode = RetrofitCode,
            Kind = Kind,
            FactorMean = Value / scale,
            FactorSd = Math.Max(0.01, (High - Low) / (2 * ToEnd) / scale),
            SavingShare = saving ? Value : null,
            SiteKey = string.IsNullOrWhiteSpace(Site) ? null : Site.Trim(),
        };
        return facts.Check() is { Count: > 0 } wrong ? (null, wrong) : (facts, []);
    }
}
