using FarmPortfolio.Engine.Economics;
using FarmPortfolio.Engine.Lending;

namespace FarmPortfolio.Engine.Tests.Lending;

/// <summary>What a loan asks, against the plain annuity and by its own books.</summary>
public class LoanScheduleTests
{
    private static readonly LoanCaseFacts Terms = SmallCase.Terms() with { RatePerYear = 0.084, TermYears = 5 };

    public static TheoryData<LoanPayments, int, DeferredInterest> Kinds => new()
    {
        { LoanPayments.Monthly, 0, DeferredInterest.Paid }, { LoanPayments.Annual, 0, DeferredInterest.Paid }, { LoanPayments.Seasonal, 0, DeferredInterest.Paid }, { LoanPayments.Monthly, 12, DeferredInterest.Paid },
        { LoanPayments.Monthly, 12, DeferredInterest.Added }, { LoanPayments.Annual, 24, DeferredInterest.Added }, { LoanPayments.Seasonal, 7, DeferredInterest.Paid }, { LoanPayments.Annual, 18, DeferredInterest.Paid },
    };

    [Theory, MemberData(nameof(Kinds))]
    public void What_is_paid_is_the_amount_and_its_interest_and_nothing_is_left(LoanPayments payments, int deferral, DeferredInterest interest)
    {
        var loan = LoanSchedule.Of(Terms with { Payments = payments, DeferralMonths = deferral, DeferredInterest = interest }, 10_000);
        Assert.Equal(0, loan.Months[^1].BalanceUsd, 1e-6);
        Assert.Equal(10_000 + loan.Months.Sum(m => m.InterestUsd), loan.Months.Sum(m => m.PaidUsd), 1e-6);
        Assert.Equal(loan.Months.Sum(m => m.PaidUsd), loan.Seasons.Sum(s => s.ServiceUsd), 1e-9);
        Assert.All(loan.Months, m => Assert.True(m.PaidUsd >= 0 && m.InterestUsd >= 0, $"month {m.Month}: interest {m.InterestUsd}, paid {m.PaidUsd}"));
        Assert.All(loan.Months.Take(deferral), m => Assert.True(m.BalanceUsd >= 10_000, $"principal falls due in month {m.Month} of a deferral of {deferral}"));
    }

    [Fact]
    public void Monthly_payments_are_the_plain_annuity()
    {
        var plain = Amortisation.Schedule(10_000, 0.084 / 12, 60);
        var loan = LoanSchedule.Of(Terms, 10_000);
        Assert.All(loan.Months, m => Assert.Equal(plain[m.Month - 1].BalanceUsd, m.BalanceUsd, 1e-7));
    }

    [Fact]
    public void A_payment_a_year_is_the_annuity_of_the_years_and_falls_in_june()
    {
        var loan = LoanSchedule.Of(Terms with { Payments = LoanPayments.Annual }, 10_000);
        var level = Amortisation.LevelPaymentUsd(10_000, 0.084, 5);
        Assert.All(loan.Months, m => Assert.Equal(m.Month % 12 == 0 ? level : 0, m.PaidUsd, 1e-7));
    }

    [Fact]
    public void In_the_heating_months_a_seasonal_loan_asks_interest_alone()
    {
        var loan = LoanSchedule.Of(Terms with { Payments = LoanPayments.Seasonal }, 10_000);
        Assert.All(loan.Months.Where(m => (m.Month - 1) % 12 is >= 3 and <= 8), m => Assert.Equal(m.InterestUsd, m.PaidUsd, 1e-9));
        var level = Amortisation.LevelPaymentUsd(10_000, 0.084 / 12, 30);
        Assert.All(loan.Months.Where(m => (m.Month - 1) % 12 is < 3 or > 8), m => Assert.Equal(level, m.PaidUsd, 1e-7));
    }

    [Fact]
    public void A_higher_index_is_felt_from_the_first_reset_and_leaves_no_balloon()
    {
        var terms = Terms with { RateKind = RateKind.Indexed, IndexPerYear = 0.044, MarginPerYear = 0.04, ResetMonths = 12 };
        var (calm, risen) = (LoanSchedule.Of(terms, 10_000), LoanSchedule.Of(terms, 10_000, 0.03));
        Assert.Equal(calm.Seasons[0], risen.Seasons[0]);
        Assert.Equal(Amortisation.LevelPaymentUsd(calm.Seasons[0].BalanceUsd, 0.114 / 12, 48), risen.Months[12].PaidUsd, 1e-8);
        Assert.Equal(0, risen.Months[^1].BalanceUsd, 1e-7);
        Assert.Equal(LoanSchedule.Of(Terms, 10_000).Seasons, LoanSchedule.Of(Terms, 10_000, 0.03).Seasons);
    }
}
