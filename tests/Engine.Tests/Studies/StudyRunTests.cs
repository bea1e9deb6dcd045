using System.Text.Json;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Studies;

namespace FarmPortfolio.Engine.Tests.Studies;

public class StudyRunTests
{
    private static readonly JsonSerializerOptions Fields = new() { IncludeFields = true };

    [Theory]
    [InlineData(PathSampling.Plain)]
    [InlineData(PathSampling.Sobol)]
    public void Same_seed_same_bits_on_one_and_eight_threads(PathSampling sampling)
    {
        var portfolio = SmallPortfolio.Of(change: s => s with { Sampling = sampling });
        Assert.Equal(Text(Run(portfolio, 1)), Text(Run(portfolio, 8)));
    }

    [Fact]
    public void Another_seed_gives_other_numbers() =>
        Assert.NotEqual(Text(Run(SmallPortfolio.Of(), 2)), Text(Run(SmallPortfolio.Of(change: s => s with { Seed = 6 }), 2)));

    [Theory]
    [InlineData(PathSampling.Plain)]
    [InlineData(PathSampling.Sobol)]
    public void A_further_house_changes_no_other_houses_result(PathSampling sampling)
    {
        var (one, two) = (Run(SmallPortfolio.Of(1, change: s => s with { Sampling = sampling }), 2), Run(SmallPortfolio.Of(2, change: s => s with { Sampling = sampling }), 2));
        Assert.Equal(one.FuturesSha256, two.FuturesSha256);
        Assert.Equal(JsonSerializer.Serialize(one.Options), JsonSerializer.Serialize(two.Options.Where(o => o.HouseId == "h0")));
    }

    [Fact]
    public void A_dearer_fuel_brings_the_payback_no_later()
    {
        var (cheap, dear) = (Run(SmallPortfolio.Of(), 2), Run(SmallPortfolio.Of(priceFactor: 1.5), 2));
        foreach (var (c, d) in cheap.Options.Zip(dear.Options))
        {
            Assert.All(Enumerable.Range(1, 12), s => Assert.True(d.Lasting.ShareBy(s) >= c.Lasting.ShareBy(s) - 1e-12, $"{c.HouseId} {c.Key}, season {s}: {c.Lasting.ShareBy(s)} at the price, {d.Lasting.ShareBy(s)} at 1.5 times it"));
        }
    }

    [Fact]
    public void A_colder_winter_never_costs_less()
    {
        var (mild, cold) = (Run(SmallPortfolio.Of(), 2), Run(SmallPortfolio.Of(colderK: 2), 2));
        Assert.All(mild.CostBySeason.Zip(cold.CostBySeason), p => Assert.True(p.Second.P10 > p.First.P10 && p.Second.P90 > p.First.P90));
    }

    [Fact]
    public void Take_back_cuts_the_saving()
    {
        var (all, less) = (Run(SmallPortfolio.Of(), 2).Options[0], Run(SmallPortfolio.Of(change: s => s with { TakeBackShare = 0.2 }), 2).Options[0]);
        var running = all.Costs.RunningUsd;
        Assert.True(running > 0 && less.SavingBySeason[0].Mean < all.SavingBySeason[0].Mean);
        Assert.Equal(0.8, (less.SavingBySeason[0].Mean + running) / (all.SavingBySeason[0].Mean + running), 1e-9);
    }

    [Fact]
    public void Two_layers_under_one_roof_save_less_than_their_sum_and_more_than_either()
    {
        var options = Run(SmallPortfolio.Of(), 2).Options.Where(o => o.HouseId == "h0").ToDictionary(o => o.Key);
        var (foam, curtain, both) = (Modelled(options["foam-now"]), Modelled(options["curtain-now"]), Modelled(options["curtain-foam-now"]));
        Assert.InRange(both, Math.Max(foam, curtain), foam + curtain);
        Assert.True(both < 0.95 * (foam + curtain), $"foam {foam:0}, curtain {curtain:0}, both {both:0} kWh: the second layer works on what the first leaves");

        // the realised factor is taken out again: it is one for a combination and another for each part
        static double Modelled(OptionResult o) => o.HeatSavedKwh / o.RealisedMean;
    }

    [Fact]
    public void Paths_that_cannot_be_spread_evenly_are_refused_by_name()
    {
        var (result, faults) = StudyRun.Run(SmallPortfolio.Of(change: s => s with { PathCount = 100 }), 1, null, TestContext.Current.CancellationToken);
        Assert.Null(result);
        Assert.Equal("pathCount", Assert.Single(faults).Field);
    }

    [Fact]
    public void Cancelling_stops_it()
    {
        using var token = new CancellationTokenSource();
        token.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => StudyRun.Run(SmallPortfolio.Of(), 2, null, token.Token));
    }

    [Fact]
    public void A_house_that_cannot_be_is_left_out_and_named()
    {
        var p = SmallPortfolio.Of();
        var houses = p.Houses.ToDictionary();
        houses["h1"] = houses["h1"] with { WidthM = -3 };
        var result = Run(p with { Houses = houses }, 2);
        Assert.Equal(1, result.Houses);
        Assert.Contains(result.LeftOut, l => l.ItemId == "h1" && l.Fault.Field == "widthM");
    }

    private static StudyResult Run(Portfolio p, int threads)
    {
        var (result, faults) = StudyRun.Run(p, threads, null, CancellationToken.None);
        Assert.Empty(faults);
        return result!;
    }

    private static string Text(StudyResult r) => JsonSerializer.Serialize(r, Fields);
}
