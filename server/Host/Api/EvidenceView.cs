using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Trials;
using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>What one site says of a retrofit.</summary>
[Name("Evidence")]
public sealed class EvidenceView(Register register, Item<EvidenceFacts> item)
{
    /// <summary>Identifier.</summary>
    [Id] public string Id => item.Id;

    /// <summary>Revision.</summary>
    public int Revision => (int)item.Revision;

    /// <summary>Retrofit.</summary>
    public string RetrofitCode => item.Facts.RetrofitCode;

    /// <summary>Its plain name.</summary>
    public string RetrofitTitle => register.Catalogue.Find(CatalogueKind.Retrofit, item.Facts.RetrofitCode)?.Title ?? item.Facts.RetrofitCode;

    /// <summary>Where it comes from.</summary>
    public EvidenceKind Kind => item.Facts.Kind;

    /// <summary>Site or source in words.</summary>
    public string Source => item.Remarks.Name ?? "not told";

    /// <summary>Note.</summary>
    public string? Note => item.Remarks.Note;

    /// <summary>Measured over modelled.</summary>
    public double FactorMean => item.Facts.FactorMean;

    /// <summary>Its spread at that site.</summary>
    public double FactorSd => item.Facts.FactorSd;

    /// <summary>Saving of heat measured, share.</summary>
    public double? SavingShare => item.Facts.SavingShare;

    /// <summary>Whether studies take it.</summary>
    public bool Counted => item.Facts.Counted;

    /// <summary>Why not.</summary>
    public string? SetAsideReason => item.Facts.SetAsideReason;
}

/// <summary>A retrofit's realised-saving factor before and after the evidence.</summary>
[Name("RealisedFactor")]
public sealed class FactorView(Register register, FactorUpdate update)
{
    /// <summary>Retrofit.</summary>
    public string RetrofitCode => update.RetrofitCode;

    /// <summary>Its plain name.</summary>
    public string RetrofitTitle => register.Catalogue.Find(CatalogueKind.Retrofit, update.RetrofitCode)?.Title ?? update.RetrofitCode;

    /// <summary>Catalogue's mean.</summary>
    public double PriorMean => update.PriorMean;

    /// <summary>Catalogue's spread of a house.</summary>
    public double PriorSd => update.PriorSd;

    /// <summary>Sites that count.</summary>
    public int Sites => update.Pool?.Sites ?? 0;

    /// <summary>Mean of the sites.</summary>
    public double? SitesMean => update.Pool?.Mean;

    /// <summary>Spread of another house by the sites alone.</summary>
    public double? SitesSd => update.Pool?.PredictiveSd;

    /// <summary>Mean that studies take.</summary>
    public double Mean => update.Mean;

    /// <summary>Spread of a house that studies take.</summary>
    public double Sd => update.Sd;

    /// <summary>In a sentence.</summary>
    public string Words => update.Words;
}

/// <summary>Trials and evidence of a co-op.</summary>
public sealed partial class CoopView
{
    /// <summary>Trials, newest first.</summary>
    [Complexity(1, 5)]
    public IEnumerable<TrialView> Trials => register.Items.All<TrialFacts>(register.Viewer, register.Coop.Id, ItemKind.Trial).OrderByDescending(t => t.Facts.StartsOn).Select(t => new TrialView(register, t));

    /// <summary>Evidence by retrofit.</summary>
    public IEnumerable<EvidenceView> Evidence => AllEvidence().OrderBy(e => e.Facts.RetrofitCode, StringComparer.Ordinal).ThenByDescending(e => e.Facts.Counted).ThenBy(e => e.Id, StringComparer.Ordinal).Select(e => new EvidenceView(register, e));

    /// <summary>Factors of every retrofit, those with evidence first.</summary>
    public IEnumerable<FactorView> RealisedFactors
    {
        get
        {
            var evidence = AllEvidence().ToDictionary(e => e.Id, e => e.Facts);
            return register.Catalogue.Entries.Where(e => e.Kind == CatalogueKind.Retrofit && e.Values.ContainsKey("factorMean")).Select(e => FactorUpdate.Of(e.Code, register.Catalogue, evidence, register.SetFacts.CommonShare))
                .OrderByDescending(u => u.EvidenceIds.Count).ThenBy(u => u.RetrofitCode, StringComparer.Ordinal).Select(u => new FactorView(register, u));
        }
    }

    /// <summary>Weeks that a new trial needs, a third of them idle, by the usual spread of careful readings.</summary>
    /// <exception cref="ExecutionError">A figure is out of range.</exception>
    public WeeksView TrialWeeks(double halfWidthPoints = 5, double saving = 0.3) => TrialDesignFields.Weeks(TrialDesign.UsualWeekSd, AskedRange.Of(nameof(saving), saving, 0, TrialDesignFields.MostSaving), halfWidthPoints);

    private IReadOnlyList<Item<EvidenceFacts>> AllEvidence() => register.Items.All<EvidenceFacts>(register.Viewer, register.Coop.Id, ItemKind.Evidence);
}

/// <summary>Evidence that a study took.</summary>
public sealed partial class StudyView
{
    /// <summary>Factors that evidence had updated when the study froze its inputs, in sentences; a retrofit that is not named stands as the catalogue has it.</summary>
    public IEnumerable<string> EvidenceUsed
    {
        get
        {
            var catalogue = Catalogue.BuiltIn.With(register.Studies.Inputs<CatalogueFacts>(register.Viewer, row, ItemKind.CatalogueEntry).Select(i => i.Facts));
            var evidence = register.Studies.Inputs<EvidenceFacts>(register.Viewer, row, ItemKind.Evidence).ToDictionary(i => i.Id, i => i.Facts);
            var set = register.Studies.Inputs<Engine.Scenarios.ScenarioSetFacts>(register.Viewer, row, ItemKind.ScenarioSet);
            return FactorUpdate.All(catalogue, evidence, set.Count > 0 ? set[^1].Facts.CommonShare : 0.5).Values.Select(u => $"{catalogue.Find(CatalogueKind.Retrofit, u.RetrofitCode)!.Title}: {u.Words}");
        }
    }
}
