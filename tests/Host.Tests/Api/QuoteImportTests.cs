using System.Text.Json.Nodes;

namespace FarmPortfolio.Host.Tests.Api;

/// <summary>Quotes of many farms from one sheet: looked at, kept as one change, undone as one.</summary>
public class QuoteImportTests(TemporaryHost host) : IClassFixture<TemporaryHost>
{
    private const string Import = "mutation($input: ImportInput!) { importQuotes(input: $input) { kept canImport rows summary faults { code field line message remedy } } }";
    private const string Head = "farm,house,retrofit,material,labour,once per visit,eligible,supplier,date,valid until,kind,note\n";

    [Fact]
    public async Task Rows_of_a_farm_a_supplier_and_a_date_are_one_quote_that_outlays_go_by()
    {
        var (farm, house) = await House("h_demo000");
        var (other, its) = await House("h_demo030");
        var sheet = Head + $"{farm.ToUpperInvariant()},  {house} ,curtain,4000,1000,200,,A builder,2027-01-15,2027-12-31,firm,no wiring\n{farm},{house},seal,300,,,no,a Builder,2027-01-15,2027-12-31,firm,\n{other},{its},curtain,5000,,,,another,2027-02-01,,budget,\n";
        var looked = await Answer(sheet, checkOnly: true);
        Assert.Empty(looked["faults"]!.AsArray());
        Assert.Equal((false, true, 3), ((bool)looked["kept"]!, (bool)looked["canImport"]!, (int)looked["rows"]!));
        Assert.DoesNotContain("2027-01-15", await Quotes("h_demo000"), StringComparison.Ordinal);

        var kept = await Answer(sheet, checkOnly: false);
        Assert.True((bool)kept["kept"]!, kept.ToJsonString());
        Assert.StartsWith("2 quotes of 5 lines for 2 farms.", (string)kept["summary"]!, StringComparison.Ordinal);
        var quote = JsonNode.Parse(await Quotes("h_demo000"))!.AsArray().Single(q => (string)q!["quotedOn"]! == "2027-01-15")!;
        Assert.Equal(["curtain 4000 material True", "curtain 1000 labour True", "curtain 200 visit True", "seal 300 material False"],
            quote["lines"]!.AsArray().Select(l => $"{l!["retrofitCode"]} {l["usd"]} {l["category"]} {(bool)l["eligible"]!}"));
        Assert.Equal(5200, (double)(await host.Ask("{ option(id: \"h_demo000~curtain-now\") { outlayUsd } }"))["data"]!["option"]!["outlayUsd"]!, 1e-9);

        var again = await Answer(sheet, checkOnly: false);
        Assert.False((bool)again["kept"]!);
        Assert.Equal(["DOUBLED", "DOUBLED", "DOUBLED"], again["faults"]!.AsArray().Select(f => (string)f!["code"]!));
        Assert.All(again["faults"]!.AsArray(), f => Assert.Contains("stands with the farm already", (string)f!["message"]!, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_name_that_is_nearly_anothers_is_offered_and_the_sound_rows_can_be_kept_alone()
    {
        var (farm, house) = await House("h_demo010");
        var sheet = Head + $"{farm}e,{house},curtain,4000,,,,x,2027-03-01,,firm,\nNowhere,{house},curtain,4000,,,,x,2027-03-01,,firm,\n{farm},{house}99,curtain,4000,,,,x,2027-03-01,,firm,\n{farm},{house},curtain,4000,,,,x,2027-03-01,,firm,\n{farm},{house},curtain,1,,,,x,2027-03-01,,firm,\n";
        var held = await Answer(sheet, checkOnly: false);
        Assert.False((bool)held["kept"]!);
        Assert.Equal([("NEAR_NAME", 2), ("NOT_FOUND", 3), ("NOT_FOUND", 4), ("DOUBLED", 6)], held["faults"]!.AsArray().Select(f => ((string)f!["code"]!, (int)f["line"]!)));
        Assert.Contains($"\"{farm}\"", (string)held["faults"]![0]!["remedy"]!, StringComparison.Ordinal);
        Assert.Contains(house, (string)held["faults"]![2]!["remedy"]!, StringComparison.Ordinal);
        Assert.Contains("line 5", (string)held["faults"]![3]!["message"]!, StringComparison.Ordinal);
        Assert.DoesNotContain("2027-03-01", await Quotes("h_demo010"), StringComparison.Ordinal);
        Assert.True((bool)(await Answer(sheet, checkOnly: false, goodRowsOnly: true))["kept"]!);
        Assert.Contains("2027-03-01", await Quotes("h_demo010"), StringComparison.Ordinal);
    }

    private async Task<(string Farm, string House)> House(string id)
    {
        var house = (await host.Ask($"{{ house(id: \"{id}\") {{ name farm {{ name }} }} }}"))["data"]!["house"]!;
        return ((string)house["farm"]!["name"]!, (string)house["name"]!);
    }

    private async Task<string> Quotes(string houseId) => (await host.Ask($"{{ house(id: \"{houseId}\") {{ farm {{ quotes {{ quotedOn supplier lines {{ retrofitCode usd category eligible }} }} }} }} }}"))["data"]!["house"]!["farm"]!["quotes"]!.ToJsonString();

    private async Task<JsonNode> Answer(string text, bool checkOnly, bool goodRowsOnly = false) =>
        (await host.Ask(Import, new { input = new { requestId = Guid.NewGuid().ToString(), fileName = "quotes.csv", text, name = string.Empty, checkOnly, goodRowsOnly } }))["data"]!["importQuotes"]!;
}
