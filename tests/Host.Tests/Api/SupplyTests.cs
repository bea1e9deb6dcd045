using System.Text.Json.Nodes;

namespace FarmPortfolio.Host.Tests.Api;

public class SupplyTests(TemporaryHost host) : IClassFixture<TemporaryHost>
{
    private const string Parts = "mutation($input: SaveHouseInput!) { saveHouse(input: $input) { changeId faults { code field message remedy } } }";

    [Fact]
    public async Task A_contract_is_fixed_to_a_date_and_one_that_ends_before_it_starts_is_refused()
    {
        const string Ask = "{ supplyGroup(id: \"sg_demo00\") { contract { id revision kind priceUsdPerUnit endsOn } } }";
        var before = (await host.Ask(Ask))["data"]!["supplyGroup"]!["contract"]!;
        object Input(string ends, double price) => new { id = (string)before["id"]!, expectedRevision = (int)before["revision"]!, requestId = Guid.NewGuid().ToString(), supplyGroupId = "sg_demo00", kind = "FIXED", unit = "gal", priceUsdPerUnit = price, startsOn = "2026-07-01", endsOn = ends };
        Assert.Equal("endsOn", Field(await Save("saveContract", "SaveContractInput", Input("2026-01-01", 2.3))));
        Assert.Equal("priceUsdPerUnit", Field(await Save("saveContract", "SaveContractInput", Input("2028-06-30", -2.3))));
        Assert.NotNull((await Save("saveContract", "SaveContractInput", Input("2028-06-30", 2.3)))["changeId"]);
        var after = (await host.Ask(Ask))["data"]!["supplyGroup"]!["contract"]!;
        Assert.Equal(("FIXED", 2.3, "2028-06-30"), ((string)after["kind"]!, (double)after["priceUsdPerUnit"]!, (string)after["endsOn"]!));
    }

    [Fact]
    public async Task A_cap_below_its_floor_and_shares_over_the_whole_are_refused_with_what_would_be_right()
    {
        const string Save = "mutation($input: SaveContractInput!) { saveContract(input: $input) { changeId faults { code field message remedy } } }";
        async Task<JsonNode> Refused(object input)
        {
            var answer = (await host.Ask(Save, new { input }))["data"]!["saveContract"]!;
            Assert.Null(answer["changeId"]);
            return Assert.Single(answer["faults"]!.AsArray())!;
        }

        var collar = await Refused(new { requestId = "collar", supplyGroupId = "sg_demo00", kind = "COLLARED", unit = "gal", standing = "OFFERED", capUsdPerUnit = 2.0, floorUsdPerUnit = 2.4 });
        Assert.Equal(("capUsdPerUnit", "The cap of 2 is below the floor of 2.4.", "Give a cap above the floor."), ((string)collar["field"]!, (string)collar["message"]!, (string)collar["remedy"]!));
        var shares = await Refused(new { requestId = "shares", supplyGroupId = "sg_demo00", kind = "FIXED", unit = "gal", priceUsdPerUnit = 2.2, volumeShare = 0.3, startsOn = "2026-08-01" });
        Assert.Equal(("SHARES", "volumeShare"), ((string)shares["code"]!, (string)shares["field"]!));
        Assert.Contains("add up to 130 % of the volume", (string)shares["message"]!, StringComparison.Ordinal);
        Assert.StartsWith("Lower them to 100 % or less together", (string)shares["remedy"]!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Tickets_tell_the_farms_own_price_and_a_contract_can_follow_a_series_of_its_fuel_alone()
    {
        // the demo's dealer asks 1.02 times the delivered index, a hundredth up and down
        var own = (await host.Ask("{ supplyGroup(id: \"sg_demo08\") { ownPrice { tickets winters adderUsdPerUnit indexShare scatterUsdPerUnit sameMonth { sdUsdPerUnit } verdict faults { code } } seriesChoices { id } } }"))["data"]!["supplyGroup"]!;
        var price = own["ownPrice"]!;
        Assert.True((int)price["tickets"]! >= 6 && (int)price["winters"]! == 2, price.ToJsonString());
        Assert.Empty(price["faults"]!.AsArray());
        var (a, b) = ((double)price["adderUsdPerUnit"]!, (double)price["indexShare"]!);
        Assert.InRange(a + 2.3 * b, 1.02 * 2.3 - 0.05, 1.02 * 2.3 + 0.05);
        Assert.Contains(own["seriesChoices"]!.AsArray(), c => (string)c!["id"]! == "ps_propane-mont-belvieu");
        // what the tickets leave over goes into the contract with the line, and is no part of a fixed price
        var scatter = (double)price["scatterUsdPerUnit"]!;
        Assert.Equal((double)price["sameMonth"]!["sdUsdPerUnit"]!, scatter);
        object Input(string series) => new { requestId = Guid.NewGuid().ToString(), supplyGroupId = "sg_demo08", kind = "INDEXED", unit = "gal", standing = "OFFERED", name = "own line", adderUsdPerUnit = a, indexShare = b, scatterUsdPerUnit = scatter, priceSeriesId = series };
        Assert.Equal("priceSeriesId", Field(await Save("saveContract", "SaveContractInput", Input("ps_gas-henry-hub"))));
        Assert.NotNull((await Save("saveContract", "SaveContractInput", Input("ps_propane-mont-belvieu")))["changeId"]);
        var kept = (await host.Ask("{ supplyGroup(id: \"sg_demo08\") { contracts { name scatterUsdPerUnit } } }"))["data"]!["supplyGroup"]!["contracts"]!.AsArray();
        Assert.Equal(scatter, (double)kept.Single(c => (string?)c!["name"] == "own line")!["scatterUsdPerUnit"]!);
        Assert.Equal("scatterUsdPerUnit", Field(await Save("saveContract", "SaveContractInput", new { requestId = Guid.NewGuid().ToString(), supplyGroupId = "sg_demo08", kind = "INDEXED", unit = "gal", standing = "OFFERED", scatterUsdPerUnit = -0.1 })));
    }

    [Fact]
    public async Task A_switch_of_fuel_moves_to_a_tank_of_the_farm_with_that_fuel_or_to_the_index()
    {
        const string Ask = "{ house(id: \"h_demo060\") { optionSetRevision options { key movesTo outlayUsd } } }";
        var revision = (int)(await host.Ask(Ask))["data"]!["house"]!["optionSetRevision"]!;
        Task<JsonNode> Choose(int expected, string? group) => Save("saveOptionSet", "SaveOptionSetInput",
            new { houseId = "h_demo060", expectedRevision = expected, requestId = Guid.NewGuid().ToString(), options = new object[] { new { parts = new[] { "topropane" }, switchSupplyGroupId = group }, new { parts = new[] { "togas" } } } });
        var oil = await Choose(revision, "sg_demo06");
        Assert.Contains(oil["faults"]!.AsArray(), f => (string)f!["code"]! == "SWITCH_SUPPLY" && (string)f["field"]! == "switchSupplyGroupId");
        Assert.NotNull((await Save("saveSupplyGroup", "SaveSupplyGroupInput", new { requestId = "propane-tank", farmId = "f_demo06", name = "new tank", fuel = "PROPANE", kind = "TANK", tankSizeL = 3785.0 }))["changeId"]);
        var tank = (string)(await host.Ask("{ farm(id: \"f_demo06\") { supplyGroups { id name } } }"))["data"]!["farm"]!["supplyGroups"]!.AsArray().First(g => (string)g!["name"]! == "new tank")!["id"]!;
        Assert.NotNull((await Choose(revision, tank))["changeId"]);
        var options = (await host.Ask(Ask))["data"]!["house"]!["options"]!.AsArray();
        Assert.Equal("new tank", (string)options.First(o => (string)o!["key"]! == "topropane-now")!["movesTo"]!);
        Assert.Equal("the monthly index", (string)options.First(o => (string)o!["key"]! == "togas-now")!["movesTo"]!);
        Assert.True((double)options.First(o => (string)o!["key"]! == "togas-now")!["outlayUsd"]! > 1500);
    }

    [Fact]
    public async Task A_tank_cannot_change_its_fuel_under_heaters_that_burn_the_old_one()
    {
        // Juniper Lot keeps no record; its contract is taken away first
        var tank = (await host.Ask("{ supplyGroup(id: \"sg_demo09\") { revision name contracts { id revision } } }"))["data"]!["supplyGroup"]!;
        foreach (var contract in tank["contracts"]!.AsArray())
        {
            await host.Ask("mutation($id: ID!, $revision: Int!, $request: ID!) { deleteItem(id: $id, expectedRevision: $revision, requestId: $request) { changeId } }", new { id = (string)contract!["id"]!, revision = (int)contract["revision"]!, request = Guid.NewGuid().ToString() });
        }

        var saved = await Save("saveSupplyGroup", "SaveSupplyGroupInput", new { id = "sg_demo09", expectedRevision = (int)tank["revision"]!, requestId = "oil", farmId = "f_demo09", name = "tank bank", fuel = "FUEL_OIL", kind = "TANK" });
        Assert.Contains(saved["faults"]!.AsArray(), f => (string)f!["code"]! == "FUEL_MISMATCH" && (string)f["field"]! == "fuel");
    }

    [Fact]
    public async Task A_tank_with_a_record_keeps_its_fuel_and_a_new_one_is_added()
    {
        var tank = (await host.Ask("{ supplyGroup(id: \"sg_demo02\") { revision farm { id } } }"))["data"]!["supplyGroup"]!;
        var other = await Save("saveSupplyGroup", "SaveSupplyGroupInput", new { id = "sg_demo02", expectedRevision = (int)tank["revision"]!, requestId = "other-fuel", farmId = "f_demo02", name = "tank bank", fuel = "PROPANE", kind = "TANK" });
        Assert.Equal("fuel", Field(other));
        var made = await Save("saveSupplyGroup", "SaveSupplyGroupInput", new { requestId = "second-tank", farmId = "f_demo02", name = "tank B", fuel = "PROPANE", kind = "TANK", tankSizeL = 3785.0, otherUses = new[] { "dwelling", " " } });
        Assert.NotNull(made["changeId"]);
        var groups = (await host.Ask("{ farm(id: \"f_demo02\") { supplyGroups { name otherUses } } }"))["data"]!["farm"]!["supplyGroups"]!.ToJsonString();
        Assert.Contains("\"tank B\",\"otherUses\":[\"dwelling\"]", groups, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_firm_quote_is_what_the_outlay_is_reckoned_with()
    {
        const string Ask = "{ house(id: \"h_demo100\") { options { key outlayUsd outlayBasis } } }";
        var saved = await Save("saveQuote", "SaveQuoteInput", new
        {
            requestId = "quote",
            farmId = "f_demo10",
            supplier = "a supplier",
            quotedOn = "2026-10-01",
            validUntilOn = "2027-10-01",
            firmness = "FIRM",
            lines = new[] { new { houseId = "h_demo100", retrofitCode = "curtain", usd = 12_345.0, category = "material" }, new { houseId = "h_demo100", retrofitCode = "curtain", usd = 1_000.0, category = "electrical" } },
        });
        Assert.NotNull(saved["changeId"]);
        var curtain = (await host.Ask(Ask))["data"]!["house"]!["options"]!.AsArray().First(o => (string)o!["key"]! == "curtain-now")!;
        Assert.Equal(13_345.0, (double)curtain["outlayUsd"]!, 1e-6);
        Assert.Contains("firm quote", (string)curtain["outlayBasis"]!, StringComparison.Ordinal);
        var wrong = await Save("saveQuote", "SaveQuoteInput", new { requestId = "quote-2", farmId = "f_demo10", quotedOn = "2026-10-01", firmness = "FIRM", lines = new[] { new { houseId = "h_demo000", retrofitCode = "curtain", usd = 5.0, category = "material" } } });
        Assert.Equal("NOT_FOUND", (string)wrong["faults"]![0]!["code"]!);
    }

    [Fact]
    public async Task Options_are_chosen_their_own_figures_stay_and_what_excludes_another_is_named()
    {
        const string Ask = "{ house(id: \"h_demo110\") { optionSetRevision retrofitChoices { code fits whyNot } options { key } } }";
        var house = (await host.Ask(Ask))["data"]!["house"]!;
        var revision = (int)house["optionSetRevision"]!;
        Assert.Contains(house["retrofitChoices"]!.AsArray(), c => !(bool)c!["fits"]! && ((string)c["whyNot"]!).Length > 10);
        object Input(int expected, params string[][] parts) => new { houseId = "h_demo110", expectedRevision = expected, requestId = Guid.NewGuid().ToString(), options = parts.Select(p => new { parts = p }) };
        var refused = await Save("saveOptionSet", "SaveOptionSetInput", Input(revision, ["condensing"]));
        Assert.Equal("NEEDS", (string)refused["faults"]![0]!["code"]!);
        Assert.Equal("DOUBLED", (string)(await Save("saveOptionSet", "SaveOptionSetInput", Input(revision, ["seal"], ["seal"])))["faults"]![0]!["code"]!);
        Assert.NotNull((await Save("saveOptionSet", "SaveOptionSetInput", Input(revision, ["seal"], ["foam", "kneewall"])))["changeId"]);
        var keys = (await host.Ask(Ask))["data"]!["house"]!["options"]!.AsArray().Select(o => (string)o!["key"]!);
        Assert.Equal(["none", "seal-now", "foam-kneewall-now"], keys);
    }

    [Fact]
    public async Task Own_periods_heaters_and_supplies_are_saved_and_shares_must_add_up()
    {
        var house = (await host.Ask("{ house(id: \"h_demo011\") { revision name widthM lengthM } }"))["data"]!["house"]!;
        object Input(object parts) => new
        {
            input = new
            {
                id = "h_demo011",
                expectedRevision = (int)house["revision"]!,
                requestId = Guid.NewGuid().ToString(),
                house = new { name = (string)house["name"]!, widthM = (double)house["widthM"]!, lengthM = (double)house["lengthM"]!, coveringCode = "doublefilm", heatingPlanCode = "spring", parts },
            },
        };
        var shares = (await host.Ask(Parts, Input(new { supplies = new[] { new { supplyGroupId = "sg_demo01", heaterNo = 0, share = 0.5 } } })))["data"]!["saveHouse"]!;
        Assert.Equal("SHARES", (string)shares["faults"]![0]!["code"]!);
        var efficient = (await host.Ask(Parts, Input(new { heaters = new[] { new { heaterCode = "power", fuel = "PROPANE", seasonalEfficiency = 1.2 } } })))["data"]!["saveHouse"]!;
        Assert.Contains("a burner delivers less heat than it burns", (string)efficient["faults"]![0]!["message"]!, StringComparison.Ordinal);
        var warm = (await host.Ask(Parts, Input(new { heatingPeriods = new[] { new { fromMonth = 7, fromDay = 5, toMonth = 8, toDay = 5, nightC = 1.0, dayC = 1.0 } } })))["data"]!["saveHouse"]!;
        Assert.Equal("NO_HEAT", (string)warm["faults"]![0]!["code"]!);
        Assert.Equal("heatingPeriods", (string)warm["faults"]![0]!["field"]!);
        var saved = (await host.Ask(Parts, Input(new
        {
            heatingPeriods = new[] { new { fromMonth = 3, fromDay = 1, toMonth = 4, toDay = 30, nightC = 12.0, dayC = 18.0 }, new { fromMonth = 11, fromDay = 1, toMonth = 12, toDay = 15, nightC = 10.0, dayC = 15.0 } },
            surfaces = new[] { new { part = "ROOF", coveringCode = "singlefilm", installedYear = 2025 }, new { part = "END_WALLS", coveringCode = "twinwall", installedYear = 2020 } },
            worth = new { cropUsdPerM2 = 80.0 },
        })))["data"]!["saveHouse"]!;
        Assert.NotNull(saved["changeId"]);
        var after = (await host.Ask("{ house(id: \"h_demo011\") { ownPeriods { fromMonth nightC } surfaces { part coveringCode installedYear } cropUsdPerM2 heat { demandKwhByMonth } } }"))["data"]!["house"]!;
        Assert.Equal(2, after["ownPeriods"]!.AsArray().Count);
        Assert.Contains("\"END_WALLS\",\"coveringCode\":\"twinwall\",\"installedYear\":2020", after["surfaces"]!.ToJsonString(), StringComparison.Ordinal);
        var months = after["heat"]!["demandKwhByMonth"]!.AsArray().Select(m => (double)m!).ToArray();
        Assert.True(months[4] > 0 && months[8] > 0 && months[6] == 0, string.Join(", ", months));
    }

    [Fact]
    public async Task What_a_form_does_not_tell_of_plan_and_covering_stays_and_another_plan_takes_own_periods_out()
    {
        var made = (await host.Ask("mutation($input: NewHouseInput!) { newHouse(input: $input) { houseId } }", new { input = new { requestId = "own-dates", farmId = "f_demo00", name = "own dates", shape = "HOOP", widthM = 9.144, lengthM = 29.26, heatedFrom = "20 Mar", heatedTo = "31 May", nightC = 12.0, fuel = "PROPANE" } }))["data"]!["newHouse"]!;
        var id = (string)made["houseId"]!;
        async Task<JsonNode> House() => (await host.Ask("query($id: ID!) { house(id: $id) { revision heatingPlanCode coveringCode surfaces { part } ownPeriods { fromMonth fromDay nightC } fromDefaults { title } heat { demandKwh } } }", new { id }))["data"]!["house"]!;
        async Task Longer(double lengthM, string? plan) => Assert.NotNull((await host.Ask(Parts, new { input = new { id, expectedRevision = (int)(await House())["revision"]!, requestId = Guid.NewGuid().ToString(), house = new { name = "own dates", widthM = 9.144, lengthM, heatingPlanCode = plan, parts = new { } } } }))["data"]!["saveHouse"]!["changeId"]);
        var before = await House();
        await Longer(36.576, null);
        var after = await House();
        Assert.Equal(before["ownPeriods"]!.ToJsonString(), after["ownPeriods"]!.ToJsonString());
        Assert.Equal(3, (int)after["ownPeriods"]![0]!["fromMonth"]!);
        Assert.Empty(after["surfaces"]!.AsArray());
        Assert.Contains(after["fromDefaults"]!.AsArray(), d => (string)d!["title"]! == "covering of the roof: double film, inflated");
        Assert.InRange((double)after["heat"]!["demandKwh"]! / (double)before["heat"]!["demandKwh"]!, 1.1, 1.25);
        await Longer(36.576, "winter-long");
        var planned = await House();
        Assert.Empty(planned["ownPeriods"]!.AsArray());
        Assert.Equal("winter-long", (string)planned["heatingPlanCode"]!);
    }

    [Fact]
    public async Task Many_houses_change_as_one_and_one_that_cannot_holds_all_back()
    {
        var ids = new[] { "h_demo060", "h_demo061", "h_demo062" };
        var refused = await Save("changeHouses", "ChangeHousesInput", new { requestId = "many-0", houseIds = ids, airChangesPerHour = 99.0 });
        Assert.Equal(3, refused["faults"]!.AsArray().Count);
        Assert.NotNull((await Save("changeHouses", "ChangeHousesInput", new { requestId = "many-1", houseIds = ids, coveringCode = "doublefilm-ir", filmYear = 2025 }))["changeId"]);
        foreach (var id in ids)
        {
            Assert.Equal("doublefilm-ir", (string)(await host.Ask("query($id: ID!) { house(id: $id) { coveringCode } }", new { id }))["data"]!["house"]!["coveringCode"]!);
        }
    }

    private static string Field(JsonNode payload) => (string)payload["faults"]![0]!["field"]!;

    private async Task<JsonNode> Save(string mutation, string type, object input) =>
        (await host.Ask($"mutation($input: {type}!) {{ {mutation}(input: $input) {{ changeId faults {{ code field message remedy }} }} }}", new { input }))["data"]![mutation]!;
}
