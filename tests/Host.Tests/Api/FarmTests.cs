using System.Text.Json.Nodes;

namespace FarmPortfolio.Host.Tests.Api;

public class FarmTests(TemporaryHost host) : IClassFixture<TemporaryHost>
{
    private const string Add = "mutation($input: NewHouseInput!) { newHouse(input: $input) { houseId changeId preview { fuel fuelKwh toldKwhFuel fromDefaults { field } } faults { code field message remedy } } }";
    private const string Import = "mutation($input: ImportInput!) { importFarms(input: $input) { kept rows summary faults { code field line column message remedy } } }";

    [Fact]
    public async Task A_house_from_few_answers_names_its_defaults_and_can_be_undone()
    {
        var look = await New(new { requestId = "look", checkOnly = true, farmId = "f_demo00", name = "house 9", shape = "HOOP", widthM = 9.144, lengthM = 29.26, fuel = "PROPANE" });
        Assert.Null(look["houseId"]);
        Assert.True((double)look["preview"]!["fuelKwh"]! > 10_000, look.ToJsonString());
        Assert.Contains("heatingPeriods", look["preview"]!["fromDefaults"]!.ToJsonString(), StringComparison.Ordinal);
        var made = await New(new { requestId = "make", farmId = "f_demo00", name = "house 9", shape = "HOOP", widthM = 9.144, lengthM = 29.26, fuel = "PROPANE" });
        var id = (string)made["houseId"]!;
        var house = (await host.Ask("query($id: ID!) { house(id: $id) { name options { key } heat { demandKwh } } }", new { id }))["data"]!["house"]!;
        Assert.True(house["options"]!.AsArray().Count > 5, house.ToJsonString());
        Assert.True((double)house["heat"]!["demandKwh"]! > 0);
        await host.Ask("mutation($c: ID!) { undo(changeId: $c, requestId: \"u9\") { changeId } }", new { c = (string)made["changeId"]! });
        Assert.Null((await host.Ask("query($id: ID!) { house(id: $id) { name } }", new { id }))["data"]!["house"]);
    }

    [Fact]
    public async Task A_new_farm_comes_with_its_house_tank_price_and_last_winters_use()
    {
        var made = await New(new
        {
            requestId = "whole",
            farmName = "Quince Bottom",
            place = "Stonemill",
            stationId = "ws_demo1",
            name = "house 1",
            shape = "GOTHIC_ARCH",
            widthM = 9.144,
            lengthM = 29.26,
            heatedFrom = "15 Feb",
            heatedTo = "31 May",
            nightC = 15.6,
            fuel = "PROPANE",
            fixedPriceUsdPerUnit = 2.4,
            usedLastWinter = 2200.0,
            otherUse = "dwelling",
        });
        Assert.Empty(made["faults"]!.AsArray());
        Assert.Equal(2200 * 26.77, (double)made["preview"]!["toldKwhFuel"]!, 50.0);
        var house = (await host.Ask("query($id: ID!) { house(id: $id) { dataGrade farm { name stationName } } }", new { id = (string)made["houseId"]! }))["data"]!["house"]!;
        Assert.Equal("Quince Bottom", (string)house["farm"]!["name"]!);
        Assert.NotEqual("C", (string)house["dataGrade"]!);
    }

    [Theory]
    [InlineData("house 1", 9.0, null, "name")]
    [InlineData("house 8", -9.0, null, "widthM")]
    [InlineData("house 8", 9.0, "31 Feb", "heatedFrom")]
    public async Task What_cannot_be_is_named_by_field_and_nothing_is_kept(string name, double widthM, string? from, string field)
    {
        var made = await New(new { requestId = Guid.NewGuid().ToString(), farmId = "f_demo00", name, shape = "HOOP", widthM, lengthM = 29.0, heatedFrom = from, heatedTo = from is null ? null : "31 May" });
        Assert.Null(made["houseId"]);
        Assert.Contains(made["faults"]!.AsArray(), f => (string?)f!["field"] == field);
    }

    [Theory]
    [InlineData(290.0, null, "fixedPriceUsdPerUnit", "dollars, not cents")]
    [InlineData(null, 9_999_999.0, "usedLastWinter", "look at its unit")]
    [InlineData(null, 1e300, "usedLastWinter", "at most")]
    [InlineData(2.35, 4120.0, null, null)]
    public async Task A_price_in_cents_and_a_use_no_house_has_are_refused_at_their_fields(double? price, double? used, string? field, string? remedy)
    {
        var made = await New(new { requestId = Guid.NewGuid().ToString(), checkOnly = true, farmName = "Bounds", stationId = "ws_demo1", name = "house 1", shape = "HOOP", widthM = 9.144, lengthM = 29.26, fuel = "PROPANE", fixedPriceUsdPerUnit = price, usedLastWinter = used });
        var faults = made["faults"]!.AsArray();
        if (field is null)
        {
            Assert.Empty(faults);
            return;
        }

        var fault = Assert.Single(faults)!;
        Assert.Equal(field, (string?)fault["field"]);
        Assert.Contains(remedy!, (string)fault["remedy"]!, StringComparison.Ordinal);
        Assert.True(((string)fault["message"]!).Length < 100, (string)fault["message"]!);
    }

    [Fact]
    public async Task Deleting_a_farm_says_what_goes_with_it_and_undo_brings_all_back()
    {
        const string Count = "{ coop { houseCount farms { total items { id name revision } } } }";
        async Task<(int Houses, int Farms)> Counted() => (await host.Ask(Count))["data"]!["coop"]! is var c ? ((int)c["houseCount"]!, (int)c["farms"]!["total"]!) : default;
        async Task<JsonNode> Delete(JsonNode farm) =>
            (await host.Ask("mutation($id: ID!, $r: Int!) { deleteItem(id: $id, expectedRevision: $r, requestId: \"gone\") { changeId faults { code message } } }", new { id = (string)farm["id"]!, r = (int)farm["revision"]! }))["data"]!["deleteItem"]!;
        var farms = (await host.Ask(Count))["data"]!["coop"]!["farms"]!["items"]!.AsArray();

        // a farm with a loan or an award is not deleted over them
        var used = await Delete(farms.Single(f => (string)f!["name"]! == "Marsh End")!);
        Assert.All(used["faults"]!.AsArray(), f => Assert.Matches("item: (loan case|award)", (string)f!["message"]!));
        Assert.NotEmpty(used["faults"]!.AsArray());

        var (before, farm) = (await Counted(), farms.Single(f => (string)f!["name"]! == "Eddy Bank")!);
        var going = (await host.Ask("query($id: ID!) { goingWith(id: $id) { kind name } }", new { id = (string)farm["id"]! }))["data"]!["goingWith"]!.AsArray().Count(g => (string)g!["kind"]! == "house");
        Assert.True(going > 0);
        var gone = await Delete(farm);
        Assert.True(gone["changeId"] is not null, gone.ToJsonString());
        Assert.Equal((before.Houses - going, before.Farms - 1), await Counted());
        await host.Ask("mutation($c: ID!) { undo(changeId: $c, requestId: \"back\") { changeId } }", new { c = (string)gone["changeId"]! });
        Assert.Equal(before, await Counted());
    }

    [Fact]
    public async Task A_copy_has_the_options_of_its_original_and_draws_of_its_own()
    {
        var copied = (await host.Ask("mutation { copyHouse(houseId: \"h_demo030\", name: \"house 1b\", requestId: \"copy\") { houseId faults { message } } }"))["data"]!["copyHouse"]!;
        string Keys(JsonNode h) => string.Join(' ', h["options"]!.AsArray().Select(o => (string)o!["key"]!));
        var (one, two) = (await House("h_demo030"), await House((string)copied["houseId"]!));
        Assert.Equal(Keys(one), Keys(two));
        Assert.Equal("house 1b", (string)two["name"]!);
        var again = (await host.Ask("mutation { copyHouse(houseId: \"h_demo030\", name: \"House 1b\", requestId: \"copy2\") { houseId faults { code } } }"))["data"]!["copyHouse"]!;
        Assert.Null(again["houseId"]);
        Assert.NotEmpty(again["faults"]!.AsArray());

        async Task<JsonNode> House(string id) => (await host.Ask("query($id: ID!) { house(id: $id) { name options { key } } }", new { id }))["data"]!["house"]!;
    }

    [Fact]
    public async Task A_sheet_adds_farms_and_houses_as_one_change_that_can_be_undone()
    {
        const string Sheet = "farm,place,weather station,house,width (ft),length (ft),fuel,tank or meter\nPlover Green,Stonemill,Stonemill,house 1,30,96,propane,tank A\nPlover Green,,,house 2,30,72,,tank A\nRook Hill,Stonemill,Stonemill,,,,,\n";
        var look = await Sheets(Sheet, checkOnly: true);
        Assert.False((bool)look["kept"]!);
        Assert.Contains("2 new farms, 2 houses, 1 tank", (string)look["summary"]!, StringComparison.Ordinal);
        var kept = await Sheets(Sheet, checkOnly: false);
        Assert.True((bool)kept["kept"]!, kept.ToJsonString());
        var change = (await host.Ask("{ coop { changes(first: 1) { id said itemCount } } }"))["data"]!["coop"]!["changes"]![0]!;
        Assert.Equal(7, (int)change["itemCount"]!);
        await host.Ask("mutation($c: ID!) { undo(changeId: $c, requestId: \"sheet-back\") { changeId } }", new { c = (string)change["id"]! });
        Assert.Equal(0, (int)(await host.Ask("{ coop { farms(text: \"Plover\") { total } } }"))["data"]!["coop"]!["farms"]!["total"]!);
    }

    [Fact]
    public async Task What_a_sheet_tells_of_last_winter_is_kept_as_the_nine_questions_keep_it()
    {
        const string Houses = "query($text: String) { coop { farms(text: $text) { items { houses { name dataGrade } supplyGroups { recordedLines recordedFromOn recordedToOn } } } } }";
        const string Sheet = "farm,place,weather station,house,width (ft),length (ft),heated from,heated to,night set point (F),fuel,used last winter (gal)\n"
            + "Dunlin Meadow,Stonemill,Stonemill,house 1,30,96,15 Feb,31 May,60,propane,2200\nDunlin Meadow,,,house 2,30,96,15 Feb,31 May,60,propane,\nGodwit Edge,Stonemill,Stonemill,house 1,30,96,15 Feb,31 May,60,propane,\n";
        var kept = await Sheets(Sheet, checkOnly: false);
        Assert.True((bool)kept["kept"]!, kept.ToJsonString());
        Assert.Contains("a winter's fuel for 1", (string)kept["summary"]!, StringComparison.Ordinal);
        var asked = await New(new { requestId = "as-asked", farmName = "Knot Field", stationId = "ws_demo1", name = "house 1", shape = "HOOP", widthM = 9.144, lengthM = 29.2608, heatedFrom = "15 Feb", heatedTo = "31 May", nightC = 15.5, fuel = "PROPANE", usedLastWinter = 2200.0 });
        Assert.Empty(asked["faults"]!.AsArray());
        async Task<JsonNode> Farm(string text) => (await host.Ask(Houses, new { text }))["data"]!["coop"]!["farms"]!["items"]![0]!;
        var (told, untold, answered) = (await Farm("Dunlin"), await Farm("Godwit"), await Farm("Knot"));
        Assert.All(told["houses"]!.AsArray().Concat(answered["houses"]!.AsArray()), h => Assert.Equal("B", (string)h!["dataGrade"]!));
        Assert.Equal("C", (string)untold["houses"]![0]!["dataGrade"]!);
        Assert.Equal(answered["supplyGroups"]!.ToJsonString(), told["supplyGroups"]!.ToJsonString());

        // the tank has its record: a third house cannot bring another
        var again = await Sheets("farm,house,width (ft),length (ft),fuel,used last winter (gal)\nDunlin Meadow,house 3,30,96,propane,900\n", checkOnly: false);
        Assert.False((bool)again["kept"]!);
        var fault = Assert.Single(again["faults"]!.AsArray())!;
        Assert.Equal(("ALREADY_THERE", 2, 6), ((string)fault["code"]!, (int)fault["line"]!, (int)fault["column"]!));
    }

    [Fact]
    public async Task A_near_name_is_asked_about_and_a_bad_row_holds_the_sheet_back_until_the_good_ones_are_asked_for()
    {
        const string Sheet = "farm,house,width (ft),length (ft),fuel\nAlder Reech,house 1,30,96,propane\nSedge Corner,house 1,30,96,propane\nSedge Corner,house 2,3,96,propane\n";
        var held = await Sheets(Sheet, checkOnly: false);
        Assert.False((bool)held["kept"]!);
        Assert.Contains(held["faults"]!.AsArray(), f => (string)f!["code"]! == "NEAR_NAME" && (int)f["line"]! == 2);
        Assert.Contains(held["faults"]!.AsArray(), f => (string?)f!["field"] == "widthM" && (int)f["line"]! == 4);
        Assert.Equal(0, (int)(await host.Ask("{ coop { farms(text: \"Sedge\") { total } } }"))["data"]!["coop"]!["farms"]!["total"]!);
        Assert.True((bool)(await Sheets(Sheet, checkOnly: false, good: true))["kept"]!);
        Assert.Equal(1, (int)(await host.Ask("{ coop { farms(text: \"Sedge\") { total } } }"))["data"]!["coop"]!["farms"]!["total"]!);
    }

    private async Task<JsonNode> New(object input) => (await host.Ask(Add, new { input }))["data"]!["newHouse"]!;

    private async Task<JsonNode> Sheets(string text, bool checkOnly, bool good = false) =>
        (await host.Ask(Import, new { input = new { requestId = Guid.NewGuid().ToString(), fileName = "sheet.csv", text, name = "sheet", checkOnly, goodRowsOnly = good } }))["data"]!["importFarms"]!;
}
