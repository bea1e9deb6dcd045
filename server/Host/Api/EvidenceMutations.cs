using FarmPortfolio.Engine;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Trials;
using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>A result by hand: a factor, or with a house like the one measured a saving; shares, with the ends of the 90 % interval.</summary>
public sealed record EvidenceInput(
    [property: Id] string RequestId, string RetrofitCode, EvidenceKind Kind, string Source, string? Site, string? Note, double Value, double Low, double High, [property: Id] string? LikeHouseId, bool? CheckOnly);

/// <summary>What came of a piece of evidence: in words what it is taken as.</summary>
public sealed record EvidencePayload([property: Id] string? ChangeId, string Words, IEnumerable<FaultView> Faults);

/// <summary>Nights of a house of a trial to set aside.</summary>
public sealed record SetNightsAsideInput([property: Id] string RequestId, [property: Id] string TrialId, int ExpectedRevision, string House, DateOnly From, DateOnly To, string Reason);

/// <summary>Evidence by hand, and nights set aside.</summary>
public sealed partial class Mutation
{
    /// <summary>Looks at a published or judged result of a retrofit, and keeps it when asked and sound.</summary>
    public static EvidencePayload AddEvidence([FromServices] Register register, EvidenceInput input)
    {
        var faults = new List<Fault>();
        if (register.Catalogue.Find(CatalogueKind.Retrofit, input.RetrofitCode) is null)
        {
            faults.Add(new("UNKNOWN_RETROFIT", "retrofitCode", $"The catalogue has no retrofit \"{input.RetrofitCode}\".", "Choose one of the list."));
        }

        if (string.IsNullOrWhiteSpace(input.Source))
        {
            faults.Add(new("EMPTY", "source", "The evidence names no source.", "Say who measured or judged it, where and when."));
        }

        var modelled = faults.Count == 0 && !string.IsNullOrEmpty(input.LikeHouseId) ? HouseLike.SavingOf(register, input.LikeHouseId, input.RetrofitCode, faults) : null;
        if (faults.Count > 0)
        {
            return new(null, string.Empty, faults.Select(FaultView.Of));
        }

        var (evidence, wrong) = new HandEvidence(input.RetrofitCode, input.Kind, input.Value, input.Low, input.High, modelled, input.Site).Of();
        if (evidence is null)
        {
            return new(null, string.Empty, wrong.Select(FaultView.Of));
        }

        var words = FormattableString.Invariant($"{(modelled is { } m ? FormattableString.Invariant($"The model expects {100 * m:0} % on such a house in a middling winter, so the") : "The")} factor is {evidence.FactorMean:0.00} with a spread of {evidence.FactorSd:0.00}.");
        if (input.CheckOnly != false)
        {
            return new(null, words, []);
        }

        var outcome = register.Items.Save(register.Viewer, register.Coop.Id, $"evidence on {input.RetrofitCode} is added", input.RequestId,
            [new(ItemKind.Evidence, null, null, evidence, new(input.Source.Trim(), Note: string.IsNullOrWhiteSpace(input.Note) ? null : input.Note.Trim()))]);
        return new(outcome.ChangeId, words, outcome.Faults.Select(FaultView.Of));
    }

    /// <summary>Lets evidence count, or sets it aside with a reason.</summary>
    public static SavePayload CountEvidence([FromServices] Register register, [Id] string id, int expectedRevision, bool counted, string? reason, [Id] string requestId)
    {
        if (register.Items.Find<EvidenceFacts>(register.Viewer, ItemKind.Evidence, id) is not { } evidence)
        {
            return Missing("piece of evidence");
        }

        var facts = evidence.Facts with { Counted = counted, SetAsideReason = counted ? null : reason?.Trim() };
        return facts.Check() is { Count: > 0 } faults ? new(null, false, faults.Select(FaultView.Of))
            : Saved(register.Items.Save(register.Viewer, register.Coop.Id, counted ? "evidence counts again" : "evidence is set aside", requestId, [new(ItemKind.Evidence, id, expectedRevision, facts, evidence.Remarks)]));
    }

    /// <summary>Sets nights of a house of a trial aside, with the reason on record; its evidence is reckoned again in the same change.</summary>
    public static SavePayload SetNightsAside([FromServices] Register register, SetNightsAsideInput input)
    {
        if (register.Items.Find<TrialFacts>(register.Viewer, ItemKind.Trial, input.TrialId) is not { } trial)
        {
            return Missing("trial");
        }

        var wrong = TrialChecks.Of(trial.Facts, new TrialExclusion(input.House, input.From, input.To, input.Reason.Trim()));
        return wrong.Count > 0 ? new(null, false, wrong.Select(FaultView.Of))
            : TrialAgain.Save(register, trial, [.. trial.Facts.Exclusions, new(input.House, input.From, input.To, input.Reason.Trim())], input.ExpectedRevision, $"nights of house {input.House} are set aside: {input.Reason.Trim()}", input.RequestId);
    }

    /// <summary>Takes nights that were set aside back in.</summary>
    public static SavePayload TakeNightsBack([FromServices] Register register, [Id] string trialId, int expectedRevision, int no, [Id] string requestId)
    {
        if (register.Items.Find<TrialFacts>(register.Viewer, ItemKind.Trial, trialId) is not { } trial || no < 0 || no >= trial.Facts.Exclusions.Count)
        {
            return Missing("stretch of nights");
        }

        return TrialAgain.Save(register, trial, [.. trial.Facts.Exclusions.Where((_, i) => i != no)], expectedRevision, $"nights of house {trial.Facts.Exclusions[no].Label} count again", requestId);
    }
}

/// <summary>The saving that the model expects on a house like the one measured.</summary>
internal static class HouseLike
{
    /// <summary>Saving as a share, in the middling winter of the house's station, the retrofit taken off the house first.</summary>
    internal static double? SavingOf(Register register, string houseId, string code, List<Fault> faults)
    {
        if (!register.Houses.TryGetValue(houseId, out var house) || register.Middling(house.Facts) is not { } winter)
        {
            faults.Add(new("NO_HOUSE", "likeHouse", "The house to compare with is not there, or its station has no winter.", "Choose a house of the register whose farm has a weather station."));
            return null;
        }

        var (facts, set) = (house.Facts with { RetrofitsInstalled = [.. house.Facts.RetrofitsInstalled.Where(r => r != code)] }, register.SetFacts);
        var (model, wrong) = HouseModels.Of(facts, register.Catalogue, set.Heat(), set.FirstSeason, register.Fuel(facts));
        var with = model is null ? null : OptionModels.Of(model, new("evidence", [code])) is var (built, unfit) && built is not null ? built : Refuse(unfit);
        if (model is null || with is null)
        {
            faults.AddRange(wrong);
            return null;
        }

        var standing = OptionModels.AsItStands(model);
        var (before, after) = (HeatBalance.Season(standing, winter).TotalKwh / standing.Efficiency, HeatBalance.Season(with, winter).TotalKwh / with.Efficiency);
        return before > 0 ? 1 - after / before : 0;

        OptionModel? Refuse(IReadOnlyList<Fault> unfit)
        {
            faults.AddRange(unfit);
            return null;
        }
    }
}

/// <summary>A trial with other nights set aside.</summary>
internal static class TrialAgain
{
    /// <summary>Saves the trial and what its evidence then says, as one change.</summary>
    internal static SavePayload Save(Register register, Item<TrialFacts> trial, IReadOnlyList<TrialExclusion> exclusions, int expectedRevision, string said, string requestId)
    {
        var facts = trial.Facts with { Exclusions = exclusions };
        var readings = register.Blobs.Read(register.Viewer, facts.ReadingsSha256);
        var report = TrialView.Report(register, facts, readings);
        if (report.Comparisons.Count < TrialView.Report(register, trial.Facts, readings).Comparisons.Count)
        {
            return new(null, false, [.. report.Faults.Select(FaultView.Of), FaultView.Of(new("TOO_FEW_LEFT", "from", "With these nights aside a house of the trial has no answer left.", "Set fewer nights aside; a piece of evidence as a whole can be set aside in the list of evidence."))]);
        }

        var again = report.Comparisons.Select(c => EvidenceFacts.Of(c, trial.Id, trial.Revision + 1)).OfType<EvidenceFacts>().ToLookup(e => e.RetrofitCode);

        List<ItemToSave> items = [new(ItemKind.Trial, trial.Id, expectedRevision, facts, trial.Remarks)];
        foreach (var old in register.Items.All<EvidenceFacts>(register.Viewer, register.Coop.Id, ItemKind.Evidence).Where(e => e.Facts.TrialId == trial.Id))
        {
            if (again[old.Facts.RetrofitCode].FirstOrDefault() is { } now)
            {
                items.Add(new(ItemKind.Evidence, old.Id, old.Revision, now with { SiteKey = old.Facts.SiteKey, Counted = old.Facts.Counted, SetAsideReason = old.Facts.SetAsideReason }, old.Remarks));
            }
        }

        return Mutation.Saved(register.Items.Save(register.Viewer, register.Coop.Id, said, requestId, items));
    }
}
