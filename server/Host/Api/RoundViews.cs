using FarmPortfolio.Engine.Funding;
using FarmPortfolio.Host.Storage;
using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>An interest declared.</summary>
[Name("DeclaredInterest")]
public sealed record InterestView([property: Id] string? FarmId, string? Farm, string Relation);

/// <summary>A member of the committee.</summary>
[Name("CommitteeMember")]
public sealed record MemberView(string Key, string Name, bool Present, Vote Vote, IEnumerable<InterestView> Interests);

/// <summary>A test looked at.</summary>
[Name("ShownTest")]
public sealed record ShownView(string Test, bool Passed, string? Evidence, DateOnly? On);

/// <summary>An application.</summary>
[Name("Application")]
public sealed record ApplicationView([property: Id] string HouseId, string Farm, string House, DateOnly? CompleteOn, double OtherGrantsUsd, IEnumerable<ShownView> Shown);

/// <summary>A decision: written once, never changed.</summary>
[Name("Decision")]
public sealed class DecisionView(RoundsDesk desk, DecisionRow row)
{
    private readonly RoundDecision told = row.Decision;

    /// <summary>Identifier.</summary>
    [Id] public string Id => row.Id;

    /// <summary>Number within the co-op.</summary>
    public int Number => (int)row.Number;

    /// <summary>Kind.</summary>
    public DecisionKind Kind => told.Kind;

    /// <summary>Day.</summary>
    public DateOnly DecidedOn => told.DecidedOn;

    /// <summary>When it was written.</summary>
    public string WrittenAt => row.DecidedUtc;

    /// <summary>Hash of its text.</summary>
    public string BodySha256 => row.BodySha256;

    /// <summary>Hash of the decision before it; empty = the first.</summary>
    public string PreviousSha256 => row.PreviousSha256;

    /// <summary>Number of the decision it corrects or follows.</summary>
    public int? CorrectsNumber => row.CorrectsId is { } id ? (int?)desk.Decisions.First(d => d.Id == id).Number : null;

    /// <summary>Why it was corrected.</summary>
    public string? Reason => told.Reason;

    /// <summary>Number of the study.</summary>
    public int? StudyNumber => (int?)told.StudyNumber;

    /// <summary>Its canonical text.</summary>
    public string Body => row.Body;
}

/// <summary>A round that is kept.</summary>
[Name("FundingRound")]
public sealed class RoundView(RoundsDesk desk, Item<FundingRoundFacts> round)
{
    /// <summary>Identifier.</summary>
    [Id] public string Id => round.Id;

    /// <summary>Revision.</summary>
    public int Revision => (int)round.Revision;

    /// <summary>Name.</summary>
    public string Name => round.Remarks.Name ?? "unnamed";

    /// <summary>When it was last changed.</summary>
    public string ChangedAt => round.ChangedUtc;

    /// <summary>Where it stands.</summary>
    public RoundState State => round.Facts.State;

    /// <summary>Day of the decision of a round entered by hand; null = it is decided here.</summary>
    public DateOnly? EnteredDecidedOn => round.Facts.State == RoundState.Entered ? round.Facts.DecidedOn : null;

    /// <summary>Rules of a round entered by hand, in short words.</summary>
    public string? RulesInShort => round.Facts.State == RoundState.Entered ? round.Remarks.Note : null;

    /// <summary>Rules.</summary>
    public FundingRulesView Rules => FundingRulesView.Of(round.Facts.Rules);

    /// <summary>Day the rules were set.</summary>
    public DateOnly? RulesSetOn => round.Facts.RulesSetOn;

    /// <summary>Day until which the reserve is held.</summary>
    public DateOnly? ReserveUntilOn => round.Facts.ReserveUntilOn;

    /// <summary>Day on which money that a group cannot use goes to all.</summary>
    public DateOnly? GroupsUntilOn => round.Facts.GroupsUntilOn;

    /// <summary>Day until which returned money goes down the waiting list.</summary>
    public DateOnly? WaitingUntilOn => round.Facts.WaitingUntilOn;

    /// <summary>Years that earlier grants count against the farm's cap.</summary>
    public int LookBackYears => round.Facts.LookBackYears;

    /// <summary>Years after payment in which a grant is paid back for the months left.</summary>
    public int ObligationYears => round.Facts.ObligationYears;

    /// <summary>Members that every item needs.</summary>
    public int Quorum => round.Facts.Quorum;

    /// <summary>Committee.</summary>
    public IEnumerable<MemberView> Committee => round.Facts.Committee.Select(m => new MemberView(m.Key, round.Remarks.People?.GetValueOrDefault(m.Key) ?? m.Key, m.Present, m.Vote,
        m.Interests.Select(i => new InterestView(i.FarmId, i.FarmId is { } f ? desk.FarmName(f) : null, i.Relation))));

    /// <summary>Applications.</summary>
    public IEnumerable<ApplicationView> Applications => round.Facts.Applications.Select(a => new ApplicationView(a.HouseId, desk.FarmName(desk.FarmOf(a.HouseId)), desk.HouseName(a.HouseId), a.CompleteOn, a.OtherGrantsUsd,
        a.Shown.Select(s => new ShownView(s.Test, s.Passed, s.Evidence, s.On))));

    /// <summary>Decisions, oldest first.</summary>
    public IEnumerable<DecisionView> Decisions => desk.DecisionsOf(round.Id).Select(d => new DecisionView(desk, d));

    /// <summary>Awards.</summary>
    public IEnumerable<AwardView> Awards => desk.AwardsOf(round.Id).Select(a => new AwardView(desk, a));

    /// <summary>As decided, or as it would be decided now; null where no study stands behind it.</summary>
    public RoundPlanView? Plan(CancellationToken cancellationToken = default) => desk.Plan(round, cancellationToken) is { } plan ? new(desk, plan, round.Remarks.People) : null;

    /// <summary>What stands against closing it; empty = it can be decided.</summary>
    public IEnumerable<FaultView> Obstacles([FromServices] Host.Studies.StudyChanges changes, CancellationToken cancellationToken = default) =>
        round.Facts.State != RoundState.Open ? [] : RoundClosing.Obstacles(desk, round, changes, cancellationToken).Select(FaultView.Of);

    /// <summary>Money that can be given again.</summary>
    public double FreeUsd => round.Facts.State == RoundState.Decided ? WaitingList.FreeUsd(desk.DecisionsOf(round.Id)[^1].Decision, desk.AwardsOf(round.Id).Select(a => a.Facts)) : 0;

    /// <summary>Who is next on the waiting list, in words; null while the round is open.</summary>
    public string? NextInLine
    {
        get
        {
            if (round.Facts.State != RoundState.Decided)
            {
                return null;
            }

            var (next, passed, none) = WaitingList.Next(desk.DecisionsOf(round.Id)[^1].Decision, [.. desk.AwardsOf(round.Id).Select(a => a.Facts)], desk.Today, desk.ApplicantsOf(round));
            var words = passed.Count == 0 ? string.Empty : $"; passed over for size or for the cap of its farm: {string.Join(", ", passed.Select(p => $"{desk.FarmName(p.FarmId)}, {desk.HouseName(p.HouseId)}"))}";
            return next is null ? none : $"{desk.FarmName(next.FarmId)}, {desk.HouseName(next.HouseId)}, ${next.GrantUsd:#,0}{words}";
        }
    }

    /// <summary>Whether somebody on the list can be funded now.</summary>
    public bool CanFundNext => round.Facts.State == RoundState.Decided && WaitingList.Next(desk.DecisionsOf(round.Id)[^1].Decision, [.. desk.AwardsOf(round.Id).Select(a => a.Facts)], desk.Today, desk.ApplicantsOf(round)).Next is not null;
}

/// <summary>Rounds of a co-op.</summary>
public sealed partial class CoopView
{
    /// <summary>Rounds, newest first.</summary>
    public IEnumerable<RoundView> FundingRounds([FromServices] RoundsDesk desk) => desk.Rounds.Values.OrderByDescending(r => r.Facts.State == RoundState.Open).ThenByDescending(r => r.Facts.State == RoundState.Decided).ThenByDescending(r => r.Id, StringComparer.Ordinal).Select(r => new RoundView(desk, r));

    /// <summary>Number of the first decision whose text or place in the chain does not hold; null = all hold.</summary>
    public int? BrokenDecision([FromServices] RoundsDesk desk) => (int?)desk.Store.Broken(register.Viewer, register.Coop.Id);
}

/// <summary>Rounds.</summary>
public sealed partial class Query
{
    /// <summary>A round.</summary>
    public static RoundView? FundingRound([FromServices] RoundsDesk desk, [Id] string id) => desk.Round(id) is { } round ? new(desk, round) : null;
}
