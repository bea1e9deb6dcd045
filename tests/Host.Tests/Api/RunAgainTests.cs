using System.Text;
using System.Text.Json.Nodes;
using Dapper;
using FarmPortfolio.Host.Storage;
using Microsoft.Extensions.DependencyInjection;

namespace FarmPortfolio.Host.Tests.Api;

/// <summary>A study run over again: in the queue, followed by the stream, cancelled, and the same bit for bit.</summary>
public class RunAgainTests(TemporaryHost host) : IClassFixture<TemporaryHost>
{
    private const string Run = "mutation($id: ID!) { runStudyAgain(studyId: $id) { id state same } }";
    private const string Newest = "{ coop { newestStudy { id canRunAgain newestRunAgain { id state same storedSha256 againSha256 firstDifference seconds } } } }";

    [Fact]
    public async Task It_answers_at_once_tells_how_far_it_is_and_comes_out_the_same()
    {
        var study = (string)(await host.StudyDone())["id"]!;
        var asked = (await host.Ask(Run, new { id = study }))["data"]!["runStudyAgain"]!;
        Assert.Contains((string)asked["state"]!, new[] { "queued", "running" });
        Assert.Null(asked["same"]);
        var twice = (await host.Ask(Run, new { id = study }))["data"]!["runStudyAgain"]!;
        Assert.Equal((string)asked["id"]!, (string)twice["id"]!);

        var told = await Followed((string)asked["id"]!);
        Assert.True(told.Count > 1, "the stream told of the end alone");
        Assert.Contains(told, t => (string)t["state"]! == "running" && (double)t["share"]! is > 0 and < 1);
        Assert.Equal("done", (string)told[^1]["state"]!);
        Assert.Equal(1, (double)told[^1]["share"]!);

        var seen = (await host.Ask(Newest))["data"]!["coop"]!["newestStudy"]!;
        Assert.True((bool)seen["canRunAgain"]!);
        var run = seen["newestRunAgain"]!;
        Assert.Equal((string)asked["id"]!, (string)run["id"]!);
        Assert.True((bool)run["same"]!, run.ToJsonString());
        Assert.Equal((string)run["storedSha256"]!, (string)run["againSha256"]!);
        Assert.Null(run["firstDifference"]);
        Assert.True((double)run["seconds"]! > 0);
    }

    [Fact]
    public async Task A_result_kept_before_its_discount_rate_was_comes_out_the_same_too()
    {
        var study = (string)(await host.StudyDone())["id"]!;
        using (var db = host.Services.GetRequiredService<Database>().Open())
        {
            var kept = JsonNode.Parse(UnitStore.Unpack(db.QueryFirst<byte[]>("SELECT result FROM study WHERE id = @study", new { study })))!.AsObject();
            Assert.True(kept.Remove("discountRate"));
            db.Execute("UPDATE study SET result = @bytes WHERE id = @study", new { study, bytes = UnitStore.Pack(Encoding.UTF8.GetBytes(kept.ToJsonString())) });
        }

        var told = await Followed((string)(await host.Ask(Run, new { id = study }))["data"]!["runStudyAgain"]!["id"]!);
        Assert.Equal("done", (string)told[^1]["state"]!);
        var run = (await host.Ask(Newest))["data"]!["coop"]!["newestStudy"]!["newestRunAgain"]!;
        Assert.True((bool)run["same"]!, run.ToJsonString());
    }

    [Fact]
    public async Task It_can_be_stopped_and_then_says_nothing_of_the_figures()
    {
        var study = (string)(await host.StudyDone())["id"]!;
        var id = (string)(await host.Ask(Run, new { id = study }))["data"]!["runStudyAgain"]!["id"]!;
        var stopped = (await host.Ask("mutation($id: ID!) { cancelRunAgain(runId: $id) { state same } }", new { id }))["data"]!["cancelRunAgain"]!;
        Assert.Equal("cancelled", (string)stopped["state"]!);
        Assert.Null(stopped["same"]);
        Assert.Equal("cancelled", (string)(await Followed(id))[^1]["state"]!);
        Assert.Equal("cancelled", (string)(await host.Ask(Newest))["data"]!["coop"]!["newestStudy"]!["newestRunAgain"]!["state"]!);
    }

    [Fact]
    public async Task What_is_no_study_is_not_run()
    {
        Assert.Null((await host.Ask(Run, new { id = "st_nowhere" }))["data"]!["runStudyAgain"]);
        Assert.Null((await host.Ask("mutation { cancelRunAgain(runId: \"ag_nowhere\") { state } }"))["data"]!["cancelRunAgain"]);
    }

    private async Task<List<JsonNode>> Followed(string id)
    {
        using var client = host.CreateClient();
        using var request = new HttpRequestMessage(HttpMethod.Post, "/graphql");
        request.Headers.Accept.ParseAdd("text/event-stream");
        request.Content = System.Net.Http.Json.JsonContent.Create(new { query = "subscription($id: ID!) { runAgainProgress(runId: $id) { state share words } }", variables = new { id } });
        using var answer = await client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead);
        var text = await answer.Content.ReadAsStringAsync();
        return [.. text.Split('\n').Where(l => l.StartsWith("data:", StringComparison.Ordinal) && l.Contains("runAgainProgress", StringComparison.Ordinal)).Select(l => JsonNode.Parse(l["data:".Length..])!["data"]!["runAgainProgress"]!)];
    }
}
