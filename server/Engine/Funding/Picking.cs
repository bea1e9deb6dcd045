namespace FarmPortfolio.Engine.Funding;

/// <summary>What a sum of money is given to.</summary>
/// <param name="Chosen">Options funded, in the order in which they were taken.</param>
/// <param name="Skipped">Those whose turn came while less money was left than they ask, and for which smaller ones were taken: what was left then, by house.</param>
/// <param name="HeldUsd">Money kept for groups that cannot use it.</param>
internal sealed record Picked(List<Candidate> Chosen, Dictionary<string, double> Skipped, double HeldUsd);

/// <summary>Best next step by added merit a grant dollar, at most one option a house; a dearer option of a house already in is an added step.</summary>
internal static class Picking
{
    /// <summary>The options alone.</summary>
    public static List<Candidate> Chosen(List<Candidate> candidates, FundingRules rules, double money, Func<Candidate, double> merit) => Of(candidates, rules, money, merit).Chosen;

    /// <summary>Gives a sum away: without regard to groups where that meets every minimum, otherwise each group's own best first until it has its share.</summary>
    public static Picked Of(List<Candidate> candidates, FundingRules rules, double money, Func<Candidate, double> merit)
    {
        var free = new Purse(candidates, rules, money, merit);
        free.Pinned();
        free.Fill(_ => true, () => false);
        var wanting = rules.Groups.Where(g => g.MinimumShare > 0).ToList();
        if (wanting.All(g => free.Given(g.Name) >= g.MinimumShare * money))
        {
            return free.Picked(0);
        }

        var purse = new Purse(candidates, rules, money, merit);
        purse.Pinned();
        var held = 0.0;
        foreach (var g in wanting)
        {
            var least = g.MinimumShare * money;
            purse.Fill(c => c.Groups.Contains(g.Name), () => purse.Given(g.Name) >= least);
            held += rules.GroupMoneyHeld ? Math.Max(0, least - purse.Given(g.Name)) : 0;
        }

        purse.Hold(held);
        purse.Fill(_ => true, () => false);
        return purse.Picked(held);
    }

    private sealed class Purse(List<Candidate> candidates, FundingRules rules, double money, Func<Candidate, double> merit)
    {
        private readonly Dictionary<string, (Candidate Option, int Place)> chosen = new(StringComparer.Ordinal);
        private readonly Dictionary<string, double> farms = candidates.GroupBy(c => c.Farm).ToDictionary(g => g.Key, g => g.Max(c => c.Earlier), StringComparer.Ordinal);
        private readonly Dictionary<string, double> passed = new(StringComparer.Ordinal);
        private double left = money;

        public void Hold(double usd) => left -= usd;

        public double Given(string group) => chosen.Values.Where(v => v.Option.Groups.Contains(group)).Sum(v => v.Option.Grant);

        public void Pinned()
        {
            foreach (var c in candidates.Where(c => c.Pinned && !chosen.ContainsKey(c.House)))
            {
                if (c.Grant <= left)
                {
                    Take(c);
                }
            }
        }

        public void Fill(Func<Candidate, bool> may, Func<bool> enough)
        {
            while (!enough())
            {
                Candidate? best = null;
                var bestRatio = 0.0;
                foreach (var c in candidates)
                {
                    if (!may(c) || Sized(c) is not { } sized)
                    {
                        continue;
                    }

                    var old = chosen.TryGetValue(c.House, out var have) ? have.Option : null;
                    var ratio = Candidate.Tied((merit(c) - (old is null ? 0 : merit(old))) / (sized.Grant - (old?.Grant ?? 0)));
                    if (ratio > bestRatio || (best is not null && ratio == bestRatio && sized.Before(best)))
                    {
                        (best, bestRatio) = (sized, ratio);
                    }
                }

                if (best is null)
                {
                    return;
                }

                Passed(best, bestRatio, may);
                Take(best);
            }
        }

        public Picked Picked(double held) => new(
            [.. chosen.Values.OrderBy(v => v.Place).Select(v => v.Option)],
            passed.Where(s => !chosen.ContainsKey(s.Key)).ToDictionary(StringComparer.Ordinal),
            held);

        // as large as the money and the farm's cap allow; null = it cannot be had
        private Candidate? Sized(Candidate c)
        {
            var old = chosen.TryGetValue(c.House, out var have) ? have.Option : null;
            var room = Math.Min(left, rules.FarmCapUsd - farms[c.Farm]) + (old?.Grant ?? 0);
            var grant = c.Grant <= room ? c.Grant : Math.Floor(room + 1e-9);
            var cut = grant < c.Grant;
            if (old?.Pinned == true || merit(c) - (old is null ? 0 : merit(old)) <= 0 || grant - (old?.Grant ?? 0) <= 0
                || (cut && (c.Pinned || rules.PartialShare >= 1 || grant < rules.PartialShare * c.Asked || grant < rules.MinimumGrantUsd)))
            {
                return null;
            }

            return cut ? c with { Grant = grant, Conditions = [.. c.Conditions, Eligibility.Smaller] } : c;
        }

        // whose turn it was, had there been money enough
        private void Passed(Candidate best, double bestRatio, Func<Candidate, bool> may)
        {
            foreach (var c in candidates.Where(c => may(c) && c.Grant > left && !chosen.ContainsKey(c.House) && Sized(c) is null && farms[c.Farm] + c.Grant <= rules.FarmCapUsd && c.House != best.House))
            {
                if (Candidate.Tied(merit(c) / c.Grant) > bestRatio)
                {
                    passed.TryAdd(c.House, left);
                }
            }
        }

        private void Take(Candidate c)
        {
            var before = chosen.TryGetValue(c.House, out var old) ? old.Option.Grant : 0;
            left -= c.Grant - before;
            farms[c.Farm] += c.Grant - before;
            chosen[c.House] = (c, before > 0 ? old.Place : chosen.Count);
        }
    }
}
