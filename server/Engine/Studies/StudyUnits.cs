namespace FarmPortfolio.Engine.Studies;

/// <summary>The smallest set that settles together: tanks and meters, and the houses they tie.</summary>
/// <param name="Houses">Houses in order of their ids, at least one.</param>
/// <param name="Groups">Tanks and meters in order of their ids.</param>
/// <param name="Sha256">Name of its result.</param>
internal sealed record StudyUnit(IReadOnlyList<StudyHouse> Houses, IReadOnlyList<string> Groups, string Sha256);

/// <summary>Cuts a portfolio into units.</summary>
internal static class StudyUnits
{
    /// <summary>The units of a portfolio, in order of their first house.</summary>
    /// <param name="portfolio">All that the study reads.</param>
    /// <param name="futures">Futures.</param>
    /// <param name="left">Takes the houses left out, and why.</param>
    /// <param name="only">Houses wanted: whole units; null = all.</param>
    /// <param name="threads">Threads, 1 or more; the units do not depend on them.</param>
    /// <returns>Units.</returns>
    public static List<StudyUnit> Of(Portfolio portfolio, StudyFutures futures, List<(string ItemId, Fault Fault)> left, IReadOnlySet<string>? only = null, int threads = 1)
    {
        var houses = new List<StudyHouse>();
        var wanted = portfolio.Houses.Keys.Where(h => only is null || only.Contains(h)).Order(StringComparer.Ordinal).ToArray();
        foreach (var (id, (house, faults)) in Each(wanted, threads, id => (Id: id, Made: StudyHouse.Of(portfolio, id, futures))))
        {
            left.AddRange(faults.Select(f => (id, f)));
            if (house is not null)
            {
                houses.Add(house);
            }
        }

        var hash = new UnitHash(portfolio, futures);
        return [.. Each([.. Tied(houses)], threads, h => Unit(h, hash))];
    }

    /// <summary>Makes one of each, in order.</summary>
    private static TTo[] Each<TFrom, TTo>(TFrom[] from, int threads, Func<TFrom, TTo> make)
    {
        var made = new TTo[from.Length];
        Parallel.For(0, from.Length, new ParallelOptions { MaxDegreeOfParallelism = threads }, i => made[i] = make(from[i]));
        return made;
    }

    private static StudyUnit Unit(List<StudyHouse> houses, UnitHash hash)
    {
        var groups = houses.SelectMany(Groups).Distinct().Order(StringComparer.Ordinal).ToList();
        return new(houses, groups, hash.Of(houses, groups));
    }

    /// <summary>Tanks and meters of a house, and those its switches of fuel move to.</summary>
    private static IEnumerable<string> Groups(StudyHouse house) => house.Supplies.Select(s => s.GroupId).Concat(house.Switches.Values.Select(s => s.Line?.GroupId)).OfType<string>().Distinct();

    /// <summary>Houses that share a tank or meter, directly or through others.</summary>
    private static List<List<StudyHouse>> Tied(List<StudyHouse> houses)
    {
        var sets = new List<List<StudyHouse>>();
        var ofGroup = new Dictionary<string, List<StudyHouse>>(StringComparer.Ordinal);
        foreach (var house in houses)
        {
            var ids = Groups(house).ToList();
            var met = ids.Where(ofGroup.ContainsKey).Select(g => ofGroup[g]).Distinct().ToList();
            var into = met.Count > 0 ? met.MinBy(sets.IndexOf)! : [];
            if (met.Count == 0)
            {
                sets.Add(into);
            }

            foreach (var other in met.Where(m => m != into))
            {
                into.AddRange(other);
                sets.Remove(other);
                foreach (var group in ofGroup.Where(g => g.Value == other).Select(g => g.Key).ToList())
                {
                    ofGroup[group] = into;
                }
            }

            into.Add(house);
            ids.ForEach(g => ofGroup[g] = into);
        }

        return [.. sets.Select(s => s.OrderBy(h => h.Id, StringComparer.Ordinal).ToList()).OrderBy(s => s[0].Id, StringComparer.Ordinal)];
    }
}
