using System.Text.Json.Nodes;

namespace FarmPortfolio.Host.Tests.Api;

/// <summary>A round kept, decided, corrected and followed through the API, on the demo.</summary>
public class RoundTests(TemporaryHost host) : RoundCalls(host), IClassFixture<TemporaryHost>
{
    [Fact]
    public async Task A_round_is_kept_compared_decided_corrected_and_its_money_followed()
    {
        await Host.StudyDone();
        var request = Guid.NewGuid().ToString();
        var id = (string)(await Saved(new { requestId = request, name = "Trial round", rules = new { budgetUsd = 9000, reserveShare = 0.1 } }))["roundId"]!;
        Assert.Equal(id, (string)(await Saved(new { requestId = request, name = "Trial round", rules = new { budgetUsd = 9000, reserveShare = 0.1 } }))["roundId"]!);
        Assert.Equal("NAME_TAKEN", Code(await Saved(new { requestId = Guid.NewGuid().ToString(), name = "trial  ROUND" })));
        Assert.Equal("OUT_OF_RANGE", Code(await Saved(new { id, expectedRevision = 1, requestId = Guid.NewGuid().ToString(), name = "Trial round", rules = new { budgetUsd = -1 } })));

        var open = await Round(id, "revision state obstacles { code } plan { grantUsd availableUsd studyNumber rows { funded } }");
        Assert.Equal("NO_QUORUM", (string)open["obstacles"]![0]!["code"]!);
        Assert.Equal("NO_QUORUM", Code(await Closed(id, 1)));
        await Saved(new { id, expectedRevision = 1, requestId = Guid.NewGuid().ToString(), name = "Trial round", committee = Voters, quorum = 2 });
        Assert.True((bool)(await Closed(id, 1))["conflict"]!, "a close from an older revision is a conflict");
        Assert.Empty((await Closed(id, 2))["faults"]!.AsArray());

        var decided = await Round(id, "state revision committee { name } decisions { number bodySha256 previousSha256 body studyNumber } awards { id decisionNumber grantCapUsd grantShare state promisedKwh houseId savingUsd { p10 p50 p90 } milestones { kind } } plan { grantUsd rows { houseId savingUsd { p10 p50 p90 } funded grantUsd eligibleUsd ballot { for } } }");
        Assert.Equal("DECIDED", (string)decided["state"]!);
        Assert.Equal("the chair", (string)decided["committee"]![0]!["name"]!);
        var decision = Assert.Single(decided["decisions"]!.AsArray())!;
        Assert.Equal(Storage_Sha((string)decision["body"]!), (string)decision["bodySha256"]!);
        Assert.NotEqual(string.Empty, (string)decision["previousSha256"]!);
        Assert.DoesNotContain("the chair", (string)decision["body"]!, StringComparison.Ordinal);
        var funded = decided["plan"]!["rows"]!.AsArray().Where(r => (bool)r!["funded"]!).ToList();
        Assert.Equal(funded.Count, decided["awards"]!.AsArray().Count);
        Assert.All(decided["awards"]!.AsArray(), a => Assert.True((double)a!["promisedKwh"]! > 0));

        // an award tells the saving of its own decision, with the range it had there
        Assert.All(decided["awards"]!.AsArray(), a => Assert.Equal(funded.Single(r => (string)r!["houseId"]! == (string)a!["houseId"]!)!["savingUsd"]!.ToJsonString(), a!["savingUsd"]!.ToJsonString()));
        Assert.Equal("DECIDED", Code(await Saved(new { id, expectedRevision = 3, requestId = Guid.NewGuid().ToString(), name = "Other" })));

        // one grant goes down by a correction; the money reaches the first on the list that fits
        var house = (string)funded[0]!["houseId"]!;
        const string Correct = "mutation($input: CorrectDecisionInput!) { correctDecision(input: $input) { changeId faults { code } } }";
        async Task<JsonNode> Corrected(string reason, double usd) => (await Data(Correct, new { input = new { roundId = id, requestId = Guid.NewGuid().ToString(), reason, rows = new[] { new { houseId = house, grantUsd = usd } } } }))["correctDecision"]!;
        Assert.Equal("REASON_NEEDED", Code(await Corrected(" ", 500)));
        Assert.Equal("OUT_OF_RANGE", Code(await Corrected("typing error", 1e7)));
        Assert.Empty((await Corrected("typing error in the quote", 0))["faults"]!.AsArray());
        var after = await Round(id, "freeUsd canFundNext nextInLine decisions { number correctsNumber reason kind } awards { state returnedReason } plan { rows { houseId funded } }");
        Assert.Equal((int)after["decisions"]![0]!["number"]!, (int)after["decisions"]![1]!["correctsNumber"]!);
        Assert.Contains(after["awards"]!.AsArray(), a => (string)a!["state"]! == "returned");
        Assert.False((bool)after["plan"]!["rows"]!.AsArray().First(r => (string)r!["houseId"]! == house)!["funded"]!);
        Assert.True((double)after["freeUsd"]! > 0);
        Assert.Null((await Data("{ coop { brokenDecision } }"))["coop"]!["brokenDecision"]);
        var next = (await Data("mutation($id: ID!) { fundNext(roundId: $id, requestId: \"fund next\") { changeId faults { code message } } }", new { id }))["fundNext"]!;
        Assert.Equal((bool)after["canFundNext"]!, next["changeId"] is not null);
    }

    [Fact]
    public async Task A_round_is_decided_once_and_no_member_counts_twice()
    {
        await Host.StudyDone();
        Assert.Equal("DOUBLED", Code(await Saved(new { requestId = Guid.NewGuid().ToString(), name = "Twice", committee = new[] { Voters[0], new { name = " The  Chair", present = true, vote = "FOR", interests = Array.Empty<object>() } }, quorum = 2 })));
        var id = (string)(await Saved(new { requestId = Guid.NewGuid().ToString(), name = "Once", rules = new { budgetUsd = 9000 }, committee = Voters, quorum = 2 }))["roundId"]!;
        Assert.Empty((await Closed(id, 1))["faults"]!.AsArray());
        var before = (await Round(id, "revision awards { id } decisions { number }")).ToJsonString();
        Assert.Equal("DECIDED", Code(await Closed(id, 2)));
        Assert.Equal(before, (await Round(id, "revision awards { id } decisions { number }")).ToJsonString());
    }

    [Theory]
    [InlineData("TOO_LONG", "x", 301)]
    [InlineData("HIDDEN_MARK", "Round\u202E 2202", 1)]
    [InlineData("HIDDEN_MARK", "Round\r\nSet", 1)]
    [InlineData("HIDDEN_MARK", "Round\0", 1)]
    public async Task A_name_that_would_spoil_a_sheet_is_refused(string code, string part, int times) =>
        Assert.Equal(code, Code(await Saved(new { requestId = Guid.NewGuid().ToString(), name = string.Concat(Enumerable.Repeat(part, times)) })));

    [Fact]
    public async Task Two_rounds_side_by_side_tell_rules_and_grants_that_differ()
    {
        await Host.StudyDone();
        var id = (string)(await Saved(new { requestId = Guid.NewGuid().ToString(), name = "By heat", rules = new { merit = "ENERGY", budgetUsd = 50000 } }))["roundId"]!;
        var compared = (await Data("query($l: ID!, $r: ID!) { roundComparison(left: $l, right: $r) { rules { title left right } grants { name leftUsd rightUsd } sameGrants } }", new { l = "fo_demo2", r = id }))["roundComparison"]!;
        Assert.Contains(compared["rules"]!.AsArray(), d => (string)d!["left"]! == "NetSaving" && (string)d["right"]! == "Energy");
        Assert.NotEmpty(compared["grants"]!.AsArray());
        Assert.All(compared["grants"]!.AsArray(), g => Assert.NotEqual((double?)g!["leftUsd"], (double?)g["rightUsd"]));
    }

    [Fact]
    public async Task An_award_is_followed_up_and_its_faults_are_told()
    {
        const string SaveAward = "mutation($input: SaveAwardInput!) { saveAward(input: $input) { changeId faults { code field message } } }";
        var award = (await Data("{ award(id: \"aw_demo3\") { revision milestones { kind dueOn doneOn evidence } } }"))["award"]!;
        async Task<JsonNode> Followed(double paid, object? verified) => (await Data(SaveAward, new { input = new { id = "aw_demo3", expectedRevision = (int)award["revision"]!, requestId = Guid.NewGuid().ToString(), milestones = award["milestones"], invoicedUsd = 1800, paidUsd = paid, verified } }))["saveAward"]!;
        Assert.Equal("OUT_OF_RANGE", Code(await Followed(1200, null)));
        Assert.Equal("OUT_OF_ORDER", Code(await Followed(1080, new { share = 0.9, low = 0.95, high = 1.1, words = "bills" })));
        Assert.Equal("EMPTY", Code(await Followed(1080, new { share = 0.9, low = 0.7, high = 1.1, words = " " })));
        Assert.Equal("NOT_FOUND", Code((await Data(SaveAward, new { input = new { id = "aw_none", expectedRevision = 1, requestId = "none", milestones = Array.Empty<object>(), paidUsd = 0 } }))["saveAward"]!));
    }

    private static string Storage_Sha(string text) => FarmPortfolio.Host.Storage.Items.CanonicalJson.Sha256(text);
}
