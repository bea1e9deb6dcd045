using FarmPortfolio.Engine.Economics;
using FarmPortfolio.Engine.Lending;

namespace FarmPortfolio.Published;

/// <summary>
/// Factors SPV, UPV, UCR and UPV* of ASTM E917's adjunct set, evaluated from the formulas; a retrofit of 12,000 saving 2,400 a year for ten years at 4 %;
/// loans as printed in a public amortisation sheet (Math 352). Formulas of life-cycle cost: 10 CFR 436.18 to 436.23.
/// </summary>
public class EconomicsTests
{
    public static TheoryData<double, int, double, double, double> Factors => new()
    {
        { 0.03, 10, .744094, 8.530203, .117231 }, { 0.03, 15, .641862, 11.937935, .083767 }, { 0.03, 20, .553676, 14.877475, .067216 }, { 0.03, 25, .477606, 17.413148, .057428 },
        { 0.07, 10, .508349, 7.023582, 1 / 7.023582 }, { 0.08, 15, .315242, 8.559479, 1 / 8.559479 },
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

    [Theory, MemberData(nameof(Growing))]
    public void Growing_present_value_is_its_sum(double rate, double growth, int years, double expected)
    {
        var sum = Enumerable.Range(1, years).Sum(t => Math.Pow((1 + growth) / (1 + rate), t));
        Assert.True(Math.Abs(sum - expected) <= 1e-6, $"rate {rate}, growth {growth}, {years} years: sum {sum}, expected {expected}, tolerance 1e-6");
    }

    [Fact]
    public void A_retrofit_of_ten_even_years()
    {
        var savings = Enumerable.Repeat(2400.0, 10).ToArray();
        var pv = Measures.PresentValue(0.04, savings);
        Assert.Equal(7466.1499, pv - 12000, 1e-4);
        Assert.Equal(1.622179, pv / 12000, 1e-6);
        Assert.Equal(.091549, Measures.AdjustedRateOfReturn(0.04, pv / 12000, 10), 1e-6);
        Assert.Equal(.150984, Measures.RateOfReturn(12000, savings), 1e-6);
        Assert.Equal(1.622179, Measures.SavingsToInvestment(0.04, 12000, savings), 1e-6);
        Assert.Equal(5, PaybackOf.First(12000, savings));
        Assert.Equal(5, Measures.PaybackYears(12000, savings)!.Value, 1e-9);
        var discounted = savings.Select((s, i) => s * Measures.PresentValueFactor(0.04, i + 1)).ToArray();
        Assert.Equal(6, PaybackOf.First(12000, discounted));
        Assert.Equal(5.6936, Measures.PaybackYears(12000, discounted)!.Value, 1e-4);
    }

    [Fact]
    public void A_retrofit_whose_saving_grows_by_two_per_cent()
    {
        var savings = Enumerable.Range(1, 10).Select(t => 2400 * Math.Pow(1.02, t)).ToArray();
        var pv = Measures.PresentValue(0.04, savings);
        Assert.Equal(21602.5043, pv, 1e-4);
        Assert.Equal(2400 * Measures.GrowingPresentValue(0.04, 0.02, 10), pv, 1e-9);
        Assert.Equal(9602.5043, pv - 12000, 1e-4);
        Assert.Equal(1.800209, pv / 12000, 1e-6);
        Assert.Equal(.102975, Measures.AdjustedRateOfReturn(0.04, pv / 12000, 10), 1e-6);
    }

    [Fact]
    public void The_adjusted_rate_is_the_growth_from_outlay_to_terminal_value()
    {
        var savings = Enumerable.Repeat(2400.0, 10).ToArray();
        var terminal = savings.Select((s, i) => s * Math.Pow(1.04, 9 - i)).Sum();
        Assert.Equal(Math.Pow(terminal / 12000, 0.1) - 1, Measures.AdjustedRateOfReturn(0.04, Measures.SavingsToInvestment(0.04, 12000, savings), 10), 1e-12);
    }

    [Fact]
    public void Net_savings_are_the_difference_of_two_life_cycle_costs()
    {
        var energy = 5000 * Measures.UniformPresentValue(0.04, 10);
        var without = new LifeCycleCost(0, 0, 0, energy);
        var with = new LifeCycleCost(12000, 0, 0, energy - 2400 * Measures.UniformPresentValue(0.04, 10));
        Assert.Equal(7466.1499, without.NetSavingsUsd(with), 1e-4);
        Assert.Equal(1.622179, without.SavingsToInvestment(with), 1e-6);
    }

    [Fact]
    public void A_retrofit_that_never_pays_at_four_per_cent()
    {
        var discounted = Enumerable.Range(1, 10).Select(t => 1400 * Measures.PresentValueFactor(0.04, t)).ToArray();
        Assert.Equal(11355.2541, discounted.Sum(), 1e-4);
        Assert.Equal(0, PaybackOf.First(12000, discounted));
        Assert.Null(Measures.PaybackYears(12000, discounted));
    }

    [Fact]
    public void A_loan_of_150000_at_three_and_five_eighths()
    {
        var schedule = Amortisation.Schedule(150000, 0.03625 / 12, 360);
        Assert.Equal(684.076953, Amortisation.LevelPaymentUsd(150000, 0.03625 / 12, 360), 1e-5);
        (double Interest, double Balance)[] printed = [(453.13, 149769.05), (452.43, 149537.40), (451.73, 149305.05)];
        foreach (var (p, s) in printed.Zip(schedule))
        {
            Assert.True(
                Math.Abs(p.Interest - s.InterestUsd) <= .01 && Math.Abs(p.Balance - s.BalanceUsd) <= .01,
                $"month {s.Period}: interest {s.InterestUsd} against {p.Interest}, balance {s.BalanceUsd} against {p.Balance}, tolerance .01");
        }

        Assert.Equal(0, schedule[^1].BalanceUsd, 1e-6);
    }

    [Fact]
    public void The_same_loan_as_a_case_pays_month_by_month_what_is_printed()
    {
        var terms = new LoanCaseFacts { FarmId = "f", HouseId = "h", OptionKey = "o", AmountCents = 150_000_00, RatePerYear = 0.03625, TermYears = 30 };
        var months = LoanSchedule.Of(terms, terms.AmountUsd).Months;
        (double Interest, double Balance)[] printed = [(453.13, 149769.05), (452.43, 149537.40), (451.73, 149305.05)];
        foreach (var (p, m) in printed.Zip(months))
        {
            Assert.True(
                Math.Abs(p.Interest - m.InterestUsd) <= .01 && Math.Abs(p.Balance - m.BalanceUsd) <= .01 && Math.Abs(684.08 - m.PaidUsd) <= .01,
                $"month {m.Month}: interest {m.InterestUsd} against {p.Interest}, balance {m.BalanceUsd} against {p.Balance}, paid {m.PaidUsd} against 684.08, tolerance .01");
        }

        Assert.Equal(0, months[^1].BalanceUsd, 1e-6);
    }

    [Fact]
    public void A_loan_of_100000_at_six() => Assert.Equal(599.550525, Amortisation.LevelPaymentUsd(100000, 0.06 / 12, 360), 1e-6);

    [Fact]
    public void A_real_rate() => Assert.Equal(.03883495, Measures.RealRate(0.07, 0.03), 1e-8);

    [Fact]
    public void Nominal_and_real_agree_in_todays_money()
    {
        var real = Enumerable.Repeat(2400.0, 15).ToArray();
        var nominal = real.Select((s, i) => s * Math.Pow(1.03, i + 1)).ToArray();
        Assert.Equal(Measures.PresentValue(Measures.RealRate(0.07, 0.03), real), Measures.PresentValue(0.07, nominal), 1e-9);
    }
}
