using System.Text.Json.Nodes;

namespace FarmPortfolio.Host.Tests.Api;

/// <summary>Money of a round given on to others, on a demo of its own: no other round has spent its houses.</summary>
public class RoundMoneyTests(TemporaryHost host) : RoundCalls(host), IClassFixture<TemporaryHost>
{
    [Fact]
    public async Task Money_given_on_comes_back_neither_by_the_award_nor_by_undo()
    {
        await Host.StudyDone();
        var id = (string)(await Saved(new { requestId = Guid.NewGuid().ToString(), name = "Given on", rules = new { budgetUsd = 9000 }, committee = Voters, quorum = 2 }))["roundId"]!;
        Assert.Empty((await Closed(id, 1))["faults"]!.AsArray());
        const string SaveAward = "mutation($input: SaveAwardInput!) { saveAward(input: $input) { changeId faults { code field message } } }";
        async Task<JsonNode> Followed(string award, string? on) => (await Data(SaveAward, new { input = new { id = award, expectedRevision = (int)(await Data("query($id: ID!) { award(id: $id) { revision } }", new { id = award }))["award"]!["revision"]!, requestId = Guid.NewGuid().ToString(), milestones = Array.Empty<object>(), paidUsd = 0, returnedOn = on, returnedReason = on is null ? null : "gave up" } }))["saveAward"]!;
        var awards = (await Round(id, "awards { id awardedOn }"))["awards"]!.AsArray().Select(a => ((string)a!["id"]!, (string)a["awardedOn"]!)).ToList();
        var change = string.Empty;
        foreach (var (award, on) in awards)
        {
            change = (string)(await Followed(award, on))["changeId"]!;
        }

        Assert.NotNull((await Data("mutation($id: ID!, $q: ID!) { fundNext(roundId: $id, requestId: $q) { changeId } }", new { id, q = Guid.NewGuid().ToString() }))["fundNext"]!["changeId"]);
        Assert.Equal("DECIDED", Code((await Data("mutation($c: ID!, $q: ID!) { undo(changeId: $c, requestId: $q) { changeId faults { code message } } }", new { c = change, q = Guid.NewGuid().ToString() }))["undo"]!));
        var refused = 0;
        foreach (var (award, _) in awards)
        {
            refused += (await Followed(award, null))["faults"]!.AsArray().Any(f => (string)f!["code"]! == "MONEY_GONE") ? 1 : 0;
        }

        var after = await Round(id, "awards { grantCapUsd state } plan { availableUsd }");
        Assert.True(refused > 0, "all money came back though some of it was given on");
        Assert.True(after["awards"]!.AsArray().Where(a => (string)a!["state"]! != "returned").Sum(a => (double)a!["grantCapUsd"]!) <= (double)after["plan"]!["availableUsd"]!);
    }
}
