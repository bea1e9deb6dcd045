using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Funding;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>The votes that count for a farm, and who left the room for it.</summary>
[Name("Ballot")]
public sealed record BallotView(int Voters, int For, int Against, IEnumerable<string> Recused);

/// <summary>A place in the order of a round.</summary>
[Name("PlanRow")]
public sealed class PlanRowView(RoundsDesk desk, RoundDecision plan, DecidedRow row, int rank, IReadOnlyDictionary<string, string>? people)
{
    /// <summary>Rank from 1.</summary>
    public int Rank => rank;

    /// <summary>House and key.</summary>
    [Id] public string OptionId => $"{row.HouseId}~{row.OptionKey}";

    /// <summary>House.</summary>
    [Id] public string HouseId => row.HouseId;

    /// <summary>Option's key.</summary>
    public string OptionKey => row.OptionKey;

    /// <summary>Name of the farm.</summary>
    public string Farm => desk.FarmName(row.FarmId);

    /// <summary>Name of the house.</summary>
    public string House => desk.HouseName(row.HouseId);

    /// <summary>Plain name of the option.</summary>
    public string Title => row.Title;

    /// <summary>Whether it is funded.</summary>
    public bool Funded => row.Funded;

    /// <summary>Whether it is pinned.</summary>
    public bool Pinned => row.Pinned;

    /// <summary>Grant.</summary>
    public double GrantUsd => row.GrantUsd;

    /// <summary>Grant before it was cut for want of money.</summary>
    public double AskedUsd => row.AskedUsd;

    /// <summary>Whole cost.</summary>
    public double OutlayUsd => row.OutlayUsd;

    /// <summary>Eligible cost.</summary>
    public double EligibleUsd => row.EligibleUsd;

    /// <summary>Own part.</summary>
    public double OwnPartUsd => row.OutlayUsd - row.GrantUsd;

    /// <summary>Net saving of a season.</summary>
    public Spread? SavingUsd => row.SavingUsd;

    /// <summary>Lasting payback.</summary>
    public PaybackRange? Payback => row.Payback;

    /// <summary>Share of futures that lose money.</summary>
    public double? LossShare => row.LossShare;

    /// <summary>Data grade.</summary>
    public DataGrade? Grade => row.Grade;

    /// <summary>Share of single futures in which it would be funded.</summary>
    public double? FundedShare => row.FundedShare;

    /// <summary>What it buys a grant dollar.</summary>
    public double? MeritPerGrantUsd => row.MeritPerGrantUsd;

    /// <summary>What must still come.</summary>
    public IEnumerable<string> Conditions => row.Conditions;

    /// <summary>Why it stands here.</summary>
    public string Why => row.Why;

    /// <summary>The votes that count for it.</summary>
    public BallotView Ballot => Engine.Funding.Ballot.Of(plan.Round.Committee, row.FarmId) is var b ? new(b.Voters, b.For, b.Against, b.Recused.Select(k => people?.GetValueOrDefault(k) ?? k)) : null!;
}

/// <summary>An option that a rule keeps out.</summary>
[Name("PlanOut")]
public sealed record PlanOutView([property: Id] string OptionId, string Farm, string House, string Title, string Why, string Rule);

/// <summary>What an act of the committee costs.</summary>
[Name("PlanOverride")]
public sealed record PlanOverrideView(string What, string Name, string Reason, double LosesUsd, double LosesShare, BallotView Ballot);

/// <summary>The order by another measure.</summary>
[Name("PlanMeasure")]
public sealed record PlanMeasureView(Merit Merit, double SavingUsd, IEnumerable<string> Enter, IEnumerable<string> Leave);

/// <summary>What would change the order.</summary>
[Name("PlanSwitch")]
public sealed record PlanSwitchView(SwitchKind What, double At, string Name);

/// <summary>A round as decided, or as it would be decided now.</summary>
[Name("RoundPlan")]
public sealed class RoundPlanView(RoundsDesk desk, RoundDecision plan, IReadOnlyDictionary<string, string>? people)
{
    /// <summary>Kind of decision.</summary>
    public DecisionKind Kind => plan.Kind;

    /// <summary>Day.</summary>
    public DateOnly DecidedOn => plan.DecidedOn;

    /// <summary>Number of the study; null = none stands behind it.</summary>
    public int? StudyNumber => (int?)plan.StudyNumber;

    /// <summary>Checksum of its results.</summary>
    public string? StudyResultSha256 => plan.StudyResultSha256;

    /// <summary>Futures drawn.</summary>
    public int? Futures => plan.Futures;

    /// <summary>What can be given.</summary>
    public double AvailableUsd => plan.Round.Rules.AvailableUsd;

    /// <summary>Grants given.</summary>
    public double GrantUsd => plan.GrantUsd();

    /// <summary>Whole cost of what is funded.</summary>
    public double OutlayUsd => plan.Order.Where(r => r.Funded).Sum(r => r.OutlayUsd);

    /// <summary>Order, funded first.</summary>
    public IEnumerable<PlanRowView> Rows => plan.Order.Select((r, i) => new PlanRowView(desk, plan, r, i + 1, people));

    /// <summary>What a rule keeps out, the nearest first.</summary>
    public IEnumerable<PlanOutView> Out => plan.Out.Select(o => new PlanOutView($"{o.HouseId}~{o.OptionKey}", desk.FarmName(o.FarmId), desk.HouseName(o.HouseId), o.Title, o.Why, o.Rule));

    /// <summary>Sums; null = no study stands behind it.</summary>
    public RoundSums? Sums => plan.Sums;

    /// <summary>Asked, eligible, funded by group.</summary>
    public IEnumerable<GroupReport> Groups => plan.Groups;

    /// <summary>Acts of the committee.</summary>
    public IEnumerable<PlanOverrideView> Overrides => plan.Overrides.Select(o => new PlanOverrideView(o.What, Name($"{o.HouseId}~{o.OptionKey}"), o.Reason, o.LosesUsd, o.LosesShare,
        Ballot.Of(plan.Round.Committee, desk.FarmOf(o.HouseId)) is var b ? new(b.Voters, b.For, b.Against, b.Recused.Select(k => people?.GetValueOrDefault(k) ?? k)) : null!));

    /// <summary>The other measures.</summary>
    public IEnumerable<PlanMeasureView> Measures => plan.Measures.Select(m => new PlanMeasureView(m.Merit, m.SavingUsd, m.Enter.Select(Name), m.Leave.Select(Name)));

    /// <summary>What would change the order.</summary>
    public IEnumerable<PlanSwitchView> Switches => plan.Switches.Select(s => new PlanSwitchView(s.What, s.At, $"{desk.FarmName(desk.FarmOf(s.HouseId))}, {desk.HouseName(s.HouseId)}"));

    /// <summary>What earlier rounds delivered.</summary>
    public IEnumerable<EarlierRoundView> Earlier => plan.Earlier.Select(e => new EarlierRoundView(e.Round, e.Awards, DeliveredView.Of(e.Delivered), e.ReturnedUsd));

    internal string Name(string optionId)
    {
        var at = optionId.IndexOf('~', StringComparison.Ordinal);
        var (house, key) = (optionId[..at], optionId[(at + 1)..]);
        var title = plan.Order.FirstOrDefault(r => r.HouseId == house && r.OptionKey == key)?.Title ?? plan.Out.FirstOrDefault(o => o.HouseId == house && o.OptionKey == key)?.Title;
        var words = title ?? (key.Length == 0 ? "the whole house" : desk.Title(house, key));
        return $"{desk.FarmName(desk.FarmOf(house))}, {desk.HouseName(house)}: {words}";
    }
}
