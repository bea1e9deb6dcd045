using FarmPortfolio.Engine.Economics;

namespace FarmPortfolio.Published;

/// <summary>
/// Factors SPV, UPV, UCR and UPV* of ASTM E917's adjunct set, evaluated from the formulas; a retrofit of 12,000 saving 2,400 a year for ten years at 4 %;
/// a loan of 150,000 at 3.625 % over 360 months as printed in a public amortisation sheet (Math 352): 684.08 a month.
/// </summary>
public class EconomicsTests
{
    public static TheoryData<double, int, double, double, double> Factors => new()
    {
        { 0.03, 10, .744094, 8.530203, .117231 }, { 0.03, 15, .641862, 11.937935, .083767 }, { 0.03, 20, .553676, 14.877475, .067216 }, { 0.03, 25, .477606, 17.413148, .057428 },
    };

    public static TheoryData<double, double, int, double> Growing => new()
    {
        { .03, .02, 10, 9.481274 }, { .03, .02, 20, 18.081229 }, { .03, -.01, 10, 8.094606 }, { .03, .03, 10, 10 }, { .07, .03, 15, 11.209513 },
    };

    [Theory, MemberData(nameof(Factors))]
    public void Present_value_factors(double rate, int years, double once, double uniform, double recovery)
    {
        Assert.Equal(once, Measures.PresentValueFactor(rate, years), 1e-6);
        Assert.Equal(uniform, Measures.UniformPresentValue(rate, years), 1e-6);
        Assert.Equal(recovery, Measures.CapitalRecovery(rate, years), 1e-6);
    }

    [Theory, MemberData(nameof(Growing))]
    public void Growing_present_value(double rate, double growth, int years, double expected) =>
        Assert.Equal(expected, Measures.GrowingPresentValue(rate, growth, years), 1e-6);

    [Fact]
    public void A_retrofit_of_ten_even_years()
    {
        var savings = Enumerable.Repeat(2400.0, 10).ToArray();
        var pv = Measures.PresentValue(0.04, savings);
        Assert.Equal(7466.1499, pv - 12000, 1e-4);
        Assert.Equal(1.622179, pv / 12000, 1e-6);
        Assert.Equal(.091549, Measures.AdjustedRateOfReturn(0.04, pv / 12000, 10), 1e-6);
        Assert.Equal(.150984, Measures.RateOfReturn(12000, savings), 1e-6);
        Assert.Equal(5, PaybackOf.First(12000, savings));
        var discounted = savings.Select((s, i) => s * Measures.PresentValueFactor(0.04, i + 1)).ToArray();
        Assert.Equal(6, PaybackOf.First(12000, discounted));
    }

    [Fact]
    public void A_retrofit_that_never_pays_at_four_per_cent()
    {
        var discounted = Enumerable.Range(1, 10).Select(t => 1400 * Measures.PresentValueFactor(0.04, t)).ToArray();
        Assert.Equal(11355.2541, discounted.Sum(), 1e-4);
        Assert.Equal(0, PaybackOf.First(12000, discounted));
    }

    [Fact]
    public void A_level_loan() => Assert.Equal(684.076953, Measures.LevelPayment(150000, 0.03625 / 12, 360), 1e-5);

    [Fact]
    public void A_real_rate() => Assert.Equal(.03883495, Measures.RealRate(0.07, 0.03), 1e-8);
}
