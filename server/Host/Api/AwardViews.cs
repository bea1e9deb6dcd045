using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Funding;
using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>A step that is late.</summary>
[Name("Overdue")]
public sealed record OverdueView(MilestoneKind Kind, DateOnly DueOn, int DaysLate, bool MayReturn);

/// <summary>A grant given and followed to its verified result.</summary>
[Name("Award")]
public sealed class AwardView(RoundsDesk desk, Item<AwardFacts> award)
{
    private readonly AwardFacts facts = award.Facts;

    /// <summary>Identifier.</summary>
    [Id] public string Id => award.Id;

    /// <summary>Revision.</summary>
    public int Revision => (int)award.Revision;

    /// <summary>Round.</summary>
    [Id] public string RoundId => facts.RoundId;

    /// <summary>Name of the round.</summary>
    public string Round => desk.Round(facts.RoundId)?.Remarks.Name ?? "unnamed";

    /// <summary>Number of the decision that gave it; null = given before decisions were kept.</summary>
    public int? DecisionNumber => (int?)desk.Decisions.FirstOrDefault(d => d.Id == facts.DecisionId)?.Number;

    /// <summary>Number of the study behind it; null = none.</summary>
    public int? StudyNumber => (int?)desk.Decisions.FirstOrDefault(d => d.Id == facts.DecisionId)?.Decision.StudyNumber;

    /// <summary>Farm.</summary>
    [Id] public string FarmId => facts.FarmId;

    /// <summary>Name of the farm.</summary>
    public string Farm => desk.FarmName(facts.FarmId);

    /// <summary>House.</summary>
    [Id] public string HouseId => facts.HouseId;

    /// <summary>Name of the house.</summary>
    public string House => desk.HouseName(facts.HouseId);

    /// <summary>House and key of the option.</summary>
    [Id] public string OptionId => $"{facts.HouseId}~{facts.OptionKey}";

    /// <summary>Plain name of the option.</summary>
    public string Title => facts.Title;

    /// <summary>Fuel of the house.</summary>
    public FuelKind? Fuel => desk.Register.Houses.TryGetValue(facts.HouseId, out var h) ? desk.Register.Fuel(h.Facts) : null;

    /// <summary>Most that is paid.</summary>
    public double GrantCapUsd => facts.GrantCapCents / 100.0;

    /// <summary>Share of the eligible cost.</summary>
    public double GrantShare => facts.GrantShare;

    /// <summary>Whole cost expected.</summary>
    public double OutlayUsd => facts.OutlayCents / 100.0;

    /// <summary>Eligible cost as invoiced.</summary>
    public double? InvoicedUsd => facts.InvoicedCents / 100.0;

    /// <summary>What the grant comes to.</summary>
    public double PayableUsd => facts.PayableCents / 100.0;

    /// <summary>Paid so far.</summary>
    public double PaidUsd => facts.PaidCents / 100.0;

    /// <summary>Money that went back to the round.</summary>
    public double FreedUsd => facts.FreedCents / 100.0;

    /// <summary>What the farm pays before the grant is paid.</summary>
    public double BridgeUsd => (facts.InvoicedCents ?? facts.OutlayCents) / 100.0;

    /// <summary>Years after payment in which it is paid back for the months left.</summary>
    public int? ObligationYears => desk.Round(facts.RoundId)?.Facts.ObligationYears;

    /// <summary>Day it was given.</summary>
    public DateOnly AwardedOn => facts.AwardedOn;

    /// <summary>Where it stands: offered, entered by hand, the last step done, returned.</summary>
    public string State => facts.State;

    /// <summary>Conditions.</summary>
    public IEnumerable<string> Conditions => facts.Conditions;

    /// <summary>Steps.</summary>
    public IEnumerable<Milestone> Milestones => facts.Milestones;

    /// <summary>The step it is late with; null = none.</summary>
    public OverdueView? Overdue => Engine.Funding.Milestones.Late(facts, desk.Today) is { } late ? new(late.Milestone.Kind, late.Milestone.DueOn, late.DaysLate, late.MayReturn) : null;

    /// <summary>Day on which the money went back.</summary>
    public DateOnly? ReturnedOn => facts.ReturnedOn;

    /// <summary>Why.</summary>
    public string? ReturnedReason => facts.ReturnedReason;

    /// <summary>Fuel saving promised a season, kWh.</summary>
    public double? PromisedKwh => facts.PromisedKwh;

    /// <summary>One in ten is lower, kWh; null = the papers do not tell it.</summary>
    public double? PromisedLowKwh => facts.PromisedLowKwh;

    /// <summary>One in ten is higher, kWh; null = the papers do not tell it.</summary>
    public double? PromisedHighKwh => facts.PromisedHighKwh;

    /// <summary>Whether its round was entered by hand, not decided here.</summary>
    public bool IsEntered => desk.Round(facts.RoundId)?.Facts.State == RoundState.Entered;

    /// <summary>Codes of the works that it paid for.</summary>
    public IEnumerable<string> Parts => facts.OptionKey.Split('-')[..^1];

    /// <summary>Net saving of a season as it stood in the order of the decision, with its range; null = no study stood behind it.</summary>
    public Spread? SavingUsd => desk.Decisions.FirstOrDefault(d => d.Id == facts.DecisionId)?.Decision.Order.FirstOrDefault(r => r.HouseId == facts.HouseId && r.OptionKey == facts.OptionKey)?.SavingUsd;

    /// <summary>What was verified.</summary>
    public Verification? Verified => facts.Verified;
}

/// <summary>Awards of a co-op.</summary>
public sealed partial class CoopView
{
    /// <summary>Awards, newest first.</summary>
    public IEnumerable<AwardView> Awards([FromServices] RoundsDesk desk) => desk.Awards.Values.OrderByDescending(a => a.Facts.AwardedOn).ThenBy(a => desk.FarmName(a.Facts.FarmId), StringComparer.Ordinal).ThenBy(a => a.Id, StringComparer.Ordinal).Select(a => new AwardView(desk, a));

    /// <summary>What awards delivered of what they promised; null = nothing was promised.</summary>
    public DeliveredView? Delivered([FromServices] RoundsDesk desk) => DeliveredView.Of(Engine.Funding.Delivered.Of(desk.Awards.Values.Select(a => a.Facts)));
}

/// <summary>Awards.</summary>
public sealed partial class Query
{
    /// <summary>An award.</summary>
    public static AwardView? Award([FromServices] RoundsDesk desk, [Id] string id) => desk.Awards.TryGetValue(id, out var award) ? new(desk, award) : null;
}
