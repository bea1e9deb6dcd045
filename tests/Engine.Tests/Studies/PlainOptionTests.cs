using FarmPortfolio.Engine.Economics;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Studies;

namespace FarmPortfolio.Engine.Tests.Studies;

/// <summary>The study against one option reckoned path by path from the definitions: equal to rounding.</summary>
public class PlainOptionTests
{
    private const double Tolerance = 1e-9;

    public static TheoryData<string, ContractFacts?> Contracts => new()
    {
        { "the index", null },
        { "indexed", new() { SupplyGroupId = "g", Kind = ContractKind.Indexed, Unit = "gal", AdderUsdPerUnit = 0.42, IndexShare = 0.9 } },
        { "fixed to 2029", new() { SupplyGroupId = "g", Kind = ContractKind.Fixed, Unit = "gal", PriceUsdPerUnit = 2.35, EndsOn = new(2029, 6, 30) } },
    };

    [Theory]
    [MemberData(nameof(Contracts), DisableDiscoveryEnumeration = true)]
    public void Every_figure_of_an_option_is_that_of_the_plain_loop(string name, ContractFacts? contract)
    {
        var portfolio = SmallPortfolio.Of(1, change: s => s with { Sampling = PathSampling.Plain });
        portfolio = portfolio with { Contracts = contract is null ? portfolio.Contracts : new Dictionary<string, ContractFacts> { ["g"] = contract } };
        var (study, faults) = StudyRun.Run(portfolio, 2, null, CancellationToken.None);
        Assert.Empty(faults);
        foreach (var option in portfolio.Options["h0"].Where(o => o.Parts.Count == 1))
        {
            var plain = PlainOption.Of(portfolio, "h0", option);
            var found = study!.Options.Single(o => o.Key == option.Key);
            Same($"{name}, {option.Key}: net present value", plain.NpvUsd, found.NpvUsd);
            for (var s = 0; s < portfolio.Set.SeasonCount; s++)
            {
                var saving = Row(plain.Net, s);
                Near($"{name}, {option.Key}: saving of season {s}", saving.Average(), found.SavingBySeason[s].Mean, Math.Max(1, saving.Max(Math.Abs)));
                Same($"{name}, {option.Key}: saving to season {s}", [.. Enumerable.Range(0, saving.Length).Select(p => Enumerable.Range(0, s + 1).Sum(i => plain.Net[p, i]))], found.NetBySeason[s]);
                Same($"{name}: fuel of season {s}", Row(plain.StandingUsd, s), study.CostBySeason[s]);
            }

            Same(plain.Lasting, found.Lasting);
            Same(plain.First, found.First);
            Same(plain.LastingDiscounted, found.LastingDiscounted);
            Same(plain.FirstDiscounted, found.FirstDiscounted);
            Assert.Equal(plain.NpvUsd.Count(v => v < 0) / (double)plain.NpvUsd.Length, found.LossShare, 1e-12);
        }
    }

    private static double[] Row(double[,] values, int season) => [.. Enumerable.Range(0, values.GetLength(0)).Select(p => values[p, season])];

    private static void Same(string what, double[] plain, Distribution found)
    {
        var sorted = plain.Order().ToArray();
        var scale = Math.Max(1, sorted.Max(Math.Abs));
        Near(what + ", mean", sorted.Average(), found.Mean, scale);
        foreach (var (level, value) in new[] { (0.05, found.P5), (0.1, found.P10), (0.25, found.P25), (0.5, found.P50), (0.75, found.P75), (0.9, found.P90), (0.95, found.P95) })
        {
            var at = level * (sorted.Length - 1);
            var low = (int)at;
            Near($"{what}, {level}", sorted[low] + (at - low) * (sorted[low + 1] - sorted[low]), value, scale);
        }
    }

    private static void Near(string what, double plain, double found, double scale) =>
        Assert.True(Math.Abs(plain - found) <= Tolerance * scale, $"{what}: {plain:R} by the plain loop, {found:R} by the study, tolerance {Tolerance} of {scale}");

    private static void Same(int[] plain, Payback found)
    {
        Assert.Equal(plain.Count(s => s == 0) / (double)plain.Length, found.NeverShare, 1e-12);
        Assert.All(Enumerable.Range(1, found.ShareBySeason.Length), s => Assert.Equal(plain.Count(x => x == s) / (double)plain.Length, found.ShareBySeason[s - 1], 1e-12));
    }
}
