using FarmPortfolio.Engine.Funding;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>The rules of a round.</summary>
[Name("FundingRules")]
public sealed record FundingRulesView(
    double BudgetUsd, double AvailableUsd, double ReserveShare, double CostShare, double HouseCapUsd, double FarmCapUsd, double PublicShare, double MinimumGrantUsd, double PartialShare, int PaybackSeasons, double Confidence,
    Merit Merit, GradeCRule GradeC, IEnumerable<string> RetrofitCodes, DateOnly? MemberByOn, IEnumerable<string> Tests, IEnumerable<GroupShare> Groups, bool GroupMoneyHeld, int LotSeed,
    IEnumerable<Pin> Pinned, IEnumerable<Pin> Excluded, IEnumerable<SetAmount> Amounts)
{
    /// <summary>From the rules.</summary>
    internal static FundingRulesView Of(FundingRules r) => new(
        r.BudgetUsd, r.AvailableUsd, r.ReserveShare, r.CostShare, r.HouseCapUsd, r.FarmCapUsd, r.PublicShare, r.MinimumGrantUsd, r.PartialShare, r.PaybackSeasons, r.Confidence,
        r.Merit, r.GradeC, r.RetrofitCodes, r.MemberByOn, r.Tests, r.Groups, r.GroupMoneyHeld, (int)r.LotSeed, r.Pinned, r.Excluded, r.Amounts);
}

/// <summary>What awards delivered of what they promised, with its bounds.</summary>
[Name("Delivered")]
public sealed record DeliveredView(int Awards, int VerifiedAwards, double? Share, double Low, double High, double PromisedKwh, double VerifiedKwh)
{
    /// <summary>From the sum.</summary>
    internal static DeliveredView? Of(Delivered? d) => d is null ? null : new(d.Awards, d.VerifiedAwards, d.Share, d.Low, d.High, d.PromisedKwh, d.VerifiedKwh);
}

/// <summary>What an earlier round delivered.</summary>
[Name("EarlierRound")]
public sealed record EarlierRoundView(string Round, int Awards, DeliveredView? Delivered, double ReturnedUsd);
