using System.Text.Json.Nodes;
using Dapper;
using FarmPortfolio.Host.Storage;

namespace FarmPortfolio.Host.Tests.Studies;

/// <summary>A program started again on the same database reckons the newest study's single futures again, tells how far it is, and finds the same order to the last digit.</summary>
public sealed class RestartTests : IDisposable
{
    private const string Order = "{ coop { newestStudy { id } } fundingOrder { grantUsd promisedUsd foundUsd savingUsd { p10 p50 p90 } rows(first: 30) { rank grantUsd option { id } } } }";
    private readonly string folder = Directory.CreateTempSubdirectory("farm-portfolio-").FullName;

    [Fact]
    public async Task After_a_restart_the_order_is_the_same_and_its_wait_can_be_followed()
    {
        string before;
        using (var first = new HostOn(folder))
        {
            await first.StudyDone();
            before = (await first.Ask(Order)).ToJsonString();
            Assert.True((bool)(await first.Ask("{ coop { newestStudy { futuresAtHand } } }"))["data"]!["coop"]!["newestStudy"]!["futuresAtHand"]!);
        }

        string id;
        using (var second = new HostOn(folder))
        {
            id = (string)(await second.StudyDone())["id"]!;
            var shares = await Followed(second, id);
            Assert.Equal(1, shares[^1]);
            Assert.Equal(shares.Order(), shares);
            Assert.True((bool)(await second.Ask("{ coop { newestStudy { futuresAtHand } } }"))["data"]!["coop"]!["newestStudy"]!["futuresAtHand"]!);
            Assert.Equal(before, (await second.Ask(Order)).ToJsonString());
        }

        // what another version of the numbers made is never drawn again: whoever follows it is let go at once
        using (var db = new Database(Path.Combine(folder, "farm-portfolio.db")).Open())
        {
            db.Execute("UPDATE study SET numbers_version = 0");
        }

        using var third = new HostOn(folder);
        Assert.Equal([0], await Followed(third, id));
    }

    public void Dispose()
    {
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
    }

    private static async Task<List<double>> Followed(HostOn host, string id)
    {
        using var client = host.CreateClient();
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri("/graphql", UriKind.Relative))
        {
            Content = new StringContent(new JsonObject { ["query"] = "subscription($id: ID!) { futuresProgress(studyId: $id) { share words } }", ["variables"] = new JsonObject { ["id"] = id } }.ToJsonString(), System.Text.Encoding.UTF8, "application/json"),
        };
        request.Headers.Accept.ParseAdd("text/event-stream");
        using var response = await client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead);
        using var lines = new StreamReader(await response.Content.ReadAsStreamAsync());
        var shares = new List<double>();
        while (await lines.ReadLineAsync() is { } line)
        {
            if (line.StartsWith("data: {", StringComparison.Ordinal) && JsonNode.Parse(line[6..])!["data"]?["futuresProgress"] is { } progress)
            {
                shares.Add((double)progress["share"]!);
            }
        }

        return shares;
    }
}
