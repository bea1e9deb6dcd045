using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Funding;
using FarmPortfolio.Host.Storage.Items;
using FarmPortfolio.Host.Studies;

namespace FarmPortfolio.Host.Api;

/// <summary>What a decision needs, and the awards that follow from it.</summary>
internal static class RoundClosing
{
    /// <summary>What stands against deciding a round now.</summary>
    public static IReadOnlyList<Fault> Obstacles(RoundsDesk desk, Item<FundingRoundFacts> round, StudyChanges changes, CancellationToken cancel)
    {
        if (round.Facts.Check() is { Count: > 0 } wrong)
        {
            return wrong;
        }

        if (desk.Register.Newest is not { } study || desk.Plan(round, cancel) is not { } plan)
        {
            return [new("NO_STUDY", "studyId", "No study stands behind the order.", "Run one by the line in the head of the page.")];
        }

        if (changes.Since(desk.Register.Viewer, study) is { Count: > 0 } changed)
        {
            return [new("STUDY_OLD", "studyId", $"Study {study.Number} is out of date: {changed[0].Name}{(changed.Count > 1 ? $" and {changed.Count - 1} more" : string.Empty)} changed since.", "Run the study again by the line in the head, look at the order, then decide.")];
        }

        if (plan.Order.All(r => !r.Funded))
        {
            return [new("NONE_FUNDED", "rules", "Under these rules nothing is funded.", "Change the rules, or leave the round open.")];
        }

        var farms = plan.Order.Where(r => r.Funded).Select(r => r.FarmId).Concat(plan.Overrides.Select(o => desk.FarmOf(o.HouseId))).Distinct(StringComparer.Ordinal).Select(f => (f, desk.FarmName(f))).ToList();
        return Ballot.Check(plan.Round, farms);
    }

    /// <summary>The award of a funded row.</summary>
    public static ItemToSave Award(RoundsDesk desk, string decisionId, RoundDecision decision, DecidedRow row) => new(ItemKind.Award, null, null, new AwardFacts
    {
        DecisionId = decisionId,
        RoundId = decision.RoundId,
        FarmId = row.FarmId,
        HouseId = row.HouseId,
        OptionKey = row.OptionKey,
        Title = row.Title,
        GrantCapCents = (long)Math.Round(100 * row.GrantUsd),
        GrantShare = row.EligibleUsd > 0 ? Math.Min(1, row.GrantUsd / row.EligibleUsd) : 1,
        OutlayCents = (long)Math.Round(100 * row.OutlayUsd),
        AwardedOn = decision.DecidedOn,
        PromisedKwh = row.FuelSavedKwh,
        Conditions = row.Conditions,
        Milestones = Milestones.Of(decision.DecidedOn),
    }, new($"award to {desk.FarmName(row.FarmId)}, {desk.HouseName(row.HouseId)}"));
}
