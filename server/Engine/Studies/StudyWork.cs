using System.Diagnostics;

namespace FarmPortfolio.Engine.Studies;

/// <summary>Shares the units of a study among threads.</summary>
/// <param name="context">What all houses share.</param>
/// <param name="futures">Futures.</param>
/// <param name="means">What may be used.</param>
/// <param name="progress">Told how far it is.</param>
/// <param name="cancel">Stops it.</param>
internal sealed class StudyWork(StudyContext context, StudyFutures futures, StudyMeans means, IProgress<StudyProgress>? progress, CancellationToken cancel)
{
    private readonly int cells = context.Paths * context.Seasons;
    private readonly Lock gate = new();
    private int done;
    private int total;

    /// <summary>Reckons what is not at hand.</summary>
    /// <param name="units">Units of the study.</param>
    /// <returns>Results in the order of the units, the sums, and how many units were reckoned.</returns>
    public (UnitResult[] Results, StudySums Sums, int Reckoned) Do(IReadOnlyList<StudyUnit> units)
    {
        var results = new UnitResult?[units.Count];
        for (var i = 0; i < units.Count; i++)
        {
            results[i] = means.Memo?.Find(units[i].Sha256);
        }

        total = Enumerable.Range(0, units.Count).Where(i => results[i] is null).Sum(i => units[i].Houses.Sum(h => h.Options.Count));
        var (sums, summed) = Start(units);
        var reckoned = results.Count(r => r is null);
        Each(Enumerable.Range(0, units.Count).Where(i => results[i] is null || !summed.Contains(units[i].Sha256)).ToList(), sums, (run, mine, i) =>
        {
            if (results[i] is not null)
            {
                run.CostOnly(units[i], mine, 1, cancel);
                return;
            }

            // a unit that is in the earlier sums already is reckoned for its options alone
            var to = summed.Contains(units[i].Sha256) ? new StudySums(cells) : mine;
            var (result, text) = UnitResult.Write(run.Whole(units[i], to, means.Paths, () => Interlocked.Increment(ref done), cancel));
            means.Memo?.Keep(result, text);
            results[i] = result;
            progress?.Report(new(0.05 + 0.9 * done / Math.Max(1, total), $"{done} of {total} options", done, total, result.Options));
        });
        return ([.. results.Select(r => r!)], sums, reckoned);
    }

    /// <summary>Sums to start from: the earlier study's, less the units that have gone.</summary>
    private (StudySums Sums, HashSet<string> Summed) Start(IReadOnlyList<StudyUnit> units)
    {
        var now = units.Select(u => u.Sha256).ToHashSet(StringComparer.Ordinal);
        if (means.Earlier is not { } earlier || earlier.FuturesSha256 != futures.Sha256 || earlier.NumbersVersion != StudyRun.NumbersVersion)
        {
            return (new(cells), []);
        }

        var gone = earlier.Units.Where(u => !now.Contains(u.Key)).ToDictionary(StringComparer.Ordinal);
        if (2 * gone.Count > earlier.Units.Count)
        {
            return (new(cells), []);
        }

        var sums = earlier.Sums().Copy();
        if (sums.Cells != cells)
        {
            return (new(cells), []);
        }

        if (gone.Count > 0)
        {
            if (earlier.Inputs() is not { } inputs)
            {
                return (new(cells), []);
            }

            var before = StudyUnits.Of(inputs, futures, [], gone.Values.SelectMany(h => h).ToHashSet(StringComparer.Ordinal)).Where(u => gone.ContainsKey(u.Sha256)).ToList();
            if (before.Count != gone.Count)
            {
                return (new(cells), []);
            }

            var old = new StudyContext(inputs, futures, context.Layouts);
            var run = new UnitRun(old, new Workspace(context.Paths, context.Seasons));
            before.ForEach(u => run.CostOnly(u, sums, -1, cancel));
        }

        return (sums, [.. earlier.Units.Keys.Where(now.Contains)]);
    }

    private void Each(List<int> numbers, StudySums sums, Action<UnitRun, StudySums, int> work)
    {
        Debug.Assert(means.Threads > 0, "a study needs a thread");
        Parallel.ForEach(
            numbers,
            new ParallelOptions { MaxDegreeOfParallelism = means.Threads, CancellationToken = cancel },
            () => (Run: new UnitRun(context, new Workspace(context.Paths, context.Seasons)), Mine: new StudySums(cells)),
            (i, _, local) =>
            {
                work(local.Run, local.Mine, i);
                return local;
            },
            local =>
            {
                lock (gate)
                {
                    sums.Add(local.Mine);
                }
            });
    }
}
