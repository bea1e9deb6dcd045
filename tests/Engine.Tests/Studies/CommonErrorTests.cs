using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Studies;

namespace FarmPortfolio.Engine.Tests.Studies;

/// <summary>Winter, price and part of every error are common to all houses on a path: many houses are no insurance against them.</summary>
public class CommonErrorTests
{
    private const int Houses = 3;

    [Fact]
    public void With_own_noise_off_three_equal_houses_are_three_times_one_on_every_path()
    {
        var portfolio = Equal(Houses, ownNoise: false);
        var (study, sums) = Run(portfolio);
        var (one, oneSums) = Run(Equal(1, ownNoise: false));
        var each = study.Options.Count / Houses;
        Assert.True(each > 0);
        for (var o = 0; o < each; o++)
        {
            for (var h = 0; h < Houses; h++)
            {
                Assert.Equal(one.SavingByPath[o], study.SavingByPath[h * each + o]);
            }
        }

        var cells = sums.Of(FuelKind.Propane).ToArray();
        Assert.All(oneSums.Of(FuelKind.Propane).ToArray().Select((usd, cell) => (usd, cell)), c => Assert.Equal(Houses * c.usd, cells[c.cell]));
        Assert.Equal(Houses * one.CostBySeason[0].P95, study.CostBySeason[0].P95, 1e-6);
    }

    [Fact]
    public void With_own_noise_the_dear_seasons_of_a_sum_lie_below_the_sum_of_dear_seasons_and_above_independence()
    {
        var (study, _) = Run(Equal(Houses, ownNoise: true));
        var (one, _) = Run(Equal(1, ownNoise: true));
        var (together, alone, mean) = (study.CostBySeason[0].P95, one.CostBySeason[0].P95, one.CostBySeason[0].Mean);
        Assert.True(together < Houses * alone, $"{together} of three, {alone} of one: the 95th percentile of a sum is read from the sum");

        // independent houses would shrink the distance from the mean by the root of three; what is common does not shrink
        Assert.True(together - study.CostBySeason[0].Mean > Houses * (alone - mean) / Math.Sqrt(Houses), $"{together} of three, {alone} of one, mean {mean}");
    }

    /// <summary>Equal houses, each on a tank of its own; own noise is what the houses' records and works have of their own.</summary>
    private static Portfolio Equal(int houses, bool ownNoise)
    {
        var p = SmallPortfolio.Of(1, change: s => s with { CommonShare = ownNoise ? s.CommonShare : 1 });
        var (house, group) = (p.Houses["h0"], p.SupplyGroups["g"]);
        var ids = Enumerable.Range(0, houses).ToList();
        return p with
        {
            Houses = ids.ToDictionary(i => $"h{i}", i => house with { DrawKey = 100 + i, Supplies = [new($"g{i}")] }),
            SupplyGroups = ids.ToDictionary(i => $"g{i}", _ => group),
            Options = ids.ToDictionary(i => $"h{i}", _ => p.Options["h0"]),
            Catalogue = ownNoise ? p.Catalogue : p.Catalogue.With([Silent(p.Catalogue)]),
        };
    }

    private static CatalogueFacts Silent(Catalogue catalogue)
    {
        var defaults = catalogue.Entries.Single(e => e.Kind == CatalogueKind.Default && e.Values.ContainsKey("gradeCSd"));
        return defaults with { Values = new[] { "gradeCSd", "airChangesSdLn" }.ToDictionary(n => n, n => defaults.Values[n] with { Value = 0 }) };
    }

    private static (StudyResult Result, StudySums Sums) Run(Portfolio portfolio)
    {
        var (outcome, faults) = StudyRun.Run(portfolio, new StudyMeans(2, Paths: new(long.MaxValue)), null, CancellationToken.None);
        Assert.Empty(faults);
        return (outcome!.Result, outcome.Sums);
    }
}
