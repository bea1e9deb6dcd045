using FarmPortfolio.Engine.Economics;
using FarmPortfolio.Engine.Lending;

namespace FarmPortfolio.Published;

/// <summary>
/// Factors SPV, UPV, UCR and UPV* of ASTM E917's adjunct set, evaluated from the formulas; a retrofit of 12,000 saving 2,400 a year for ten years at 4 %;
/// loans as printed in a public amortisation sheet (Math 352). Formulas of life-cycle cost: 10 CFR 436.18 to 436.23. Streams of money go through what a study counts
/// its paths with (<see cref="PaybackSeasons"/>), one path each.
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
        Assert.Equal(once, PresentUsd(rate, [.. new double[years - 1], 1]), 1e-6);
        Assert.Equal(uniform, PresentUsd(rate, Even(1, years)), 1e-6);
        Assert.Equal(uniform, Measures.UniformPresentValue(rate, years), 1e-6);
        Assert.Equal(recovery, Amortisation.LevelPaymentUsd(1, rate, years), 1e-6);
    }

    [Theory, MemberData(nameof(Growing))]
    public void Growing_present_value(double rate, double growth, int years, double expected) => Assert.Equal(expected, PresentUsd(rate, Grown(1, growth, years)), 1e-6);

    [Theory, MemberData(nameof(Growing))]
    public void Growing_present_value_is_its_sum(double rate, double growth, int years, double expected)
    {
        var sum = Enumerable.Range(1, years).Sum(t => Math.Pow((1 + growth) / (1 + rate), t));
        Assert.True(Math.Abs(sum - expected) <= 1e-6, $"rate {rate}, growth {growth}, {years} years: sum {sum}, expected {expected}, tolerance 1e-6");
    }

    [Fact]
    public void A_retrofit_of_ten_even_years()
    {
        var found = Counted(0.04, 12000, Even(2400, 10));
        Assert.Equal(7466.1499, found.PresentUsd[0] - 12000, 1e-4);
        Assert.Equal(1.622179, found.PresentUsd[0] / 12000, 1e-6);
        Assert.Equal(24000, found.SumUsd[0], 1e-9);
        Assert.Equal(.091549, Measures.AdjustedRateOfReturn(0.04, found.PresentUsd[0] / 12000, 10), 1e-6);
        Assert.Equal((5, 5), (found.First[0], found.Lasting[0]));

        // discounted it is back 5.6936 years on: within the sixth season
        Assert.Equal((6, 6), (found.FirstDiscounted[0], found.LastingDiscounted[0]));
        Assert.InRange(12000, PresentUsd(0.04, Even(2400, 5)), PresentUsd(0.04, Even(2400, 6)));
        Assert.Equal(5.6936, 5 + (12000 - PresentUsd(0.04, Even(2400, 5))) / (PresentUsd(0.04, Even(2400, 6)) - PresentUsd(0.04, Even(2400, 5))), 1e-4);
    }

    [Fact]
    public void At_its_internal_rate_of_return_a_retrofit_is_worth_its_outlay() => Assert.Equal(12000, PresentUsd(.150984, Even(2400, 10)), 0.02);

    [Fact]
    public void A_retrofit_whose_saving_grows_by_two_per_cent()
    {
        var pv = PresentUsd(0.04, Grown(2400, 0.02, 10));
        Assert.Equal(21602.5043, pv, 1e-4);
        Assert.Equal(9602.5043, pv - 12000, 1e-4);
        Assert.Equal(1.800209, pv / 12000, 1e-6);
        Assert.Equal(.102975, Measures.AdjustedRateOfReturn(0.04, pv / 12000, 10), 1e-6);
    }

    [Fact]
    public void The_adjusted_rate_is_the_growth_from_outlay_to_terminal_value()
    {
        var terminal = Even(2400, 10).Select((s, i) => s * Math.Pow(1.04, 9 - i)).Sum();
        Assert.Equal(Math.Pow(terminal / 12000, 0.1) - 1, Measures.AdjustedRateOfReturn(0.04, PresentUsd(0.04, Even(2400, 10)) / 12000, 10), 1e-12);
    }

    [Fact]
    public void A_retrofit_that_brings_nothing_back_loses_all_of_it() => Assert.Equal(-1, Measures.AdjustedRateOfReturn(0.04, -0.3, 10));

    [Fact]
    public void Net_savings_are_the_difference_of_two_life_cycle_costs()
    {
        var without = PresentUsd(0.04, Even(5000, 10));
        var with = 12000 + PresentUsd(0.04, Even(5000 - 2400, 10));
        Assert.Equal(7466.1499, without - with, 1e-4);
    }

    [Fact]
    public void A_retrofit_that_never_pays_at_four_per_cent()
    {
        var found = Counted(0.04, 12000, Even(1400, 10));
        Assert.Equal(11355.2541, found.PresentUsd[0], 1e-4);
        Assert.Equal((9, 0), (found.First[0], found.FirstDiscounted[0]));
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
    public void Nominal_and_real_agree_in_todays_money() =>
        Assert.Equal(PresentUsd(.03883495, Even(2400, 15)), PresentUsd(0.07, Grown(2400, 0.03, 15)), 1e-3);

    private static double[] Even(double usd, int years) => [.. Enumerable.Repeat(usd, years)];

    private static double[] Grown(double usd, double growth, int years) => [.. Enumerable.Range(1, years).Select(t => usd * Math.Pow(1 + growth, t))];

    private static double PresentUsd(double rate, double[] yearly) => Counted(rate, 0, yearly).PresentUsd[0];

    /// <summary>One path's money as a study counts it.</summary>
    private static PaybackSeasons Counted(double rate, double outlay, double[] yearly)
    {
        var counted = new PaybackSeasons(1);
        counted.Count(yearly, 0, yearly.Length, [outlay], rate);
        return counted;
    }
}
