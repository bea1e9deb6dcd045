using System.Text.Json.Nodes;

namespace FarmPortfolio.Host.Tests.Api;

/// <summary>A round of before this program entered by hand with its awards, and an award verified from bills the whole way.</summary>
public class EnteredRoundTests(TemporaryHost host) : IClassFixture<TemporaryHost>
{
    private const string Enter = "mutation($input: EnteredRoundInput!) { saveEnteredRound(input: $input) { roundId changeId conflict faults { code field message remedy } } }";
    private const string Told = "name state enteredDecidedOn rulesInShort revision decisions { number } obstacles { code } plan { kind grantUsd studyNumber rows { funded } } awards { id revision isEntered decisionNumber farm title parts state grantCapUsd grantShare outlayUsd paidUsd promisedKwh promisedLowKwh promisedHighKwh overdue { daysLate } verified { by share low high words } }";

    [Fact]
    public async Task A_round_entered_by_hand_counts_in_what_was_delivered_is_chained_nowhere_and_is_undone()
    {
        var before = (await Data("{ coop { delivered { promisedKwh verifiedKwh verifiedAwards } brokenDecision awards { id } } }"))["coop"]!;
        var entered = await Entered(new
        {
            requestId = "enter 2019",
            name = "Round of 2019",
            decidedOn = "2019-03-05",
            rulesInShort = "half of the cost, at most $5,000 a farm",
            awards = new object[]
            {
                new { houseId = "h_demo000", parts = new[] { "curtain" }, grantUsd = 4000, outlayUsd = 9000, paidUsd = 4000, installedOn = "2019-09-20", promisedKwh = 20000, promisedLowKwh = 12000, promisedHighKwh = 28000, delivered = new { share = 0.8, low = 0.6, high = 1.0, season = 2019, words = "two winters of tickets" } },
                new { houseId = "h_demo030", parts = new[] { "seal", "kneewall" }, grantUsd = 700 },
            },
        });
        Assert.Empty(entered["faults"]!.AsArray());
        var id = (string)entered["roundId"]!;
        var round = await Round(id);
        Assert.Equal(("ENTERED", "2019-03-05", "half of the cost, at most $5,000 a farm"), ((string)round["state"]!, (string)round["enteredDecidedOn"]!, (string)round["rulesInShort"]!));
        Assert.Empty(round["decisions"]!.AsArray());
        Assert.Empty(round["obstacles"]!.AsArray());
        Assert.Equal(("ENTERED", 4700.0, 2), ((string)round["plan"]!["kind"]!, (double)round["plan"]!["grantUsd"]!, round["plan"]!["rows"]!.AsArray().Count));
        var curtain = round["awards"]!.AsArray().Single(a => (double)a!["grantCapUsd"]! == 4000)!;
        Assert.True((bool)curtain["isEntered"]!);
        Assert.Null(curtain["decisionNumber"]);
        Assert.Equal(("installed", 4000.0 / 9000, 4000.0, 12000.0, 28000.0), ((string)curtain["state"]!, (double)curtain["grantShare"]!, (double)curtain["paidUsd"]!, (double)curtain["promisedLowKwh"]!, (double)curtain["promisedHighKwh"]!));
        Assert.Equal("HAND", (string)curtain["verified"]!["by"]!);
        var bare = round["awards"]!.AsArray().Single(a => (double)a!["grantCapUsd"]! == 700)!;
        Assert.Equal("entered", (string)bare["state"]!);
        Assert.Null(bare["overdue"]);
        Assert.Equal(["kneewall", "seal"], round["awards"]!.AsArray().Single(a => (double)a!["grantCapUsd"]! == 700)!["parts"]!.AsArray().Select(p => (string)p!));

        // 0.8 x 20,000 kWh more are verified, and 20,000 more promised; the award without a promise counts in neither
        var after = (await Data("{ coop { delivered { promisedKwh verifiedKwh verifiedAwards } brokenDecision fundingRounds { id state } } }"))["coop"]!;
        Assert.Equal((20000, 16000, 1), Moved("promisedKwh", "verifiedKwh", "verifiedAwards"));
        Assert.Null(after["brokenDecision"]);
        Assert.Equal("OPEN", (string)after["fundingRounds"]![0]!["state"]!);
        var compared = (await Data("query($r: ID!) { roundComparison(left: \"fo_demo1\", right: $r) { grants { name leftUsd rightUsd } } }", new { r = id }))["roundComparison"]!["grants"]!.AsArray();
        Assert.Contains(compared, g => (double?)g!["rightUsd"] == 4000);
        Assert.Contains("entered by hand, not decided here", (string)(await Data("query($id: ID!) { history(itemId: $id) { items { said } } }", new { id }))["history"]!["items"]![0]!["said"]!, StringComparison.Ordinal);

        // nothing is decided on it here
        Assert.Equal("ENTERED", Code((await Data("mutation($id: ID!) { closeRound(id: $id, expectedRevision: 1, requestId: \"close it\") { faults { code } } }", new { id }))["closeRound"]!));
        Assert.Equal("ENTERED", Code((await Data("mutation($input: SaveRoundInput!) { saveRound(input: $input) { faults { code } } }", new { input = new { id, expectedRevision = 1, requestId = "rules", name = "Other" } }))["saveRound"]!));
        Assert.Equal("NOT_FOUND", Code((await Data("mutation($input: CorrectDecisionInput!) { correctDecision(input: $input) { faults { code } } }", new { input = new { roundId = id, requestId = "correct", reason = "x", rows = Array.Empty<object>() } }))["correctDecision"]!));

        // mended later: the first award gets another grant, the second stays; undo takes the mending back, deleting takes all, and undo of that brings all back
        var mended = await Entered(new { id, expectedRevision = 1, requestId = "mend 2019", name = "Round of 2019", decidedOn = "2019-03-05", awards = new[] { new { id = (string)curtain["id"]!, expectedRevision = 1, houseId = "h_demo000", parts = new[] { "curtain" }, grantUsd = 4200, outlayUsd = 9000, promisedKwh = 20000 } } });
        Assert.Empty(mended["faults"]!.AsArray());
        var two = await Round(id);
        Assert.Equal([700.0, 4200.0], two["awards"]!.AsArray().Select(a => (double)a!["grantCapUsd"]!).Order());
        Assert.Equal(0.8, (double)two["awards"]!.AsArray().Single(a => (double)a!["grantCapUsd"]! == 4200)!["verified"]!["share"]!);
        Assert.Equal("LAID_ON_TOP", Code(await Undone(entered, "undo too early")));
        Assert.Empty((await Undone(mended, "undo mend"))["faults"]!.AsArray());
        Assert.Equal([700.0, 4000.0], (await Round(id))["awards"]!.AsArray().Select(a => (double)a!["grantCapUsd"]!).Order());
        Task<JsonNode> Deleted(string requestId) => Data("mutation($id: ID!, $q: ID!) { deleteEnteredRound(id: $id, expectedRevision: 3, requestId: $q) { changeId faults { code message } } }", new { id, q = requestId });
        var deleted = (await Deleted("delete 2019"))["deleteEnteredRound"]!;
        Assert.Empty(deleted["faults"]!.AsArray());
        Assert.Empty((await Undone(deleted, "undo delete"))["faults"]!.AsArray());
        Assert.Equal(2, (await Round(id))["awards"]!.AsArray().Count);
        Assert.Equal("NOT_FOUND", Code((await Data("mutation { deleteEnteredRound(id: \"fo_demo1\", expectedRevision: 3, requestId: \"not this\") { faults { code } } }"))["deleteEnteredRound"]!));
        var last = (await Entered(new { requestId = "enter 2018", name = "Round of 2018", decidedOn = "2018-03-05", awards = new[] { new { houseId = "h_demo000", parts = new[] { "seal" }, grantUsd = 100 } } }));
        Assert.Empty((await Undone(last, "undo enter"))["faults"]!.AsArray());
        Assert.NotNull((await Data("mutation($id: ID!) { deleteEnteredRound(id: $id, expectedRevision: 5, requestId: \"delete again\") { changeId } }", new { id }))["deleteEnteredRound"]!["changeId"]);
        var gone = (await Data("query($id: ID!) { fundingRound(id: $id) { id } coop { awards { id } } }", new { id }));
        Assert.Null(gone["fundingRound"]);
        Assert.Equal(before["awards"]!.AsArray().Count, gone["coop"]!["awards"]!.AsArray().Count);

        // an award that a decision of this program gave is still kept
        var kept = (await Data("mutation { deleteItem(id: \"aw_demo3\", expectedRevision: 1, requestId: \"delete award\") { faults { code } } }"))["deleteItem"]!;
        Assert.Equal("NOT_DELETED", Code(kept));

        (double, double, double) Moved(string a, string b, string c) => (By(a), By(b), By(c));
        double By(string field) => Math.Round((double)after["delivered"]![field]! - (double)before["delivered"]![field]!, 6);
    }

    [Fact]
    public async Task Faults_name_the_award_and_what_would_be_right()
    {
        async Task<string> Faulty(object award, string decidedOn = "2019-03-05", double? budgetUsd = null)
        {
            var answer = await Entered(new { requestId = Guid.NewGuid().ToString(), name = "Faulty", decidedOn, budgetUsd, awards = new[] { award } });
            Assert.Null(answer["changeId"]);
            var fault = answer["faults"]![0]!;
            Assert.NotEmpty((string)fault["remedy"]!);
            return $"{fault["code"]} {fault["field"]}";
        }

        object Award(string house = "h_demo000", string part = "curtain", double grant = 100, double? outlay = null, double? promised = null, double? low = null, double? high = null, object? delivered = null) =>
            new { houseId = house, parts = new[] { part }, grantUsd = grant, outlayUsd = outlay, promisedKwh = promised, promisedLowKwh = low, promisedHighKwh = high, delivered };
        Assert.Equal("OUT_OF_RANGE decidedOn", await Faulty(Award(), "2090-01-01"));
        Assert.Equal("NOT_FOUND awards.0.houseId", await Faulty(Award(house: "h_none")));
        Assert.Equal("NOT_FOUND awards.0.parts", await Faulty(Award(part: "moonlight")));
        Assert.Equal("OUT_OF_RANGE awards.0.grantUsd", await Faulty(Award(grant: 500, outlay: 400)));
        Assert.Equal("OUT_OF_ORDER awards.0.promised", await Faulty(Award(promised: 100, low: 120, high: 140)));
        Assert.Equal("OUT_OF_ORDER awards.0.promised", await Faulty(Award(promised: 100, low: 80)));
        Assert.Equal("NOT_PROMISED awards.0.verified", await Faulty(Award(delivered: new { share = 0.9, low = 0.8, high = 1.0, words = "bills" })));
        Assert.Equal("OVER_BUDGET budgetUsd", await Faulty(Award(), budgetUsd: 50));
        Assert.Equal("EMPTY", Code(await Entered(new { requestId = "no awards", name = "Empty", decidedOn = "2019-03-05", awards = Array.Empty<object>() })));
    }

    [Fact]
    public async Task A_saving_is_found_again_in_the_bills_before_and_after_and_stands_with_its_bounds()
    {
        const string Bills = "{ supplyGroup(id: \"sg_demo07\") { bills { revision entries { kind fromOn toOn quantity unit read totalUsd } } } }";
        const double Saved = 0.25;
        const double KwhPerTherm = 29.3071;
        const string Installed = "2022-08-05";
        var promised = 100_000.0;
        var entered = await Entered(new { requestId = "round of 2022", name = "Round of 2022", decidedOn = "2022-03-01", awards = new[] { new { houseId = "h_demo070", parts = new[] { "curtain" }, grantUsd = 6000, outlayUsd = 12000, promisedKwh = promised } } });
        var award = (await Round((string)entered["roundId"]!))["awards"]![0]!;
        var id = (string)award["id"]!;
        Assert.Equal("NOT_INSTALLED", Code(await Verified(id)));
        Assert.Empty((await Followed(id, Installed))["faults"]!.AsArray());

        // as the demo burned: nothing was installed, so nothing is found, within the bounds
        Assert.Empty((await Verified(id))["faults"]!.AsArray());
        var none = await Found(id);
        Assert.InRange(0.0, (double)none["low"]!, (double)none["high"]!);

        // a quarter less in every bill after the day of installation
        var record = (await Data(Bills))["supplyGroup"]!["bills"]!;
        var lines = record["entries"]!.AsArray().Select(e => e!).ToList();
        Assert.All(lines, e => Assert.Equal("therm", (string)e["unit"]!));
        var whole = 0.0;
        foreach (var e in lines.Where(e => string.CompareOrdinal((string)e["fromOn"]!, Installed) > 0))
        {
            whole += (double)e["quantity"]! * KwhPerTherm;
            e["quantity"] = (double)e["quantity"]! * (1 - Saved);
        }

        const string Save = "mutation($input: SaveFuelRecordInput!) { saveFuelRecord(input: $input) { changeId faults { code message } } }";
        var kept = (await Data(Save, new { input = new { supplyGroupId = "sg_demo07", expectedRevision = (int)record["revision"]!, requestId = "a quarter less", checkOnly = false, entries = lines } }))["saveFuelRecord"]!;
        Assert.NotNull(kept["changeId"]);
        Assert.Empty((await Verified(id))["faults"]!.AsArray());
        var found = await Found(id);
        var numbers = System.Text.RegularExpressions.Regex.Matches((string)found["words"]!, @"(\d+) kWh of fuel without|(\d+) burned|weather (\d+)$").Select(m => double.Parse(m.Groups.Values.Skip(1).Single(g => g.Success).Value, System.Globalization.CultureInfo.InvariantCulture)).ToList();
        var (without, burned, atWeather) = (numbers[0], numbers[1], numbers[2]);
        Assert.Equal("FUEL", (string)found["by"]!);

        // what burned is what the bills after hold, to the kWh and per mille; the fit of the bills before finds again what was taken off, within its 5 %
        Assert.InRange(burned / ((1 - Saved) * whole), 0.97, 1.03);
        Assert.InRange(without / whole, 0.90, 1.10);
        Assert.Equal((without - burned) / atWeather, (double)found["share"]!, 0.002);
        Assert.InRange(Saved * whole / atWeather, (double)found["low"]!, (double)found["high"]!);
        Assert.True((double)found["share"]! - (double)none["share"]! > 0.5 * Saved * whole / atWeather, $"{none.ToJsonString()}; {found.ToJsonString()}");

        // it counts in what the co-op's awards delivered
        var delivered = (await Data("{ coop { delivered { verifiedKwh } awards { id promisedKwh returnedOn verified { share } } } }"))["coop"]!;
        Assert.Equal(delivered["awards"]!.AsArray().Where(a => a!["verified"] is not null && a["returnedOn"] is null).Sum(a => (double)a!["promisedKwh"]! * (double)a["verified"]!["share"]!), (double)delivered["delivered"]!["verifiedKwh"]!, 1e-6);
    }

    private static string Code(JsonNode answer) => (string)Assert.Single(answer["faults"]!.AsArray())!["code"]!;

    private async Task<JsonNode> Entered(object input) => (await Data(Enter, new { input }))["saveEnteredRound"]!;

    private async Task<JsonNode> Round(string id) => (await Data($"query($id: ID!) {{ fundingRound(id: $id) {{ {Told} }} }}", new { id }))["fundingRound"]!;

    private async Task<JsonNode> Undone(JsonNode change, string requestId) => (await Data("mutation($c: ID!, $r: ID!) { undo(changeId: $c, requestId: $r) { changeId faults { code message } } }", new { c = (string)change["changeId"]!, r = requestId }))["undo"]!;

    private async Task<JsonNode> Followed(string id, string installed)
    {
        var award = (await Data("query($id: ID!) { award(id: $id) { revision milestones { kind dueOn doneOn evidence } } }", new { id }))["award"]!;
        var steps = award["milestones"]!.AsArray().Select(m => new { kind = (string)m!["kind"]!, dueOn = (string)m["dueOn"]!, doneOn = (string)m["kind"]! == "INSTALLED" ? installed : (string?)m["doneOn"] });
        return (await Data("mutation($input: SaveAwardInput!) { saveAward(input: $input) { changeId faults { code message } } }", new { input = new { id, expectedRevision = (int)award["revision"]!, requestId = Guid.NewGuid().ToString(), milestones = steps, paidUsd = 0 } }))["saveAward"]!;
    }

    private async Task<JsonNode> Verified(string id)
    {
        var revision = (int)(await Data("query($id: ID!) { award(id: $id) { revision } }", new { id }))["award"]!["revision"]!;
        return (await Data("mutation($id: ID!, $r: Int!, $q: ID!) { verifyAward(id: $id, expectedRevision: $r, requestId: $q) { changeId faults { code message } } }", new { id, r = revision, q = Guid.NewGuid().ToString() }))["verifyAward"]!;
    }

    private async Task<JsonNode> Found(string id) => (await Data("query($id: ID!) { award(id: $id) { verified { by share low high season words } } }", new { id }))["award"]!["verified"]!;

    private async Task<JsonNode> Data(string query, object? variables = null)
    {
        var answer = await host.Ask(query, variables);
        Assert.True(answer["errors"] is null, answer["errors"]?.ToJsonString());
        return answer["data"]!;
    }
}
