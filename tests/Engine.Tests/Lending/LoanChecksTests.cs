using FarmPortfolio.Engine.Economics;
using FarmPortfolio.Engine.Lending;

namespace FarmPortfolio.Engine.Tests.Lending;

/// <summary>Terms that cannot be, and those a lender should look at again.</summary>
public class LoanChecksTests
{
    public static TheoryData<string, LoanCaseFacts> Wrong => new()
    {
        { "amountUsd", SmallCase.Terms() with { AmountCents = -1 } }, { "amountUsd", SmallCase.Terms() with { AmountCents = 60_000_000_00 } }, { "downPaymentUsd", SmallCase.Terms() with { DownPaymentCents = -5 } },
        { "grantUsd", SmallCase.Terms() with { GrantCents = -5 } }, { "feeUsd", SmallCase.Terms() with { FeeCents = 9_001_00 } }, { "ratePerYear", SmallCase.Terms() with { RatePerYear = 0.31 } },
        { "ratePerYear", SmallCase.Terms() with { RatePerYear = double.NaN } }, { "ratePerYear", SmallCase.Terms() with { RateKind = RateKind.Indexed, IndexPerYear = 0.2, MarginPerYear = 0.15 } },
        { "indexPerYear", SmallCase.Terms() with { RateKind = RateKind.Indexed, IndexPerYear = 0.3 } }, { "resetMonths", SmallCase.Terms() with { RateKind = RateKind.Indexed, IndexPerYear = 0.04, ResetMonths = 1 } },
        { "termYears", SmallCase.Terms() with { TermYears = 0 } }, { "deferralMonths", SmallCase.Terms() with { DeferralMonths = 48 } }, { "deferralMonths", SmallCase.Terms() with { TermYears = 2, DeferralMonths = 18 } },
        { "guaranteeShare", SmallCase.Terms() with { GuaranteeShare = 0.91 } }, { "requiredFarmCover", SmallCase.Terms() with { RequiredFarmCover = 0 } }, { "lossGivenDefault", SmallCase.Terms() with { LossGivenDefault = 1.2 } },
        { "grantMonths", SmallCase.Terms() with { GrantMonths = 25 } }, { "marginSd", SmallCase.Terms() with { MarginSd = -0.1 } }, { "operatingLineUsd", SmallCase.Terms() with { OperatingLineCents = -1 } }, { "reserveUsd", SmallCase.Terms() with { ReserveCents = -1 } },
    };

    [Theory, MemberData(nameof(Wrong))]
    public void What_cannot_be_names_its_field_and_says_what_would_be_right(string field, LoanCaseFacts terms)
    {
        Assert.Empty(LoanChecks.Of(SmallCase.Terms()));
        var fault = Assert.Single(LoanChecks.Of(terms));
        Assert.Equal(field, fault.Field);
        Assert.True(fault.Message.Length > 10 && fault.Remedy.Length > 10);
    }

    [Fact]
    public void A_term_past_the_study_s_end_is_a_fault_and_one_past_the_parts_life_a_warning()
    {
        Assert.Null(LoanChecks.Horizon(SmallCase.Terms(), 5, 12));
        Assert.Equal("termYears", LoanChecks.Horizon(SmallCase.Terms(), 6, 12)!.Field);
        var costs = new OptionCosts { Outlay = [new("all", 9_000)], Running = [], Renewals = [new(5, 2_000, WholeYears: 10)], LifeYears = 10, EligibleUsd = 9_000, Basis = "own figure", QuoteYear = 2026, SpreadSd = 0.2, NotCounted = [] };
        var terms = SmallCase.Terms() with { DownPaymentCents = 150_00 };
        Assert.Equal("PART_DIES_FIRST", Assert.Single(LoanChecks.Warnings(terms, costs)).Code);
        Assert.Equal("TERM_OVER_LIFE", Assert.Single(LoanChecks.Warnings(terms with { TermYears = 12 }, costs)).Code);
        Assert.Empty(LoanChecks.Warnings(terms with { TermYears = 5 }, costs));
        Assert.Equal("NOT_COVERED", Assert.Single(LoanChecks.Warnings(terms with { TermYears = 5, AmountCents = 8_000_00 }, costs)).Code);
        Assert.Equal("OVER_COVERED", Assert.Single(LoanChecks.Warnings(terms with { TermYears = 5, GrantCents = 1_000_00 }, costs)).Code);
    }

    [Fact]
    public void Capacity_is_the_mean_of_the_three_newest_years_line_by_line()
    {
        var capacity = SmallCase.Capacity();
        Assert.Equal([2024, 2025], capacity.Years);
        Assert.Equal(19_000 + 18_000 + 9_000 + 3_200 - 29_500 - 3_500, capacity.Usd, 1e-9);
        Assert.Equal(8_500, capacity.HeatingUsd, 1e-9);
        Assert.Equal(19_000 + 9_000 + 3_200 + 8_500, capacity.MarginBeforeHeatingUsd, 1e-9);
        var four = Enumerable.Range(2022, 4).Select(y => new StatementFacts { FarmId = "f", Year = y, NetFarmIncomeCents = 100 * y, HeatingCents = 0 });
        Assert.Equal([2023, 2024, 2025], RepaymentCapacity.Of(four)!.Years);
        Assert.Null(RepaymentCapacity.Of([]));
        Assert.Equal("heatingUsd", Assert.Single(new StatementFacts { FarmId = "f", Year = 2025, NetFarmIncomeCents = -4_000_00, HeatingCents = -1 }.Check()).Field);
        Assert.Equal("termDebtServiceUsd", Assert.Single(new StatementFacts { FarmId = "f", Year = 2025, NetFarmIncomeCents = 0, HeatingCents = 0, TermInterestCents = 5 }.Check()).Field);
    }
}
