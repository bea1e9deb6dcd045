using System.Text.Json.Nodes;

namespace FarmPortfolio.Host.Tests.Api;

/// <summary>Lists that can grow are paged and filtered, and every item tells its history.</summary>
public class RegisterListTests(TemporaryHost host) : IClassFixture<TemporaryHost>
{
    private const string Houses = "query($f: HouseFilterInput, $n: Int!, $a: String) { coop { houses(filter: $f, first: $n, after: $a) { total next items { id name fuel shape farm { name } } } } }";

    [Fact]
    public async Task Houses_come_page_by_page_each_once_in_order()
    {
        var (seen, after, total) = (new List<string>(), (string?)null, 0);
        do
        {
            var page = await Page(new { f = (object?)null, n = 7, a = after });
            total = (int)page["total"]!;
            Assert.InRange(page["items"]!.AsArray().Count, 1, 7);
            seen.AddRange(page["items"]!.AsArray().Select(h => $"{h!["farm"]!["name"]}\n{h["name"]}\n{h["id"]}"));
            after = (string?)page["next"];
        }
        while (after is not null);
        Assert.Equal(total, seen.Count);
        Assert.Equal(seen.Order(StringComparer.Ordinal), seen);
        Assert.Equal(total, seen.Distinct().Count());
    }

    [Fact]
    public async Task A_filter_leaves_only_what_fits_and_all_of_it()
    {
        var all = (await Page(new { f = (object?)null, n = 200, a = (string?)null }))["items"]!.AsArray();
        var oil = (await Page(new { f = new { fuel = "FUEL_OIL" }, n = 200, a = (string?)null }))["items"]!.AsArray();
        Assert.NotEmpty(oil);
        Assert.All(oil, h => Assert.Equal("FUEL_OIL", (string)h!["fuel"]!));
        Assert.Equal(all.Count(h => (string)h!["fuel"]! == "FUEL_OIL"), oil.Count);
        var farm = (string)all[0]!["farm"]!["name"]!;
        var found = (await Page(new { f = new { text = farm.ToUpperInvariant() }, n = 200, a = (string?)null }))["items"]!.AsArray();
        Assert.Equal(all.Count(h => (string)h!["farm"]!["name"]! == farm), found.Count);
    }

    [Fact]
    public async Task Many_houses_change_as_one_and_each_tells_it_until_one_undo_takes_it_back()
    {
        string[] houseIds = ["h_demo000", "h_demo010", "h_demo020"];
        var changed = (await host.Ask("mutation($input: ChangeHousesInput!) { changeHouses(input: $input) { changeId faults { message } } }", new { input = new { requestId = "alike", houseIds, airChangesPerHour = 1.75 } }, "demo"))["data"]!["changeHouses"]!;
        var change = (string)changed["changeId"]!;
        foreach (var id in houseIds)
        {
            var history = await History(id);
            Assert.Equal(change, (string)history[0]!["changeId"]!);
            var difference = Assert.Single(history[0]!["differences"]!.AsArray());
            Assert.Equal("airChangesPerHour", (string)difference!["field"]!);
            Assert.Equal("1.75", (string)difference["is"]!);
            Assert.True((bool)difference["moves"]!);
        }

        await host.Ask("mutation($c: ID!) { undo(changeId: $c, requestId: \"alike-back\") { changeId } }", new { c = change }, "demo");
        var after = await History("h_demo000");
        Assert.Equal(3, (int)after[0]!["revision"]!);
        Assert.Null(after[0]!["differences"]!.AsArray().FirstOrDefault(d => (string?)d!["is"] == "1.75"));
    }

    [Fact]
    public async Task History_and_changes_of_another_co_op_are_not_told()
    {
        var other = (string)(await host.Ask("mutation { newCoop(name: \"Another\", requestId: \"another\") { coopId } }"))["data"]!["newCoop"]!["coopId"]!;
        Assert.Empty((await host.Ask("{ history(itemId: \"h_demo000\") { items { said } } }", coop: other))["data"]!["history"]!["items"]!.AsArray());
        var changes = (await host.Ask("{ coop { changePage(first: 1) { next items { seq said } } } }", coop: other))["data"]!["coop"]!["changePage"]!;
        Assert.Equal("Another begins", (string)changes["items"]![0]!["said"]!);
        Assert.Null(changes["next"]);
    }

    private async Task<JsonNode> Page(object variables) => (await host.Ask(Houses, variables, "demo"))["data"]!["coop"]!["houses"]!;

    private async Task<JsonArray> History(string id) =>
        (await host.Ask("query($id: ID!) { history(itemId: $id) { items { revision changeId differences { field is moves } } } }", new { id }, "demo"))["data"]!["history"]!["items"]!.AsArray();
}
