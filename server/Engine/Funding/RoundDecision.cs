using FarmPortfolio.Engine.Economics;

namespace FarmPortfolio.Engine.Funding;

/// <summary>A range of one figure: one in ten lower, middle, one in ten higher.</summary>
/// <param name="Mean">Mean.</param>
/// <param name="P10">One in ten is lower.</param>
/// <param name="P50">Middle.</param>
/// <param name="P90">One in ten is higher.</param>
public sealed record Spread(double Mean, double P10, double P50, double P90)
{
    /// <summary>From a distribution.</summary>
    /// <param name="d">Distribution.</param>
    /// <returns>The range.</returns>
    internal static Spread Of(Distribution d) => new(d.Mean, d.P10, d.P50, d.P90);
}

/// <summary>When the money is back, by share of the futures; null season = never.</summary>
public sealed record PaybackRange(int? P10, int? P25, int? P50, int? P75, int? P90, double NeverShare, double PaidShare)
{
    /// <summary>From a payback.</summary>
    /// <param name="p">Payback.</param>
    /// <param name="season">Season that the rules ask for.</param>
    /// <returns>The range.</returns>
    internal static PaybackRange Of(Payback p, int season) => new(p.SeasonOf(0.1), p.SeasonOf(0.25), p.SeasonOf(0.5), p.SeasonOf(0.75), p.SeasonOf(0.9), p.NeverShare, p.ShareBy(season));
}

/// <summary>A place in an order as it was decided; figures that nobody reckoned are null.</summary>
public sealed record DecidedRow
{
    /// <summary>House.</summary>
    public required string HouseId { get; init; }

    /// <summary>Farm.</summary>
    public required string FarmId { get; init; }

    /// <summary>Option's key.</summary>
    public required string OptionKey { get; init; }

    /// <summary>Plain name of the option.</summary>
    public required string Title { get; init; }

    /// <summary>Whether it is funded.</summary>
    public required bool Funded { get; init; }

    /// <summary>Whether the committee pinned it.</summary>
    public bool Pinned { get; init; }

    /// <summary>Grant, US dollars.</summary>
    public required double GrantUsd { get; init; }

    /// <summary>Grant by the rules before it was cut for want of money.</summary>
    public double AskedUsd { get; init; }

    /// <summary>Whole cost.</summary>
    public required double OutlayUsd { get; init; }

    /// <summary>Cost that a grant counts.</summary>
    public required double EligibleUsd { get; init; }

    /// <summary>Net saving of a season.</summary>
    public Spread? SavingUsd { get; init; }

    /// <summary>Heat saved a season, kWh.</summary>
    public double? HeatSavedKwh { get; init; }

    /// <summary>Fuel saved a season, kWh: what is promised, and verified later.</summary>
    public double? FuelSavedKwh { get; init; }

    /// <summary>CO2 not emitted a season, kg.</summary>
    public double? Co2SavedKg { get; init; }

    /// <summary>Lasting payback on the whole cost.</summary>
    public PaybackRange? Payback { get; init; }

    /// <summary>Share of futures that lose money over the horizon.</summary>
    public double? LossShare { get; init; }

    /// <summary>Data grade.</summary>
    public DataGrade? Grade { get; init; }

    /// <summary>Share of single futures in which it would be funded.</summary>
    public double? FundedShare { get; init; }

    /// <summary>What it buys a grant dollar, by the round's measure.</summary>
    public double? MeritPerGrantUsd { get; init; }

    /// <summary>Groups of the farm that the round names.</summary>
    public IReadOnlyList<string> Groups { get; init; } = [];

    /// <summary>What must still come before the grant is firm.</summary>
    public IReadOnlyList<string> Conditions { get; init; } = [];

    /// <summary>Why it stands here.</summary>
    public string Why { get; init; } = string.Empty;
}

/// <summary>An option that a rule keeps out.</summary>
/// <param name="HouseId">House.</param>
/// <param name="FarmId">Farm.</param>
/// <param name="OptionKey">Option's key.</param>
/// <param name="Title">Plain name of the option.</param>
/// <param name="Why">Why.</param>
/// <param name="Rule">The rule.</param>
public sealed record DecidedOut(string HouseId, string FarmId, string OptionKey, string Title, string Why, string Rule);

/// <summary>What the same money buys by another measure, and who would change.</summary>
/// <param name="Merit">Measure.</param>
/// <param name="SavingUsd">Mean saving a season.</param>
/// <param name="Enter">Options that it would fund besides, "house~option".</param>
/// <param name="Leave">Options that it would not.</param>
public sealed record OtherMeasure(Merit Merit, double SavingUsd, IReadOnlyList<string> Enter, IReadOnlyList<string> Leave);

/// <summary>Sums over what is funded.</summary>
/// <param name="SavingUsd">Saving of members a season, read from sums path by path.</param>
/// <param name="WorstTenthUsd">Mean over the worst tenth of the futures.</param>
/// <param name="HeatSavedKwh">Heat saved a season.</param>
/// <param name="Co2SavedKg">CO2 not emitted a season.</param>
/// <param name="NextAddsUsd">What 10,000 dollars more would add.</param>
/// <param name="LastBoughtUsd">What the last 10,000 dollars bought.</param>
/// <param name="GroupsCostUsd">What minimum shares cost all members a season.</param>
/// <param name="HeldUsd">Money kept for groups that cannot use it.</param>
public sealed record RoundSums(Spread SavingUsd, double WorstTenthUsd, double HeatSavedKwh, double Co2SavedKg, double NextAddsUsd, double LastBoughtUsd, double GroupsCostUsd, double HeldUsd);

/// <summary>What earlier rounds promised and delivered, as it was known at the decision.</summary>
/// <param name="Round">Name of the round.</param>
/// <param name="Awards">Awards.</param>
/// <param name="Delivered">What they delivered; null = nothing was promised.</param>
/// <param name="ReturnedUsd">Money returned.</param>
public sealed record EarlierRound(string Round, int Awards, Delivered? Delivered, double ReturnedUsd);

/// <summary>What would change the order, and from which value on.</summary>
/// <param name="What">What changes.</param>
/// <param name="At">Value from which on: a share of the futures, dollars of budget, or a share of the saving reckoned.</param>
/// <param name="HouseId">House that then leaves or enters.</param>
public sealed record Switch(SwitchKind What, double At, string HouseId);

/// <summary>What is turned until the order changes.</summary>
public enum SwitchKind
{
    /// <summary>The rules ask for payback in more futures: the house leaves.</summary>
    Confidence,

    /// <summary>The budget is larger: the house enters.</summary>
    Budget,

    /// <summary>The last house funded delivers less of its saving: the first that waits would go before it.</summary>
    Delivery,
}

/// <summary>What kind of decision it is.</summary>
public enum DecisionKind
{
    /// <summary>A round is closed.</summary>
    Round,

    /// <summary>A fault of an earlier decision is put right.</summary>
    Correction,

    /// <summary>Returned money goes down the waiting list.</summary>
    WaitingList,

    /// <summary>Decided before this program was used; entered from the co-op's papers, no study behind it.</summary>
    Entered,
}

/// <summary>The whole of a decision. Its canonical text is hashed and never changed; it names the decision before it by that hash.</summary>
public sealed record RoundDecision
{
    /// <summary>What kind.</summary>
    public DecisionKind Kind { get; init; }

    /// <summary>Number within the co-op, from 1.</summary>
    public long Number { get; init; }

    /// <summary>Round.</summary>
    public string RoundId { get; init; } = string.Empty;

    /// <summary>Revision of the round that was decided.</summary>
    public long RoundRevision { get; init; }

    /// <summary>Day of the decision.</summary>
    public DateOnly DecidedOn { get; init; }

    /// <summary>The decision that this one corrects or follows; null = none.</summary>
    public string? CorrectsId { get; init; }

    /// <summary>Why it is corrected.</summary>
    public string? Reason { get; init; }

    /// <summary>Checksum of the decision before it in the co-op; empty = it is the first.</summary>
    public string PreviousSha256 { get; init; } = string.Empty;

    /// <summary>Study; null = none stands behind it.</summary>
    public string? StudyId { get; init; }

    /// <summary>Its number within the co-op.</summary>
    public long? StudyNumber { get; init; }

    /// <summary>Checksum of its inputs.</summary>
    public string? StudyInputSha256 { get; init; }

    /// <summary>Checksum of its results.</summary>
    public string? StudyResultSha256 { get; init; }

    /// <summary>Futures drawn.</summary>
    public int? Futures { get; init; }

    /// <summary>The round as it was decided: rules, overrides, applications, committee, votes.</summary>
    public required FundingRoundFacts Round { get; init; }

    /// <summary>The order, funded first; what is not funded is the waiting list.</summary>
    public IReadOnlyList<DecidedRow> Order { get; init; } = [];

    /// <summary>Options that a rule keeps out.</summary>
    public IReadOnlyList<DecidedOut> Out { get; init; } = [];

    /// <summary>Sums; null = no study stands behind it.</summary>
    public RoundSums? Sums { get; init; }

    /// <summary>Asked, eligible, funded by group.</summary>
    public IReadOnlyList<GroupReport> Groups { get; init; } = [];

    /// <summary>What each act of the committee costs.</summary>
    public IReadOnlyList<OverrideCost> Overrides { get; init; } = [];

    /// <summary>The order by the other measures.</summary>
    public IReadOnlyList<OtherMeasure> Measures { get; init; } = [];

    /// <summary>What would change the order.</summary>
    public IReadOnlyList<Switch> Switches { get; init; } = [];

    /// <summary>What earlier rounds delivered.</summary>
    public IReadOnlyList<EarlierRound> Earlier { get; init; } = [];

    /// <summary>Grants given.</summary>
    /// <returns>US dollars.</returns>
    public double GrantUsd() => Order.Where(r => r.Funded).Sum(r => r.GrantUsd);
}
