using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Funding;
using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>A step with its days.</summary>
public sealed record MilestoneInput(MilestoneKind Kind, DateOnly DueOn, DateOnly? DoneOn, string? Evidence);

/// <summary>What was verified, shares of what was promised with the ends of the 90 % interval.</summary>
public sealed record VerificationInput(double Share, double Low, double High, int? Season, string Words);

/// <summary>An award to save.</summary>
public sealed record SaveAwardInput(
    [property: Id] string Id, int ExpectedRevision, [property: Id] string RequestId, IEnumerable<MilestoneInput> Milestones, double? InvoicedUsd, double PaidUsd, DateOnly? ReturnedOn, string? ReturnedReason, VerificationInput? Verified);

/// <summary>Awards followed.</summary>
public sealed partial class Mutation
{
    /// <summary>Saves how an award goes on: steps, cost, payment, money back, what was verified.</summary>
    public static SavePayload SaveAward([FromServices] RoundsDesk desk, SaveAwardInput input)
    {
        if (!desk.Awards.TryGetValue(input.Id, out var award))
        {
            return Missing("award");
        }

        static long Cents(double usd) => (long)Math.Round(100 * Math.Clamp(usd, -1e9, 1e9));
        var facts = award.Facts with
        {
            Milestones = [.. input.Milestones.Select(m => new Milestone(m.Kind, m.DueOn, m.DoneOn, string.IsNullOrWhiteSpace(m.Evidence) ? null : m.Evidence.Trim())).OrderBy(m => m.Kind)],
            InvoicedCents = input.InvoicedUsd is { } cost ? Cents(cost) : null,
            PaidCents = Cents(input.PaidUsd),
            ReturnedOn = input.ReturnedOn,
            ReturnedReason = input.ReturnedOn is null || string.IsNullOrWhiteSpace(input.ReturnedReason) ? null : input.ReturnedReason.Trim(),
            Verified = input.Verified is not { } v ? null : award.Facts.Verified is { } known && (known.Share, known.Low, known.High, known.Words) == (v.Share, v.Low, v.High, v.Words.Trim()) ? known : new(VerifiedBy.Hand, v.Share, v.Low, v.High, v.Season, v.Words.Trim()),
        };
        var faults = new List<Fault>(facts.Check());
        if (facts.PayableCents > award.Facts.PayableCents && MoneyGone(desk, award, facts) is { } gone)
        {
            faults.Add(gone);
        }

        if (facts.Milestones.GroupBy(m => m.Kind).Any(g => g.Count() > 1))
        {
            faults.Add(new("DOUBLED", "milestones", "A step stands twice.", "Give each step once."));
        }

        if (input.Verified is not null && string.IsNullOrWhiteSpace(facts.Verified!.Words))
        {
            faults.Add(new("EMPTY", "verifiedWords", "What was verified names no ground.", "Say what stands behind it: which bills, which season, whose reckoning."));
        }

        var name = $"{desk.FarmName(facts.FarmId)}, {desk.HouseName(facts.HouseId)}";
        return faults.Count > 0
            ? new(null, false, faults.Select(FaultView.Of))
            : Saved(desk.Register.Items.Save(desk.Register.Viewer, desk.Register.Coop.Id, facts.ReturnedOn is not null && award.Facts.ReturnedOn is null ? $"the grant of {name} goes back" : $"the award of {name} is followed up", input.RequestId,
                [new(ItemKind.Award, input.Id, input.ExpectedRevision, facts, award.Remarks)]));
    }

    /// <summary>Verifies an award from the bills of its tank or meter before and after it was installed, and keeps what they say.</summary>
    public static SavePayload VerifyAward([FromServices] RoundsDesk desk, [Id] string id, int expectedRevision, [Id] string requestId)
    {
        if (!desk.Awards.TryGetValue(id, out var award))
        {
            return Missing("award");
        }

        var (verified, fault) = FromBills(desk, award.Facts);
        return fault is not null
            ? new(null, false, [FaultView.Of(fault)])
            : Saved(desk.Register.Items.Save(desk.Register.Viewer, desk.Register.Coop.Id, $"the award of {desk.FarmName(award.Facts.FarmId)}, {desk.HouseName(award.Facts.HouseId)}, is verified from its bills", requestId,
                [new(ItemKind.Award, id, expectedRevision, award.Facts with { Verified = verified }, award.Remarks)]));
    }

    // money that came back and was given again is not there a second time, nor is more than the budget
    private static Fault? MoneyGone(RoundsDesk desk, Item<AwardFacts> award, AwardFacts facts)
    {
        if (desk.DecisionsOf(award.Facts.RoundId) is not [.., var last])
        {
            return null;
        }

        var rules = last.Decision.Round.Rules;
        var most = desk.DecisionsOf(award.Facts.RoundId).Any(d => d.Decision.Kind == DecisionKind.WaitingList) ? rules.AvailableUsd : rules.BudgetUsd;
        var total = desk.AwardsOf(award.Facts.RoundId).Sum(a => a.Id == award.Id ? facts.PayableCents : a.Facts.PayableCents) / 100.0;
        return total <= most + 0.005 ? null
            : new("MONEY_GONE", facts.ReturnedOn is null && award.Facts.ReturnedOn is not null ? "returnedOn" : "invoicedUsd",
                $"The money of this award went down the waiting list: the grants of the round would come to ${total:#,0.##}, and ${most:#,0.##} can be given.", "Correct the decision of the round instead, within its budget.");
    }

    private static (Verification? Verified, Fault? Fault) FromBills(RoundsDesk desk, AwardFacts facts)
    {
        var register = desk.Register;
        if (facts.Milestones.FirstOrDefault(m => m.Kind == MilestoneKind.Installed)?.DoneOn is not { } installed || facts.PromisedKwh is not { } promised)
        {
            return (null, new("NOT_INSTALLED", "verified", "The day of installation or the promise is not on record.", "Enter the day it was installed and save, then verify."));
        }

        if (!register.Houses.TryGetValue(facts.HouseId, out var house) || register.Recorded(house.Facts) is not { } groupId || register.RecordOf(groupId) is not { } record)
        {
            return (null, new("NO_BILLS", "verified", "No bills are on file for the tank or meter of the house.", "Enter them on its page, or enter the result by hand with its interval."));
        }

        // the houses as they were: what the award paid for is taken off again where the register has it installed
        var codes = facts.OptionKey.Split('-')[..^1];
        var without = house with { Facts = house.Facts with { RetrofitsInstalled = [.. house.Facts.RetrofitsInstalled.Except(codes)] } };
        var behind = register.Behind(groupId).Select(b => b.Id == house.Id && register.Model(without).Model is { } model ? b with { Model = model } : b).ToList();
        return SavingFromBills.Of(register.Groups[groupId].Facts, record.Facts, behind, register.WintersOf(groupId), installed, promised, register.Heating, register.OnNormals(groupId));
    }
}
