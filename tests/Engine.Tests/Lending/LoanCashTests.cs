using FarmPortfolio.Engine.Lending;

namespace FarmPortfolio.Engine.Tests.Lending;

/// <summary>Cash by month, laid out by hand.</summary>
public class LoanCashTests
{
    [Fact]
    public void The_grant_comes_late_and_the_lowest_month_lies_before_it()
    {
        var terms = SmallCase.Terms() with { AmountCents = 6_000_00, FeeCents = 200_00, GrantCents = 3_000_00, GrantMonths = 7, DownPaymentCents = 1_200_00, RatePerYear = 0, TermYears = 5, Payments = LoanPayments.Annual };
        double[] load = [0, 0, 0, 0.1, 0.2, 0.3, 0.2, 0.1, 0.1, 0, 0, 0];
        var cash = LoanCash.Of(terms, 10_000, [2_000, 2_000, 2_000, 2_000, 2_000], load);
        Assert.Equal(24, cash.Count);
        Assert.Equal(4_200, cash[0].OwnUsd, 1e-9);
        Assert.Equal(4_200 - 0.6 * 2_000, cash[5].OwnUsd, 1e-9);
        Assert.Equal(-3_000, cash[6].AtOnceUsd, 1e-9);
        Assert.Equal(4_200 - 3_000 - 2_000 + 1_200, cash[11].OwnUsd, 1e-9);
        Assert.Equal(4_200 - 3_000 - 4_000 + 2_400, cash[23].OwnUsd, 1e-9);
        Assert.Equal(1, cash.MaxBy(c => c.OwnUsd).Month);
    }
}
