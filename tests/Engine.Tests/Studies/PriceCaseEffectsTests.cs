using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Studies;

namespace FarmPortfolio.Engine.Tests.Studies;

public class PriceCaseEffectsTests
{
    private static readonly Portfolio Portfolio = SmallPortfolio.Of(priceFactor: 2);
    private static readonly PriceCaseEffects Foam = PriceCaseEffects.Of(Portfolio, "h0", "foam-now", 0, 2, CancellationToken.None)!;

    private static SensitivityEnd Under(PriceCaseKind kind) => Foam.Cases.Single(c => c.Kind == kind).End;

    [Theory]
    [InlineData(PriceCaseKind.SpikeOfTwoWinters, 1), InlineData(PriceCaseKind.SlowRise, 1), InlineData(PriceCaseKind.PropaneDoubled, 1), InlineData(PriceCaseKind.Collapse, -1), InlineData(PriceCaseKind.SpreadCloses, -1)]
    public void Dear_fuel_makes_a_saving_worth_more_and_cheap_fuel_less(PriceCaseKind kind, int sign)
    {
        var end = Under(kind);
        Assert.True(sign * (end.NpvUsd - Foam.Base.NpvUsd) > 0, $"{kind}: {end.NpvUsd:0} against {Foam.Base.NpvUsd:0}");
        Assert.True(sign * ((Foam.Base.PaybackSeason ?? 99) - (end.PaybackSeason ?? 99)) >= 0);
        Assert.True(sign * (Foam.Base.NeverShare - end.NeverShare) >= 0);
    }

    [Fact]
    public void The_base_is_the_option_without_a_case_even_where_the_set_has_one_and_threads_do_not_matter()
    {
        var other = PriceCaseEffects.Of(SmallPortfolio.Of(priceFactor: 2, change: s => s with { PriceCase = new(PriceCaseKind.Collapse) }), "h0", "foam-now", 0, 1, CancellationToken.None)!;
        Assert.Equal(Foam.Base, other.Base);
        Assert.Equal(Foam.Cases, other.Cases);
        Assert.Equal(Sensitivity.Of(Portfolio, "h0", "foam-now", 1, CancellationToken.None)!.Base.NpvUsd, Foam.Base.NpvUsd);
    }

    [Fact]
    public void A_dear_winter_late_in_the_horizon_does_not_bring_the_payback_forward()
    {
        var later = PriceCaseEffects.Of(Portfolio, "h0", "foam-now", 11, 2, CancellationToken.None)!;
        Assert.Equal(Foam.Base, later.Base);
        var doubled = later.Cases.Single(c => c.Kind == PriceCaseKind.PropaneDoubled).End;
        Assert.Equal(Foam.Base.PaybackSeason, doubled.PaybackSeason);
        Assert.True(doubled.NpvUsd > Foam.Base.NpvUsd);
        Assert.NotEqual(Under(PriceCaseKind.PropaneDoubled).NpvUsd, doubled.NpvUsd);
    }

    [Fact]
    public void There_is_none_for_an_option_that_is_not_there() => Assert.Null(PriceCaseEffects.Of(Portfolio, "h0", "heat-pump-now", 0, 1, CancellationToken.None));
}
