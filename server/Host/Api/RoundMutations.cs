using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Funding;
using FarmPortfolio.Host.Storage.Items;
using FarmPortfolio.Host.Studies;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>An interest declared.</summary>
public sealed record InterestInput([property: Id] string? FarmId, string Relation);

/// <summary>A member of the committee.</summary>
public sealed record MemberInput(string Name, bool Present, Vote Vote, IEnumerable<InterestInput> Interests);

/// <summary>A test looked at.</summary>
public sealed record ShownInput(string Test, bool Passed, string? Evidence, DateOnly? On);

/// <summary>An application.</summary>
public sealed record ApplicationInput([property: Id] string HouseId, DateOnly? CompleteOn, double? OtherGrantsUsd, IEnumerable<ShownInput> Shown);

/// <summary>Days of a round; null = not set.</summary>
public sealed record RoundDaysInput(DateOnly? RulesSetOn, DateOnly? ReserveUntilOn, DateOnly? GroupsUntilOn, DateOnly? WaitingUntilOn, int LookBackYears, int? ObligationYears);

/// <summary>A round to save; no id = a new one. A part that is left out stays as it is.</summary>
public sealed record SaveRoundInput(
    [property: Id] string? Id, int? ExpectedRevision, [property: Id] string RequestId, string Name, FundingRulesInput? Rules, RoundDaysInput? Days, IEnumerable<MemberInput>? Committee, int? Quorum, IEnumerable<ApplicationInput>? Applications);

/// <summary>What came of saving or deciding a round.</summary>
public sealed record RoundPayload([property: Id] string? RoundId, [property: Id] string? ChangeId, bool Conflict, IEnumerable<FaultView> Faults);

/// <summary>A grant as it should have been; 0 = not funded.</summary>
public sealed record CorrectedRowInput([property: Id] string HouseId, double GrantUsd);

/// <summary>A correction of a decided round.</summary>
public sealed record CorrectDecisionInput([property: Id] string RoundId, [property: Id] string RequestId, string Reason, IEnumerable<CorrectedRowInput> Rows);

/// <summary>Rounds kept, decided and corrected.</summary>
public sealed partial class Mutation
{
    /// <summary>Saves a round that is open.</summary>
    public static RoundPayload SaveRound([FromServices] RoundsDesk desk, SaveRoundInput input)
    {
        var known = input.Id is null ? null : desk.Round(input.Id);
        if (input.Id is not null && known is null)
        {
            return Refused(new Fault("NOT_FOUND", "id", "There is no such round.", "Reload the page."));
        }

        if (known?.Facts.State == RoundState.Entered)
        {
            return Refused(EnteredElsewhere);
        }

        if (known?.Facts.State == RoundState.Decided)
        {
            return Refused(new Fault("DECIDED", "id", "The round is decided: its rules, order and votes are frozen.", "Correct the decision, which makes a new one that names it."));
        }

        if (string.IsNullOrWhiteSpace(input.Name))
        {
            return Refused(new Fault("EMPTY", "name", "The round has no name.", "Give it one, such as the season and a number."));
        }

        var facts = known?.Facts ?? new() { RulesSetOn = desk.Today };
        var committee = input.Committee?.Select((m, i) => (Key: $"m{i + 1}", Member: m)).ToList();
        facts = facts with
        {
            Rules = input.Rules?.Rules() ?? facts.Rules,
            RulesSetOn = input.Days is null ? facts.RulesSetOn : input.Days.RulesSetOn,
            ReserveUntilOn = input.Days is null ? facts.ReserveUntilOn : input.Days.ReserveUntilOn,
            GroupsUntilOn = input.Days is null ? facts.GroupsUntilOn : input.Days.GroupsUntilOn,
            WaitingUntilOn = input.Days is null ? facts.WaitingUntilOn : input.Days.WaitingUntilOn,
            LookBackYears = input.Days?.LookBackYears ?? facts.LookBackYears,
            ObligationYears = input.Days?.ObligationYears ?? facts.ObligationYears,
            Quorum = input.Quorum ?? facts.Quorum,
            Committee = committee is null ? facts.Committee : [.. committee.Select(m => new CommitteeMember(m.Key, m.Member.Present, m.Member.Vote, [.. m.Member.Interests.Select(i => new Interest(i.FarmId, i.Relation.Trim()))]))],
            Applications = input.Applications is null ? facts.Applications : [.. input.Applications.Select(a => new Application(a.HouseId, a.CompleteOn, a.OtherGrantsUsd ?? 0, [.. a.Shown.Select(s => new ShownTest(s.Test, s.Passed, s.Evidence, s.On))]))],
        };
        var faults = new List<Fault>(facts.Check());
        if (committee?.Any(m => string.IsNullOrWhiteSpace(m.Member.Name)) == true)
        {
            faults.Add(new("EMPTY", "committee", "A member has no name.", "Name every member, or leave the line out."));
        }

        if (committee?.GroupBy(m => string.Join(' ', m.Member.Name.Split(' ', StringSplitOptions.RemoveEmptyEntries)), StringComparer.OrdinalIgnoreCase).FirstOrDefault(g => g.Count() > 1 && g.Key.Length > 0) is { } twice)
        {
            faults.Add(new("DOUBLED", "committee", $"\"{twice.Key}\" stands twice in the committee, and would count twice for quorum and votes.", "Name each member once; tell two people of one name apart."));
        }

        if (committee?.SelectMany(m => m.Member.Interests).FirstOrDefault(i => i.FarmId is { } f && !desk.Register.Farms.ContainsKey(f)) is not null || input.Applications?.Any(a => !desk.Register.Houses.ContainsKey(a.HouseId)) == true)
        {
            faults.Add(new("NOT_FOUND", "committee", "An interest or an application names a farm or house that is not of this co-op.", "Choose one from the list."));
        }

        if (faults.Count > 0)
        {
            return Refused([.. faults]);
        }

        var name = input.Name.Trim();
        var people = committee is null ? known?.Remarks.People : committee.ToDictionary(m => m.Key, m => m.Member.Name.Trim());
        return Round(desk.Register.Items.Save(desk.Register.Viewer, desk.Register.Coop.Id, known is null ? $"round {name} is kept" : $"round {name} is changed", input.RequestId,
            [new(ItemKind.FundingRound, input.Id, input.ExpectedRevision, facts, (known?.Remarks ?? new()) with { Name = name, People = people })]));
    }

    /// <summary>Closes a round: freezes rules, study, order, overrides and votes as a decision, and gives the awards.</summary>
    public static RoundPayload CloseRound([FromServices] RoundsDesk desk, [FromServices] StudyChanges changes, [Id] string id, int expectedRevision, [Id] string requestId, CancellationToken cancellationToken = default)
    {
        if (desk.Round(id) is not { } round)
        {
            return Refused(new Fault("NOT_FOUND", "id", "There is no such round.", "Reload the page."));
        }

        if (round.Facts.State == RoundState.Entered)
        {
            return Refused(EnteredElsewhere);
        }

        if (round.Facts.State == RoundState.Decided && desk.Awards.Values.All(a => a.Facts.RoundId != id))
        {
            return Refused(new Fault("DECIDED", "id", "The round is decided already.", "Reload the page."));
        }

        if (round.Facts.State == RoundState.Open && RoundClosing.Obstacles(desk, round, changes, cancellationToken) is { Count: > 0 } obstacles)
        {
            return Refused([.. obstacles]);
        }

        var plan = desk.Plan(round, cancellationToken)! with { Kind = DecisionKind.Round };
        return Round(desk.Store.Decide(desk.Register.Viewer, desk.Register.Coop.Id, $"round {round.Remarks.Name} is decided", requestId, plan, decision =>
        [
            new(ItemKind.FundingRound, id, expectedRevision, round.Facts with { State = RoundState.Decided }, round.Remarks),
            .. plan.Order.Where(r => r.Funded).Select(r => RoundClosing.Award(desk, decision, plan, r)),
        ]));
    }

    /// <summary>Corrects a decided round: a new decision that names the old one, with the awards changed to it.</summary>
    public static RoundPayload CorrectDecision([FromServices] RoundsDesk desk, CorrectDecisionInput input)
    {
        if (desk.Round(input.RoundId) is not { Facts.State: RoundState.Decided } round)
        {
            return Refused(new Fault("NOT_FOUND", "roundId", "There is no such decided round.", "Reload the page."));
        }

        if (string.IsNullOrWhiteSpace(input.Reason))
        {
            return Refused(new Fault("REASON_NEEDED", "reason", "The correction has no reason.", "Say what was wrong in the decision."));
        }

        var last = desk.DecisionsOf(round.Id)[^1];
        var changed = input.Rows.GroupBy(r => r.HouseId).ToDictionary(g => g.Key, g => g.Last().GrantUsd);
        var told = last.Decision;
        if (changed.Count == 0 || changed.Keys.FirstOrDefault(h => told.Order.All(r => r.HouseId != h)) is not null)
        {
            return Refused(new Fault("NOT_FOUND", "rows", "The correction changes nothing, or names a house that is not in the order.", "Choose houses of the order, with the grant that each should have had."));
        }

        if (changed.FirstOrDefault(c => !(c.Value >= 0 && c.Value <= told.Order.First(r => r.HouseId == c.Key).EligibleUsd)) is { Key: { } over } wrong)
        {
            return Refused(new Fault("OUT_OF_RANGE", "rows", $"A grant of ${wrong.Value:#,0.##} for {desk.FarmName(desk.FarmOf(over))}, {desk.HouseName(over)} is outside 0 to its eligible cost.", "Give dollars between 0 and the eligible cost."));
        }

        var order = WaitingList.Standing(told, [.. desk.AwardsOf(round.Id).Select(a => a.Facts)]).Select(r => changed.TryGetValue(r.HouseId, out var usd) ? r with { GrantUsd = usd > 0 ? usd : r.GrantUsd, Funded = usd > 0, Why = $"corrected: {input.Reason.Trim()}" } : r).OrderByDescending(r => r.Funded).ToList();
        var plan = told with { Kind = DecisionKind.Correction, CorrectsId = last.Id, Reason = input.Reason.Trim(), DecidedOn = desk.Today, Order = order };
        if (plan.GrantUsd() > told.Round.Rules.BudgetUsd)
        {
            return Refused(new Fault("OVER_BUDGET", "rows", $"The grants would come to ${plan.GrantUsd():#,0}, the budget is ${told.Round.Rules.BudgetUsd:#,0}.", "Correct within the budget; the reserve may be used."));
        }

        var (items, faults) = (new List<Func<string, ItemToSave>>(), new List<Fault>());
        foreach (var row in order.Where(r => changed.ContainsKey(r.HouseId)))
        {
            if (desk.AwardsOf(round.Id).FirstOrDefault(a => a.Facts.HouseId == row.HouseId) is not { } award)
            {
                if (row.Funded)
                {
                    items.Add(decision => RoundClosing.Award(desk, decision, plan, row));
                }

                continue;
            }

            var facts = row.Funded
                ? award.Facts with { GrantCapCents = (long)Math.Round(100 * row.GrantUsd), GrantShare = Math.Min(1, row.GrantUsd / row.EligibleUsd), ReturnedOn = null, ReturnedReason = null }
                : award.Facts with { ReturnedOn = desk.Today, ReturnedReason = $"corrected: {input.Reason.Trim()}" };
            faults.AddRange(facts.Check());
            items.Add(decision => new(ItemKind.Award, award.Id, award.Revision, facts with { DecisionId = decision }, award.Remarks));
        }

        return faults.Count > 0 ? Refused([.. faults]) : Decided(desk, round, $"round {round.Remarks.Name} is corrected: {input.Reason.Trim()}", input.RequestId, plan, items);
    }

    /// <summary>Gives money that came back to the next on the frozen list whom it reaches.</summary>
    public static RoundPayload FundNext([FromServices] RoundsDesk desk, [Id] string roundId, [Id] string requestId)
    {
        if (desk.Round(roundId) is not { Facts.State: RoundState.Decided } round)
        {
            return Refused(new Fault("NOT_FOUND", "roundId", "There is no such decided round.", "Reload the page."));
        }

        var last = desk.DecisionsOf(round.Id)[^1];
        var told = last.Decision;
        var (next, passed, none) = WaitingList.Next(told, [.. desk.AwardsOf(round.Id).Select(a => a.Facts)], desk.Today, desk.ApplicantsOf(round));
        if (next is null)
        {
            return Refused(new Fault("NOBODY_NEXT", "roundId", $"Nobody can be funded: {none}.", "Wait until more money comes back."));
        }

        var words = $"money came back; {(passed.Count == 0 ? "first on the list" : $"{passed.Count} before it ask for more than is free or would pass the cap of their farm")}";
        var plan = told with { Kind = DecisionKind.WaitingList, CorrectsId = last.Id, Reason = words, DecidedOn = desk.Today, Order = [.. WaitingList.Standing(told, [.. desk.AwardsOf(round.Id).Select(a => a.Facts)]).Select(r => r.HouseId == next.HouseId ? r with { Funded = true, Why = words } : r).OrderByDescending(r => r.Funded)] };
        return Decided(desk, round, $"{desk.FarmName(next.FarmId)}, {desk.HouseName(next.HouseId)}, is funded from the waiting list of {round.Remarks.Name}", requestId, plan, [decision => RoundClosing.Award(desk, decision, plan, plan.Order.First(r => r.HouseId == next.HouseId))]);
    }

    private static RoundPayload Decided(RoundsDesk desk, Item<FundingRoundFacts> round, string said, string requestId, RoundDecision plan, IEnumerable<Func<string, ItemToSave>> items) =>
        Round(desk.Store.Decide(desk.Register.Viewer, desk.Register.Coop.Id, said, requestId, plan, decision => [new(ItemKind.FundingRound, round.Id, round.Revision, round.Facts, round.Remarks), .. items.Select(i => i(decision))]));

    private static RoundPayload Round(SaveOutcome outcome) => new(outcome.Ids.Count > 0 ? outcome.Ids[0] : null, outcome.ChangeId, outcome.ConflictItemId is not null, outcome.Faults.Select(FaultView.Of));

    private static RoundPayload Refused(params Fault[] faults) => new(null, null, false, faults.Select(FaultView.Of));
}
