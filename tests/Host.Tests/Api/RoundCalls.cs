using System.Text.Json.Nodes;

namespace FarmPortfolio.Host.Tests.Api;

/// <summary>What tests of rounds ask of the API.</summary>
public abstract class RoundCalls(TemporaryHost host)
{
    private const string Save = "mutation($input: SaveRoundInput!) { saveRound(input: $input) { roundId conflict faults { code field message } } }";
    protected static readonly object[] Voters = [new { name = "the chair", present = true, vote = "FOR", interests = Array.Empty<object>() }, new { name = "the treasurer", present = true, vote = "FOR", interests = Array.Empty<object>() }];

    protected TemporaryHost Host { get; } = host;

    protected static string Code(JsonNode answer) => (string)Assert.Single(answer["faults"]!.AsArray())!["code"]!;

    protected async Task<JsonNode> Saved(object input) => (await Data(Save, new { input }))["saveRound"]!;

    protected async Task<JsonNode> Closed(string id, int revision) =>
        (await Data("mutation($id: ID!, $r: Int!, $q: ID!) { closeRound(id: $id, expectedRevision: $r, requestId: $q) { conflict faults { code message } } }", new { id, r = revision, q = Guid.NewGuid().ToString() }))["closeRound"]!;

    protected async Task<JsonNode> Round(string id, string fields) => (await Data($"query($id: ID!) {{ fundingRound(id: $id) {{ {fields} }} }}", new { id }))["fundingRound"]!;

    protected async Task<JsonNode> Data(string query, object? variables = null)
    {
        var answer = await Host.Ask(query, variables);
        Assert.True(answer["errors"] is null, answer["errors"]?.ToJsonString());
        return answer["data"]!;
    }
}
