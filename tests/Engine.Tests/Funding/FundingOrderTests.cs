using FarmPortfolio.Engine.Funding;
using FarmPortfolio.Engine.Studies;

namespace FarmPortfolio.Engine.Tests.Funding;

/// <summary>Order of a round over options whose savings are laid out path by path.</summary>
public class FundingOrderTests
{
    private const int Paths = LaidOut.Paths;
    private static readonly FundingRules Rules = new() { BudgetUsd = 1000, ReserveShare = 0, CostShare = 1, HouseCapUsd = 1e6, FarmCapUsd = 1e6, MinimumGrantUsd = 0, Confidence = 0 };

    [Fact]
    public void Two_options_of_one_mean_part_when_bad_years_count_and_the_plain_order_shows_the_loss()
    {
        // both save 300 in the mean; the second loses 100 in three futures of ten
        var study = LaidOut.Study(("calm", 1000, _ => 300), ("wild", 1000, p => p % 10 < 3 ? -100 : 3300 / 7.0));
        var plain = Order(study, Rules);
        Assert.Equal(0.3, study.Options[plain.Rows.Single(r => study.Options[r.Index].HouseId == "wild").Index].LossShare, 1e-9);
        Assert.Equal(plain.Rows[0].MeritPerGrantUsd, plain.Rows[1].MeritPerGrantUsd, 1e-6);
        var careful = Order(study, Rules with { Merit = Merit.BadYears });
        Assert.Equal("calm", study.Options[careful.Rows.Single(r => r.Funded).Index].HouseId);
        Assert.Equal(300, careful.WorstTenthUsd, 1e-6);
        Assert.True(careful.Rows[0].MeritPerGrantUsd > careful.Rows[1].MeritPerGrantUsd);
    }

    [Fact]
    public void The_worst_tenth_is_that_of_the_sum_so_savings_that_offset_each_other_stand_together()
    {
        var study = LaidOut.Study(("up", 500, p => p % 2 == 0 ? 260 : 40), ("down", 500, p => p % 2 == 0 ? 40 : 260), ("level", 500, _ => 140));
        var careful = Order(study, Rules with { Merit = Merit.BadYears });
        Assert.True(careful.WorstTenthUsd >= 280, $"the worst tenth is {careful.WorstTenthUsd}");
    }

    [Fact]
    public void A_grant_counts_the_eligible_lines_alone_and_payback_the_whole_cost()
    {
        var study = LaidOut.Study(("a", 1000, _ => 300));
        study = study with { Options = [study.Options[0] with { Costs = study.Options[0].Costs with { EligibleUsd = 0.7 * study.Options[0].Costs.OutlayUsd } }] };
        Assert.Equal(420, Order(study, Rules with { CostShare = 0.6 }).Rows[0].GrantUsd);
    }

    [Fact]
    public void Savings_of_houses_are_summed_before_a_percentage_is_made()
    {
        // half of a house of 1,000 and a tenth of one of 9,000 are 14 % of the two, not the 30 % that their mean would say
        var study = LaidOut.Study(("small", 100, _ => 300), ("large", 100, _ => 300));
        study = study with { Options = [study.Options[0] with { BaseHeatKwh = 1000, HeatSavedKwh = 500 }, study.Options[1] with { BaseHeatKwh = 9000, HeatSavedKwh = 900 }] };
        Assert.Equal(0.14, Order(study, Rules).HeatSavedShare, 1e-12);
    }

    [Fact]
    public void What_was_picked_for_luck_is_found_out_on_fresh_futures()
    {
        // on the first half of the futures the lucky one saves more; on the second half nothing
        var study = LaidOut.Study(("lucky", 1000, p => p < Paths / 2 ? 500 : 0), ("steady", 1000, _ => 300));
        var (promised, found) = Order(study, Rules).OnFreshFutures;
        Assert.Equal(500, promised, 1e-9);
        Assert.Equal(0, found, 1e-9);
    }

    [Fact]
    public void At_most_one_option_a_house_and_no_more_money_than_there_is()
    {
        var study = LaidOut.Study(("a", 400, _ => 300), ("b", 700, _ => 350), ("c", 500, _ => 200));
        study = study with { Options = [study.Options[0], study.Options[1] with { HouseId = "a", Key = "dearer" }, study.Options[2]] };
        var order = Order(study, Rules);
        Assert.Single(order.Rows, r => r.Funded && study.Options[r.Index].HouseId == "a");
        Assert.InRange(order.GrantUsd, 1, Rules.AvailableUsd);
    }

    [Fact]
    public void A_related_farm_shares_the_cap()
    {
        var study = LaidOut.Study(("a", 600, _ => 300), ("b", 600, _ => 290));
        var order = FundingOrder.Of(study, h => h, _ => "kin", Rules with { BudgetUsd = 5000, FarmCapUsd = 700 });
        Assert.Single(order.Rows, r => r.Funded);
        Assert.Equal("its farm has reached its cap", order.Rows.Single(r => !r.Funded).Why);
    }

    private static FundingOrder Order(StudyResult study, FundingRules rules) => FundingOrder.Of(study, h => h, f => f, rules);
}
