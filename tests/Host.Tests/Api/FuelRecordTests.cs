using System.Text.Json.Nodes;

namespace FarmPortfolio.Host.Tests.Api;

/// <summary>Tickets and bills over HTTP: looked at, brought in, held in sight, and what they say of the houses.</summary>
public class FuelRecordTests(TemporaryHost host) : IClassFixture<TemporaryHost>
{
    private const string Bills = "bills { revision grade verdict believed sdPct multiplier { value low high } baseIsFitted baseKwhPerDay { value } check { seasonName reckonedKwh billedKwh } checks raise intervals { fromOn toOn billedKwh fittedKwh } entries { no use why quantity confirmed faults { code message } } }";
    private const string Import = "mutation($input: ImportFuelRecordInput!) { importFuelRecord(input: $input) { changeId rows words faults { code line column message remedy } preview { grade entries { use faults { code } } } } }";

    [Fact]
    public async Task The_demo_holds_every_grade_a_dwelling_and_bills_that_disagree()
    {
        var grades = (await host.Ask("{ coop { gradeCounts { a b c } } }", new { }))["data"]!["coop"]!["gradeCounts"]!;
        Assert.True((int)grades["a"]! > 0 && (int)grades["b"]! > 0 && (int)grades["c"]! > 0, grades.ToJsonString());
        var dwelling = await Of("sg_demo00");
        Assert.InRange((double)dwelling["baseKwhPerDay"]!["value"]!, 40, 110);
        Assert.True((bool)dwelling["baseIsFitted"]!);
        var open = await Of("sg_demo05");
        Assert.Contains("more than described", (string)open["verdict"]!, StringComparison.Ordinal);
        Assert.InRange((double)open["multiplier"]!["value"]!, 1.25, 1.5);
        Assert.NotEmpty(open["checks"]!.AsArray());
        Assert.Contains((await Of("sg_demo12"))["entries"]!.AsArray(), e => (string)e!["use"]! == "HELD");
        Assert.Equal("B", (string)(await Of("sg_demo02"))["grade"]!);
        Assert.Equal("C", (string)(await Of("sg_demo04"))["grade"]!);
    }

    [Fact]
    public async Task A_past_season_is_settled_by_month_and_its_lines_add_up_to_the_cent()
    {
        const string Ask = "query($index: [Float]) { supplyGroup(id: \"sg_demo08\") { pastSeason(season: 2022, indexUsdPerUnit: $index) { name unit paidUsd months { month units indexUsdPerUnit } ways { key totalUsd monthsUsd seasonEndUsd lines { month quantity usdPerUnit usd } faults { code } } } } }";
        async Task<JsonNode> Of(object variables) => (await host.Ask(Ask, variables))["data"]!["supplyGroup"]!["pastSeason"]!;
        var past = await Of(new { });
        Assert.Equal(("2022-23", "gal"), ((string)past["name"]!, (string)past["unit"]!));
        var ways = past["ways"]!.AsArray();
        Assert.Equal(3, ways.Count);
        foreach (var way in ways)
        {
            var cents = way!["lines"]!.AsArray().Sum(l => Math.Round(100 * (decimal)(double)l!["usd"]!));
            Assert.Equal(Math.Round(100 * (decimal)(double)way["totalUsd"]!), cents);
            Assert.Equal(cents, Math.Round(100 * (way["monthsUsd"]!.AsArray().Sum(m => (decimal)(double)m!) + (decimal)(double)way["seasonEndUsd"]!)));
            Assert.All(way["lines"]!.AsArray().Where(l => l!["quantity"] is not null), l =>
                Assert.Equal(Math.Round((decimal)(double)l!["quantity"]! * (decimal)(double)l["usdPerUnit"]!, 2, MidpointRounding.AwayFromZero), (decimal)(double)l["usd"]!));
        }

        // at a typed index of 1 dollar in every month the index alone comes to the gallons
        var typed = await Of(new { index = Enumerable.Repeat(1.0, 12) });
        var gallons = typed["months"]!.AsArray().Sum(m => (double)m!["units"]!);
        Assert.Equal(gallons, (double)typed["ways"]!.AsArray().First(w => (string)w!["key"]! == "own")!["totalUsd"]!, 0.06);
    }

    [Fact]
    public async Task A_sheet_is_looked_at_first_then_added_and_a_mistyped_delivery_asks()
    {
        const string Sheet = "date,quantity,unit,fill,total\n2023-10-02,300,gal,full,\n1/9/2024,\"40,000\",gal,full,\n2024-02-20,520,gal,full,1222.00\n2024-13-40,90,gal,full,\n2024-04-02,410,litres of,full,\n";
        var look = await Brought(new { supplyGroupId = "sg_demo01", requestId = "a", text = Sheet, fileName = "tickets.csv", checkOnly = true });
        Assert.Null(look["changeId"]);
        Assert.Equal(5, (int)look["rows"]!);
        Assert.Contains(look["faults"]!.AsArray(), f => (string)f!["code"]! == "BAD_DATE" && (int)f["line"]! == 5 && (int)f["column"]! == 1);
        Assert.Contains(look["faults"]!.AsArray(), f => (string)f!["code"]! == "UNKNOWN_UNIT" && (int)f["line"]! == 6 && (int)f["column"]! == 3);
        Assert.Contains("TOO_MUCH", look["preview"]!.ToJsonString(), StringComparison.Ordinal);
        var refused = await Brought(new { supplyGroupId = "sg_demo01", requestId = "b", text = Sheet, fileName = "tickets.csv", checkOnly = false });
        Assert.Null(refused["changeId"]);
        var kept = await Brought(new { supplyGroupId = "sg_demo01", requestId = "c", text = Sheet, fileName = "tickets.csv", checkOnly = false, goodRowsOnly = true });
        Assert.NotNull(kept["changeId"]);
        var bills = await Of("sg_demo01");
        Assert.Equal(3, bills["entries"]!.AsArray().Count);
        Assert.Contains(bills["entries"]!.AsArray(), e => (string)e!["use"]! == "HELD" && (double)e["quantity"]! == 40_000);
        var again = await Brought(new { supplyGroupId = "sg_demo01", requestId = "d", text = Sheet, fileName = "tickets.csv", checkOnly = false, goodRowsOnly = true });
        Assert.Null(again["changeId"]);
        Assert.Equal(3, again["faults"]!.AsArray().Count(f => (string)f!["code"]! == "ALREADY_THERE"));
    }

    [Fact]
    public async Task A_record_saved_line_by_line_is_previewed_and_a_stale_one_is_a_conflict()
    {
        const string Save = "mutation($input: SaveFuelRecordInput!) { saveFuelRecord(input: $input) { changeId conflict preview { grade verdict intervals { billedKwh } entries { use } } faults { code } } }";
        object Input(string request, bool look, int? revision, params object[] entries) => new { input = new { supplyGroupId = "sg_demo10", requestId = request, checkOnly = look, expectedRevision = revision, entries } };
        object Bill(string from, string to, double therms) => new { kind = "BILL", fromOn = from, toOn = to, quantity = therms, unit = "therm", read = "ACTUAL" };
        var look = (await host.Ask(Save, Input("x", true, null, Bill("2024-01-01", "2024-01-31", 4000), Bill("2024-01-20", "2024-02-28", 3500))))["data"]!["saveFuelRecord"]!;
        Assert.All(look["preview"]!["entries"]!.AsArray(), e => Assert.Equal("HELD", (string)e!["use"]!));
        Assert.Empty((await Of("sg_demo10"))["entries"]!.AsArray());
        var saved = (await host.Ask(Save, Input("y", false, null, Bill("2024-01-01", "2024-01-31", 4000))))["data"]!["saveFuelRecord"]!;
        Assert.NotNull(saved["changeId"]);
        Assert.Single((await Of("sg_demo10"))["intervals"]!.AsArray());
        await host.Ask(Save, Input("z", false, 1, Bill("2024-01-01", "2024-01-31", 4100)));
        var stale = (await host.Ask(Save, Input("zz", false, 1, Bill("2024-01-01", "2024-01-31", 4200))))["data"]!["saveFuelRecord"]!;
        Assert.True((bool)stale["conflict"]!);
    }

    private async Task<JsonNode> Brought(object input) => (await host.Ask(Import, new { input }))["data"]!["importFuelRecord"]!;

    private async Task<JsonNode> Of(string id) => (await host.Ask($"query($id: ID!) {{ supplyGroup(id: $id) {{ {Bills} }} }}", new { id }))["data"]!["supplyGroup"]!["bills"]!;
}
