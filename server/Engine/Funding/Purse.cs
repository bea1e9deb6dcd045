namespace FarmPortfolio.Engine.Funding;

/// <summary>Money that is given away step by step, and what it has been given to.</summary>
/// <param name="lots">Options to pick from.</param>
/// <param name="rules">Rules.</param>
/// <param name="money">What can be given, US dollars.</param>
internal sealed class Purse(Lots lots, FundingRules rules, double money)
{
    private readonly (Candidate? Option, int Number, int Place)[] chosen = [.. lots.OfHouse.Select(_ => ((Candidate?)null, -1, 0))];
    private readonly double[] farms = [.. lots.Earlier];
    private readonly Dictionary<string, double> passed = new(StringComparer.Ordinal);
    private double left = money;
    private int places;

    /// <summary>Keeps money back.</summary>
    public void Hold(double usd) => left -= usd;

    /// <summary>What a group was given.</summary>
    public double Given(string group) => chosen.Where(c => c.Option?.Groups.Contains(group) == true).Sum(c => c.Option!.Grant);

    /// <summary>Takes what the committee pinned, as far as the money and the farm's cap go: a pin sets the confidence rule aside and no other.</summary>
    public void Pinned()
    {
        for (var i = 0; i < lots.Candidates.Count; i++)
        {
            if (lots.Candidates[i] is { Pinned: true } c && chosen[lots.HouseOf[i]].Option is null && c.Grant <= Room(i))
            {
                Take(c, i);
            }
        }
    }

    /// <summary>Takes the best steps until there is enough or nothing fits.</summary>
    /// <param name="may">Whether an option may be taken.</param>
    /// <param name="enough">Whether to stop.</param>
    public void Fill(Func<Candidate, bool> may, Func<bool> enough)
    {
        if (rules.PartialShare < 1)
        {
            FillCut(may, enough);
        }
        else
        {
            FillWhole(may, enough);
        }
    }

    /// <summary>What was given.</summary>
    /// <param name="held">Money kept for groups.</param>
    /// <returns>Options in the order in which their houses came in.</returns>
    public Picked Picked(double held)
    {
        var taken = chosen.Where(c => c.Option is not null).OrderBy(c => c.Place).Select(c => c.Option!).ToList();
        var houses = taken.Select(c => c.House).ToHashSet(StringComparer.Ordinal);
        return new(taken, passed.Where(p => !houses.Contains(p.Key)).ToDictionary(StringComparer.Ordinal), held);
    }

    /// <summary>
    /// No grant is cut: a step that asks for too much of what is left, or of its farm's cap, does so for good until its house has another option in. So steps wait in order
    /// of merit and are looked at again only then: the same picks as a look at every option before each step, in about n log n.
    /// </summary>
    private void FillWhole(Func<Candidate, bool> may, Func<bool> enough)
    {
        var steps = new PriorityQueue<(int Number, int Old), (double Ratio, int Number)>(Comparer<(double Ratio, int Number)>.Create(
            (a, b) => a.Ratio != b.Ratio ? b.Ratio.CompareTo(a.Ratio) : a.Number == b.Number ? 0 : lots.Candidates[a.Number].Before(lots.Candidates[b.Number]) ? -1 : 1));
        var wanting = new List<(int Number, double Ratio)>();
        void Wait(IEnumerable<int> numbers)
        {
            foreach (var i in numbers)
            {
                var ratio = Ratio(i, lots.Candidates[i].Grant);
                if (ratio > 0 && may(lots.Candidates[i]))
                {
                    steps.Enqueue((i, chosen[lots.HouseOf[i]].Number), (ratio, i));
                }
            }
        }

        Wait(Enumerable.Range(0, lots.Candidates.Count));
        while (!enough() && steps.TryDequeue(out var step, out var rank))
        {
            var (c, house) = (lots.Candidates[step.Number], lots.HouseOf[step.Number]);
            if (step.Old != chosen[house].Number)
            {
                continue;
            }

            if (c.Grant > Room(step.Number))
            {
                if (step.Old < 0)
                {
                    wanting.Add((step.Number, rank.Ratio));
                }

                continue;
            }

            Passed(wanting.Where(w => w.Ratio > rank.Ratio).Select(w => w.Number));
            wanting.RemoveAll(w => w.Ratio > rank.Ratio);
            Take(c, step.Number);
            Wait(lots.OfHouse[house]);
        }
    }

    /// <summary>A grant may be cut to what is left, which moves its merit a dollar: every option is looked at before each step.</summary>
    private void FillCut(Func<Candidate, bool> may, Func<bool> enough)
    {
        while (!enough())
        {
            var (best, number, bestRatio) = ((Candidate?)null, -1, 0.0);
            for (var i = 0; i < lots.Candidates.Count; i++)
            {
                if (!may(lots.Candidates[i]) || Sized(i) is not { } sized)
                {
                    continue;
                }

                var ratio = Ratio(i, sized.Grant);
                if (ratio > bestRatio || (best is not null && ratio == bestRatio && sized.Before(best)))
                {
                    (best, number, bestRatio) = (sized, i, ratio);
                }
            }

            if (best is null)
            {
                return;
            }

            Passed(Enumerable.Range(0, lots.Candidates.Count).Where(i =>
                may(lots.Candidates[i]) && Sized(i) is null && lots.HouseOf[i] != lots.HouseOf[number] && Candidate.Tied(lots.Merit[i] / lots.Candidates[i].Grant) > bestRatio));
            Take(best, number);
        }
    }

    /// <summary>Merit a dollar of the step from what the house has to an option; 0 where it is no step.</summary>
    private double Ratio(int i, double grant)
    {
        var (old, number, _) = chosen[lots.HouseOf[i]];
        var (more, dollars) = (lots.Merit[i] - (old is null ? 0 : lots.Merit[number]), grant - (old?.Grant ?? 0));
        return old?.Pinned == true || more <= 0 || dollars <= 0 ? 0 : Candidate.Tied(more / dollars);
    }

    private double Room(int i) => Math.Min(left, rules.FarmCapUsd - farms[lots.FarmOf[i]]) + (chosen[lots.HouseOf[i]].Option?.Grant ?? 0);

    // as large as the money and the farm's cap allow; null = it cannot be had
    private Candidate? Sized(int i)
    {
        var (c, room) = (lots.Candidates[i], Room(i));
        var grant = c.Grant <= room ? c.Grant : Math.Floor(room + 1e-9);
        var cut = grant < c.Grant;
        if (Ratio(i, grant) <= 0 || (cut && (c.Pinned || grant < rules.PartialShare * c.Asked || grant < rules.MinimumGrantUsd)))
        {
            return null;
        }

        return cut ? c with { Grant = grant, Conditions = [.. c.Conditions, Eligibility.Smaller] } : c;
    }

    // whose turn it was, had there been money enough
    private void Passed(IEnumerable<int> numbers)
    {
        foreach (var i in numbers)
        {
            var c = lots.Candidates[i];
            if (c.Grant > left && chosen[lots.HouseOf[i]].Option is null && farms[lots.FarmOf[i]] + c.Grant <= rules.FarmCapUsd)
            {
                passed.TryAdd(c.House, left);
            }
        }
    }

    private void Take(Candidate c, int number)
    {
        ref var have = ref chosen[lots.HouseOf[number]];
        var before = have.Option?.Grant ?? 0;
        left -= c.Grant - before;
        farms[lots.FarmOf[number]] += c.Grant - before;
        have = (c, number, have.Option is null ? places++ : have.Place);
    }
}
