using FarmPortfolio.Engine.Economics;
using FarmPortfolio.Engine.Funding;
using FarmPortfolio.Engine.Studies;

namespace FarmPortfolio.Engine.Tests.Funding;

/// <summary>Each rule of a round by itself: tests that name themselves, caps, groups, partial grants, ties.</summary>
public class RoundRulesTests
{
    private static readonly FundingRules Rules = new() { BudgetUsd = 1000, ReserveShare = 0, CostShare = 1, HouseCapUsd = 1e6, FarmCapUsd = 1e6, MinimumGrantUsd = 0, Confidence = 0, GradeC = GradeCRule.AsOthers };
    private static readonly Payback Soon = new([1], 0, 0);

    [Fact]
    public void A_failed_test_names_itself_and_one_not_shown_yet_is_a_condition()
    {
        var rules = Rules with { Tests = ["work not begun"], BudgetUsd = 5000 };
        var study = LaidOut.Study(("a", 500, _ => 300), ("b", 500, _ => 300), ("c", 500, _ => 300));
        var order = FundingOrder.Of(study, h => new(h, h) { Application = h == "c" ? null : new(h, null, 0, [new("work not begun", h == "b", h == "a" ? "roof is off" : "seen", null)]) }, rules);
        var (index, why, rule) = Assert.Single(order.NotEligible);
        Assert.Equal(("a", "test"), (study.Options[index].HouseId, rule));
        Assert.Equal("fails \"work not begun\": roof is off", why);
        Assert.Empty(Row(study, order, "b").Conditions);
        Assert.Equal(["to be shown: work not begun"], Row(study, order, "c").Conditions);
    }

    [Fact]
    public void Member_list_and_data_each_keep_out_by_their_own_name()
    {
        var study = LaidOut.Study(("new", 500, _ => 300), ("old", 500, _ => 300));
        study = study with { Options = [.. study.Options.Select(o => o with { Key = "foam-seal-now", Grade = DataGrade.C })] };
        var byDay = FundingOrder.Of(study, h => new(h, h) { MemberSinceOn = h == "new" ? new(2026, 5, 1) : new(2019, 1, 1) }, Rules with { MemberByOn = new(2026, 1, 1) });
        Assert.Equal("a member since 2026-05-01, asked is by 2026-01-01", Assert.Single(byDay.NotEligible).Why);
        Assert.Equal(2, Of(study, Rules with { RetrofitCodes = ["foam"] }).NotEligible.Count(n => n.Why.StartsWith("\"seal\" is not on the list", StringComparison.Ordinal)));
        Assert.Empty(Of(study, Rules with { RetrofitCodes = ["foam", "seal"] }).NotEligible);
        Assert.All(Of(study, Rules with { GradeC = GradeCRule.Refused }).NotEligible, n => Assert.Equal("data", n.Rule));
        Assert.All(Of(study, Rules with { GradeC = GradeCRule.OnBills }).Rows, r => Assert.Equal(["bills of two winters come"], r.Conditions));
    }

    [Theory]
    [InlineData(0.5, 1e6, 1e6, 0, 0, 500)] // share of the eligible cost
    [InlineData(0.5, 400, 1e6, 0, 0, 400)] // cap a house
    [InlineData(0.5, 1e6, 900, 600, 0, 300)] // cap of the related farms less what they had
    [InlineData(0.5, 1e6, 1e6, 0, 700, 300)] // all public money together never over the whole cost
    public void A_grant_is_the_least_of_share_caps_and_what_other_money_leaves(double share, double houseCap, double farmCap, double earlier, double other, double expected)
    {
        var study = LaidOut.Study(("a", 1000, _ => 300));
        var order = FundingOrder.Of(study, h => new(h, h) { EarlierGrantsUsd = earlier, Application = new(h, null, other, []) }, Rules with { CostShare = share, HouseCapUsd = houseCap, FarmCapUsd = farmCap });
        Assert.Equal(expected, Assert.Single(order.Rows).GrantUsd);
    }

    [Theory]
    [InlineData(800, 0, "its farm and relations had $800 in the years looked back on, of a cap of $900")]
    [InlineData(0, 900, "other public money of $900 leaves $100, under the smallest grant that is given")]
    public void A_house_whose_cap_is_used_up_is_told_so(double earlier, double other, string why)
    {
        var study = LaidOut.Study(("a", 1000, _ => 300));
        var order = FundingOrder.Of(study, h => new(h, h) { EarlierGrantsUsd = earlier, Application = new(h, null, other, []) }, Rules with { FarmCapUsd = 900, MinimumGrantUsd = 250 });
        Assert.Equal((why, "size"), (order.NotEligible.Single().Why, order.NotEligible.Single().Rule));
    }

    [Fact]
    public void Earlier_grants_of_a_related_farm_count_against_its_cap_once_for_all_its_houses()
    {
        var study = LaidOut.Study(("a", 400, _ => 300), ("b", 400, _ => 290));
        var order = FundingOrder.Of(study, h => new(h, "kin") { EarlierGrantsUsd = 500 }, Rules with { FarmCapUsd = 900 });
        Assert.Equal("a", study.Options[Assert.Single(order.Rows, r => r.Funded).Index].HouseId);
    }

    [Fact]
    public void A_group_gets_its_minimum_and_the_round_says_what_that_costs()
    {
        var study = LaidOut.Study(("big1", 500, _ => 400), ("big2", 500, _ => 380), ("small1", 300, _ => 150), ("small2", 300, _ => 140));
        var rules = Rules with { Groups = [new("small farms", 0.3)] };
        var order = FundingOrder.Of(study, Applicants, rules);
        Assert.Equal(["big1", "small1"], Funded(study, order));
        Assert.Equal(380 - 150, order.GroupsCostUsd, 1e-3);
        var small = order.Groups.Single(g => g.Name == "small farms");
        Assert.Equal((600, 2, 600, 2, 300, 1), (small.AskedUsd, small.AskedHouses, small.EligibleUsd, small.EligibleHouses, small.FundedUsd, small.FundedHouses));
        Assert.Equal(0, FundingOrder.Of(study, Applicants, Rules with { Groups = [new("small farms", 0)] }).GroupsCostUsd);
    }

    [Fact]
    public void Money_that_a_group_cannot_use_is_kept_or_released_as_the_rule_says()
    {
        var study = LaidOut.Study(("big1", 500, _ => 400), ("big2", 400, _ => 300), ("small1", 100, _ => 50));
        var held = FundingOrder.Of(study, Applicants, Rules with { Groups = [new("small farms", 0.5)], GroupMoneyHeld = true });
        Assert.Equal(400, held.HeldUsd);
        Assert.Equal(["big1", "small1"], Funded(study, held).Order(StringComparer.Ordinal));
        var released = FundingOrder.Of(study, Applicants, Rules with { Groups = [new("small farms", 0.5)] });
        Assert.Equal(["big1", "big2", "small1"], Funded(study, released).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_group_may_have_a_cost_share_of_its_own()
    {
        var study = LaidOut.Study(("big1", 1000, _ => 400), ("small1", 1000, _ => 390));
        var order = FundingOrder.Of(study, Applicants, Rules with { CostShare = 0.25, Groups = [new("small farms", 0, 0.75)] });
        Assert.Equal((250, 750), (Row(study, order, "big1").GrantUsd, Row(study, order, "small1").GrantUsd));
    }

    [Fact]
    public void The_reserve_is_held_back()
    {
        var study = LaidOut.Study(("a", 500, _ => 300), ("b", 450, _ => 250));
        Assert.Equal(2, Of(study, Rules).Rows.Count(r => r.Funded));
        Assert.Single(Of(study, Rules with { ReserveShare = 0.1 }).Rows, r => r.Funded);
    }

    [Fact]
    public void What_is_too_large_is_skipped_for_the_next_that_fits_and_the_order_says_so()
    {
        var study = LaidOut.Study(("first", 700, _ => 700), ("large", 600, _ => 500), ("small", 300, _ => 100));
        var order = Of(study, Rules);
        Assert.Equal(["first", "small"], Funded(study, order));
        Assert.Equal("is skipped for its size: it asks for $600, $300 was left when its turn came, and smaller ones fit", Row(study, order, "large").Why);
    }

    [Fact]
    public void A_smaller_grant_is_offered_down_to_the_share_that_the_rules_set_and_on_a_condition()
    {
        var study = LaidOut.Study(("first", 700, _ => 700), ("large", 400, _ => 390));
        var cut = Row(study, Of(study, Rules with { PartialShare = 0.75 }), "large");
        Assert.Equal((true, 300, 400), (cut.Funded, cut.GrantUsd, cut.AskedUsd));
        Assert.Equal(["the farm accepts the smaller grant"], cut.Conditions);
        Assert.False(Row(study, Of(study, Rules with { PartialShare = 0.76 }), "large").Funded);
    }

    [Fact]
    public void The_smallest_grant_is_not_undercut()
    {
        var study = LaidOut.Study(("a", 200, _ => 300));
        Assert.Equal("size", Assert.Single(Of(study, Rules with { MinimumGrantUsd = 250 }).NotEligible).Rule);
    }

    [Fact]
    public void Ties_go_by_chance_then_smaller_grant_then_application_then_the_lot()
    {
        var study = LaidOut.Study(("a", 500, _ => 300), ("b", 500, _ => 300));
        StudyResult With(double chanceOfB) => study with { Options = [study.Options[0] with { Lasting = Soon with { ShareBySeason = [0.8], NeverShare = 0.2 } }, study.Options[1] with { Lasting = Soon with { ShareBySeason = [chanceOfB], NeverShare = 1 - chanceOfB } }] };
        Assert.Equal("b", First(With(0.9), Rules));
        Assert.Equal("a", First(With(0.7), Rules));

        // twice the grant for twice the saving: the same merit a dollar, and the smaller goes first
        var sizes = LaidOut.Study(("large", 800, _ => 400), ("small", 400, _ => 200));
        Assert.Equal("small", First(sizes, Rules));

        var days = FundingOrder.Of(With(0.8), h => new(h, h) { Application = new(h, h == "b" ? new(2026, 3, 1) : new(2026, 3, 2), 0, []) }, Rules with { BudgetUsd = 500 });
        Assert.Equal("b", study.Options[days.Rows[0].Index].HouseId);

        var seed = Enumerable.Range(1, 20).First(s => Lot.Of(s, "b", study.Options[1].Key) < Lot.Of(s, "a", study.Options[0].Key));
        var other = Enumerable.Range(1, 20).First(s => Lot.Of(s, "b", study.Options[1].Key) > Lot.Of(s, "a", study.Options[0].Key));
        Assert.Equal("b", First(With(0.8), Rules with { LotSeed = seed }));
        Assert.Equal("a", First(With(0.8), Rules with { LotSeed = other }));
    }

    [Fact]
    public void The_lot_can_be_drawn_again_by_anybody() =>
        // printf '7 h1~foam-now' | sha256sum, first sixteen digits
        Assert.Equal(0x47E4BC6430CF9F67UL, Lot.Of(7, "h1", "foam-now"));

    [Fact]
    public void An_act_of_the_committee_says_what_it_costs_and_how_surely()
    {
        var study = LaidOut.Study(("good", 1000, _ => 500), ("poor", 1000, p => p % 10 < 2 ? 700 : 100));
        var cost = Assert.Single(Of(study, Rules with { Pinned = [new("poor", study.Options[1].Key, "heater failed")] }).Overrides);
        Assert.Equal(("pinned", "poor", "heater failed"), (cost.What, cost.HouseId, cost.Reason));
        Assert.Equal(500 - 220, cost.LosesUsd, 1e-3);
        Assert.Equal(0.8, cost.LosesShare, 1e-9);
    }

    [Fact]
    public void An_amount_that_the_committee_sets_replaces_the_rules_but_never_passes_the_cost()
    {
        var study = LaidOut.Study(("a", 1000, _ => 300));
        Assert.Equal(640, Of(study, Rules with { CostShare = 0.5, Amounts = [new("a", study.Options[0].Key, 640, "quote was late")] }).Rows[0].GrantUsd);
        Assert.Equal(1000, Of(study, Rules with { Amounts = [new("a", study.Options[0].Key, 5000, "quote was late")] }).Rows[0].GrantUsd);
    }

    [Fact]
    public void An_amount_that_the_committee_sets_leaves_all_public_money_within_its_limit()
    {
        var study = LaidOut.Study(("a", 1000, _ => 300));
        var order = FundingOrder.Of(study, h => new(h, h) { Application = new(h, null, 700, []) }, Rules with { Amounts = [new("a", study.Options[0].Key, 640, "quote was late")] });
        Assert.Equal(300, Assert.Single(order.Rows).GrantUsd);
    }

    [Fact]
    public void A_pin_sets_the_confidence_rule_aside_and_not_the_cap_of_its_farm()
    {
        var study = LaidOut.Study(("a", 1000, _ => 300), ("b", 1000, _ => 290));
        var rules = Rules with { CostShare = 0.5, FarmCapUsd = 700, Pinned = [new("a", study.Options[0].Key, "heater failed"), new("b", study.Options[1].Key, "heater failed")] };
        var order = FundingOrder.Of(study, h => new(h, "kin"), rules);
        Assert.Equal(500, order.GrantUsd);
        Assert.Equal("is pinned by the committee, but its farm has reached its cap", Assert.Single(order.Rows, r => !r.Funded).Why);
    }

    [Fact]
    public void Rules_that_cannot_be_used_say_where_and_what_would_be_right()
    {
        Assert.Empty(new FundingRules().Check());
        Assert.Equal("groups", Assert.Single(new FundingRules { Groups = [new("a", 0.6), new("b", 0.6)] }.Check()).Field);
        Assert.Equal("DOUBLED", Assert.Single(new FundingRules { Groups = [new("a", 0.1), new("A", 0.1)] }.Check()).Code);
        Assert.Equal(("TOO_LONG", "groups"), (new FundingRules { Groups = [new(new('x', 101), 0.1)] }.Check() is [var wordy] ? (wordy.Code, wordy.Field) : default));
        Assert.Equal("REASON_NEEDED", Assert.Single(new FundingRules { Pinned = [new("a", "b", " ")] }.Check()).Code);
        Assert.Equal("partialShare", Assert.Single(new FundingRules { PartialShare = double.NaN }.Check()).Field);
    }

    private static Applicant Applicants(string house) => new(house, house) { Groups = house.StartsWith("small", StringComparison.Ordinal) ? ["Small farms"] : [] };

    private static FundingOrder Of(StudyResult study, FundingRules rules) => FundingOrder.Of(study, h => h, f => f, rules);

    private static FundingRow Row(StudyResult study, FundingOrder order, string house) => order.Rows.Single(r => study.Options[r.Index].HouseId == house);

    private static IEnumerable<string> Funded(StudyResult study, FundingOrder order) => order.Rows.Where(r => r.Funded).Select(r => study.Options[r.Index].HouseId);

    private static string First(StudyResult study, FundingRules rules) => study.Options[Of(study, rules with { BudgetUsd = 900 }).Rows[0].Index].HouseId;
}
