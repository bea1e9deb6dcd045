using FarmPortfolio.Engine.Studies;

namespace FarmPortfolio.Engine.Tests.Studies;

public class SensitivityTests
{
    private static readonly Sensitivity Foam = Sensitivity.Of(SmallPortfolio.Of(), "h0", "foam-now", 2, CancellationToken.None)!;

    [Theory, InlineData("price"), InlineData("winters"), InlineData("saving"), InlineData("level")]
    public void More_of_what_makes_fuel_dear_or_saving_true_is_worth_more(string field)
    {
        var bar = Foam.Bars.Single(b => b.Field == field);
        Assert.True(bar.Low.NpvUsd < Foam.Base.NpvUsd && Foam.Base.NpvUsd < bar.High.NpvUsd, $"{field}: {bar.Low.NpvUsd:0}, {Foam.Base.NpvUsd:0}, {bar.High.NpvUsd:0}");
        Assert.True((bar.High.PaybackSeason ?? 99) <= (bar.Low.PaybackSeason ?? 99));
    }

    [Theory, InlineData("outlay"), InlineData("watching"), InlineData("wage")]
    public void More_of_what_it_costs_is_worth_less(string field)
    {
        var bar = Foam.Bars.Single(b => b.Field == field);
        Assert.True(bar.High.NpvUsd < bar.Low.NpvUsd, $"{field}: {bar.Low.NpvUsd:0} to {bar.High.NpvUsd:0}");
    }

    [Fact]
    public void The_widest_swing_comes_first_and_threads_do_not_matter()
    {
        Assert.Equal(Foam.Bars.Select(b => b.SwingUsd).OrderDescending(), Foam.Bars.Select(b => b.SwingUsd));
        var one = Sensitivity.Of(SmallPortfolio.Of(), "h0", "foam-now", 1, CancellationToken.None)!;
        Assert.Equal(Foam.Bars, one.Bars);
        Assert.Equal(Foam.Base, one.Base);
    }

    [Fact]
    public void An_outlay_of_one_more_dollar_costs_at_least_that_dollar()
    {
        var bar = Foam.Bars.Single(b => b.Field == "outlay");
        double Usd(string words) => double.Parse(words.TrimStart('$'), System.Globalization.NumberStyles.Number, System.Globalization.CultureInfo.InvariantCulture);
        Assert.True(bar.SwingUsd >= 0.85 * (Usd(bar.High.Words) - Usd(bar.Low.Words)), $"{bar.SwingUsd:0} for {bar.Low.Words} to {bar.High.Words}");
    }

    [Fact]
    public void There_is_none_for_an_option_that_is_not_there() => Assert.Null(Sensitivity.Of(SmallPortfolio.Of(), "h0", "heat-pump-now", 1, CancellationToken.None));
}
