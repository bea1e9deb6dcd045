using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace FarmPortfolio.Host.Tests.Api;

/// <summary>Limits, errors and events of the GraphQL endpoint.</summary>
public partial class EndpointTests(TemporaryHost host) : IClassFixture<TemporaryHost>
{
    /// <summary>Every query that a page sends, from the sources of the front end.</summary>
    public static IEnumerable<TheoryDataRow<string, string>> PageQueries =>
        from file in Repository.Files("*.ts*", "web", "src")
        from Match document in Document().Matches(File.ReadAllText(file))
        let text = document.Groups["text"].Value
        where text.TrimStart().StartsWith("query", StringComparison.Ordinal)
        select new TheoryDataRow<string, string>($"{Repository.Name(file)} {Operation().Match(text).Groups["name"].Value}", text);

    [Theory, MemberData(nameof(PageQueries))]
    public async Task A_query_of_a_page_stays_within_the_limits(string page, string query)
    {
        var variables = new JsonObject();
        foreach (Match variable in Variable().Matches(query[..query.IndexOf('{', StringComparison.Ordinal)]))
        {
            variables[variable.Groups["name"].Value] = variable.Groups["type"].Value is "ID" or "String" ? "none" : 1;
        }

        var answer = await host.Ask(query, variables);
        var limits = (answer["errors"]?.AsArray() ?? []).Where(e => (string?)e!["extensions"]?["code"] is "COMPLEXITY" or "MAX_DEPTH_EXCEEDED");
        Assert.True(!limits.Any(), $"{page}: {answer["errors"]?.ToJsonString()}");
    }

    [Fact]
    public async Task A_tool_can_read_the_schema()
    {
        var answer = await host.Ask("""
            query { __schema { queryType { name } types { name kind fields(includeDeprecated: true) { name args { name type { ...T } } type { ...T } } } } }
            fragment T on __Type { kind name ofType { kind name ofType { kind name ofType { kind name ofType { kind name ofType { kind name ofType { kind name } } } } } } }
            """);
        Assert.Null(answer["errors"]);
        Assert.Contains("House", answer["data"]!["__schema"]!["types"]!.AsArray().Select(t => (string?)t!["name"]));
    }

    [Fact]
    public async Task A_query_that_would_read_everything_many_times_is_refused()
    {
        var answer = await host.Ask("{ coop { farms { items { houses { farm { houses { farm { houses { farm { name } } } } } } } } } }");
        Assert.Equal("COMPLEXITY", (string?)answer["errors"]![0]!["extensions"]!["code"]);
    }

    [Fact]
    public async Task A_query_of_five_thousand_levels_is_refused()
    {
        var answer = await host.Ask(string.Concat(Enumerable.Repeat("{ coop ", 5000)) + new string('}', 5000));
        Assert.NotEmpty(answer["errors"]!.AsArray());
        Assert.Null(answer["data"]);
    }

    /// <summary>Each is small as a text and keeps validation busy for minutes or for ever.</summary>
    public static TheoryData<string> Swelling =>
    [
        $"{{ coop {{ ...F0 }} }} {string.Concat(Enumerable.Range(0, 30).Select(i => $"fragment F{i} on Coop {{ ...F{i + 1} ...F{i + 1} }} "))}fragment F30 on Coop {{ id }}",
        $"{{ version {string.Concat(Enumerable.Repeat("@include(if: true) ", 50_000))} }}",
        $"{{ version {string.Concat(Enumerable.Repeat("@include(if: true) ", 1_000))} }}",
    ];

    [Theory, MemberData(nameof(Swelling))]
    public async Task A_query_that_swells_is_refused_before_it_is_looked_into(string query)
    {
        var answer = await host.Ask(query);
        Assert.Equal("QUERY_TOO_LARGE", (string?)answer["errors"]![0]!["extensions"]!["code"]);
    }

    [Fact]
    public async Task A_fragment_that_spreads_itself_is_refused_by_name()
    {
        var answer = await host.Ask("{ coop { ...A } } fragment A on Coop { id ...B } fragment B on Coop { id ...A }");
        Assert.Contains("itself", (string?)answer["errors"]![0]!["message"], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{ house }", null)]
    [InlineData("{ nothing }", null)]
    [InlineData("mutation($input: SaveHouseInput!) { saveHouse(input: $input) { changeId } }", "{\"input\":{\"id\":\"h\",\"expectedRevision\":\"one\"}}")]
    public async Task A_broken_request_says_so_and_tells_nothing_of_the_inside(string query, string? variables)
    {
        var answer = await host.Ask(query, variables is null ? null : JsonNode.Parse(variables));
        var error = answer["errors"]![0]!;
        Assert.NotNull((string?)error["extensions"]!["code"]);
        Assert.Null(error["extensions"]!["codes"]);
        Assert.DoesNotContain("   at ", answer.ToJsonString(), StringComparison.Ordinal);
        Assert.DoesNotContain("FarmPortfolio.", answer.ToJsonString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{ priceFan(fuel: PROPANE, seasons: 99) { p50 } }", "seasons")]
    [InlineData("{ exposure(farmId: \"f_demo00\", season: 99) { fuel } }", "season")]
    [InlineData("{ coop { priceCases(firstSeason: -1) { title } } }", "firstSeason")]
    [InlineData("{ coop { trialWeeks(halfWidthPoints: 0.1) { weeksInUse } } }", "halfWidthPoints")]
    [InlineData("{ coop { trialWeeks(saving: 1.5) { weeksInUse } } }", "saving")]
    public async Task A_figure_out_of_range_is_refused_by_name_and_not_answered_for_another(string query, string field)
    {
        var error = (await host.Ask(query))["errors"]![0]!;
        Assert.Equal(("BAD_INPUT", field), ((string)error["extensions"]!["code"]!, (string)error["extensions"]!["field"]!));
        Assert.Contains("Give ", (string)error["message"]!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_study_is_followed_to_its_end_by_events()
    {
        var study = await host.StudyDone();
        var events = await Events("subscription($id: ID!) { studyProgress(studyId: $id) { state share } }", new { id = (string)study["id"]! });
        Assert.Equal("complete", events[^1].Name);
        var last = JsonNode.Parse(events[^2].Data)!["data"]!["studyProgress"]!;
        Assert.Equal(("done", 1.0), ((string)last["state"]!, (double)last["share"]!));
    }

    [Fact]
    public async Task A_query_over_events_is_one_result_and_the_end()
    {
        var events = await Events("{ version }", null);
        Assert.Equal(["next", "complete"], events.Select(e => e.Name));
        Assert.NotNull((string?)JsonNode.Parse(events[0].Data)!["data"]!["version"]);
    }

    private async Task<List<(string Name, string Data)>> Events(string query, object? variables)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/graphql") { Content = JsonContent.Create(new { query, variables }) };
        request.Headers.Accept.Add(new MediaTypeWithQualityHeaderValue("text/event-stream"));
        var answer = await host.CreateClient().SendAsync(request);
        Assert.Equal("text/event-stream", answer.Content.Headers.ContentType!.MediaType);
        var text = Encoding.UTF8.GetString(await answer.Content.ReadAsByteArrayAsync());
        return [.. Event().Matches(text).Select(m => (m.Groups["name"].Value, m.Groups["data"].Value))];
    }

    [GeneratedRegex(@"graphql\(`(?<text>[^`]+)`")]
    private static partial Regex Document();

    [GeneratedRegex(@"^\s*query (?<name>\w+)")]
    private static partial Regex Operation();

    [GeneratedRegex(@"\$(?<name>\w+): (?<type>\w+)")]
    private static partial Regex Variable();

    [GeneratedRegex(@"event: (?<name>\w+)\ndata: ?(?<data>[^\n]*)\n\n")]
    private static partial Regex Event();
}
