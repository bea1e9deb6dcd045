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
internal sealed record Candidate(int Index, string House, string Farm, double Grant, double Merit, bool Pinned)
{
    /// <summary>Grant that the rules give before the round's money is cut for size.</summary>
    public double Asked { get; init; } = Grant;

    /// <summary>Cost that a grant counts.</summary>
    public double Eligible { get; init; }

    /// <summary>Grants that the related farms had before.</summary>
    public double Earlier { get; init; }

    /// <summary>Groups of the farm that the round names.</summary>
    public IReadOnlyList<string> Groups { get; init; } = [];

    /// <summary>What must still come before the grant is firm.</summary>
    public IReadOnlyList<string> Conditions { get; init; } = [];

    /// <summary>Chance of lasting payback by the season asked: the first to part what ties.</summary>
    public double Chance { get; init; }

    /// <summary>Day the application was complete; none comes last.</summary>
    public DateOnly CompleteOn { get; init; } = DateOnly.MaxValue;

    /// <summary>Drawn lot.</summary>
    public ulong Lot { get; init; }

    /// <summary>Ratios are ties where they agree to nine decimals: below that lies only the order of adding.</summary>
    /// <param name="ratio">Merit a grant dollar.</param>
    /// <returns>Ratio to compare by.</returns>
    public static double Tied(double ratio) => Math.Round(ratio, 9);

    /// <summary>Whether this one goes before another of equal merit a dollar: chance, then smaller grant, then earlier application, then the lot.</summary>
    /// <param name="other">The other.</param>
    /// <returns>Whether it does.</returns>
    public bool Before(Candidate other) =>
        Math.Round(Chance, 9) != Math.Round(other.Chance, 9) ? Chance > other.Chance
        : Grant != other.Grant ? Grant < other.Grant
        : CompleteOn != other.CompleteOn ? CompleteOn < other.CompleteOn
        : Lot != other.Lot ? Lot < other.Lot
        : Index < other.Index;
}

/// <summary>Who may be funded, and what the futures say of those picked.</summary>
internal static class Candidates
{
    private const double Worst = 0.10;
    private const int Turns = 12;

    /// <summary>Options that the rules let in, each with its grant and worth, and those they keep out.</summary>
    public static (List<Candidate> Candidates, List<(int Index, string Why, string Rule)> Refused) Of(StudyResult result, Func<string, Applicant> applicantOf, FundingRules rules)
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

            var applicant = applicantOf(o.HouseId);
            var pinned = rules.Pinned.Any(p => p.HouseId == o.HouseId && p.OptionKey == o.Key);
            var (why, rule) = Eligibility.Of(o, applicant, rules, pinned);
            var grant = Eligibility.Grant(o, applicant, rules);
            if (why is null && (grant <= 0 || grant < rules.MinimumGrantUsd))
            {
                (why, rule) = (Eligibility.TooSmall(o, applicant, rules, grant), "size");
            }

            if (why is not null)
            {
                refused.Add((i, why, rule));
                continue;
            }

            candidates.Add(new(i, o.HouseId, applicant.RelatedKey, grant, Worth(o, rules.Merit), pinned)
            {
                Eligible = Eligibility.Cost(o),
                Earlier = applicant.EarlierGrantsUsd,
                Groups = [.. rules.Groups.Select(g => g.Name).Where(g => applicant.Groups.Contains(g, StringComparer.OrdinalIgnoreCase))],
                Conditions = Eligibility.Conditions(o, applicant, rules),
                Chance = o.Lasting.ShareBy(rules.PaybackSeasons),
                CompleteOn = applicant.Application?.CompleteOn ?? DateOnly.MaxValue,
                Lot = Lot.Of(rules.LotSeed, o.HouseId, o.Key),
            });
        }

        return (rules.Merit == Merit.BadYears && result.SavingByPath.Count > 0 ? InBadYears(candidates, result, rules) : candidates, refused);
    }

    /// <summary>
    /// Weighs each option by its mean saving in those futures in which what is picked saves least, turn by turn until the worst tenth gets no better: the
    /// share of a part in a tail mean is its conditional mean (Rockafellar and Uryasev 2000; Euler's rule), so picking by it raises the worst tenth of the sum.
    /// </summary>
    private static List<Candidate> InBadYears(List<Candidate> candidates, StudyResult result, FundingRules rules)
    {
        var (best, picked) = (candidates, Picking.Chosen(candidates, rules, rules.AvailableUsd, c => c.Merit));
        var tail = double.NegativeInfinity;
        for (var turn = 0; turn < Turns && picked.Count > 0; turn++)
        {
            var worst = WorstFutures(result, picked);
            var weighed = candidates.Select(c => c with { Merit = Mean(result.SavingByPath[c.Index], worst) }).ToList();
            picked = Picking.Chosen(weighed, rules, rules.AvailableUsd, c => c.Merit);
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
