using FarmPortfolio.Engine.Funding;

namespace FarmPortfolio.Engine.Tests.Funding;

/// <summary>Awards followed to their end: cap and share, steps, what was delivered, and where money that comes back goes.</summary>
public class AwardTests
{
    private static readonly AwardFacts Award = new()
    {
        RoundId = "r",
        DecisionId = "d",
        FarmId = "f",
        HouseId = "h",
        OptionKey = "foam-now",
        Title = "Foam",
        GrantCapCents = 300_000,
        GrantShare = 0.6,
        OutlayCents = 500_000,
        AwardedOn = new(2026, 3, 10),
        PromisedKwh = 1000,
        Milestones = Milestones.Of(new(2026, 3, 10)),
    };

    [Theory]
    [InlineData(5000, 3000)] // as expected
    [InlineData(4000, 2400)] // less: the same share
    [InlineData(6000, 3000)] // more: the cap
    public void The_grant_is_a_cap_and_a_share(double invoicedUsd, double payableUsd)
    {
        var award = Award with { InvoicedCents = (long)(100 * invoicedUsd) };
        Assert.Equal((long)(100 * payableUsd), award.PayableCents);
        Assert.Equal(award.GrantCapCents - award.PayableCents, award.FreedCents);
        Assert.Equal("paidUsd", Assert.Single((award with { PaidCents = award.PayableCents + 1 }).Check()).Field);
    }

    [Fact]
    public void Installed_is_due_before_the_next_heating_season_that_leaves_time()
    {
        Assert.Equal(new(2026, 10, 1), Milestones.Of(new(2026, 3, 10)).Single(m => m.Kind == MilestoneKind.Installed).DueOn);
        Assert.Equal(new(2027, 10, 1), Milestones.Of(new(2026, 8, 10)).Single(m => m.Kind == MilestoneKind.Installed).DueOn);
        Assert.Equal(new(2027, 7, 31), Milestones.Of(new(2026, 3, 10)).Single(m => m.Kind == MilestoneKind.Reported).DueOn);
    }

    [Theory]
    [InlineData(29, false, false)]
    [InlineData(30, true, false)]
    [InlineData(59, true, false)]
    [InlineData(60, true, true)]
    public void Thirty_days_late_is_on_the_list_and_from_sixty_the_money_may_return(int days, bool listed, bool mayReturn)
    {
        var late = Milestones.Late(Award, new DateOnly(2026, 4, 9).AddDays(days));
        Assert.Equal(listed, late is not null);
        Assert.Equal(mayReturn, late?.MayReturn ?? false);
        Assert.Null(Milestones.Late(Award with { ReturnedOn = new(2026, 5, 1) }, new(2027, 1, 1)));
        Assert.Null(Milestones.Late(Award with { DecisionId = null }, new(2027, 1, 1)));
    }

    [Fact]
    public void Eight_of_eleven_verified_at_87_per_cent_show_63_to_91_with_the_other_three_at_nothing_and_at_all()
    {
        var awards = Enumerable.Range(0, 11).Select(i => i < 8 ? Award with { Verified = new(VerifiedBy.Hand, 0.87, 0.8, 0.94, 2026, "bills") } : Award).ToList();
        var delivered = Delivered.Of(awards)!;
        Assert.Equal(0.87, delivered.Share!.Value, 1e-12);
        Assert.Equal(0.63, delivered.Low, 0.005);
        Assert.Equal(0.91, delivered.High, 0.005);

        // a drop-out stays in the denominator and delivers nothing in either bound
        Assert.Equal(9.96 / 11 - 1.0 / 11, Delivered.Of([.. awards.Take(10), Award with { ReturnedOn = new(2026, 6, 1) }])!.High, 1e-9);
    }

    [Fact]
    public void Delivered_is_a_ratio_of_sums_of_energy()
    {
        AwardFacts Of(double promised, double share) => Award with { PromisedKwh = promised, Verified = new(VerifiedBy.Hand, share, share, share, 2026, "bills") };
        Assert.Equal(0.14, Delivered.Of([Of(1000, 0.5), Of(9000, 0.1)])!.Share!.Value, 1e-12);
        Assert.Null(Delivered.Of([Award with { PromisedKwh = null }]));
    }

    [Fact]
    public void Money_that_comes_back_goes_down_the_frozen_list_to_the_first_that_it_reaches()
    {
        var decision = new RoundDecision
        {
            Round = new() { Rules = new() { BudgetUsd = 3000, ReserveShare = 0 }, WaitingUntilOn = new(2026, 12, 31) },
            Order = [Row("h", 3000, true), Row("large", 2500, false), Row("small", 500, false), Row("smaller", 400, false)],
        };
        Assert.Equal("$0 is free, and each of the 3 who wait asks for more", WaitingList.Next(decision, [Award], new(2026, 6, 1), Alone).WhyNone);
        var cheaper = Award with { InvoicedCents = 400_000 };
        var (next, passed, _) = WaitingList.Next(decision, [cheaper], new(2026, 6, 1), Alone);
        Assert.Equal(600, WaitingList.FreeUsd(decision, [cheaper]));
        Assert.Equal("small", next!.HouseId);
        Assert.Equal("large", Assert.Single(passed).HouseId);
        Assert.Equal("large", WaitingList.Next(decision, [Award with { ReturnedOn = new(2026, 5, 1), ReturnedReason = "sold" }], new(2026, 6, 1), Alone).Next!.HouseId);
        var standing = WaitingList.Standing(decision, [Award with { ReturnedOn = new(2026, 5, 1), ReturnedReason = "sold" }]);
        Assert.False(standing[0].Funded);
        Assert.Equal("its money went back on 2026-05-01: sold", standing[0].Why);
        Assert.Equal("the list ended on 2026-12-31", WaitingList.Next(decision, [cheaper], new(2027, 1, 1), Alone).WhyNone);
    }

    [Fact]
    public void Money_that_comes_back_passes_over_a_farm_that_has_reached_its_cap()
    {
        var decision = new RoundDecision
        {
            Round = new() { Rules = new() { BudgetUsd = 6000, ReserveShare = 0, FarmCapUsd = 3500 } },
            Order = [Row("h", 3000, true), Row("kin", 600, false), Row("other", 500, false)],
        };
        Applicant Who(string house) => new(house, house is "h" or "kin" ? "one" : house) { EarlierGrantsUsd = house == "other" ? 3100 : 0 };
        var (next, passed, why) = WaitingList.Next(decision, [Award], new(2026, 6, 1), Who);
        Assert.Null(next);
        Assert.Equal(["kin", "other"], passed.Select(p => p.HouseId));
        Assert.Equal("$3,000 is free, and each of the 2 who wait asks for more or would pass the cap of its farm", why);
        Assert.Equal("other", WaitingList.Next(decision, [Award], new(2026, 6, 1), h => Who(h) with { EarlierGrantsUsd = 0 }).Next!.HouseId);
    }

    [Fact]
    public void A_recused_member_leaves_the_room_for_that_farm_alone_and_a_quorum_must_remain()
    {
        CommitteeMember Member(string key, Vote vote, bool present = true, params string[] farms) => new(key, present, vote, [.. farms.Select(f => new Interest(f, "kin"))]);
        var round = new FundingRoundFacts { Quorum = 2, Committee = [Member("m1", Vote.For, true, "f1"), Member("m2", Vote.For), Member("m3", Vote.Against), Member("m4", Vote.For, false)] };
        var kin = Ballot.Of(round.Committee, "f1");
        Assert.Equal((2, 1, 1), (kin.Voters, kin.For, kin.Against));
        Assert.Equal(["m1"], kin.Recused);
        Assert.Equal("NOT_CARRIED", Assert.Single(Ballot.Check(round, [("f1", "Ash Farm"), ("f2", "Elm Farm")])).Code);
        Assert.Equal("NO_QUORUM", Assert.Single(Ballot.Check(round with { Quorum = 3 }, [("f1", "Ash Farm"), ("f2", "Elm Farm")])).Code);
        Assert.Empty(Ballot.Check(round, [("f2", "Elm Farm")]));
        Assert.Contains("3 of the 4", Assert.Single(Ballot.Check(round with { Quorum = 4 }, [])).Message, StringComparison.Ordinal);
    }

    private static Applicant Alone(string house) => new(house, house);

    private static DecidedRow Row(string house, double grant, bool funded) => new() { HouseId = house, FarmId = "f", OptionKey = "k", Title = "Foam", Funded = funded, GrantUsd = grant, OutlayUsd = grant, EligibleUsd = grant };
}
