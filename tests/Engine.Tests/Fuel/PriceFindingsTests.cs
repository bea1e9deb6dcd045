using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Engine.Tests.Fuel;

public class PriceFindingsTests
{
    private static double[] Walk(int months, double sd, Func<int, double>? extra = null)
    {
        var (x, at) = (new double[months], 0.0);
        for (var t = 0; t < months; t++)
        {
            at += sd * Noise.Normal(7, NoisePurpose.LongFactor, 0, 0, t);
            x[t] = at + (extra?.Invoke(t) ?? 0);
        }

        return x;
    }

    private static IReadOnlyList<PriceFinding> Found(double[] logs, PriceClass priceClass = PriceClass.RetailFuel, int filled = 0, int dropped = 0) =>
        PriceFindings.Of(PriceDiagnostics.Of(new(new(2000, 1, 1), logs, filled, dropped), priceClass));

    private static string Words(IReadOnlyList<PriceFinding> found, string code) => Assert.Single(found, f => f.Code == code).Words;

    [Fact]
    public void Fourteen_months_fall_back_on_what_is_usual_and_say_so()
    {
        var found = Found(Walk(14, 0.05));
        Assert.Equal(["SPAN", "SHORT"], found.Select(f => f.Code));
        Assert.Equal("14 months are too few for a fit (24 would do): only the last price is used, and how prices move is what is usual for such prices, 17 % a year.", found[1].Words);
    }

    [Fact]
    public void Three_years_say_that_the_usual_weighs_more_than_the_record()
    {
        var found = Found(Walk(36, 0.05));
        Assert.Contains("weighed 38 to 62", Words(found, "SPREAD"), StringComparison.Ordinal);
        Assert.Contains("weighs more than the record", Words(found, "SHORT"), StringComparison.Ordinal);
        Assert.DoesNotContain(found, f => f.Code is "UNIT_ROOT" or "RETURNS" or "BACK_TEST");
    }

    [Fact]
    public void A_random_walk_is_not_said_to_return_and_a_price_around_a_level_is()
    {
        Assert.Contains("does not say that the price returns", Words(Found(Walk(240, 0.05)), "UNIT_ROOT"), StringComparison.Ordinal);
        var white = Enumerable.Range(0, 240).Select(t => 0.1 * Noise.Normal(3, NoisePurpose.ShortFactor, 0, 0, t)).ToArray();
        Assert.Contains("slow return", Words(Found(white), "RETURNS"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_jump_is_named_by_its_month_and_makes_the_tails_fat()
    {
        var found = Found(Walk(120, 0.03, t => t >= 50 ? Math.Log(1.5) : 0));
        Assert.Contains("in 2004-03", Words(found, "JUMPS"), StringComparison.Ordinal);
        Assert.Contains("bell curve", Words(found, "FAT_TAILS"), StringComparison.Ordinal);
        Assert.DoesNotContain(Found(Walk(120, 0.03)), f => f.Code is "JUMPS" or "FAT_TAILS");
    }

    [Fact]
    public void Gaps_are_told_apart_by_what_became_of_them()
    {
        var found = Found(Walk(60, 0.05), filled: 1, dropped: 7);
        Assert.StartsWith("1 month was missing", Words(found, "FILLED"), StringComparison.Ordinal);
        Assert.Contains("7 months on the other side", Words(found, "CUT"), StringComparison.Ordinal);
    }

    [Fact]
    public void Twenty_years_are_held_against_their_own_forecasts()
    {
        var test = PriceDiagnostics.Of(new(new(2000, 1, 1), Walk(240, 0.05), 0, 0), PriceClass.RetailFuel).BackTest;
        Assert.Equal([1, 2, 3, 4, 5], test.Select(h => h.Years));
        Assert.All(test, h => Assert.InRange(h.InsideNinety, h.InsideFifty, h.Forecasts));
        Assert.Contains($"{test[0].InsideNinety} of {test[0].Forecasts} outcomes a year ahead", Words(Found(Walk(240, 0.05)), "BACK_TEST"), StringComparison.Ordinal);
    }
}
