using System.Net;
using System.Text.Json.Nodes;

namespace FarmPortfolio.Host.Tests.Api;

public class StudyTests(TemporaryHost host) : IClassFixture<TemporaryHost>
{
    private const string House = "{ house(id: \"h_demo000\") { revision name widthM lengthM coveringCode heatingPlanCode } }";
    private const string Save = "mutation($input: SaveHouseInput!) { saveHouse(input: $input) { changeId conflict faults { code field message remedy } } }";

    [Fact]
    public async Task Editing_a_fact_puts_the_study_out_of_date_and_undoing_mends_it()
    {
        async Task<string> ChangedSince() => (await host.StudyDone())["changedSince"]!.ToJsonString();
        var before = await ChangedSince();
        var house = (await host.Ask(House))["data"]!["house"]!;
        var revision = (int)house["revision"]!;
        var renamed = await Change(revision, "house one", (double)house["widthM"]!);
        Assert.NotNull(renamed["changeId"]);
        Assert.Equal(before, await ChangedSince());
        var widened = await Change(revision + 1, "house one", (double)house["widthM"]! + 1);
        Assert.Contains("house one", await ChangedSince(), StringComparison.Ordinal);
        var stale = await Change(revision, "house one", (double)house["widthM"]! + 2);
        Assert.True((bool)stale["conflict"]!);
        var undone = await host.Ask("mutation($id: ID!) { undo(changeId: $id, requestId: \"u1\") { changeId faults { message } } }", new { id = (string)widened["changeId"]! });
        Assert.NotNull(undone["data"]!["undo"]!["changeId"]);
        Assert.Equal(before, await ChangedSince());
    }

    [Fact]
    public async Task A_repeated_request_adds_nothing()
    {
        var before = await host.Ask("{ house(id: \"h_demo010\") { revision name widthM } }");
        var house = before["data"]!["house"]!;
        var input = Input("h_demo010", (int)house["revision"]!, "same-request", (string)house["name"]!, (double)house["widthM"]! + 0.1);
        var first = (await host.Ask(Save, new { input }))["data"]!["saveHouse"]!;
        var second = (await host.Ask(Save, new { input }))["data"]!["saveHouse"]!;
        Assert.Equal((string)first["changeId"]!, (string)second["changeId"]!);
        Assert.Equal((int)house["revision"]! + 1, (int)(await host.Ask("{ house(id: \"h_demo010\") { revision } }"))["data"]!["house"]!["revision"]!);
    }

    [Theory]
    [InlineData(-9.0, "widthM")]
    [InlineData(300.0, "widthM")]
    public async Task An_impossible_width_is_refused_by_name(double widthM, string field)
    {
        var answer = (await host.Ask(Save, new { input = Input("h_demo020", 1, Guid.NewGuid().ToString(), "house 1", widthM) }))["data"]!["saveHouse"]!;
        Assert.Null(answer["changeId"]);
        Assert.Equal(field, (string)answer["faults"]![0]!["field"]!);
    }

    [Theory]
    [InlineData("heaters", 1800)]
    [InlineData("heaters", 99999)]
    [InlineData("surfaces", 0)]
    public async Task A_year_that_cannot_be_is_refused_as_it_was_typed(string field, int year)
    {
        object parts = field == "heaters"
            ? new { heaters = new[] { new { heaterCode = "power", fuel = "PROPANE", installedYear = year } } }
            : new { surfaces = new[] { new { part = "ROOF", coveringCode = "doublefilm", installedYear = year } } };
        var input = new { id = "h_demo020", expectedRevision = 1, requestId = Guid.NewGuid().ToString(), house = new { name = "house 1", widthM = 9.144, lengthM = 29.26, coveringCode = "doublefilm", heatingPlanCode = "spring", parts } };
        var answer = (await host.Ask(Save, new { input }))["data"]!["saveHouse"]!;
        Assert.Null(answer["changeId"]);
        var fault = Assert.Single(answer["faults"]!.AsArray())!;
        Assert.Equal(field, (string)fault["field"]!);
        Assert.Contains($"of the year {year.ToString(System.Globalization.CultureInfo.InvariantCulture)} cannot be", (string)fault["message"]!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_order_is_funded_within_the_budget_and_the_caps()
    {
        await host.StudyDone();
        var answer = await host.Ask(
            "{ fundingOrder(rules: { budgetUsd: 20000, houseCapUsd: 3000 }) { availableUsd grantUsd rows { funded grantUsd fundedShare option { house { id } } } } }");
        var order = answer["data"]!["fundingOrder"]!;
        Assert.True((double)order["grantUsd"]! <= (double)order["availableUsd"]!);
        var funded = order["rows"]!.AsArray().Where(r => (bool)r!["funded"]!).ToList();
        Assert.NotEmpty(funded);
        Assert.All(funded, r => Assert.InRange((double)r!["grantUsd"]!, 1, 3000));
        Assert.Equal(funded.Count, funded.Select(r => (string)r!["option"]!["house"]!["id"]!).Distinct().Count());
    }

    [Fact]
    public async Task Asking_again_answers_the_same_study()
    {
        var study = await host.StudyDone();
        if (study["changedSince"]!.AsArray().Count > 0)
        {
            await host.Ask("mutation { startStudy { sameAs study { id } } }");
            study = await host.StudyDone();
        }

        var again = (await host.Ask("mutation { startStudy { sameAs study { id } } }"))["data"]!["startStudy"]!;
        Assert.True((bool)again["sameAs"]!);
        Assert.Equal((string)study["id"]!, (string)again["study"]!["id"]!);
    }

    [Fact]
    public async Task Junk_is_answered_400_and_a_form_415()
    {
        var client = host.CreateClient();
        var url = new Uri("/graphql", UriKind.Relative);
        using var junk = new StringContent("{ not json", System.Text.Encoding.UTF8, "application/json");
        Assert.Equal(HttpStatusCode.BadRequest, (await client.PostAsync(url, junk)).StatusCode);
        using var form = new StringContent("query=x", System.Text.Encoding.UTF8, "application/x-www-form-urlencoded");
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, (await client.PostAsync(url, form)).StatusCode);
    }

    private static object Input(string id, int revision, string requestId, string name, double widthM) => new
    {
        id,
        expectedRevision = revision,
        requestId,
        house = new { name, widthM, lengthM = 96 * 0.3048, coveringCode = "doublefilm", heatingPlanCode = "spring" },
    };

    private async Task<JsonNode> Change(int revision, string name, double widthM) =>
        (await host.Ask(Save, new { input = Input("h_demo000", revision, Guid.NewGuid().ToString(), name, widthM) }))["data"]!["saveHouse"]!;
}
