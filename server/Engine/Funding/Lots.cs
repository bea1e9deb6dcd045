namespace FarmPortfolio.Engine.Funding;

/// <summary>Options to pick from, by number, each with its merit, its house and its farm.</summary>
internal sealed class Lots
{
    /// <summary>Numbers houses and farms in the order in which they come.</summary>
    /// <param name="candidates">Options that the rules let in.</param>
    /// <param name="merit">What an option buys a season.</param>
    public Lots(List<Candidate> candidates, Func<Candidate, double> merit)
    {
        (Candidates, Merit) = (candidates, [.. candidates.Select(merit)]);
        var (houses, farms) = (new Dictionary<string, int>(StringComparer.Ordinal), new Dictionary<string, int>(StringComparer.Ordinal));
        HouseOf = [.. candidates.Select(c => Number(houses, c.House))];
        FarmOf = [.. candidates.Select(c => Number(farms, c.Farm))];
        OfHouse = [.. houses.Select(_ => new List<int>())];
        Earlier = new double[farms.Count];
        for (var i = 0; i < candidates.Count; i++)
        {
            OfHouse[HouseOf[i]].Add(i);
            Earlier[FarmOf[i]] = Math.Max(Earlier[FarmOf[i]], candidates[i].Earlier);
        }
    }

    /// <summary>Options.</summary>
    public IReadOnlyList<Candidate> Candidates { get; }

    /// <summary>What each buys a season.</summary>
    public double[] Merit { get; }

    /// <summary>House of each.</summary>
    public int[] HouseOf { get; }

    /// <summary>Farm of each.</summary>
    public int[] FarmOf { get; }

    /// <summary>Options of each house.</summary>
    public IReadOnlyList<List<int>> OfHouse { get; }

    /// <summary>Grants that each farm had before.</summary>
    public double[] Earlier { get; }

    private static int Number(Dictionary<string, int> numbers, string key)
    {
        if (!numbers.TryGetValue(key, out var number))
        {
            numbers[key] = number = numbers.Count;
        }

        return number;
    }
}
