using System.Text.Json.Nodes;

namespace FarmPortfolio.Host.Tests.Api;

/// <summary>Several co-ops in one file never mix.</summary>
public class CoopTests(TemporaryHost host) : IClassFixture<TemporaryHost>
{
    private const string New = "mutation($n: String!, $s: ID, $r: ID!) { newCoop(name: $n, stationsFromCoopId: $s, requestId: $r) { coopId faults { code field message remedy } } }";

    [Fact]
    public async Task A_co_op_of_ones_own_begins_empty_beside_the_example_and_neither_sees_the_other()
    {
        var id = await Begin("Own growers", null);
        var own = (await host.Ask("{ coop { id name isDemo houseCount scenarioSet { seasonCount } weatherStations { id } priceSeries { id } } coops { id isChosen } house(id: \"h_demo000\") { name } farm(id: \"f_demo00\") { name } }", coop: id))["data"]!;
        Assert.Equal("Own growers", (string)own["coop"]!["name"]!);
        Assert.False((bool)own["coop"]!["isDemo"]!);
        Assert.Equal(0, (int)own["coop"]!["houseCount"]!);
        Assert.NotNull(own["coop"]!["scenarioSet"]);
        Assert.Empty(own["coop"]!["weatherStations"]!.AsArray());
        Assert.True(own["coop"]!["priceSeries"]!.AsArray().Count >= 4, "the starter price records are shared");
        Assert.Null(own["house"]);
        Assert.Null(own["farm"]);
        Assert.True((bool)own["coops"]!.AsArray().Single(c => (string)c!["id"]! == id)!["isChosen"]!);
        var demo = (await host.Ask("{ coop { isDemo houseCount } house(id: \"h_demo000\") { name } }", coop: "demo"))["data"]!;
        Assert.True((bool)demo["coop"]!["isDemo"]!);
        Assert.True((int)demo["coop"]!["houseCount"]! > 30);
        Assert.NotNull(demo["house"]);
    }

    [Fact]
    public async Task What_is_added_to_one_changes_nothing_in_another_and_cannot_be_written_through_it()
    {
        var id = await Begin("Learners", "demo");
        var before = (await host.Ask("{ coop { houseCount } }", coop: "demo")).ToJsonString();
        var stations = (await host.Ask("{ coop { weatherStations { id name note } } }", coop: id))["data"]!["coop"]!["weatherStations"]!.AsArray();
        Assert.NotEmpty(stations);
        Assert.All(stations, s => Assert.Contains("invented", (string)s!["note"]!, StringComparison.Ordinal));
        var input = new { requestId = Guid.NewGuid().ToString(), farmName = "Alder Reach", stationId = (string)stations[0]!["id"]!, name = "house 1", shape = "HOOP", widthM = 9.144, lengthM = 29.26, fuel = "PROPANE" };
        var made = (await host.Ask("mutation($input: NewHouseInput!) { newHouse(input: $input) { houseId faults { code message } } }", new { input }, id))["data"]!["newHouse"]!;
        Assert.NotNull(made["houseId"]);
        Assert.Equal(before, (await host.Ask("{ coop { houseCount } }", coop: "demo")).ToJsonString());

        // a farm of the other co-op is no farm here
        var foreign = (await host.Ask("mutation { saveFarm(input: { id: \"f_demo00\", expectedRevision: 1, requestId: \"foreign\", name: \"Taken\" }) { farmId faults { code } } }", coop: id))["data"]!["saveFarm"]!;
        Assert.Null(foreign["farmId"]);
        Assert.Equal("NOT_FOUND", (string)foreign["faults"]![0]!["code"]!);
    }

    [Fact]
    public async Task What_is_of_one_is_neither_deleted_nor_undone_through_another()
    {
        var id = await Begin("Neighbours", null);
        var farm = (await host.Ask("mutation { saveFarm(input: { requestId: \"neighbour's\", name: \"Only here\" }) { farmId changeId } }", coop: id))["data"]!["saveFarm"]!;
        async Task<JsonNode> Gone(string coop) => (await host.Ask("mutation($i: ID!, $q: ID!) { deleteItem(id: $i, expectedRevision: 1, requestId: $q) { changeId faults { code } } }", new { i = (string)farm["farmId"]!, q = Guid.NewGuid().ToString() }, coop))["data"]!["deleteItem"]!;
        async Task<JsonNode> Undone(string coop) => (await host.Ask("mutation($c: ID!, $q: ID!) { undo(changeId: $c, requestId: $q) { changeId faults { code } } }", new { c = (string)farm["changeId"]!, q = Guid.NewGuid().ToString() }, coop))["data"]!["undo"]!;
        Assert.Equal("NOT_FOUND", (string)(await Gone("demo"))["faults"]![0]!["code"]!);
        Assert.Equal("NOT_FOUND", (string)(await Undone("demo"))["faults"]![0]!["code"]!);
        Assert.NotNull((await Undone(id))["changeId"]);
    }

    [Fact]
    public async Task A_name_is_asked_for_once_and_a_repeated_request_begins_one_co_op()
    {
        var request = Guid.NewGuid().ToString();
        var first = await host.Ask(New, new { n = "Twice asked", s = (string?)null, r = request });
        var second = await host.Ask(New, new { n = "Twice asked", s = (string?)null, r = request });
        Assert.Equal(first.ToJsonString(), second.ToJsonString());
        var taken = (await host.Ask(New, new { n = "TWICE ASKED", s = (string?)null, r = Guid.NewGuid().ToString() }))["data"]!["newCoop"]!;
        Assert.Equal("NAME_TAKEN", (string)taken["faults"]![0]!["code"]!);
        var empty = (await host.Ask(New, new { n = "  ", s = (string?)null, r = Guid.NewGuid().ToString() }))["data"]!["newCoop"]!;
        Assert.Equal("name", (string)empty["faults"]![0]!["field"]!);
        var demo = (await host.Ask("mutation { renameCoop(name: \"Real growers\") { coopId faults { code } } }", coop: "demo"))["data"]!["renameCoop"]!;
        Assert.Null(demo["coopId"]);
    }

    [Fact]
    public async Task Whose_an_identifier_is_can_be_asked_from_any_co_op()
    {
        var id = await Begin("Link followers", null);
        var study = (string)(await host.Ask("{ coop { studies(first: 1) { id } } }", coop: "demo"))["data"]!["coop"]!["studies"]![0]!["id"]!;
        var answer = (await host.Ask("query($s: ID!) { house: coopOf(id: \"h_demo000\") { id name } option: coopOf(id: \"h_demo000~foam-now\") { id } study: coopOf(id: $s) { id } shared: coopOf(id: \"ps_gas-henry-hub\") { id } nowhere: coopOf(id: \"h_nowhere\") { id } }", new { s = study }, id))["data"]!;
        Assert.Equal("demo", (string)answer["house"]!["id"]!);
        Assert.Equal("demo", (string)answer["option"]!["id"]!);
        Assert.Equal("demo", (string)answer["study"]!["id"]!);
        Assert.Null(answer["shared"]);
        Assert.Null(answer["nowhere"]);
    }

    [Fact]
    public async Task A_co_op_that_is_not_there_is_refused_by_code()
    {
        var answer = await host.Ask("{ coop { name } }", coop: "co_nowhere");
        Assert.Equal("NO_SUCH_COOP", (string)answer["errors"]![0]!["extensions"]!["code"]!);
    }

    private async Task<string> Begin(string name, string? stationsFrom)
    {
        var answer = (await host.Ask(New, new { n = name, s = stationsFrom, r = Guid.NewGuid().ToString() }))["data"]!["newCoop"]!;
        Assert.Empty(answer["faults"]!.AsArray());
        return (string)answer["coopId"]!;
    }
}
