using FarmPortfolio.Engine.Retrofits;
using static System.Math;

namespace FarmPortfolio.Engine.Studies;

/// <summary>What an option comes to with one input at one of its ends, all else as assumed.</summary>
/// <param name="Words">The input at this end, with its unit.</param>
/// <param name="NpvUsd">Net present value of the middle future, US dollars.</param>
/// <param name="PaybackSeason">Season by which half the futures have it paid back for good; null = never.</param>
/// <param name="NeverShare">Share of futures in which it is never paid back.</param>
public sealed record SensitivityEnd(string Words, double NpvUsd, int? PaybackSeason, double NeverShare);

/// <summary>One input moved to its one-in-ten ends.</summary>
/// <param name="Field">Word for the input: price, winters, saving, outlay, leaks, level, watching, wage, setPoint.</param>
/// <param name="Title">Plain name.</param>
/// <param name="Low">At the end that one in ten is below.</param>
/// <param name="High">At the end that one in ten is above.</param>
public sealed record SensitivityBar(string Field, string Title, SensitivityEnd Low, SensitivityEnd High)
{
    /// <summary>How far apart the ends are, US dollars.</summary>
    public double SwingUsd => Abs(High.NpvUsd - Low.NpvUsd);
}

/// <summary>
/// What moves an option's payback most: the house is run alone with one input at a time moved to the values that one in ten is below and above, and the middle
/// net present value and payback are read off. Fewer futures than a study's, the same for all runs, so that the differences are not noise.
/// </summary>
/// <param name="Base">With all inputs as assumed.</param>
/// <param name="Bars">The inputs, the widest swing first.</param>
public sealed record Sensitivity(SensitivityEnd Base, IReadOnlyList<SensitivityBar> Bars)
{
    private const int Replicates = 2;
    private const int Paths = 256;

    /// <summary>Runs one option of one house with each input at both ends.</summary>
    /// <param name="portfolio">All a study read.</param>
    /// <param name="houseId">House.</param>
    /// <param name="optionKey">Option.</param>
    /// <param name="threads">Threads, 1 or more; the figures do not depend on them.</param>
    /// <param name="cancel">Stops it.</param>
    /// <returns>The bars; null where the option cannot be run.</returns>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static Sensitivity? Of(Portfolio portfolio, string houseId, string optionKey, int threads, CancellationToken cancel)
    {
        if (!portfolio.Houses.ContainsKey(houseId) || portfolio.Options.GetValueOrDefault(houseId)?.FirstOrDefault(o => o.Key == optionKey) is not { } option)
        {
            return null;
        }

        var alone = Alone(portfolio, houseId, option);
        if (Run(alone, cancel) is not { } known)
        {
            return null;
        }

        var moves = SensitivityInputs.Of(alone, houseId, option, known);
        var ends = new (OptionResult? Low, OptionResult? High)[moves.Count];
        Parallel.For(0, moves.Count, new ParallelOptions { MaxDegreeOfParallelism = threads, CancellationToken = cancel },
            i => ends[i] = (Run(moves[i].Low, cancel), Run(moves[i].High, cancel)));
        var bars = moves.Zip(ends).Where(m => m.Second is { Low: not null, High: not null })
            .Select(m => new SensitivityBar(m.First.Field, m.First.Title, End(m.First.LowWords, m.Second.Low!), End(m.First.HighWords, m.Second.High!)));
        return new(End("as assumed", known), [.. bars.OrderByDescending(b => b.SwingUsd).ThenBy(b => b.Field, StringComparer.Ordinal)]);
    }

    /// <summary>The house and its one option, meeting the winters that the whole study meets.</summary>
    internal static Portfolio Alone(Portfolio portfolio, string houseId, OptionFacts option)
    {
        var used = portfolio.Houses.Values.Select(h => portfolio.Farms[h.FarmId].WeatherStationId).OfType<string>().Distinct().Where(portfolio.Stations.ContainsKey).Order(StringComparer.Ordinal).ToList();
        var shared = used.Count == 0 ? [] : used.Select(id => portfolio.Stations[id].Years.Keys.AsEnumerable()).Aggregate((a, b) => a.Intersect(b)).Order().ToList();
        return portfolio with
        {
            Houses = new Dictionary<string, Farms.HouseFacts> { [houseId] = portfolio.Houses[houseId] },
            Options = new Dictionary<string, IReadOnlyList<OptionFacts>> { [houseId] = [option] },
            Set = portfolio.Set with { ReplicateCount = Replicates, PathCount = Paths, WinterPool = portfolio.Set.WinterPool.Count > 0 ? portfolio.Set.WinterPool : shared },
        };
    }

    /// <summary>Its one option's result, on one thread; null where it is left out.</summary>
    internal static OptionResult? Run(Portfolio portfolio, CancellationToken cancel) => StudyRun.Run(portfolio, 1, null, cancel).Result is { Options: [var only, ..] } ? only : null;

    /// <summary>What a page shows of a result.</summary>
    internal static SensitivityEnd End(string words, OptionResult r) => new(words, r.NpvUsd.P50, r.OutlayUsd > 0 ? r.Lasting.SeasonOf(0.5) : null, r.Lasting.NeverShare);
}
