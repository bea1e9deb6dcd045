using FarmPortfolio.Engine.Studies;

namespace FarmPortfolio.Engine.Funding;

/// <summary>What groups asked and got, and what the committee's own acts cost.</summary>
internal static class FundingReports
{
    /// <summary>Asked, eligible and funded by group, all farms last.</summary>
    public static IReadOnlyList<GroupReport> Groups(StudyResult result, Func<string, Applicant> applicantOf, FundingRules rules, List<Candidate> candidates, List<Candidate> picked)
    {
        var asked = result.Options.Where(o => o.OutlayUsd > 0).GroupBy(o => o.HouseId).Select(g => (House: g.Key, Applicant: applicantOf(g.Key), Usd: g.Max(o => Eligibility.Grant(o, applicantOf(g.Key), rules)))).ToList();
        var eligible = candidates.GroupBy(c => c.House).Select(g => (g.First().Groups, Usd: g.Max(c => c.Asked))).ToList();
        GroupReport Report(string name, double share, Func<IReadOnlyList<string>, bool> belongs)
        {
            var (a, e, f) = (asked.Where(x => belongs(x.Applicant.Groups)).ToList(), eligible.Where(x => belongs(x.Groups)).ToList(), picked.Where(p => belongs(p.Groups)).ToList());
            return new(name, share, a.Sum(x => x.Usd), a.Count, e.Sum(x => x.Usd), e.Count, f.Sum(x => x.Grant), f.Count);
        }

        return [.. rules.Groups.Select(g => Report(g.Name, g.MinimumShare, groups => groups.Contains(g.Name, StringComparer.OrdinalIgnoreCase))), Report("all", 0, _ => true)];
    }

    /// <summary>Each act taken back by itself: what members then save more a season, and in how many futures.</summary>
    public static IReadOnlyList<OverrideCost> Overrides(StudyResult result, Func<string, Applicant> applicantOf, FundingRules rules, List<Candidate> picked)
    {
        OverrideCost Cost(string what, string house, string? key, string reason, FundingRules without)
        {
            if (result.SavingByPath.Count == 0)
            {
                return new(what, house, key, reason, 0, 0);
            }

            var (candidates, _) = Candidates.Of(result, applicantOf, without);
            var other = Candidates.PathSum(result, Picking.Chosen(candidates, without, without.AvailableUsd, c => c.Merit));
            var mine = Candidates.PathSum(result, picked);
            var lost = other.Select((o, p) => o - mine[p]).ToList();
            return new(what, house, key, reason, lost.Average(), (double)lost.Count(l => l > 0) / lost.Count);
        }

        return
        [
            .. rules.Pinned.Select(p => Cost("pinned", p.HouseId, p.OptionKey, p.Reason, rules with { Pinned = [.. rules.Pinned.Where(x => x != p)] })),
            .. rules.Excluded.Select(p => Cost("left out", p.HouseId, p.OptionKey, p.Reason, rules with { Excluded = [.. rules.Excluded.Where(x => x != p)] })),
            .. rules.Amounts.Select(a => Cost("amount set", a.HouseId, a.OptionKey, a.Reason, rules with { Amounts = [.. rules.Amounts.Where(x => x != a)] })),
        ];
    }
}
