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

        if (award.Facts.ReturnedOn is not null && input.ReturnedOn is null && desk.AwardsOf(award.Facts.RoundId).Any(a => a.Facts.AwardedOn > award.Facts.ReturnedOn))
        {
            return new(null, false, [FaultView.Of(new("MONEY_GONE", "returnedOn", "The money of this award went down the waiting list.", "Correct the decision of the round instead."))]);
        }

        static long Cents(double usd) => (long)Math.Round(100 * Math.Clamp(usd, -1e9, 1e9));
        var facts = award.Facts with
        {
            Milestones = [.. input.Milestones.Select(m => new Milestone(m.Kind, m.DueOn, m.DoneOn, string.IsNullOrWhiteSpace(m.Evidence) ? null : m.Evidence.Trim())).OrderBy(m => m.Kind)],
            InvoicedCents = input.InvoicedUsd is { } cost ? Cents(cost) : null,
            PaidCents = Cents(input.PaidUsd),
            ReturnedOn = input.ReturnedOn,
            ReturnedReason = input.ReturnedOn is null || string.IsNullOrWhiteSpace(input.ReturnedReason) ? null : input.ReturnedReason.Trim(),
            Verified = input.Verified is { } v ? new(VerifiedBy.Hand, v.Share, v.Low, v.High, v.Season, v.Words.Trim()) : null,
        };
        var faults = new List<Fault>(facts.Check());
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
}
