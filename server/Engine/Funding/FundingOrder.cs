using FarmPortfolio.Engine.Economics;
using FarmPortfolio.Engine.Studies;

namespace FarmPortfolio.Engine.Funding;

/// <summary>A place in the order.</summary>
/// <param name="Index">Index of the option in the study's result.</param>
/// <param name="Funded">Whether the budget reaches it.</param>
/// <param name="Pinned">Whether the committee pinned it.</param>
/// <param name="GrantUsd">Grant.</param>
/// <param name="MeritPerGrantUsd">What it buys a grant dollar, by the round's measure.</param>
/// <param name="FundedShare">Share of single futures in which it would be funded if that future were known.</param>
/// <param name="Why">Why it stands here.</param>
public sealed record FundingRow(int Index, bool Funded, bool Pinned, double GrantUsd, double MeritPerGrantUsd, double FundedShare, string Why);

/// <summary>A point of the curve of benefit against money.</summary>
/// <param name="GrantUsd">Grant money given.</param>
/// <param name="P10">Saving a season, one future in ten is lower.</param>
/// <param name="P25">One in four is lower.</param>
/// <param name="P50">Middle.</param>
/// <param name="P75">One in four is higher.</param>
/// <param name="P90">One in ten is higher.</param>
public sealed record FrontierPoint(double GrantUsd, double P10, double P25, double P50, double P75, double P90);

/// <summary>What the same money buys when it goes by one of the measures; means over all futures.</summary>
/// <param name="Merit">Measure.</param>
/// <param name="Places">Index of the option in the study's result and whether it is funded, in order.</param>
/// <param name="GrantUsd">Grants given.</param>
/// <param name="SavingUsd">Saving of members a season.</param>
/// <param name="HeatSavedKwh">Heat saved a season.</param>
/// <param name="Co2SavedKg">CO2 not emitted a season.</param>
public sealed record MeasureOrder(Merit Merit, IReadOnlyList<(int Index, bool Funded)> Places, double GrantUsd, double SavingUsd, double HeatSavedKwh, double Co2SavedKg);

/// <summary>What to fund first.</summary>
public sealed record FundingOrder
{
    private const int SingleFutures = 200;
    private const double Step = 10000;

    /// <summary>Rows, funded first.</summary>
    public required IReadOnlyList<FundingRow> Rows { get; init; }

    /// <summary>Options that no rule lets in: index, why, rule.</summary>
    public required IReadOnlyList<(int Index, string Why, string Rule)> NotEligible { get; init; }

    /// <summary>Saving a season of all that is funded, read from sums path by path.</summary>
    public required Distribution SavingUsd { get; init; }

    /// <summary>Benefit against money.</summary>
    public required IReadOnlyList<FrontierPoint> Frontier { get; init; }

    /// <summary>What the next 10,000 dollars would add to the mean saving a season.</summary>
    public required double NextAddsUsd { get; init; }

    /// <summary>Grants given.</summary>
    public double GrantUsd => Rows.Where(r => r.Funded).Sum(r => r.GrantUsd);

    /// <summary>Orders the options of a study by the rules.</summary>
    /// <param name="result">The study's result.</param>
    /// <param name="farmOf">Farm of a house.</param>
    /// <param name="relatedOf">Key of the farms whose caps count as one.</param>
    /// <param name="rules">Rules.</param>
    /// <returns>The order.</returns>
    public static FundingOrder Of(StudyResult result, Func<string, string> farmOf, Func<string, string> relatedOf, FundingRules rules)
    {
        var replicates = result.Replicates;
        var (candidates, refused) = Candidates(result, farmOf, relatedOf, rules);
        var picked = Pick(candidates, rules, rules.AvailableUsd, c => c.Merit);
        var shares = Shares(candidates, result, rules);
        var rows = picked.OrderByDescending(p => p.Pinned).ThenByDescending(p => p.Merit / p.Grant).Select(p => Row(p, true, shares, Buys(p, rules.Merit))).ToList();
        var waiting = Waiting(candidates, picked);
        var left = rules.AvailableUsd - picked.Sum(p => p.Grant);
        rows.AddRange(waiting.Select(w => Row(w, false, shares, w.Grant > left ? $"asks for ${w.Grant:#,0} and ${left:#,0} is left" : "its farm has reached its cap")));
        var next = Pick(candidates, rules, rules.AvailableUsd + Step, c => c.Merit);
        return new()
        {
            Rows = rows,
            NotEligible = refused,
            SavingUsd = Sum(result, picked, replicates),
            Frontier = Curve(result, candidates, rules, replicates),
            NextAddsUsd = next.Sum(c => result.Options[c.Index].SavingUsd.Mean) - picked.Sum(c => result.Options[c.Index].SavingUsd.Mean),
        };
    }

    /// <summary>The same money ordered by each of the three measures under the same rules.</summary>
    /// <param name="result">The study's result.</param>
    /// <param name="farmOf">Farm of a house.</param>
    /// <param name="relatedOf">Key of the farms whose caps count as one.</param>
    /// <param name="rules">Rules; their own measure is left aside.</param>
    /// <returns>An order a measure.</returns>
    public static IReadOnlyList<MeasureOrder> ByMeasure(StudyResult result, Func<string, string> farmOf, Func<string, string> relatedOf, FundingRules rules) =>
        [.. Enum.GetValues<Merit>().Select(merit =>
        {
            var by = rules with { Merit = merit };
            var (candidates, _) = Candidates(result, farmOf, relatedOf, by);
            var picked = Pick(candidates, by, by.AvailableUsd, c => c.Merit);
            var places = picked.OrderByDescending(p => p.Pinned).ThenByDescending(p => p.Merit / p.Grant).Select(p => (p.Index, true)).Concat(Waiting(candidates, picked).Select(w => (w.Index, false))).ToList();
            double Sum(Func<OptionResult, double> of) => picked.Sum(c => of(result.Options[c.Index]));
            return new MeasureOrder(merit, places, picked.Sum(c => c.Grant), Sum(o => o.SavingUsd.Mean), Sum(o => o.HeatSavedKwh), Sum(o => o.Co2SavedKg));
        })];

    private static IOrderedEnumerable<Candidate> Waiting(List<Candidate> candidates, List<Candidate> picked) =>
        candidates.Where(c => picked.All(p => p.House != c.House)).GroupBy(c => c.House).Select(g => g.MaxBy(c => c.Merit / c.Grant)!).OrderByDescending(c => c.Merit / c.Grant).ThenBy(c => c.Index);

    private static (List<Candidate> Candidates, List<(int Index, string Why, string Rule)> Refused) Candidates(
        StudyResult result, Func<string, string> farmOf, Func<string, string> relatedOf, FundingRules rules)
    {
        var candidates = new List<Candidate>();
        var refused = new List<(int, string, string)>();
        for (var i = 0; i < result.Options.Count; i++)
        {
            var o = result.Options[i];
            if (o.OutlayUsd <= 0)
            {
                continue;
            }

            var grant = Math.Floor(Math.Min(rules.CostShare * o.OutlayUsd, rules.HouseCapUsd));
            var paid = o.Lasting.ShareBy(rules.PaybackSeasons);
            var pinned = rules.Pinned.Any(p => p.HouseId == o.HouseId && p.OptionKey == o.Key);
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

        return (candidates, refused);
    }

    private static string Buys(Candidate p, Merit merit) => merit switch
    {
        Merit.Energy => $"saves {p.Merit / p.Grant:0.0} kWh of heat a season a grant dollar",
        Merit.Co2 => $"saves {p.Merit / p.Grant:0.0} kg of CO2 a season a grant dollar",
        _ => $"saves ${p.Merit / p.Grant:0.00} a season a grant dollar",
    };

    private static double Worth(OptionResult o, Merit merit) => merit switch { Merit.Energy => o.HeatSavedKwh, Merit.Co2 => o.Co2SavedKg, _ => o.SavingUsd.Mean };

    private static FundingRow Row(Candidate c, bool funded, Dictionary<int, double> shares, string why) =>
        new(c.Index, funded, c.Pinned, c.Grant, c.Merit / c.Grant, shares.GetValueOrDefault(c.Index), c.Pinned ? "pinned by the committee" : why);

    /// <summary>Best next step by added merit a grant dollar, at most one option a house; a dearer option of a house already in is an added step.</summary>
    private static List<Candidate> Pick(List<Candidate> candidates, FundingRules rules, double money, Func<Candidate, double> merit)
    {
        var chosen = new Dictionary<string, (Candidate Option, int Place)>(StringComparer.Ordinal);
        var farms = new Dictionary<string, double>(StringComparer.Ordinal);
        var place = 0;
        void Take(Candidate c)
        {
            var before = chosen.TryGetValue(c.House, out var old) ? old.Option.Grant : 0;
            money -= c.Grant - before;
            farms[c.Farm] = farms.GetValueOrDefault(c.Farm) + c.Grant - before;
            chosen[c.House] = (c, before > 0 ? old.Place : place++);
        }

        foreach (var c in candidates.Where(c => c.Pinned && c.Grant <= money))
        {
            Take(c);
        }

        while (true)
        {
            Candidate? best = null;
            var bestRatio = 0.0;
            foreach (var c in candidates)
            {
                var old = chosen.TryGetValue(c.House, out var have) ? have.Option : null;
                var (more, grant) = (merit(c) - (old is null ? 0 : merit(old)), c.Grant - (old?.Grant ?? 0));
                if (old?.Pinned == true || more <= 0 || grant <= 0 || grant > money || farms.GetValueOrDefault(c.Farm) + grant > rules.FarmCapUsd)
                {
                    continue;
                }

                if (more / grant > bestRatio)
                {
                    (best, bestRatio) = (c, more / grant);
                }
            }

            if (best is null)
            {
                return [.. chosen.Values.OrderBy(v => v.Place).Select(v => v.Option)];
            }

            Take(best);
        }
    }

    private static Dictionary<int, double> Shares(List<Candidate> candidates, StudyResult result, FundingRules rules)
    {
        var counts = candidates.ToDictionary(c => c.Index, _ => 0.0);
        if (candidates.Count == 0)
        {
            return counts;
        }

        var paths = result.SavingByPath[candidates[0].Index].Length;
        var futures = Math.Min(SingleFutures, paths);
        for (var f = 0; f < futures; f++)
        {
            var path = (int)((long)f * paths / futures);
            foreach (var c in Pick(candidates, rules, rules.AvailableUsd, c => rules.Merit == Merit.NetSaving ? result.SavingByPath[c.Index][path] : c.Merit))
            {
                counts[c.Index] += 1.0 / futures;
            }
        }

        return counts;
    }

    private static double[] PathSum(StudyResult result, IEnumerable<Candidate> picked)
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

    private static Distribution Sum(StudyResult result, IEnumerable<Candidate> picked, int replicates) => Distribution.Of(PathSum(result, picked), replicates);

    private static List<FrontierPoint> Curve(StudyResult result, List<Candidate> candidates, FundingRules rules, int replicates)
    {
        var points = new List<FrontierPoint> { new(0, 0, 0, 0, 0, 0) };
        var most = Math.Max(rules.AvailableUsd * 2, Step);
        for (var i = 1; i <= 16; i++)
        {
            var picked = Pick(candidates, rules, most * i / 16, c => c.Merit);
            var given = picked.Sum(c => c.Grant);
            if (given > points[^1].GrantUsd)
            {
                var d = Sum(result, picked, replicates);
                points.Add(new(given, d.P10, d.P25, d.P50, d.P75, d.P90));
            }
        }

        return points;
    }

    private sealed record Candidate(int Index, string House, string Farm, double Grant, double Merit, bool Pinned);
}
