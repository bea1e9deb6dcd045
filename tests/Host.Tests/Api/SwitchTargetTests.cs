using System.Text.Json.Nodes;

namespace FarmPortfolio.Host.Tests.Api;

/// <summary>Where a switch of fuel moves to can be chosen and taken back, and what pellets cost can be told without a record.</summary>
public class SwitchTargetTests(TemporaryHost host) : IClassFixture<TemporaryHost>
{
    private const string Read = "query($id: ID!) { house(id: $id) { optionSetRevision fuel retrofitChoices { code fits switchesTo } farm { id supplyGroups { id fuel } } options { key parts timing switchSupplyGroupId movesTo } } }";
    private const string Save = "mutation($input: SaveOptionSetInput!) { saveOptionSet(input: $input) { changeId faults { code field message } } }";

    [Fact]
    public async Task A_new_tank_is_chosen_for_a_switch_and_the_choice_is_taken_back()
    {
        const string id = "h_demo000";
        var house = await House(id);
        var choice = house["retrofitChoices"]!.AsArray().First(c => (string)c!["code"]! == "topellets")!;
        Assert.Equal("WOOD_PELLETS", (string)choice["switchesTo"]!);
        Assert.Null(house["retrofitChoices"]!.AsArray().First(c => (string)c!["code"]! == "foam")!["switchesTo"]);

        var tank = new { requestId = Guid.NewGuid().ToString(), farmId = (string)house["farm"]!["id"]!, name = "pellet bin", fuel = "WOOD_PELLETS", kind = "TANK" };
        var made = (await host.Ask("mutation($input: SaveSupplyGroupInput!) { saveSupplyGroup(input: $input) { changeId faults { message } } }", new { input = tank }))["data"]!["saveSupplyGroup"]!;
        Assert.NotNull(made["changeId"]);
        house = await House(id);
        var bin = (string)house["farm"]!["supplyGroups"]!.AsArray().Single(g => (string)g!["fuel"]! == "WOOD_PELLETS")!["id"]!;

        await Choose(house, id, bin);
        house = await House(id);
        var moved = Pellets(house);
        Assert.Equal((bin, "pellet bin"), ((string)moved["switchSupplyGroupId"]!, (string)moved["movesTo"]!));

        await Choose(house, id, null);
        Assert.Null(Pellets(await House(id))["switchSupplyGroupId"]);

        // a meter of another fuel is no target
        house = await House(id);
        var other = (string)house["farm"]!["supplyGroups"]!.AsArray().First(g => (string)g!["fuel"]! != "WOOD_PELLETS")!["id"]!;
        var refused = await Answer(house, id, other);
        Assert.Equal("SWITCH_SUPPLY", (string)refused["faults"]![0]!["code"]!);
    }

    [Fact]
    public async Task What_pellets_cost_is_told_without_a_record_and_moves_the_futures()
    {
        const string settings = "{ priceSettings(fuel: WOOD_PELLETS) { seriesName unit knobs { field own usual } models { key outlook { years middle } } } priceFan(fuel: WOOD_PELLETS) { unit p50 } }";
        var before = (await host.Ask(settings))["data"]!;
        var level = before["priceSettings"]!["knobs"]!.AsArray().Single(k => (string)k!["field"]! == "levelUsdPerUnit")!;
        Assert.Null(level["own"]);
        Assert.Equal(Engine.Scenarios.PelletPrices.UsualUsdPerTon, (double)level["usual"]!, 1e-6);

        var set = (await host.Ask("{ coop { scenarioSet { id revision } } }"))["data"]!["coop"]!["scenarioSet"]!;
        object Input(double usd, string request) => new { input = new { setId = (string)set["id"]!, expectedRevision = (int)set["revision"]!, requestId = request, settings = new { fuel = "WOOD_PELLETS", levelMeaning = "MIDDLE", levelUsdPerUnit = usd } } };
        const string save = "mutation($input: SavePriceSettingsInput!) { savePriceSettings(input: $input) { changeId faults { field } } }";
        Assert.NotNull((await host.Ask(save, Input(580, "pellets")))["data"]!["savePriceSettings"]!["changeId"]);
        var after = (await host.Ask(settings))["data"]!;
        Assert.Equal(580, (double)after["priceSettings"]!["knobs"]!.AsArray().Single(k => (string)k!["field"]! == "levelUsdPerUnit")!["own"]!);

        // twice the level is twice the price of the first January, on the same draws
        Assert.Equal(2, (double)after["priceFan"]!["p50"]![6]! / (double)before["priceFan"]!["p50"]![6]!, 0.01);
        Assert.Equal("ton", (string)after["priceFan"]!["unit"]!);
    }

    private static JsonNode Pellets(JsonNode house) => house["options"]!.AsArray().Single(o => o!["parts"]!.AsArray().Any(p => (string)p! == "topellets"))!;

    private async Task<JsonNode> House(string id) => (await host.Ask(Read, new { id }))["data"]!["house"]!;

    private async Task<JsonNode> Answer(JsonNode house, string id, string? to)
    {
        var kept = house["options"]!.AsArray().Where(o => o!["parts"]!.AsArray().Count > 0 && o["parts"]!.AsArray().All(p => (string)p! != "topellets"))
            .Select(o => new { parts = o!["parts"]!.AsArray().Select(p => (string)p!).ToArray(), timing = (string)o["timing"]!, switchSupplyGroupId = (string?)null });
        var input = new { houseId = id, expectedRevision = (int)house["optionSetRevision"]!, requestId = Guid.NewGuid().ToString(), options = kept.Append(new { parts = new[] { "topellets" }, timing = "NOW", switchSupplyGroupId = to }) };
        return (await host.Ask(Save, new { input }))["data"]!["saveOptionSet"]!;
    }

    private async Task Choose(JsonNode house, string id, string? to)
    {
        var answer = await Answer(house, id, to);
        Assert.True(answer["changeId"] is not null, answer.ToJsonString());
    }
}
