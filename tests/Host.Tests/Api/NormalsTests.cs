using System.Text.Json.Nodes;

namespace FarmPortfolio.Host.Tests.Api;

/// <summary>Monthly normals through the API: looked at, kept, marked wherever the station is named, and reckoned with in a study that says so.</summary>
public class NormalsTests(TemporaryHost host) : IClassFixture<TemporaryHost>
{
    private const string Import = "mutation($input: ImportInput!) { importNormals(input: $input) { kept canImport rows summary faults { code field line column message remedy } } }";
    private const string Sheet = "month,mean temperature (F)\nJan,19.4\nFeb,22.1\nMar,31.5\nApr,44.8\nMay,56.9\nJun,65.9\nJul,70.9\nAug,69.2\nSep,61.4\nOct,49.1\nNov,38.2\nDec,26.4\n";

    [Fact]
    public async Task A_wrong_file_keeps_nothing_and_says_line_and_column()
    {
        var wrong = await Kept("wrong", Sheet.Replace("Jul,70.9", "Jul,21.6", StringComparison.Ordinal), "wrong one", 44);
        Assert.False((bool)wrong["kept"]!);
        var fault = Assert.Single(wrong["faults"]!.AsArray())!;
        Assert.Equal(("MIXED_UNIT", 8, 2), ((string)fault["code"]!, (int)fault["line"]!, (int)fault["column"]!));
        var nowhere = await Kept("nowhere", Sheet, "nowhere", null);
        Assert.False((bool)nowhere["kept"]!);
        Assert.Equal("latitudeDeg", (string)Assert.Single(nowhere["faults"]!.AsArray())!["field"]!);
        Assert.DoesNotContain((await Coop("weatherStations { name }"))["weatherStations"]!.AsArray(), s => (string)s!["name"]! is "wrong one" or "nowhere");
    }

    [Fact]
    public async Task A_study_of_a_house_on_normals_runs_and_is_marked_everywhere()
    {
        var before = await host.StudyDone();
        var looked = (await host.Ask(Import, new { input = Input("look", Sheet, "Upper valley", 44.2, true) }, "demo"))["data"]!["importNormals"]!;
        Assert.True((bool)looked["canImport"]! && !(bool)looked["kept"]!, looked.ToJsonString());
        var kept = await Kept("keep", Sheet, "Upper valley", 44.2);
        Assert.True((bool)kept["kept"]!, kept.ToJsonString());
        Assert.Contains("Fahrenheit, by the head", (string)kept["summary"]!, StringComparison.Ordinal);

        // a station that no farm takes puts no study out of date
        Assert.Empty((await host.StudyDone())["changedSince"]!.AsArray());
        var station = (await Coop("weatherStations { id name markedName normalsOnly normalsWords severity { season } outlook { season } coverage { season } normals { monthlyMeanC spanTold degreeDaysK departuresFrom made { season degreeDaysK } } }"))["weatherStations"]!
            .AsArray().Single(s => (string)s!["name"]! == "Upper valley")!;
        Assert.True((bool)station["normalsOnly"]!);
        Assert.Equal("Upper valley (monthly normals only)", (string)station["markedName"]!);
        Assert.Equal(4, station["normalsWords"]!.AsArray().Count);
        Assert.Empty(station["severity"]!.AsArray());
        Assert.Empty(station["outlook"]!.AsArray());
        var normals = station["normals"]!;
        Assert.True((int)normals["departuresFrom"]! >= 1);
        var made = normals["made"]!.AsArray().Select(m => (double)m!["degreeDaysK"]!).ToList();
        Assert.True(made.Count >= 10 && made.Max() > 1.1 * made.Min(), normals.ToJsonString());
        Assert.InRange(made.Average() / (double)normals["degreeDaysK"]!, 0.97, 1.05);

        const string House = "id name dataGrade design99C heat { seasonName fromNormals demandKwh } backCheck { verdict }";
        var farm = (await host.Ask($"{{ farm(id: \"f_demo00\") {{ revision name place houses {{ {House} }} }} }}", coop: "demo"))["data"]!["farm"]!;
        Assert.All(farm["houses"]!.AsArray(), h => Assert.False((bool)h!["heat"]!["fromNormals"]!));
        var saved = (await host.Ask("mutation($input: SaveFarmInput!) { saveFarm(input: $input) { changeId faults { message } } }",
            new { input = new { id = "f_demo00", expectedRevision = (int)farm["revision"]!, requestId = "move", name = (string)farm["name"]!, stationId = (string)station["id"]! } }, "demo"))["data"]!["saveFarm"]!;
        Assert.NotNull(saved["changeId"]);

        var moved = (await host.Ask($"{{ farm(id: \"f_demo00\") {{ stationName normalsWords houses {{ {House} }} }} }}", coop: "demo"))["data"]!["farm"]!;
        Assert.EndsWith("(monthly normals only)", (string)moved["stationName"]!, StringComparison.Ordinal);
        Assert.NotEmpty(moved["normalsWords"]!.AsArray());
        Assert.All(moved["houses"]!.AsArray(), h =>
        {
            Assert.True((bool)h!["heat"]!["fromNormals"]! && (double)h["heat"]!["demandKwh"]! > 0);
            Assert.Contains("made from normals", (string)h["heat"]!["seasonName"]!, StringComparison.Ordinal);
            Assert.Null(h["design99C"]);
            Assert.NotEqual("A", (string)h["dataGrade"]!);
            Assert.True(h["backCheck"] is not { } check || ((string)check["verdict"]!).Contains("monthly normals only", StringComparison.Ordinal), h.ToJsonString());
        });
        Assert.Contains(moved["houses"]!.AsArray(), h => h!["backCheck"] is not null);
        var gaps = (await Coop("dataGaps(first: 200) { where what }"))["dataGaps"]!.AsArray();
        Assert.Contains(gaps, g => (string)g!["where"]! == "Upper valley" && ((string)g["what"]!).StartsWith("monthly normals only", StringComparison.Ordinal));

        Assert.NotEmpty((await host.StudyDone())["changedSince"]!.AsArray());
        await host.Ask("mutation { startStudy { study { id } } }", coop: "demo");
        var study = await host.StudyDone();
        Assert.NotEqual((int)before["number"]!, (int)study["number"]!);
        var result = (await Coop("newestStudy { normalsOnly leftOut { message } futuresSha256 options(farmId: \"f_demo00\") { total } }"))["newestStudy"]!;
        Assert.Contains("monthly normals of Upper valley", (string)Assert.Single(result["normalsOnly"]!.AsArray())!, StringComparison.Ordinal);
        Assert.True((int)result["options"]!["total"]! > 0);
        Assert.DoesNotContain(result["leftOut"]!.AsArray(), l => ((string)l!["message"]!).Contains("winter", StringComparison.Ordinal));
    }

    private static object Input(string request, string text, string name, double? latitude, bool checkOnly) =>
        new { requestId = request, fileName = "normals.csv", text, name, latitudeDeg = latitude, elevationM = 210, checkOnly };

    private async Task<JsonNode> Kept(string request, string text, string name, double? latitude) =>
        (await host.Ask(Import, new { input = Input(request, text, name, latitude, false) }, "demo"))["data"]!["importNormals"]!;

    private async Task<JsonNode> Coop(string fields) => (await host.Ask($"{{ coop {{ {fields} }} }}", coop: "demo"))["data"]!["coop"]!;
}
