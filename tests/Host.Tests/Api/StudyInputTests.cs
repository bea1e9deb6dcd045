using System.Text.Json.Nodes;

namespace FarmPortfolio.Host.Tests.Api;

/// <summary>What of a study's inputs counts, and two studies side by side.</summary>
public class StudyInputTests(TemporaryHost host) : IClassFixture<TemporaryHost>
{
    private const string Import = "mutation($input: ImportInput!) { importPrices(input: $input) { kept faults { message } } }";
    private const string Figure = "mutation($input: CatalogueFigureInput!) { saveCatalogueFigure(input: $input) { changeId faults { field message } } }";

    [Fact]
    public async Task Only_what_a_study_reads_puts_it_out_of_date()
    {
        var study = await host.StudyDone();
        Assert.Empty(study["changedSince"]!.AsArray());

        // a price record that no fuel rolls on from
        var rows = "month,price\n" + string.Concat(Enumerable.Range(0, 36).Select(i => $"{2021 + i / 12}-{i % 12 + 1:00},{2 + 0.01 * i:0.00}\n"));
        var kept = (await host.Ask(Import, new { input = new { requestId = "p1", fileName = "own.csv", text = rows, name = "own tickets", fuel = "PROPANE", priceUnit = "gal", checkOnly = false } }))["data"]!["importPrices"]!;
        Assert.True((bool)kept["kept"]!, kept.ToJsonString());
        Assert.Empty((await host.StudyDone())["changedSince"]!.AsArray());

        // a retrofit that the demo's houses weigh
        var saved = (await host.Ask(Figure, Own("f1", 1234, "count of our own")))["data"]!["saveCatalogueFigure"]!;
        Assert.NotNull(saved["changeId"]);
        Assert.Contains("catalogue entry", (await host.StudyDone())["changedSince"]!.ToJsonString(), StringComparison.Ordinal);
        Assert.Equal(1234, (double)(await Foam())["value"]!);
        Assert.True((bool)(await Foam())["isOwn"]!);
        Assert.NotNull((await host.Ask(Figure, Own("f2", null, null)))["data"]!["saveCatalogueFigure"]!["changeId"]);
        Assert.False((bool)(await Foam())["isOwn"]!);
        Assert.Empty((await host.StudyDone())["changedSince"]!.AsArray());

        var beside = (await host.Ask("query($id: ID!) { studyComparison(left: $id, right: $id) { sameOptions inputs { itemId } options { optionId } } }", new { id = (string)study["id"]! }))["data"]!["studyComparison"]!;
        Assert.Empty(beside["inputs"]!.AsArray());
        Assert.Empty(beside["options"]!.AsArray());
        Assert.True((int)beside["sameOptions"]! > 100);
    }

    [Theory]
    [InlineData(1e9, "a quote", "value")]
    [InlineData(2000.0, " ", "reason")]
    public async Task An_own_figure_needs_a_reason_and_the_right_unit(double value, string reason, string field)
    {
        var answer = (await host.Ask(Figure, Own(Guid.NewGuid().ToString(), value, reason)))["data"]!["saveCatalogueFigure"]!;
        Assert.Null(answer["changeId"]);
        Assert.Equal(field, (string)answer["faults"]![0]!["field"]!);
    }

    [Fact]
    public async Task Every_number_of_the_catalogue_and_of_the_assumptions_has_a_plain_name_and_a_unit()
    {
        var coop = (await host.Ask("{ coop { catalogueFigures { name title unit } assumptionSets { key values { field title unit value low high source } } } }"))["data"]!["coop"]!;
        Assert.All(coop["catalogueFigures"]!.AsArray(), f => Assert.True(
            Host.Api.CatalogueTitles.Has((string)f!["name"]!) && ((string)f["unit"]!).Length > 0, f!.ToJsonString()));
        Assert.All(coop["assumptionSets"]![0]!["values"]!.AsArray(), v => Assert.InRange((double)v!["value"]!, (double)v["low"]!, (double)v["high"]!));
    }

    [Fact]
    public async Task An_assumption_out_of_range_is_refused_by_name()
    {
        var set = (await host.Ask("{ coop { scenarioSet { id revision } } }"))["data"]!["coop"]!["scenarioSet"]!;
        var input = new { setId = (string)set["id"]!, expectedRevision = (int)set["revision"]!, requestId = "a1", field = "discountRate", value = 5.0 };
        var answer = (await host.Ask("mutation($input: AssumptionInput!) { saveAssumption(input: $input) { changeId faults { field message } } }", new { input }))["data"]!["saveAssumption"]!;
        Assert.Null(answer["changeId"]);
        Assert.Equal("discountRate", (string)answer["faults"]![0]!["field"]!);
    }

    [Fact]
    public async Task What_the_data_lacks_names_houses_without_a_record_and_what_that_is_worth()
    {
        await host.StudyDone();
        var gaps = (await host.Ask("{ coop { dataGaps { kind where what worthUsd } } }"))["data"]!["coop"]!["dataGaps"]!.AsArray();
        Assert.Contains(gaps, g => (string)g!["kind"]! == "record" && (double)g["worthUsd"]! > 100);
        Assert.Contains(gaps, g => (string)g!["kind"]! == "default");
        // Kestrel Piece heats its range with gas and propane and has a record of neither
        Assert.Contains(gaps, g => (string)g!["kind"]! == "record" && ((string)g["where"]!).StartsWith("Kestrel Piece", StringComparison.Ordinal) && (double)g["worthUsd"]! > 100);
        var worths = gaps.Select(g => (double?)g!["worthUsd"] ?? -1).ToList();
        Assert.Equal(worths.OrderDescending(), worths);
    }

    [Fact]
    public async Task The_same_money_by_its_own_measure_buys_most_of_that_measure()
    {
        await host.StudyDone();
        var measures = (await host.Ask("{ fundingOrder { measures { merit savingUsd worstTenthUsd heatSavedKwh co2SavedKg fundedTotal enter { optionId } leave { optionId } places { rank funded } } } }"))["data"]!["fundingOrder"]!["measures"]!.AsArray();
        JsonNode By(string merit) => measures.Single(m => (string)m!["merit"]! == merit)!;
        Assert.Equal(4, measures.Count);
        Assert.Empty(By("NET_SAVING")["enter"]!.AsArray());
        Assert.All(measures, m => Assert.Equal((int)By("NET_SAVING")["fundedTotal"]! + m!["enter"]!.AsArray().Count - m["leave"]!.AsArray().Count, (int)m["fundedTotal"]!));
        Assert.True((double)By("BAD_YEARS")["worstTenthUsd"]! >= 0.98 * (double)By("NET_SAVING")["worstTenthUsd"]!);
        Assert.True((double)By("ENERGY")["heatSavedKwh"]! >= 0.98 * (double)By("NET_SAVING")["heatSavedKwh"]!);
        Assert.True((double)By("CO_2")["co2SavedKg"]! >= 0.98 * (double)By("NET_SAVING")["co2SavedKg"]!);
        Assert.True((double)By("NET_SAVING")["savingUsd"]! >= 0.98 * (double)By("ENERGY")["savingUsd"]!);
    }

    private static object Own(string requestId, double? value, string? reason) => new { input = new { requestId, kind = "RETROFIT", code = "foam", name = "outlayUsd", value, reason } };

    private async Task<JsonNode> Foam() =>
        (await host.Ask("{ coop { catalogueFigures { kind code name value isOwn } } }"))["data"]!["coop"]!["catalogueFigures"]!.AsArray().Single(f => (string)f!["kind"]! == "RETROFIT" && (string)f["code"]! == "foam" && (string)f["name"]! == "outlayUsd")!;
}
