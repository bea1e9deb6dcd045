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
public sealed record FundingRow(int Index, bool Funded, bool Pinned, double GrantUsd, double MeritPerGrantUsd, double FundedShare, string Why)
{
    /// <summary>Grant by the rules before it was cut for want of money.</summary>
    public double AskedUsd { get; init; } = GrantUsd;

    /// <summary>Cost that a grant counts.</summary>
    public double EligibleUsd { get; init; }

    /// <summary>Groups of the farm that the round names.</summary>
    public IReadOnlyList<string> Groups { get; init; } = [];

    /// <summary>What must still come before the grant is firm.</summary>
    public IReadOnlyList<string> Conditions { get; init; } = [];
}

/// <summary>What a group asked and got.</summary>
/// <param name="Name">Group; "all" = every farm.</param>
/// <param name="MinimumShare">Share kept for it.</param>
/// <param name="AskedUsd">Best grant of each house, eligible or not.</param>
/// <param name="AskedHouses">Houses.</param>
/// <param name="EligibleUsd">Best grant of each eligible house.</param>
/// <param name="EligibleHouses">Houses.</param>
/// <param name="FundedUsd">Grants given.</param>
/// <param name="FundedHouses">Houses.</param>
public sealed record GroupReport(string Name, double MinimumShare, double AskedUsd, int AskedHouses, double EligibleUsd, int EligibleHouses, double FundedUsd, int FundedHouses);

/// <summary>What one act of the committee costs: the round without it against the round with it.</summary>
/// <param name="What">pinned, left out, amount set.</param>
/// <param name="HouseId">House.</param>
/// <param name="OptionKey">Option; null = the whole house.</param>
/// <param name="Reason">Why.</param>
/// <param name="LosesUsd">Mean saving a season that members lose by it; below zero = they gain.</param>
/// <param name="LosesShare">Share of the futures in which they lose.</param>
public sealed record OverrideCost(string What, string HouseId, string? OptionKey, string Reason, double LosesUsd, double LosesShare);

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
/// <param name="WorstTenthUsd">The same in the worst tenth of the futures.</param>
/// <param name="HeatSavedKwh">Heat saved a season.</param>
/// <param name="Co2SavedKg">CO2 not emitted a season.</param>
public sealed record MeasureOrder(Merit Merit, IReadOnlyList<(int Index, bool Funded)> Places, double GrantUsd, double SavingUsd, double WorstTenthUsd, double HeatSavedKwh, double Co2SavedKg);

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

    /// <summary>Mean saving a season over the worst tenth of the futures, read from the sum.</summary>
    public required double WorstTenthUsd { get; init; }

    /// <summary>What the same rules pick on one half of the futures, and what that pick saves on those and on the other half: picking the best promises too much where the two differ.</summary>
    public required (double PromisedUsd, double FoundUsd) OnFreshFutures { get; init; }

    /// <summary>Heat saved by all that is funded over the heat of all houses studied: a ratio of sums, never a mean of percentages.</summary>
    public required double HeatSavedShare { get; init; }

    /// <summary>Benefit against money.</summary>
    public required IReadOnlyList<FrontierPoint> Frontier { get; init; }

    /// <summary>What a budget larger by 10,000 dollars would add to the middle saving a season, the same share held back.</summary>
    public required double NextAddsUsd { get; init; }

    /// <summary>Saving a season that the last 10,000 dollars of the budget bought.</summary>
    public required double LastBoughtUsd { get; init; }

    /// <summary>Every group of the round, and all farms.</summary>
    public required IReadOnlyList<GroupReport> Groups { get; init; }

    /// <summary>Saving a season that the minimum shares cost all members; 0 where they are met without.</summary>
    public required double GroupsCostUsd { get; init; }

    /// <summary>Money kept for groups that cannot use it.</summary>
    public required double HeldUsd { get; init; }

    /// <summary>What each act of the committee costs.</summary>
    public required IReadOnlyList<OverrideCost> Overrides { get; init; }

    /// <summary>Grants given.</summary>
    public double GrantUsd => Rows.Where(r => r.Funded).Sum(r => r.GrantUsd);

    /// <summary>Orders the options of a study by the rules.</summary>
    /// <param name="result">The study's result.</param>
    /// <param name="farmOf">Farm of a house.</param>
    /// <param name="relatedOf">Key of the farms whose caps count as one.</param>
    /// <param name="rules">Rules.</param>
    /// <returns>The order.</returns>
    public static FundingOrder Of(StudyResult result, Func<string, string> farmOf, Func<string, string> relatedOf, FundingRules rules) => Of(result, house => new(farmOf(house), relatedOf(farmOf(house))), rules);

    /// <summary>Orders the options of a study by the rules.</summary>
    /// <param name="result">The study's result.</param>
    /// <param name="applicantOf">Who stands behind a house.</param>
    /// <param name="rules">Rules.</param>
    /// <returns>The order.</returns>
    public static FundingOrder Of(StudyResult result, Func<string, Applicant> applicantOf, FundingRules rules)
    {
        var replicates = result.Replicates;
        var (candidates, refused) = Candidates.Of(result, applicantOf, rules);
        var given = Picking.Of(candidates, rules, rules.AvailableUsd, c => c.Merit);
        var picked = given.Chosen;
        var shares = Shares(candidates, result, rules);
        var rows = Placed(picked).Select(p => Row(p, true, shares, Buys(p, rules.Merit))).ToList();
        var left = rules.AvailableUsd - picked.Sum(p => p.Grant) - given.HeldUsd;
        rows.AddRange(Waiting(candidates, picked).Select(w => Row(w, false, shares, WhyNot(w, left, given))));
        var saving = Sum(result, picked, replicates);
        double With(double more) => Sum(result, Picking.Chosen(candidates, rules, (rules with { BudgetUsd = Math.Max(0, rules.BudgetUsd + more) }).AvailableUsd, c => c.Merit), replicates).P50;
        var plain = rules with { Groups = [.. rules.Groups.Select(g => g with { MinimumShare = 0 })] };
        return new()
        {
            Rows = rows,
            NotEligible = refused,
            SavingUsd = saving,
            WorstTenthUsd = Candidates.Tail(result, picked),
            HeatSavedShare = ShareOfHeat(result, picked),
            OnFreshFutures = Fresh(candidates, result, rules),
            Frontier = Curve(result, candidates, rules, replicates),
            NextAddsUsd = With(Step) - saving.P50,
            LastBoughtUsd = saving.P50 - With(-Step),
            Groups = FundingReports.Groups(result, applicantOf, rules, candidates, picked),
            GroupsCostUsd = rules.Groups.Any(g => g.MinimumShare > 0) ? Sum(result, Picking.Chosen(candidates, plain, plain.AvailableUsd, c => c.Merit), replicates).Mean - saving.Mean : 0,
            HeldUsd = given.HeldUsd,
            Overrides = FundingReports.Overrides(result, applicantOf, rules, picked),
        };
    }

    /// <summary>The same money ordered by each of the measures under the same rules.</summary>
    /// <param name="result">The study's result.</param>
    /// <param name="farmOf">Farm of a house.</param>
    /// <param name="relatedOf">Key of the farms whose caps count as one.</param>
    /// <param name="rules">Rules; their own measure is left aside.</param>
    /// <returns>An order a measure.</returns>
    public static IReadOnlyList<MeasureOrder> ByMeasure(StudyResult result, Func<string, string> farmOf, Func<string, string> relatedOf, FundingRules rules) => ByMeasure(result, house => new(farmOf(house), relatedOf(farmOf(house))), rules);

    /// <summary>The same money ordered by each of the measures under the same rules.</summary>
    /// <param name="result">The study's result.</param>
    /// <param name="applicantOf">Who stands behind a house.</param>
    /// <param name="rules">Rules; their own measure is left aside.</param>
    /// <returns>An order a measure.</returns>
    public static IReadOnlyList<MeasureOrder> ByMeasure(StudyResult result, Func<string, Applicant> applicantOf, FundingRules rules) =>
        [.. Enum.GetValues<Merit>().Select(merit =>
        {
            var by = rules with { Merit = merit };
            var (candidates, _) = Candidates.Of(result, applicantOf, by);
            var picked = Picking.Chosen(candidates, by, by.AvailableUsd, c => c.Merit);
            var places = Placed(picked).Select(p => (p.Index, true)).Concat(Waiting(candidates, picked).Select(w => (w.Index, false))).ToList();
            double Sum(Func<OptionResult, double> of) => picked.Sum(c => of(result.Options[c.Index]));
            return new MeasureOrder(merit, places, picked.Sum(c => c.Grant), Sum(o => o.SavingUsd.Mean), Candidates.Tail(result, picked), Sum(o => o.HeatSavedKwh), Sum(o => o.Co2SavedKg));
        })];

    private static List<Candidate> Placed(IEnumerable<Candidate> picked) => [.. picked.OrderByDescending(p => p.Pinned).ThenBy(p => p, ByMerit)];

    private static IEnumerable<Candidate> Waiting(List<Candidate> candidates, List<Candidate> picked) =>
        candidates.Where(c => picked.All(p => p.House != c.House)).GroupBy(c => c.House).Select(g => g.Order(ByMerit).First()).Order(ByMerit);

    private static readonly Comparer<Candidate> ByMerit = Comparer<Candidate>.Create((a, b) =>
        Candidate.Tied(b.Merit / b.Grant).CompareTo(Candidate.Tied(a.Merit / a.Grant)) is var first && first != 0 ? first : a.Index == b.Index ? 0 : a.Before(b) ? -1 : 1);

    private static string WhyNot(Candidate w, double left, Picked given) =>
        given.Skipped.TryGetValue(w.House, out var then) ? $"is skipped for its size: it asks for ${w.Grant:#,0}, ${then:#,0} was left when its turn came, and smaller ones fit"
        : w.Grant > left ? $"asks for ${w.Grant:#,0} and ${left:#,0} is left"
        : "its farm has reached its cap";

    private static string Buys(Candidate p, Merit merit) => merit switch
    {
        Merit.Energy => $"saves {p.Merit / p.Grant:0.0} kWh of heat a season a grant dollar",
        Merit.BadYears => $"saves ${p.Merit / p.Grant:0.00} a season a grant dollar in the worst tenth of the futures",
        Merit.Co2 => $"saves {p.Merit / p.Grant:0.0} kg of CO2 a season a grant dollar",
        _ => $"saves ${p.Merit / p.Grant:0.00} a season a grant dollar",
    };

    private static FundingRow Row(Candidate c, bool funded, Dictionary<int, double> shares, string why) =>
        new(c.Index, funded, c.Pinned, c.Grant, c.Merit / c.Grant, shares.GetValueOrDefault(c.Index), !c.Pinned ? why : funded ? "pinned by the committee" : $"is pinned by the committee, but {why}")
        {
            AskedUsd = c.Asked,
            EligibleUsd = c.Eligible,
            Groups = c.Groups,
            Conditions = c.Conditions,
        };

    private static double ShareOfHeat(StudyResult result, List<Candidate> picked)
    {
        var all = result.Options.DistinctBy(o => o.HouseId).Sum(o => o.BaseHeatKwh);
        return all > 0 ? picked.Sum(c => result.Options[c.Index].HeatSavedKwh) / all : 0;
    }

    private static (double Promised, double Found) Fresh(List<Candidate> candidates, StudyResult result, FundingRules rules)
    {
        if (candidates.Count == 0 || result.SavingByPath.Count == 0)
        {
            return (0, 0);
        }

        var half = result.SavingByPath[candidates[0].Index].Length / 2;
        double Mean(Candidate c, bool second)
        {
            var by = result.SavingByPath[c.Index];
            var sum = 0.0;
            for (var p = 0; p < half; p++)
            {
                sum += by[second ? half + p : p];
            }

            return sum / half;
        }

        var first = candidates.ToDictionary(c => c.Index, c => Mean(c, false));
        var picked = Picking.Chosen(candidates, rules, rules.AvailableUsd, c => rules.Merit == Merit.NetSaving ? first[c.Index] : c.Merit);
        return (picked.Sum(c => first[c.Index]), picked.Sum(c => Mean(c, true)));
    }

    private static Dictionary<int, double> Shares(List<Candidate> candidates, StudyResult result, FundingRules rules)
    {
        if (candidates.Count == 0)
        {
            return [];
        }

        var paths = result.SavingByPath[candidates[0].Index].Length;
        var futures = Math.Min(SingleFutures, paths);
        var counts = new int[result.Options.Count];
        Parallel.For(0, futures, f =>
        {
            var path = (int)((long)f * paths / futures);
            foreach (var c in Picking.Chosen(candidates, rules, rules.AvailableUsd, c => rules.Merit is Merit.NetSaving or Merit.BadYears ? result.SavingByPath[c.Index][path] : c.Merit))
            {
                Interlocked.Increment(ref counts[c.Index]);
            }
        });
        return candidates.ToDictionary(c => c.Index, c => (double)counts[c.Index] / futures);
    }

    private static Distribution Sum(StudyResult result, IEnumerable<Candidate> picked, int replicates) => Distribution.Of(Candidates.PathSum(result, picked), replicates);

    private static List<FrontierPoint> Curve(StudyResult result, List<Candidate> candidates, FundingRules rules, int replicates)
    {
        var points = new List<FrontierPoint> { new(0, 0, 0, 0, 0, 0) };
        var most = Math.Max(rules.AvailableUsd * 2, Step);
        for (var i = 1; i <= 16; i++)
        {
            var picked = Picking.Chosen(candidates, rules, most * i / 16, c => c.Merit);
            var given = picked.Sum(c => c.Grant);
            if (given > points[^1].GrantUsd)
            {
                var d = Sum(result, picked, replicates);
                points.Add(new(given, d.P10, d.P25, d.P50, d.P75, d.P90));
            }
        }

        return points;
    }
}
