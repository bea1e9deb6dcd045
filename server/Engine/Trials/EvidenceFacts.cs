using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Trials;

/// <summary>Where evidence on a retrofit's saving comes from.</summary>
public enum EvidenceKind
{
    /// <summary>A trial of houses run side by side, held by this program.</summary>
    Trial,

    /// <summary>An award followed to its bills.</summary>
    Award,

    /// <summary>A published result.</summary>
    Published,

    /// <summary>Someone's judgement.</summary>
    Judged,
}

/// <summary>What one site says of a retrofit: true saving over the saving modelled for that house, weather and use.</summary>
public sealed record EvidenceFacts
{
    /// <summary>Catalogue code of the retrofit.</summary>
    public required string RetrofitCode { get; init; }

    /// <summary>Where it comes from.</summary>
    public required EvidenceKind Kind { get; init; }

    /// <summary>The trial; null = none in the program.</summary>
    public string? TrialId { get; init; }

    /// <summary>Revision of the trial that the figures were reckoned from; null = none.</summary>
    public long? TrialRevision { get; init; }

    /// <summary>Key of the site: pieces of one site are one site; null = a site of its own.</summary>
    public string? SiteKey { get; init; }

    /// <summary>Measured over modelled saving.</summary>
    public required double FactorMean { get; init; }

    /// <summary>Its standard deviation at that site.</summary>
    public required double FactorSd { get; init; }

    /// <summary>Saving of heat measured, 0 to 1; null = not told.</summary>
    public double? SavingShare { get; init; }

    /// <summary>Whether studies take it; what the catalogue's own figure already rests on must not count twice.</summary>
    public bool Counted { get; init; } = true;

    /// <summary>Why it is set aside; null where it counts.</summary>
    public string? SetAsideReason { get; init; }

    /// <summary>A trial's answer as evidence.</summary>
    /// <param name="comparison">Treated house against the control.</param>
    /// <param name="trialId">The trial.</param>
    /// <param name="revision">Its revision.</param>
    /// <returns>The evidence; null where nothing could be modelled, so that there is no factor.</returns>
    public static EvidenceFacts? Of(TrialComparison comparison, string trialId, long revision = 1) => comparison.Factor is not { } factor ? null : new()
    {
        RetrofitCode = comparison.RetrofitCode,
        Kind = EvidenceKind.Trial,
        TrialId = trialId,
        TrialRevision = revision,
        FactorMean = factor.Value,
        FactorSd = Math.Max(0.01, factor.Sd),
        SavingShare = comparison.Saving.Value,
    };

    /// <summary>What is wrong with the figures.</summary>
    /// <returns>Faults; empty = none.</returns>
    public IReadOnlyList<Fault> Check()
    {
        var faults = new List<Fault>();
        if (!double.IsFinite(FactorMean) || FactorMean is < -0.5 or > 3)
        {
            faults.Add(new("OUT_OF_RANGE", "factorMean", FormattableString.Invariant($"A factor of {ShortFigure.Of(FactorMean, "0.##")} is outside -0.5 to 3."), "Give measured over modelled saving; 1 = as modelled."));
        }

        if (!double.IsFinite(FactorSd) || FactorSd is < 0.01 or > 2)
        {
            faults.Add(new("OUT_OF_RANGE", "factorSd", FormattableString.Invariant($"A spread of {ShortFigure.Of(FactorSd, "0.###")} is outside 0.01 to 2."), "Give the standard deviation of the factor, such as 0.10; no trial is certain."));
        }

        if (!Counted && string.IsNullOrWhiteSpace(SetAsideReason))
        {
            faults.Add(new("REASON_NEEDED", "setAsideReason", "Evidence is set aside without a reason.", "Say why it does not count."));
        }

        return faults;
    }
}
