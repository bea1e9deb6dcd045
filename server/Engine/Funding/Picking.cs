namespace FarmPortfolio.Engine.Funding;

/// <summary>
/// Picks steps one after another, each the one that adds most merit a grant dollar. A step that asks for too much of what is left, or of its farm's cap, asks for too much for good until
/// its house has another option in; so steps wait in order of merit and are looked at again only then. Same picks as a look at every option before each step, in about n log n.
/// </summary>
internal sealed class Picking
{
    private readonly List<Candidate> candidates;
    private readonly double farmCapUsd;
    private readonly double[] merit;
    private readonly int[] farmOf;
    private readonly int[] houseOf;
    private readonly List<List<int>> ofHouse = [];
    private readonly (int Index, int Place)[] chosen;
    private readonly double[] given;
    private readonly PriorityQueue<(int Index, int Old), (double Ratio, int Index)> steps;
    private double money;
    private int places;

    /// <summary>Lays out what can be picked.</summary>
    /// <param name="candidates">Options that the rules let in.</param>
    /// <param name="farmCapUsd">Most that farms counting as one get together, US dollars.</param>
    /// <param name="money">What can be given, US dollars.</param>
    /// <param name="merit">What an option buys a season.</param>
    public Picking(List<Candidate> candidates, double farmCapUsd, double money, Func<Candidate, double> merit)
    {
        (this.candidates, this.farmCapUsd, this.money) = (candidates, farmCapUsd, money);
        this.merit = new double[candidates.Count];
        (houseOf, farmOf) = (new int[candidates.Count], new int[candidates.Count]);
        var (houses, farms) = (new Dictionary<string, int>(StringComparer.Ordinal), new Dictionary<string, int>(StringComparer.Ordinal));
        for (var i = 0; i < candidates.Count; i++)
        {
            this.merit[i] = merit(candidates[i]);
            houseOf[i] = Number(houses, candidates[i].House);
            farmOf[i] = Number(farms, candidates[i].Farm);
            if (houseOf[i] == ofHouse.Count)
            {
                ofHouse.Add([]);
            }

            ofHouse[houseOf[i]].Add(i);
        }

        chosen = new (int, int)[houses.Count];
        Array.Fill(chosen, (-1, 0));
        given = new double[farms.Count];
        for (var i = 0; i < candidates.Count; i++)
        {
            if (candidates[i].Pinned && candidates[i].Grant <= this.money)
            {
                Take(i);
            }
        }

        steps = new(Enumerable.Range(0, candidates.Count).Select(Step).Where(s => s.Element.Index >= 0), Comparer<(double Ratio, int Index)>.Create(
            (a, b) => a.Ratio != b.Ratio ? b.Ratio.CompareTo(a.Ratio) : a.Index.CompareTo(b.Index)));
    }

    /// <summary>What is picked, in the order in which the houses came in.</summary>
    /// <returns>At most one option a house.</returns>
    public List<Candidate> Picked()
    {
        while (steps.TryDequeue(out var step, out _))
        {
            var (house, farm) = (houseOf[step.Index], farmOf[step.Index]);
            var more = candidates[step.Index].Grant - GrantOf(house);
            if (step.Old != chosen[house].Index || more > money || given[farm] + more > farmCapUsd)
            {
                continue;
            }

            Take(step.Index);
            foreach (var other in ofHouse[house].Select(Step).Where(s => s.Element.Index >= 0))
            {
                steps.Enqueue(other.Element, other.Priority);
            }
        }

        return [.. chosen.Where(c => c.Index >= 0).OrderBy(c => c.Place).Select(c => candidates[c.Index])];
    }

    /// <summary>The step from what the house has to an option; index -1 where it is none.</summary>
    private ((int Index, int Old) Element, (double Ratio, int Index) Priority) Step(int i)
    {
        var old = chosen[houseOf[i]].Index;
        var (more, grant) = (merit[i] - (old < 0 ? 0 : merit[old]), candidates[i].Grant - GrantOf(houseOf[i]));
        return (old >= 0 && candidates[old].Pinned) || more <= 0 || grant <= 0 ? ((-1, -1), default) : ((i, old), (more / grant, i));
    }

    private double GrantOf(int house) => chosen[house].Index is var old && old < 0 ? 0 : candidates[old].Grant;

    private void Take(int i)
    {
        var house = houseOf[i];
        var before = GrantOf(house);
        money -= candidates[i].Grant - before;
        given[farmOf[i]] += candidates[i].Grant - before;
        chosen[house] = (i, before > 0 ? chosen[house].Place : places++);
    }

    private static int Number(Dictionary<string, int> numbers, string key)
    {
        if (!numbers.TryGetValue(key, out var number))
        {
            numbers[key] = number = numbers.Count;
        }

        return number;
    }
}
