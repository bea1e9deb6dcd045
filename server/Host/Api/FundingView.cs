using FarmPortfolio.Engine.Funding;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Studies;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>A house or option pinned or left out.</summary>
public sealed record PinInput([property: Id] string HouseId, string? OptionKey, string Reason);

/// <summary>A group with what the round keeps for it.</summary>
public sealed record GroupShareInput(string Name, double MinimumShare, double? CostShare);

/// <summary>A grant that the committee set.</summary>
public sealed record SetAmountInput([property: Id] string HouseId, string OptionKey, double GrantUsd, string Reason);

/// <summary>Rules of a round; what is left out is as usual.</summary>
public sealed record FundingRulesInput
{
    private static readonly FundingRules Usual = new();

    /// <summary>Money of the round.</summary>
    public double? BudgetUsd { get; init; }

    /// <summary>Share held back.</summary>
    public double? ReserveShare { get; init; }

    /// <summary>Share of the cost a grant covers.</summary>
    public double? CostShare { get; init; }

    /// <summary>Cap a house.</summary>
    public double? HouseCapUsd { get; init; }

    /// <summary>Cap a farm.</summary>
    public double? FarmCapUsd { get; init; }

    /// <summary>Share of the whole cost that all public money may reach.</summary>
    public double? PublicShare { get; init; }

    /// <summary>Smallest grant.</summary>
    public double? MinimumGrantUsd { get; init; }

    /// <summary>Share of a grant that is still offered; 1 = whole grants alone.</summary>
    public double? PartialShare { get; init; }

    /// <summary>Season of the confidence rule.</summary>
    public int? PaybackSeasons { get; init; }

    /// <summary>Share of the futures asked.</summary>
    public double? Confidence { get; init; }

    /// <summary>Measure.</summary>
    public Merit? Merit { get; init; }

    /// <summary>Houses without a fuel record.</summary>
    public GradeCRule? GradeC { get; init; }

    /// <summary>Codes of the retrofits that the money may pay for; none = all.</summary>
    public IEnumerable<string>? RetrofitCodes { get; init; }

    /// <summary>Day by which a farm must have been a member.</summary>
    public DateOnly? MemberByOn { get; init; }

    /// <summary>What each applicant must show.</summary>
    public IEnumerable<string>? Tests { get; init; }

    /// <summary>Groups with a minimum share.</summary>
    public IEnumerable<GroupShareInput>? Groups { get; init; }

    /// <summary>Whether money that a group cannot use stays kept for it.</summary>
    public bool? GroupMoneyHeld { get; init; }

    /// <summary>Seed of the drawn lot.</summary>
    public int? LotSeed { get; init; }

    /// <summary>Grants that the committee set.</summary>
    public IEnumerable<SetAmountInput>? Amounts { get; init; }

    /// <summary>Pinned.</summary>
    public IEnumerable<PinInput>? Pinned { get; init; }

    /// <summary>Left out.</summary>
    public IEnumerable<PinInput>? Excluded { get; init; }

    internal FundingRules Rules() => new()
    {
        BudgetUsd = BudgetUsd ?? Usual.BudgetUsd,
        ReserveShare = ReserveShare ?? Usual.ReserveShare,
        CostShare = CostShare ?? Usual.CostShare,
        HouseCapUsd = HouseCapUsd ?? Usual.HouseCapUsd,
        FarmCapUsd = FarmCapUsd ?? Usual.FarmCapUsd,
        PaybackSeasons = PaybackSeasons ?? Usual.PaybackSeasons,
        Confidence = Confidence ?? Usual.Confidence,
        Merit = Merit ?? Usual.Merit,
        PublicShare = PublicShare ?? Usual.PublicShare,
        MinimumGrantUsd = MinimumGrantUsd ?? Usual.MinimumGrantUsd,
        PartialShare = PartialShare ?? Usual.PartialShare,
        GradeC = GradeC ?? Usual.GradeC,
        RetrofitCodes = [.. RetrofitCodes ?? []],
        MemberByOn = MemberByOn,
        Tests = [.. (Tests ?? []).Select(t => t.Trim())],
        Groups = [.. (Groups ?? []).Select(g => new GroupShare(g.Name.Trim(), g.MinimumShare, g.CostShare))],
        GroupMoneyHeld = GroupMoneyHeld ?? Usual.GroupMoneyHeld,
        LotSeed = LotSeed ?? Usual.LotSeed,
        Amounts = [.. (Amounts ?? []).Select(a => new SetAmount(a.HouseId, a.OptionKey, a.GrantUsd, a.Reason))],
        Pinned = [.. (Pinned ?? []).Select(p => new Pin(p.HouseId, p.OptionKey, p.Reason))],
        Excluded = [.. (Excluded ?? []).Select(p => new Pin(p.HouseId, p.OptionKey, p.Reason))],
    };
}

/// <summary>A place in the order.</summary>
[Name("FundingRow")]
public sealed record FundingRowView(int Rank, OptionView Option, OptionResultView Result, bool Funded, bool Pinned, double FundedShare, double GrantUsd, double OwnPartUsd, double MeritPerGrantUsd, string Why, double AskedUsd, IEnumerable<string> Conditions);

/// <summary>An option that no rule lets in.</summary>
[Name("WhyNot")]
public sealed record WhyNotView(OptionView Option, string Why, string Rule);

/// <summary>Why houses of a co-op have no place in an order: every option of theirs is kept out by a rule, none asks an outlay, or they are not in the study.</summary>
[Name("HousesOut")]
public sealed record HousesOutView(int HouseCount, int ByRule, int WithoutOutlay, int NotStudied);

/// <summary>A point of benefit against money.</summary>
[Name("FrontierPoint")]
public sealed record FrontierPointView(double GrantUsd, double SavingP10, double SavingP25, double SavingP50, double SavingP75, double SavingP90);

/// <summary>What to fund first.</summary>
[Name("FundingOrder")]
public sealed partial class FundingOrderView(Register register, StudyResult study, FundingOrder order, FundingRules rules, Lazy<IReadOnlyList<MeasureOrder>> byMeasure)
{
    private const int MostAPage = 200;

    /// <summary>Rows, funded first: so many, of those after a rank where one is told.</summary>
    public IEnumerable<FundingRowView> Rows(int first = 50, int afterRank = 0) => Page(order.Rows, first, afterRank).Where(r => Here(r.Row.Index)).Select(r => new FundingRowView(
        r.Place, Option(r.Row.Index), new(study.Options[r.Row.Index], study.DiscountRate), r.Row.Funded, r.Row.Pinned, r.Row.FundedShare, r.Row.GrantUsd, study.Options[r.Row.Index].OutlayUsd - r.Row.GrantUsd, r.Row.MeritPerGrantUsd, r.Row.Why, r.Row.AskedUsd, r.Row.Conditions));

    /// <summary>Rows just below the line.</summary>
    public IEnumerable<FundingRowView> Below(int first = 3) => Rows(first, FundedTotal);

    /// <summary>Number of rows: houses with an option that the rules let in.</summary>
    public int RowTotal => order.Rows.Count;

    /// <summary>Houses of the co-op that stand in no row, by why.</summary>
    public HousesOutView HousesOut
    {
        get
        {
            var rows = order.Rows.Select(r => study.Options[r.Index].HouseId).ToHashSet();
            var studied = study.Options.Select(o => o.HouseId).ToHashSet();
            var refused = order.NotEligible.Select(n => study.Options[n.Index].HouseId).ToHashSet();
            var others = register.Houses.Keys.Where(h => !rows.Contains(h)).ToList();
            return new(register.Houses.Count, others.Count(refused.Contains), others.Count(h => studied.Contains(h) && !refused.Contains(h)), others.Count(h => !studied.Contains(h)));
        }
    }

    /// <summary>Number of rows that are funded; they come first.</summary>
    public int FundedTotal => order.Rows.Count(r => r.Funded);

    /// <summary>Whole cost of all that is funded, US dollars.</summary>
    public double FundedOutlayUsd => order.Rows.Where(r => r.Funded).Sum(r => study.Options[r.Index].OutlayUsd);

    /// <summary>What members pay of it themselves, US dollars.</summary>
    public double FundedOwnPartUsd => FundedOutlayUsd - order.GrantUsd;

    /// <summary>What can be given now.</summary>
    public double AvailableUsd => rules.AvailableUsd;

    /// <summary>The dated set of factors that CO2 is reckoned by.</summary>
    public string EmissionFactors => register.Newest is { } newest ? new StudyView(register, newest).EmissionFactors : string.Empty;

    /// <summary>Grants given.</summary>
    public double GrantUsd => order.GrantUsd;

    /// <summary>Saving a season of all that is funded.</summary>
    public DistributionView SavingUsd => DistributionView.Of(order.SavingUsd);

    /// <summary>Heat saved by all that is funded over the heat of all houses studied.</summary>
    public double HeatSavedShare => order.HeatSavedShare;

    /// <summary>Mean saving a season over the worst tenth of the futures.</summary>
    public double WorstTenthUsd => order.WorstTenthUsd;

    /// <summary>Saving a season that the rules promise when they pick on one half of the futures.</summary>
    public double PromisedUsd => order.OnFreshFutures.PromisedUsd;

    /// <summary>What that pick saves on the other half.</summary>
    public double FoundUsd => order.OnFreshFutures.FoundUsd;

    /// <summary>What the next $10,000 would add.</summary>
    public double NextAddsUsd => order.NextAddsUsd;

    /// <summary>Asked, eligible and funded by group, all farms last.</summary>
    public IEnumerable<GroupReport> Groups => order.Groups;

    /// <summary>What the minimum shares cost all members a season.</summary>
    public double GroupsCostUsd => order.GroupsCostUsd;

    /// <summary>Benefit against money.</summary>
    public IEnumerable<FrontierPointView> Frontier => order.Frontier.Select(f => new FrontierPointView(f.GrantUsd, f.P10, f.P25, f.P50, f.P75, f.P90));

    /// <summary>Options that no rule lets in, the nearest first: so many, after so many.</summary>
    public IEnumerable<WhyNotView> NotEligible(int first = 20, int after = 0) =>
        Page(order.NotEligible.OrderByDescending(n => study.Options[n.Index].SavingUsd.Mean).ThenBy(n => n.Index), first, after).Where(n => Here(n.Row.Index)).Select(n => new WhyNotView(Option(n.Row.Index), n.Row.Why, n.Row.Rule));

    /// <summary>Number of options that no rule lets in.</summary>
    public int NotEligibleTotal => order.NotEligible.Count;

    private static IEnumerable<(T Row, int Place)> Page<T>(IEnumerable<T> all, int first, int after) =>
        all.Select((row, i) => (row, i + 1)).Skip(Math.Max(0, after)).Take(Math.Clamp(first, 1, MostAPage));

    /// <summary>Whether the house of an option is still there; the study may be older than its going.</summary>
    private bool Here(int index) => register.Houses.ContainsKey(study.Options[index].HouseId);

    private OptionView Option(int index)
    {
        var o = study.Options[index];
        var facts = register.OptionSet(o.HouseId)?.Facts.Options.FirstOrDefault(x => x.Key == o.Key) ?? new OptionFacts(o.Key, []);
        return new(register, register.Houses[o.HouseId], facts);
    }
}
