using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.Studies;

/// <summary>
/// The futures of a study: the pool of winters, what names the futures, and the replicates once drawn. Stations make the pool, never farms or houses,
/// so adding a farm changes nobody's futures.
/// </summary>
public sealed class StudyFutures
{
    private readonly Dictionary<string, IReadOnlyList<WeatherYear>> years;
    private readonly Lock gate = new();
    private FuturesBlock[]? blocks;
    private ReplicateLayout[]? layouts;

    private StudyFutures(FuturesSpec spec, Dictionary<string, IReadOnlyList<WeatherYear>> years) => (Spec, this.years, Sha256) = (spec, years, spec.Sha256());

    /// <summary>What names the futures.</summary>
    public FuturesSpec Spec { get; }

    /// <summary>Name of the futures.</summary>
    public string Sha256 { get; }

    /// <summary>Seasons in the pool of winters.</summary>
    public IReadOnlyList<int> Pool => Spec.Pool;

    /// <summary>Paths of all replicates.</summary>
    public int Paths => Spec.Set.ReplicateCount * Spec.Set.PathCount;

    /// <summary>Puts the futures of a portfolio together, without drawing them.</summary>
    /// <param name="portfolio">All that the study reads.</param>
    /// <returns>The futures, null when a fault stops the study, and the faults.</returns>
    public static (StudyFutures? Futures, IReadOnlyList<Fault> Faults) Of(Portfolio portfolio)
    {
        var pool = WinterPool.Of(portfolio.Stations.Values, portfolio.Set.WinterPool);
        var years = portfolio.Stations.Where(s => pool.Count > 0 && pool.All(s.Value.Years.ContainsKey))
            .ToDictionary(s => s.Key, s => (IReadOnlyList<WeatherYear>)[.. pool.Select(season => s.Value.Years[season])], StringComparer.Ordinal);
        var means = Enumerable.Range(0, pool.Count).Select(w => MonthMeans(Telling(years).Select(y => y.Value[w]))).ToList();

        // a station of normals alone makes one winter, and says that its spread is missing
        var (spec, faults) = FuturesSpec.Of(portfolio.Set, portfolio.Prices, pool, means, Telling(years).All(y => y.Value[0].FromNormals) && years.Count > 0 ? 1 : 2);
        return spec is null ? (null, faults) : (new(spec, years), []);
    }

    /// <summary>These futures with the draws of others of the same name, so that nothing is drawn twice. Only the draws are taken: what stations recorded stays these futures' own, since others of the same name may know the stations by other identifiers.</summary>
    /// <param name="others">Futures at hand; null = none.</param>
    /// <returns>These futures.</returns>
    public StudyFutures WithDrawsOf(StudyFutures? others)
    {
        if (others is not null && others != this && others.Sha256 == Sha256)
        {
            lock (others.gate)
            {
                (blocks, layouts) = (others.blocks, others.layouts);
            }
        }

        return this;
    }

    /// <summary>The same futures with some seasons' winters fixed on every path; not drawn yet.</summary>
    /// <param name="fixedWinters">Place in the pool by season of the study.</param>
    /// <returns>Futures of another name.</returns>
    public StudyFutures WithWinters(IReadOnlyDictionary<int, int> fixedWinters) => new(Spec with { FixedWinters = fixedWinters }, years);

    /// <summary>Places in the pool of the warmest and the coldest winter recorded: degree days below 15 C, all stations with a record together.</summary>
    /// <returns>Both places.</returns>
    public (int Warmest, int Coldest) Extremes()
    {
        var cold = Enumerable.Range(0, Pool.Count).Select(w => Telling(years).OrderBy(y => y.Key, StringComparer.Ordinal).Sum(y => y.Value[w].DegreeDaysK(15))).ToList();
        return (cold.IndexOf(cold.Min()), cold.IndexOf(cold.Max()));
    }

    /// <summary>The pool's winters at a station.</summary>
    /// <param name="stationId">Station.</param>
    /// <returns>In the order of the pool; null where the station lacks one of them.</returns>
    public IReadOnlyList<WeatherYear>? Years(string stationId) => years.GetValueOrDefault(stationId);

    /// <summary>The replicates, drawn on the first call and kept.</summary>
    /// <param name="threads">Threads, 1 or more.</param>
    /// <param name="cancel">Stops it.</param>
    /// <returns>Blocks in order.</returns>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public IReadOnlyList<FuturesBlock> Blocks(int threads, CancellationToken cancel)
    {
        lock (gate)
        {
            if (blocks is null)
            {
                var (futures, drawn) = (new Futures(Spec), new FuturesBlock[Spec.Set.ReplicateCount]);
                Parallel.For(0, drawn.Length, new ParallelOptions { MaxDegreeOfParallelism = threads, CancellationToken = cancel }, r => drawn[r] = futures.Draw(r));
                blocks = drawn;
            }

            return blocks;
        }
    }

    /// <summary>The replicates as the kernel reads them, kept; the prices of a fuel are laid out when they are first asked for.</summary>
    /// <param name="threads">Threads, 1 or more.</param>
    /// <param name="cancel">Stops it.</param>
    /// <returns>Layouts in order.</returns>
    internal IReadOnlyList<ReplicateLayout> Layouts(int threads, CancellationToken cancel)
    {
        var drawn = Blocks(threads, cancel);
        lock (gate)
        {
            return layouts ??= [.. drawn.Select(b => new ReplicateLayout(b))];
        }
    }

    /// <summary>The stations that tell how hard a winter was: those with a record, or all where none has one. So a station of normals changes nobody's futures.</summary>
    private static List<KeyValuePair<string, IReadOnlyList<WeatherYear>>> Telling(Dictionary<string, IReadOnlyList<WeatherYear>> years)
    {
        var recorded = years.Where(y => !y.Value.Any(w => w.FromNormals)).ToList();
        return recorded.Count > 0 ? recorded : [.. years];
    }

    /// <summary>Mean temperature of a winter's months over the stations, added in the order of the temperatures: stations known by other identifiers give the same bits.</summary>
    private static double[] MonthMeans(IEnumerable<WeatherYear> years)
    {
        var all = years.ToList();
        return [.. Enumerable.Range(0, 12).Select(m => all.Select(year => year.MonthMeanC(m)).Order().Sum() / Math.Max(1, all.Count))];
    }
}
