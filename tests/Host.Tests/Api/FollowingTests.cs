using System.Net.Http.Headers;
using System.Net.Http.Json;

namespace FarmPortfolio.Host.Tests.Api;

/// <summary>Changes of a co-op as they are made, by server-sent events.</summary>
public class FollowingTests(EmptyHost host) : IClassFixture<EmptyHost>
{
    [Fact]
    public async Task A_change_is_told_to_whoever_follows_its_co_op_and_to_nobody_else()
    {
        using var stop = new CancellationTokenSource(TimeSpan.FromMinutes(5));
        var (first, second) = (await Begin("Followed growers"), await Begin("Other growers"));
        using var own = await Follow(first, stop.Token);
        using var other = await Follow(second, stop.Token);
        var prices = (await host.Ask("{ coop { priceSeries { id name } } }", coop: first))["data"]!["coop"]!["priceSeries"]!.AsArray();
        await Use(first, (string)prices[0]!["id"]!);
        Assert.Contains($"{prices[0]!["name"]} is used", await Told(own, stop.Token), StringComparison.Ordinal);

        // the first that the others hear is their own change, though the other co-op's was told before it
        await Use(second, (string)prices[1]!["id"]!);
        Assert.Contains($"{prices[1]!["name"]} is used", await Told(other, stop.Token), StringComparison.Ordinal);
    }

    private async Task<string> Begin(string name) => (string)(await host.Ask("mutation($name: String!, $request: ID!) { newCoop(name: $name, requestId: $request) { coopId } }", new { name, request = name }))["data"]!["newCoop"]!["coopId"]!;

    private async Task Use(string coop, string series)
    {
        var answer = await host.Ask("mutation($id: ID!, $request: ID!) { usePrices(seriesId: $id, requestId: $request) { changeId } }", new { id = series, request = $"{coop} uses {series}" }, coop);
        Assert.NotNull((string?)answer["data"]!["usePrices"]!["changeId"]);
    }

    /// <summary>Follows what a co-op changes from now on.</summary>
    private async Task<StreamReader> Follow(string coopId, CancellationToken stop)
    {
        var seq = (int)(await host.Ask("{ coop { changes(first: 1) { seq } } }", coop: coopId))["data"]!["coop"]!["changes"]![0]!["seq"]!;
        using var request = new HttpRequestMessage(HttpMethod.Post, "/graphql") { Content = JsonContent.Create(new { query = "subscription($id: ID!, $after: Int) { changes(coopId: $id, afterSeq: $after) { seq said } }", variables = new { id = coopId, after = seq } }) };
        request.Headers.Accept.Add(new MediaTypeWithQualityHeaderValue("text/event-stream"));
        var answer = await host.CreateClient().SendAsync(request, HttpCompletionOption.ResponseHeadersRead, stop);
        return new(await answer.Content.ReadAsStreamAsync(stop));
    }

    /// <summary>The next change that is told.</summary>
    private static async Task<string> Told(StreamReader events, CancellationToken stop)
    {
        while (await events.ReadLineAsync(stop) is { } line)
        {
            if (line.Contains("\"said\"", StringComparison.Ordinal))
            {
                return line;
            }
        }

        return string.Empty;
    }
}
