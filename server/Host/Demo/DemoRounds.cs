using FarmPortfolio.Engine.Funding;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Demo;

/// <summary>An invented round that was decided before the program came, with its awards followed up, and one that is open.</summary>
/// <param name="items">Items.</param>
/// <param name="decisions">Decisions.</param>
public sealed class DemoRounds(ItemStore items, DecisionStore decisions)
{
    /// <summary>The round that is open.</summary>
    public const string Open = "fo_demo2";

    private const string Earlier = "fo_demo1";
    private const string SmallFarms = "under $100,000 of sales";
    private const string NotBegun = "work not begun before the application was complete";
    private static readonly DateOnly DecidedOn = new(2025, 2, 20);
    private static readonly DateOnly ListedOn = new(2025, 9, 24);

    /// <summary>Adds both where the demo has no round yet.</summary>
    public void Fill()
    {
        if (decisions.All(Viewer.Program, DemoCoop.Id).Count > 0 || items.All<FundingRoundFacts>(Viewer.Program, DemoCoop.Id, ItemKind.FundingRound).Count > 0)
        {
            return;
        }

        items.Save(Viewer.Program, DemoCoop.Id, "rounds of the demo are set up", "demo rounds", [Round(Earlier, "Round 1, early 2025", Past), Round(Open, "Round 2, winter 2026-27", Now)]);
        DecidedRow[] order =
        [
            Row(12, 1, "curtain", 14_000, 8_400, 26_400, true), Row(7, 2, "seal", 1_150, 690, 9_300, true), Row(8, 2, "kneewall", 1_800, 1_080, 6_900, true), Row(10, 1, "curtain", 15_300, 9_000, 38_500, true),
            Row(2, 2, "endwalls-kneewall", 4_000, 2_400, 15_200, false),
        ];
        var first = new RoundDecision { Kind = DecisionKind.Entered, RoundId = Earlier, RoundRevision = 1, DecidedOn = DecidedOn, Round = Past with { State = RoundState.Decided }, Order = order, Reason = "entered from the co-op's papers" };
        decisions.Decide(Viewer.Program, DemoCoop.Id, "round 1 is entered with its awards", "demo decision 1", first, id =>
        [
            new(ItemKind.FundingRound, Earlier, 1, first.Round, new("Round 1, early 2025", Note: "invented")),
            Award("aw_demo1", id, first, order[0], a => a with { InvoicedCents = 1_320_000, PaidCents = 792_000, Milestones = Done(a, 7), Verified = new(VerifiedBy.Hand, 0.92, 0.74, 1.10, 2025, "deliveries of 2023-24 and 2025-26, set to the weather of the second; one tank, the other house counted off") }),
            Award("aw_demo2", id, first, order[1], a => a with { InvoicedCents = 98_000, PaidCents = 58_800, Milestones = Done(a, 7), Verified = new(VerifiedBy.Hand, 0.61, 0.18, 1.04, 2025, "gas bills of 2023-24 and 2025-26, set to the weather of the second; three houses on one meter") }),
            Award("aw_demo3", id, first, order[2], a => a with { InvoicedCents = 180_000, PaidCents = 108_000, Milestones = Done(a, 6) }),
            Award("aw_demo4", id, first, order[3], a => a with { Milestones = Done(a, 1), ReturnedOn = new(2025, 9, 10), ReturnedReason = "the farm gave up the house" }),
        ]);
        var second = decisions.All(Viewer.Program, DemoCoop.Id)[^1];
        var listed = first with { CorrectsId = second.Id, Kind = DecisionKind.WaitingList, DecidedOn = ListedOn, Reason = "money came back; first on the list", Order = [.. order.OrderByDescending(r => r != order[3]).Select(r => r == order[3] ? r with { Funded = false, Why = "its money went back on 2025-09-10: the farm gave up the house" } : r with { Funded = true })] };
        decisions.Decide(Viewer.Program, DemoCoop.Id, "Cold Ash, house 3, is funded from the waiting list of round 1", "demo decision 2", listed, id =>
            [Award("aw_demo5", id, listed, order[4], a => a with { Milestones = Done(a, 2) })]);
    }

    private static FundingRoundFacts Past { get; } = new()
    {
        Rules = new() { BudgetUsd = 20_000, ReserveShare = 0, FarmCapUsd = 12_000 },
        RulesSetOn = new(2024, 12, 2),
        WaitingUntilOn = new(2026, 2, 28),
    };

    private static FundingRoundFacts Now { get; } = new()
    {
        Rules = new() { Groups = [new(SmallFarms, 0.15)], Tests = [NotBegun], PartialShare = 0.75, LotSeed = 2611 },
        RulesSetOn = new(2026, 9, 2),
        ReserveUntilOn = new(2027, 6, 1),
        WaitingUntilOn = new(2027, 12, 31),
        Quorum = 3,
        Applications =
        [
            new("h_demo000", new(2026, 9, 14), 0, [new(NotBegun, true, "seen on site", new(2026, 9, 20))]), new("h_demo040", new(2026, 9, 21), 0, [new(NotBegun, true, "seen on site", new(2026, 9, 25))]),
            new("h_demo120", new(2026, 9, 30), 0, [new(NotBegun, false, "the end walls were half built", new(2026, 10, 6))]), new("h_demo081", new(2026, 10, 2), 2_500, []),
        ],
        Committee =
        [
            new("m1", true, Vote.For, []), new("m2", true, Vote.For, [new("f_demo00", "owner")]), new("m3", true, Vote.For, []), new("m4", true, Vote.Against, []), new("m5", false, Vote.None, [new(null, "sells curtains")]),
        ],
    };

    private static ItemToSave Round(string id, string name, FundingRoundFacts facts) => new(ItemKind.FundingRound, id, null, facts,
        new(name, Note: "invented", People: facts.Committee.Count == 0 ? null : new Dictionary<string, string> { ["m1"] = "the chair", ["m2"] = "the treasurer", ["m3"] = "the third member", ["m4"] = "the fourth member", ["m5"] = "the adviser" }));

    private static DecidedRow Row(int farm, int house, string codes, double cost, double grant, double promisedKwh, bool funded) => new()
    {
        HouseId = $"h_demo{farm:00}{house}",
        FarmId = $"f_demo{farm:00}",
        OptionKey = $"{codes}-now",
        Title = string.Join("; ", codes.Split('-').Select(c => Catalogue.BuiltIn.Find(CatalogueKind.Retrofit, c)!.Title)),
        Funded = funded,
        GrantUsd = grant,
        AskedUsd = grant,
        OutlayUsd = cost,
        EligibleUsd = cost,
        FuelSavedKwh = promisedKwh,
        Why = "as the committee ranked it on paper",
    };

    private static ItemToSave Award(string id, string decisionId, RoundDecision decision, DecidedRow row, Func<AwardFacts, AwardFacts> follow)
    {
        var facts = new AwardFacts
        {
            DecisionId = decisionId,
            RoundId = decision.RoundId,
            FarmId = row.FarmId,
            HouseId = row.HouseId,
            OptionKey = row.OptionKey,
            Title = row.Title,
            GrantCapCents = (long)(100 * row.GrantUsd),
            GrantShare = row.GrantUsd / row.EligibleUsd,
            OutlayCents = (long)(100 * row.OutlayUsd),
            AwardedOn = decision.DecidedOn,
            PromisedKwh = row.FuelSavedKwh,
            Milestones = Milestones.Of(decision.DecidedOn),
        };
        return new(ItemKind.Award, id, null, follow(facts), new(Note: "invented"));
    }

    // done a week before it was due
    private static IReadOnlyList<Milestone> Done(AwardFacts award, int steps) => [.. award.Milestones.Select((m, i) => i < steps ? m with { DoneOn = m.DueOn.AddDays(-7) } : m)];
}
