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
        Assert.Equal("C", (string)(await Of("sg_demo09"))["grade"]!);
    }

    [Fact]
    public async Task A_past_season_is_settled_by_month_and_its_lines_add_up_to_the_cent()
    {
        const string Ask = "query($index: [Float]) { supplyGroup(id: \"sg_demo00\") { pastSeason(season: 2022, indexUsdPerUnit: $index) { name unit paidUsd months { month units indexUsdPerUnit } ways { key totalUsd monthsUsd seasonEndUsd lines { month quantity usdPerUnit usd } faults { code } } } } }";
        async Task<JsonNode> Of(object variables) => (await host.Ask(Ask, variables))["data"]!["supplyGroup"]!["pastSeason"]!;
        var past = await Of(new { });
        Assert.Equal(("2022-23", "gal"), ((string)past["name"]!, (string)past["unit"]!));
        var ways = past["ways"]!.AsArray();
        Assert.Equal(4, ways.Count);
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
    public async Task A_line_dated_in_the_future_is_refused_and_leaves_the_record_alone()
    {
        const string Save = "mutation($input: SaveFuelRecordInput!) { saveFuelRecord(input: $input) { changeId faults { code field line message } } }";
        async Task<JsonNode> Kept(DateTime on) => (await host.Ask(Save, new { input = new { supplyGroupId = "sg_demo09", requestId = $"future-{on:yyyyMMdd}", expectedRevision = (await Of("sg_demo09"))["revision"]?.GetValue<int>(), checkOnly = false, entries = new[] { new { kind = "DELIVERY", fromOn = on.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture), toOn = on.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture), quantity = 300, unit = "MMBtu" } } } }))["data"]!["saveFuelRecord"]!;
        var refused = await Kept(DateTime.UtcNow.AddDays(3));
        Assert.Null(refused["changeId"]);
        Assert.Equal(("IN_FUTURE", "toOn", 1), ((string)refused["faults"]![0]!["code"]!, (string)refused["faults"]![0]!["field"]!, (int)refused["faults"]![0]!["line"]!));
        Assert.NotNull((await Kept(DateTime.UtcNow.AddDays(-3)))["changeId"]);
    }

    [Fact]
    public async Task A_dealers_sheet_gives_gallons_by_degree_days_over_K_known_to_15_per_cent()
    {
        const string Sheet = "date,from,gallons,HDD since last fill,K-factor,base\n2014-11-01,2014-10-01,120,,,\n2014-12-15,,,900,4.5,65\n2015-01-20,,,,4.5,\n2015-02-20,,,1000,0.01,65\n2015-03-20,,,1000,4.5,18\n2030-01-20,2029-12-20,,,4.5,65\n";
        var look = await Brought(new { supplyGroupId = "sg_demo04", requestId = "k1", text = Sheet, fileName = "dealer.csv", checkOnly = true });
        Assert.Equal(6, (int)look["rows"]!);
        (string Code, int Line)[] faults = [.. look["faults"]!.AsArray().Select(f => ((string)f!["code"]!, (int)f["line"]!))];
        Assert.Equal([("OUT_OF_RANGE", 5), ("OUT_OF_RANGE", 6), ("NO_WEATHER", 7)], faults);
        Assert.Contains("65 F is taken", (string)look["words"]!, StringComparison.Ordinal);
        var kept = await Brought(new { supplyGroupId = "sg_demo04", requestId = "k2", text = Sheet, fileName = "dealer.csv", checkOnly = false, goodRowsOnly = true });
        Assert.NotNull(kept["changeId"]);
        var entries = (await host.Ask("{ supplyGroup(id: \"sg_demo04\") { bills { grade entries { kind fromOn toOn quantity unit note spreadShare use faults { code } } intervals { fromOn sdKwh billedKwh metered } } } }", new { }))["data"]!["supplyGroup"]!["bills"]!;
        var reckoned = entries["entries"]!.AsArray().Where(e => e!["spreadShare"] is not null).ToList();
        Assert.Equal(2, reckoned.Count);
        Assert.Equal(200, (double)reckoned[0]!["quantity"]!, 1e-9);
        Assert.Equal("2014-11-02", (string)reckoned[0]!["fromOn"]!);
        Assert.Equal(0.15, (double)reckoned[0]!["spreadShare"]!);
        Assert.InRange((double)reckoned[1]!["quantity"]! * 4.5, 700, 1900);
        Assert.Contains("of the station", (string)reckoned[1]!["note"]!, StringComparison.Ordinal);
        Assert.All(reckoned, e => Assert.Contains(e!["faults"]!.AsArray(), f => (string)f!["code"]! == "RECKONED"));
        Assert.All(entries["intervals"]!.AsArray(), i => Assert.False((bool)i!["metered"]!));
        Assert.Equal(0.15 * (double)entries["intervals"]![0]!["billedKwh"]!, (double)entries["intervals"]![0]!["sdKwh"]!, 1e-6);
        Assert.Equal("B", (string)entries["grade"]!);
    }

    [Fact]
    public async Task Degree_days_beside_gallons_are_held_against_the_station_and_move_nothing()
    {
        const string Sheet = "date,from,gallons,unit,degree days,base\n2015-01-31,2015-01-01,300,gal,90,65\n";
        var look = await Brought(new { supplyGroupId = "sg_demo01", requestId = "dd", text = Sheet, fileName = "dealer.csv", checkOnly = true });
        var fault = Assert.Single(look["faults"]!.AsArray())!;
        Assert.Equal("DEGREE_DAYS_DIFFER", (string)fault["code"]!);
        Assert.Contains("not used", (string)look["words"]!, StringComparison.Ordinal);
        Assert.NotNull(look["preview"]);
    }

    [Fact]
    public async Task A_therm_factor_of_the_bill_counts_and_one_that_cannot_be_is_held()
    {
        const string Save = "mutation($input: SaveFuelRecordInput!) { saveFuelRecord(input: $input) { preview { intervals { billedKwh } entries { use why faults { code } } } faults { code } } }";
        object Input(double? factor) => new { input = new { supplyGroupId = "sg_demo10", requestId = $"tf{factor}", checkOnly = true, entries = new[] { new { kind = "BILL", fromOn = "2015-01-01", toOn = "2015-01-31", quantity = 1000, unit = "ccf", thermsPerCcf = factor, read = "ACTUAL" } } } };
        async Task<JsonNode> Preview(double? factor) => (await host.Ask(Save, Input(factor)))["data"]!["saveFuelRecord"]!["preview"]!;
        var (usual, own) = ((double)(await Preview(1.0))["intervals"]![0]!["billedKwh"]!, (double)(await Preview(1.08))["intervals"]![0]!["billedKwh"]!);
        Assert.Equal(1.08, own / usual, 1e-9);
        var held = (await Preview(102.6))["entries"]![0]!;
        Assert.Equal("HELD", (string)held["use"]!);
        Assert.Equal("OUT_OF_RANGE", (string)held["faults"]![0]!["code"]!);
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
