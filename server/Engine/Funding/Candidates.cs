using FarmPortfolio.Engine.Economics;
using FarmPortfolio.Engine.Studies;

namespace FarmPortfolio.Engine.Funding;

/// <summary>An option that the rules let in.</summary>
/// <param name="Index">Index of the option in the study's result.</param>
/// <param name="House">House.</param>
/// <param name="Farm">Key of the farms whose caps count as one.</param>
/// <param name="Grant">Grant, US dollars.</param>
/// <param name="Merit">What it buys a season, by the round's measure.</param>
/// <param name="Pinned">Whether the committee pinned it.</param>
internal sealed record Candidate(int Index, string House, string Farm, double Grant, double Merit, bool Pinned);

/// <summary>Who may be funded, and who is picked for a sum of money.</summary>
internal static class Candidates
{
    private const double Worst = 0.10;
    private const int Turns = 12;

    /// <summary>Options that the rules let in, each with its grant and worth, and those they keep out.</summary>
    public static (List<Candidate> Candidates, List<(int Index, string Why, string Rule)> Refused) Of(
        StudyResult result, Func<string, string> farmOf, Func<string, string> relatedOf, FundingRules rules)
    {
        var pinnedByRule = rules.Pinned.Select(p => (p.HouseId, p.OptionKey)).ToHashSet();
        var candidates = new List<Candidate>();
        var refused = new List<(int, string, string)>();
        for (var i = 0; i < result.Options.Count; i++)
        {
            var o = result.Options[i];
            if (o.OutlayUsd <= 0)
            {
                continue;
            }

            // a quote may hold lines that a grant does not count; payback is reckoned on the whole
            var eligible = o.Costs.OutlayUsd > 0 ? o.OutlayUsd * Math.Min(1, o.Costs.EligibleUsd / o.Costs.OutlayUsd) : o.OutlayUsd;
            var grant = Math.Floor(Math.Min(rules.CostShare * eligible, rules.HouseCapUsd));
            var paid = o.Lasting.ShareBy(rules.PaybackSeasons);
            var pinned = pinnedByRule.Contains((o.HouseId, o.Key));
            if (rules.Excluded.FirstOrDefault(e => e.HouseId == o.HouseId && (e.OptionKey is null || e.OptionKey == o.Key)) is { } gone)
            {
                refused.Add((i, $"left out by the committee: {gone.Reason}", "excluded"));
            }
            else if (!pinned && paid < rules.Confidence)
            {
                refused.Add((i, $"paid back by season {rules.PaybackSeasons} in {100 * paid:0} of 100 futures, {100 * rules.Confidence:0} asked", "confidence"));
            }
            else if (!pinned && o.SavingUsd.Mean <= 0)
            {
                refused.Add((i, "saves nothing in the mean", "saving"));
            }
            else if (grant <= 0 || grant < rules.MinimumGrantUsd)
            {
                refused.Add((i, $"its grant of ${grant:0} is under the smallest that is given", "size"));
            }
            else
            {
                candidates.Add(new(i, o.HouseId, relatedOf(farmOf(o.HouseId)), grant, Worth(o, rules.Merit), pinned));
            }
        }

        return (rules.Merit == Merit.BadYears && result.SavingByPath.Count > 0 ? InBadYears(candidates, result, rules) : candidates, refused);
    }

    /// <summary>Best next step by added merit a grant dollar, at most one option a house; a dearer option of a house already in is an added step. Of equal steps the first in order is taken.</summary>
    public static List<Candidate> Pick(List<Candidate> candidates, FundingRules rules, double money, Func<Candidate, double> merit) => new Picking(candidates, rules.FarmCapUsd, money, merit).Picked();

    /// <summary>
    /// Weighs each option by its mean saving in those futures in which what is picked saves least, turn by turn until the worst tenth gets no better: the
    /// share of a part in a tail mean is its conditional mean (Rockafellar and Uryasev 2000; Euler's rule), so picking by it raises the worst tenth of the sum.
    /// </summary>
    private static List<Candidate> InBadYears(List<Candidate> candidates, StudyResult result, FundingRules rules)
    {
        var (best, picked) = (candidates, Pick(candidates, rules, rules.AvailableUsd, c => c.Merit));
        var tail = double.NegativeInfinity;
        for (var turn = 0; turn < Turns && picked.Count > 0; turn++)
        {
            var worst = WorstFutures(result, picked);
            var weighed = candidates.Select(c => c with { Merit = Mean(result.SavingByPath[c.Index], worst) }).ToList();
            picked = Pick(weighed, rules, rules.AvailableUsd, c => c.Merit);
            var found = Tail(result, picked);
            if (found <= tail)
            {
                break;
            }

            (best, tail) = (weighed, found);
        }

        return best;
    }

    /// <summary>Mean of what options save together over the worst tenth of the futures, US dollars a season.</summary>
    public static double Tail(StudyResult result, IReadOnlyList<Candidate> picked) =>
        picked.Count == 0 || result.SavingByPath.Count == 0 ? 0 : WorstFutures(result, picked) is var worst ? picked.Sum(c => Mean(result.SavingByPath[c.Index], worst)) : 0;

    /// <summary>What options save together, path by path.</summary>
    public static double[] PathSum(StudyResult result, IEnumerable<Candidate> picked)
    {
        var sum = new double[result.SavingByPath.Count > 0 ? result.SavingByPath[0].Length : 2];
        foreach (var c in picked)
        {
            var by = result.SavingByPath[c.Index];
            for (var p = 0; p < sum.Length; p++)
            {
                sum[p] += by[p];
            }
        }

        return sum;
    }

    private static int[] WorstFutures(StudyResult result, IEnumerable<Candidate> picked)
    {
        var sum = PathSum(result, picked);
        return [.. Enumerable.Range(0, sum.Length).OrderBy(p => sum[p]).ThenBy(p => p).Take(Math.Max(1, (int)(Worst * sum.Length)))];
    }

    private static double Mean(float[] byPath, int[] paths) => paths.Sum(p => (double)byPath[p]) / paths.Length;

    private static double Worth(OptionResult o, Merit merit) => merit switch { Merit.Energy => o.HeatSavedKwh, Merit.Co2 => o.Co2SavedKg, _ => o.SavingUsd.Mean };
}
