using FarmPortfolio.Engine.Economics;
using FarmPortfolio.Engine.Lending;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Engine.Tests.Studies;

namespace FarmPortfolio.Engine.Tests.Lending;

/// <summary>Covers, shortfalls and the largest loan over the small portfolio's futures.</summary>
public class LoanAnswerTests
{
    private static readonly Portfolio Two = SmallPortfolio.Of();

    [Fact]
    public void The_seasons_reckoned_again_are_the_study_s_to_the_bit()
    {
        var (study, _) = StudyRun.Run(Two, new StudyMeans(2), null, CancellationToken.None);
        var wanted = study!.Result.Options.Select(o => (o.HouseId, o.Key)).ToHashSet();
        var nets = StudySeasons.Of(Two, study.Futures, wanted, 3, CancellationToken.None);
        var (paths, replicates) = (study.Result.Futures, study.Result.Replicates);
        Assert.Equal(wanted.Count, nets.Options.Count);
        foreach (var option in study.Result.Options)
        {
            var net = nets.Options[(option.HouseId, option.Key)].NetUsd;
            for (var s = 0; s < Two.Set.SeasonCount; s++)
            {
                Assert.Equal(option.SavingBySeason[s], SeasonMean.Of(net.AsSpan(s * paths, paths), replicates));
            }
        }

        for (var c = 0; c < nets.FarmUsd["f"].Length; c++)
        {
            Assert.Equal(study.Sums.Usd(c), nets.FarmUsd["f"][c], 1e-5);
        }
    }

    [Fact]
    public void A_dear_hard_winter_raises_the_project_s_cover_and_lowers_the_farm_s_and_a_cheap_mild_one_does_the_reverse()
    {
        var terms = SmallCase.Terms() with { DrawsMargin = false };
        var (calm, dear, cheap) = (Of(StressKind.AsDrawn), Of(StressKind.DearAndHard), Of(StressKind.CheapAndMild));
        for (var season = 0; season < LoanStress.Winters; season++)
        {
            Assert.True(dear.Project.BySeason[season]!.P50 > calm.Project.BySeason[season]!.P50 && calm.Project.BySeason[season]!.P50 > cheap.Project.BySeason[season]!.P50);
            Assert.True(dear.Farm!.BySeason[season]!.P50 < calm.Farm!.BySeason[season]!.P50 && calm.Farm.BySeason[season]!.P50 < cheap.Farm!.BySeason[season]!.P50);
        }

        Assert.Equal(calm.Project.BySeason[4]!.P50, dear.Project.BySeason[4]!.P50, 0.15);

        LoanAnswer Of(StressKind kind) => LoanAnswer.Of(SmallCase.Basis(Two, terms, kind: kind));
    }

    [Fact]
    public void A_larger_loan_never_has_a_higher_cover_nor_fewer_defaults()
    {
        var basis = SmallCase.Basis(Two);
        LoanAnswer? before = null;
        foreach (var cents in new[] { 2_000_00L, 5_000_00, 9_000_00, 14_000_00, 25_000_00 })
        {
            var now = LoanAnswer.Of(basis with { Loan = basis.Loan with { AmountCents = cents } });
            if (before is not null)
            {
                Assert.True(now.Project.UnderOneShare >= before.Project.UnderOneShare && now.Farm!.UnderOneShare >= before.Farm!.UnderOneShare && now.DefaultShare >= before.DefaultShare);
                Assert.All(now.Project.BySeason.Zip(before.Project.BySeason), c => Assert.True(c.First!.P50 < c.Second!.P50 && c.First.P5 <= Math.Max(0, c.Second.P5) + 1e-12));
                Assert.True(now.CarriedUsd.Mean >= before.CarriedUsd.Mean);
            }

            before = now;
        }

        Assert.True(before!.DefaultShare > 0 && before.Project.UnderOneShare > 0.5, $"a loan of $25,000 defaults in {before.DefaultShare}");
    }

    [Theory, InlineData(0.5), InlineData(0.9), InlineData(0.95), InlineData(0.99)]
    public void The_largest_loan_is_the_last_of_a_brute_scan_that_holds_the_confidence(double confidence)
    {
        var basis = SmallCase.Basis(Two);
        var found = LoanAnswer.Of(basis).Largest.Single(l => l.Confidence == confidence);
        Assert.Equal(Scan(a => 1 - a.Project.UnderRequiredShare), found.ProjectUsd ?? 0, 1.0);
        Assert.Equal(Scan(a => 1 - a.Farm!.UnderRequiredShare), found.FarmUsd ?? 0, 1.0);

        // by hundreds, then by single dollars, with the cover itself and no thought of limits
        double Scan(Func<LoanAnswer, double> holds)
        {
            var coarse = Last(200, 60_000, 100);
            return coarse == 0 ? 0 : Last((long)coarse, (long)coarse + 100, 1);
            double Last(long from, long to, long step)
            {
                var last = 0L;
                for (var usd = from; usd <= to && holds(LoanAnswer.Of(basis with { Loan = basis.Loan with { AmountCents = 100 * usd } })) >= confidence - 1e-9; usd += step)
                {
                    last = usd;
                }

                return last;
            }
        }
    }

    [Fact]
    public void A_shortfall_draws_the_line_then_the_reserve_and_the_balance_is_lost_less_the_guarantee()
    {
        // savings of 1,000 a season against a service of about 2,470: 1,470 short each season
        var terms = SmallCase.Terms() with { AmountCents = 10_000_00, RatePerYear = 0.075, TermYears = 5, Payments = LoanPayments.Annual, OperatingLineCents = 1_500_00, ReserveCents = 1_000_00, LossGivenDefault = 0.6, GuaranteeShare = 0.5 };
        var basis = SmallCase.Basis(Two, terms, farm: false);
        var even = basis with { Net = basis.Net with { NetUsd = [.. basis.Net.NetUsd.Select(_ => 1000.0)], SpentUsd = new double[basis.Net.SpentUsd.Length] } };
        var answer = LoanAnswer.Of(even);
        var due = Amortisation.LevelPaymentUsd(10_000, 0.075, 5);
        Assert.Equal(1, answer.DefaultShare);
        Assert.Equal(1, answer.Project.UnderOneShare);
        Assert.Equal(1, answer.Project.LongestRunShare[5], 1e-12);
        var after = 10_000 * 1.075 - due;
        Assert.Equal(0.5 * 0.6 * after, answer.LossUsd.Mean, 1e-6);
        Assert.Equal(due / 1000, answer.BreakEven.MiddleMultiple!.Value, 1e-9);
        var safe = LoanAnswer.Of(even with { Loan = terms with { OperatingLineCents = 9_000_00 } });
        Assert.Equal(0, safe.DefaultShare);
        Assert.True(safe.CarriedUsd.Mean == 0, $"after a line of $9,000 {safe.CarriedUsd.Mean} is carried over");
    }

    [Fact]
    public void The_farm_s_money_is_nominal_and_set_against_heating_with_the_option_line_by_line()
    {
        var terms = SmallCase.Terms() with { DrawsMargin = false, CapacityGrowthPerYear = 0.02 };
        var basis = SmallCase.Basis(Two, terms);
        var answer = LoanAnswer.Of(basis);
        var (paths, capacity) = (basis.Paths, basis.Capacity!);
        for (var t = 0; t < terms.TermYears; t++)
        {
            // statements of 2024 and 2025, first season 2026: a year and a half, and one more each season
            var before = (capacity.Usd + capacity.HeatingUsd) * Math.Pow(1.02, 1.5 + t);
            var covers = Enumerable.Range(0, paths).Select(p => (before - basis.FarmUsd[t * paths + p] + basis.Net.NetUsd[t * paths + p]) / (8_000 + answer.Schedule.Seasons[t].ServiceUsd)).ToArray();
            Assert.Equal(covers.Average(), answer.Farm!.BySeason[t]!.Mean, 1e-9);
            Assert.Equal(covers.Count(c => c < 1) / (double)paths, answer.Farm.UnderOneShareBySeason[t], 1e-9);
        }
    }

    [Fact]
    public void Each_stress_hurts_in_its_own_direction_or_says_that_it_does_not_apply()
    {
        var terms = SmallCase.Terms() with { RateKind = RateKind.Indexed, IndexPerYear = 0.045, MarginPerYear = 0.03, GrantCents = 4_000_00 };
        var basis = SmallCase.Basis(Two, terms);
        var calm = LoanStress.Of(basis, StressKind.AsDrawn);
        foreach (var kind in new[] { StressKind.RateUp, StressKind.HalfTheSaving, StressKind.GrantRefused })
        {
            var hurt = LoanStress.Of(basis, kind);
            Assert.True(hurt.Applies && hurt.Project.Worst.P50 < calm.Project.Worst.P50 && hurt.Farm!.Worst.P50 < calm.Farm!.Worst.P50, kind.ToString());
        }

        var margin = LoanStress.Of(basis, StressKind.MarginDown);
        Assert.Equal(calm.Project.Worst, margin.Project.Worst);
        Assert.True(margin.Farm!.UnderRequiredShare > calm.Farm!.UnderRequiredShare);
        Assert.False(LoanStress.Of(basis with { Capacity = null }, StressKind.MarginDown).Applies);
        var plain = basis with { Loan = SmallCase.Terms() };
        Assert.False(LoanStress.Of(plain, StressKind.RateUp).Applies);
        Assert.False(LoanStress.Of(plain, StressKind.GrantRefused).Applies);
        Assert.Equal(LoanStress.Of(plain, StressKind.AsDrawn).Project.Worst, LoanStress.Of(plain, StressKind.RateUp).Project.Worst);
    }
}
