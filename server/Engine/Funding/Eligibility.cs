using FarmPortfolio.Engine.Studies;

namespace FarmPortfolio.Engine.Funding;

/// <summary>The tests of a round, each of which names itself where it fails, and the grant that the rules give.</summary>
internal static class Eligibility
{
    /// <summary>Condition of a grant cut for want of money.</summary>
    public const string Smaller = "the farm accepts the smaller grant";

    /// <summary>Cost that a grant counts: a quote may hold lines that it does not; payback is reckoned on the whole.</summary>
    /// <param name="o">Option.</param>
    /// <returns>US dollars.</returns>
    public static double Cost(OptionResult o) => o.Costs.OutlayUsd > 0 ? o.OutlayUsd * Math.Min(1, o.Costs.EligibleUsd / o.Costs.OutlayUsd) : o.OutlayUsd;

    /// <summary>
    /// The grant before the round's money is looked at: the least of the share of the eligible cost, the cap a house, what the related farms' cap leaves after
    /// earlier grants, and what the limit on all public money leaves; whole dollars. An amount that the committee set replaces share and caps, not the cost nor the limit on all public money.
    /// </summary>
    /// <param name="o">Option.</param>
    /// <param name="applicant">Who stands behind the house.</param>
    /// <param name="rules">Rules.</param>
    /// <returns>US dollars.</returns>
    public static double Grant(OptionResult o, Applicant applicant, FundingRules rules)
    {
        var all = rules.PublicShare * o.OutlayUsd - (applicant.Application?.OtherGrantsUsd ?? 0);
        if (rules.Amounts.FirstOrDefault(a => a.HouseId == o.HouseId && a.OptionKey == o.Key) is { } set)
        {
            return Math.Max(0, Math.Floor(Math.Min(Math.Min(set.GrantUsd, Cost(o)), all) + 1e-9));
        }

        var share = rules.Groups.Where(g => g.CostShare is not null && applicant.Groups.Contains(g.Name, StringComparer.OrdinalIgnoreCase)).Select(g => g.CostShare!.Value).DefaultIfEmpty(rules.CostShare).Max();
        var farm = rules.FarmCapUsd - applicant.EarlierGrantsUsd;
        return Math.Max(0, Math.Floor(Math.Min(Math.Min(share * Cost(o), rules.HouseCapUsd), Math.Min(Math.Max(farm, 0), Math.Max(all, 0)) + 1e-9)));
    }

    /// <summary>Why a grant is too small to be given, where earlier grants or other public money leave no more.</summary>
    /// <param name="o">Option.</param>
    /// <param name="applicant">Who stands behind the house.</param>
    /// <param name="rules">Rules.</param>
    /// <param name="grant">The grant, US dollars.</param>
    /// <returns>Why, in words.</returns>
    public static string TooSmall(OptionResult o, Applicant applicant, FundingRules rules, double grant)
    {
        var (least, other) = (Math.Max(1, rules.MinimumGrantUsd), applicant.Application?.OtherGrantsUsd ?? 0);
        return applicant.EarlierGrantsUsd > 0 && rules.FarmCapUsd - applicant.EarlierGrantsUsd < least ? $"its farm and relations had ${applicant.EarlierGrantsUsd:#,0} in the years looked back on, of a cap of ${rules.FarmCapUsd:#,0}"
            : other > 0 && rules.PublicShare * o.OutlayUsd - other < least ? $"other public money of ${other:#,0} leaves ${grant:#,0}, under the smallest grant that is given"
            : $"its grant of ${grant:#,0} is under the smallest that is given";
    }

    /// <summary>The first test that an option fails.</summary>
    /// <param name="o">Option.</param>
    /// <param name="applicant">Who stands behind the house.</param>
    /// <param name="rules">Rules.</param>
    /// <param name="pinned">Whether the committee pinned it: then the confidence rule is set aside, no other test.</param>
    /// <returns>Why, and the rule; null = it passes.</returns>
    public static (string? Why, string Rule) Of(OptionResult o, Applicant applicant, FundingRules rules, bool pinned)
    {
        var paid = o.Lasting.ShareBy(rules.PaybackSeasons);
        if (rules.Excluded.FirstOrDefault(e => e.HouseId == o.HouseId && (e.OptionKey is null || e.OptionKey == o.Key)) is { } gone)
        {
            return ($"left out by the committee: {gone.Reason}", "excluded");
        }

        if (rules.RetrofitCodes.Count > 0 && Codes(o.Key).FirstOrDefault(c => !rules.RetrofitCodes.Contains(c, StringComparer.Ordinal)) is { } code)
        {
            return ($"\"{code}\" is not on the list of what this money pays for", "list");
        }

        if (rules.MemberByOn is { } by && !(applicant.MemberSinceOn <= by))
        {
            return (applicant.MemberSinceOn is { } since ? $"a member since {since:yyyy-MM-dd}, asked is by {by:yyyy-MM-dd}" : $"since when it is a member is not told, asked is by {by:yyyy-MM-dd}", "member");
        }

        if (applicant.Application?.Shown.FirstOrDefault(s => !s.Passed && rules.Tests.Contains(s.Test)) is { } failed)
        {
            return ($"fails \"{failed.Test}\"{(string.IsNullOrWhiteSpace(failed.Evidence) ? string.Empty : $": {failed.Evidence}")}", "test");
        }

        if (o.BaseHeatKwh <= 0)
        {
            return ("the house is not heated", "heated");
        }

        if (o.Grade == DataGrade.C && rules.GradeC == GradeCRule.Refused)
        {
            return ("no fuel record stands behind it, and the rules ask for one", "data");
        }

        if (!pinned && paid < rules.Confidence)
        {
            return ($"paid back by season {rules.PaybackSeasons} in {100 * paid:0} of 100 futures, {100 * rules.Confidence:0} asked", "confidence");
        }

        return !pinned && o.SavingUsd.Mean <= 0 ? ("saves nothing in the mean", "saving") : (null, string.Empty);
    }

    /// <summary>What must still come before the grant is firm.</summary>
    /// <param name="o">Option.</param>
    /// <param name="applicant">Who stands behind the house.</param>
    /// <param name="rules">Rules.</param>
    /// <returns>Conditions in words; none = firm.</returns>
    public static IReadOnlyList<string> Conditions(OptionResult o, Applicant applicant, FundingRules rules) =>
    [
        .. o.Grade == DataGrade.C && rules.GradeC == GradeCRule.OnBills ? new[] { "bills of two winters come" } : [],
        .. rules.Tests.Where(t => applicant.Application?.Shown.Any(s => s.Test == t && s.Passed) != true).Select(t => $"to be shown: {t}"),
    ];

    private static string[] Codes(string optionKey) => optionKey.Split('-')[..^1];
}
