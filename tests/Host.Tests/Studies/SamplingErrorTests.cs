using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage;
using FarmPortfolio.Host.Studies;
using Microsoft.Extensions.DependencyInjection;

namespace FarmPortfolio.Host.Tests.Studies;

/// <summary>
/// The demo's whole book, 40 replicates of 1,024 futures, plain and with Sobol points: how much less the replicates scatter. Computed here, no source: at 200 replicates the variance of the share of
/// options with an outlay paid back by a season is divided by 3.3, of the mean of the worst twentieth of the book's saving by 5, of its fuel over the horizon by 10, of the mean saving by 31. The own
/// error of a ratio is about a third at 40 replicates, less for the shares, which are a mean over many options; the bounds lie two of its errors below. This seed: 3.4, 3.0, 8.9, 23.
/// </summary>
public class SamplingErrorTests(TemporaryHost host, ITestOutputHelper output) : IClassFixture<TemporaryHost>
{
    private const int Replicates = 40;
    private const int Paths = 1024;
    private static readonly int[] Seasons = [3, 5, 7, 10, 12];

    [Fact]
    public async Task Sobol_points_cut_the_error_of_the_demos_book()
    {
        var id = (string)(await host.StudyDone())["id"]!;
        var study = host.Services.GetRequiredService<StudyStore>().All(Viewer.Program, "demo").Single(s => s.Id == id);
        var portfolio = host.Services.GetRequiredService<PortfolioReader>().Read(Viewer.Program, study);
        var (plain, sobol) = (Run(portfolio, PathSampling.Plain), Run(portfolio, PathSampling.Sobol));
        var (paid, mean, worst, fuel) = (plain.Paid / sobol.Paid, plain.Mean / sobol.Mean, plain.Worst / sobol.Worst, plain.Fuel / sobol.Fuel);
        output.WriteLine(FormattableString.Invariant($"variance divided by: share paid back {paid:0.00}, mean saving {mean:0.0}, worst twentieth of the saving {worst:0.00}, of the fuel {fuel:0.00}"));
        Assert.True(paid >= 2.8, $"the share paid back varies {paid:0.00} times less, 2.8 times asked");
        Assert.True(mean >= 15, $"the mean saving varies {mean:0.0} times less, 15 times asked");
        Assert.True(worst >= 2, $"the mean of the worst twentieth of the saving varies {worst:0.00} times less, 2 times asked");
        Assert.True(fuel >= 5, $"the mean of the worst twentieth of the fuel varies {fuel:0.00} times less, 5 times asked");
    }

    /// <summary>Variances over the replicates: of the share of futures paid back by a season (mean of options and seasons), of the book's mean saving, of the mean of the worst twentieth of it and of the fuel's present worth at 5 %.</summary>
    private static (double Paid, double Mean, double Worst, double Fuel) Run(Portfolio portfolio, PathSampling sampling)
    {
        var store = new PathStore(long.MaxValue);
        var set = portfolio.Set with { ReplicateCount = Replicates, PathCount = Paths, Sampling = sampling };
        var (outcome, faults) = StudyRun.Run(portfolio with { Set = set }, new StudyMeans(2, Paths: store), null, CancellationToken.None);
        Assert.Empty(faults);
        var results = outcome!.Result.Options.ToDictionary(o => (o.HouseId, o.Key));
        var options = outcome.Result.UnitSha256s.SelectMany(u => store.Find(u)!).ToList();
        var paid = options.Where(o => results[(o.HouseId, o.Key)].Costs.OutlayUsd > 0).Average(o => Seasons.Average(season => Variance(r => Replicate(o.LastingSeason, r).Count(s => s > 0 && s <= season) / (double)Paths)));
        var book = new double[Replicates * Paths];
        foreach (var option in options)
        {
            for (var p = 0; p < book.Length; p++)
            {
                book[p] += option.SavingUsd[p];
            }
        }

        var fuel = Enumerable.Range(0, book.Length).Select(p => Enumerable.Range(0, set.SeasonCount).Sum(s => outcome.Sums.Usd(s * book.Length + p) * Math.Pow(1.05, -s))).ToArray();
        return (paid, Variance(r => Replicate(book, r).Average()), Variance(r => Worst(Replicate(book, r))), Variance(r => Worst(Replicate(fuel, r).Select(usd => -usd))));
    }

    private static double Worst(IEnumerable<double> values) => values.Order().Take(Paths / 20).Average();

    private static ArraySegment<T> Replicate<T>(T[] values, int replicate) => new(values, replicate * Paths, Paths);

    private static double Variance(Func<int, double> ofReplicate)
    {
        var values = Enumerable.Range(0, Replicates).Select(ofReplicate).ToArray();
        var mean = values.Average();
        return values.Sum(v => (v - mean) * (v - mean)) / (Replicates - 1);
    }
}
