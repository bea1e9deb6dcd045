using System.Globalization;
using System.Text.Json.Nodes;

namespace FarmPortfolio.Host.Tests.Api;

/// <summary>Price cases, settings, correlations and findings through the real pipeline.</summary>
public class PriceTests(TemporaryHost host) : IClassFixture<TemporaryHost>
{
    private const string Choose = "mutation($input: ChoosePriceCaseInput!) { choosePriceCase(input: $input) { changeId conflict faults { field message remedy } } }";
    private const string SaveSettings = "mutation($input: SavePriceSettingsInput!) { savePriceSettings(input: $input) { changeId conflict faults { field message remedy } } }";
    private const string SaveCorrelations = "mutation($input: SaveCorrelationsInput!) { savePriceCorrelations(input: $input) { changeId faults { code field message remedy } nearestCorrelations { field values distance } } }";
    private const string Effects = "{ option(id: \"h_demo000~foam-now\") { priceCaseEffects { base { npvUsd paybackSeason neverShare } cases { kind end { npvUsd paybackSeason neverShare } } } } }";

    [Fact]
    public async Task A_case_is_stored_with_the_assumptions_puts_the_study_out_of_date_and_bends_the_prices_to_come()
    {
        await host.StudyDone();
        var fan = await Middle();
        var (id, revision) = await Set();
        var answer = (await host.Ask(Choose, new { input = new { setId = id, expectedRevision = revision, requestId = "case-1", kind = "PROPANE_DOUBLED", firstSeason = 1 } }))["data"]!["choosePriceCase"]!;
        Assert.NotNull(answer["changeId"]);
        var coop = (await host.Ask("{ coop { scenarioSet { priceCase { kind title firstSeason seasonName } } priceCases { kind inUse factors { fuel bySeason } } newestStudy { changedSince } } }"))["data"]!["coop"]!;
        Assert.Equal(("PROPANE_DOUBLED", 1), ((string)coop["scenarioSet"]!["priceCase"]!["kind"]!, (int)coop["scenarioSet"]!["priceCase"]!["firstSeason"]!));
        Assert.Equal("2027-28", (string)coop["scenarioSet"]!["priceCase"]!["seasonName"]!);
        var doubled = coop["priceCases"]!.AsArray().Single(c => (bool)c!["inUse"]!)!;
        Assert.Equal("[1,2,1", doubled["factors"]![0]!["bySeason"]!.ToJsonString()[..6]);
        Assert.Contains("the assumptions", coop["newestStudy"]!["changedSince"]!.ToJsonString(), StringComparison.Ordinal);
        var bent = await Middle();
        Assert.Equal(fan[0], bent[0]);
        Assert.Equal(2 * fan[1], bent[1], 1e-9 * bent[1]);
        var off = (await host.Ask(Choose, new { input = new { setId = id, expectedRevision = revision + 1, requestId = "case-2" } }))["data"]!["choosePriceCase"]!;
        Assert.NotNull(off["changeId"]);
        Assert.Equal(fan, await Middle());
    }

    [Fact]
    public async Task Every_case_shows_what_it_does_to_an_option_beside_the_base()
    {
        await host.StudyDone();
        var effects = (await host.Ask(Effects))["data"]!["option"]!["priceCaseEffects"]!;
        var npv = (double)effects["base"]!["npvUsd"]!;
        double Npv(string kind) => (double)effects["cases"]!.AsArray().Single(c => (string)c!["kind"]! == kind)!["end"]!["npvUsd"]!;
        Assert.Equal(5, effects["cases"]!.AsArray().Count);
        Assert.True(Npv("COLLAPSE") < npv && npv < Npv("SPIKE_OF_TWO_WINTERS") && npv < Npv("SLOW_RISE"));
    }

    [Fact]
    public async Task A_case_that_begins_after_the_horizon_is_refused_by_field()
    {
        var (id, revision) = await Set();
        var answer = (await host.Ask(Choose, new { input = new { setId = id, expectedRevision = revision, requestId = "case-3", kind = "COLLAPSE", firstSeason = 15 } }))["data"]!["choosePriceCase"]!;
        Assert.Null(answer["changeId"]);
        Assert.Equal("priceCase", (string)answer["faults"]![0]!["field"]!);
        Assert.Contains("between 0 and 14", (string)answer["faults"]![0]!["remedy"]!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Settings_tried_move_the_band_and_the_payback_and_nothing_is_kept()
    {
        await host.StudyDone();
        var (_, revision) = await Set();
        const string Trial = "{ fuel: PROPANE, levelMeaning: MIDDLE, volatilityPerYear: 0.6 }";
        var settings = (await host.Ask($"{{ priceSettings(fuel: PROPANE, trial: {Trial}) {{ models {{ key volatilityPerYear outlook {{ years p10 middle mean p90 }} }} freeFit {{ isDetermined }} faults {{ message }} }} }}"))["data"]!["priceSettings"]!;
        Assert.Equal(["now", "usual", "free", "tried"], settings["models"]!.AsArray().Select(m => (string)m!["key"]!));
        JsonNode Outlook(int model, int year) => settings["models"]![model]!["outlook"]![year]!;
        for (var y = 0; y < 3; y++)
        {
            Assert.Equal((double)Outlook(0, y)["middle"]!, (double)Outlook(3, y)["middle"]!, 0.25 * (double)Outlook(0, y)["middle"]!);
            Assert.True((double)Outlook(3, y)["p90"]! / (double)Outlook(3, y)["p10"]! > (double)Outlook(0, y)["p90"]! / (double)Outlook(0, y)["p10"]!);
            Assert.True((double)Outlook(3, y)["mean"]! > (double)Outlook(3, y)["middle"]!);
        }

        var trial = (await host.Ask($"{{ option(id: \"h_demo000~foam-now\") {{ priceTrial(trial: {Trial}) {{ now {{ npvUsd neverShare }} tried {{ npvUsd neverShare }} }} }} }}"))["data"]!["option"]!["priceTrial"]!;
        Assert.NotEqual((double)trial["now"]!["npvUsd"]!, (double)trial["tried"]!["npvUsd"]!);
        Assert.Equal(revision, (await Set()).Revision);
    }

    [Fact]
    public async Task Settings_are_saved_out_of_range_ones_refused_by_field()
    {
        var (id, revision) = await Set();
        object Input(double k1, string request) => new { input = new { setId = id, expectedRevision = revision, requestId = request, settings = new { fuel = "FUEL_OIL", levelMeaning = "EXPECTED", shortReversionPerYear = k1 } } };
        var refused = (await host.Ask(SaveSettings, Input(-1, "settings-1")))["data"]!["savePriceSettings"]!;
        Assert.Equal("shortReversionPerYear", (string)refused["faults"]![0]!["field"]!);
        Assert.NotNull((await host.Ask(SaveSettings, Input(1.4, "settings-2")))["data"]!["savePriceSettings"]!["changeId"]);
        var saved = (await host.Ask("{ priceSettings(fuel: FUEL_OIL) { levelMeaning knobs { field own } models { key halfLifeMonths } } }"))["data"]!["priceSettings"]!;
        Assert.Equal("EXPECTED", (string)saved["levelMeaning"]!);
        Assert.Equal(1.4, (double)saved["knobs"]!.AsArray().Single(k => (string)k!["field"]! == "shortReversionPerYear")!["own"]!);
        Assert.Equal(12 * Math.Log(2) / 1.4, (double)saved["models"]![0]!["halfLifeMonths"]!, 1e-9);
        await host.Ask(SaveSettings, new { input = new { setId = id, expectedRevision = revision + 1, requestId = "settings-3", settings = new { fuel = "FUEL_OIL", levelMeaning = "MIDDLE" } } });
    }

    [Fact]
    public async Task Correlations_that_cannot_be_together_come_back_with_the_nearest_and_its_distance()
    {
        var (id, revision) = await Set();
        double[] wrong = [1, .9, -.9, 0, .9, 1, .9, 0, -.9, .9, 1, 0, 0, 0, 0, 1];
        object Input(IEnumerable<double> matrix, string request) => new { input = new { setId = id, expectedRevision = revision, requestId = request, shortTerm = matrix } };
        var refused = (await host.Ask(SaveCorrelations, Input(wrong, "corr-1")))["data"]!["savePriceCorrelations"]!;
        Assert.Null(refused["changeId"]);
        Assert.Equal("NOT_TOGETHER", (string)refused["faults"]![0]!["code"]!);
        var near = refused["nearestCorrelations"]![0]!;
        Assert.Equal("shortTerm", (string)near["field"]!);
        Assert.True((double)near["distance"]! > 0.5);
        Assert.Contains(((double)near["distance"]!).ToString("0.000", CultureInfo.InvariantCulture), (string)refused["faults"]![0]!["remedy"]!, StringComparison.Ordinal);
        var offered = near["values"]!.AsArray().Select(v => (double)v!).ToList();
        Assert.NotNull((await host.Ask(SaveCorrelations, Input(offered, "corr-2")))["data"]!["savePriceCorrelations"]!["changeId"]);
        await host.Ask(SaveCorrelations, new { input = new { setId = id, expectedRevision = revision + 1, requestId = "corr-3" } });
        Assert.False((bool)(await host.Ask("{ coop { priceCorrelations { isOwn } } }"))["data"]!["coop"]!["priceCorrelations"]!["isOwn"]!);
    }

    [Theory]
    [InlineData(14, "14 months are too few for a fit")]
    [InlineData(36, "Under five years of record")]
    public async Task An_imported_record_says_what_it_can_tell_before_it_is_kept(int months, string words)
    {
        var text = "month,price ($/gal)\n" + string.Concat(Enumerable.Range(0, months).Select(i => string.Create(CultureInfo.InvariantCulture, $"{2021 + i / 12}-{i % 12 + 1:00},{2 + 0.1 * (i % 7)}\n")));
        var answer = (await host.Ask("mutation($input: ImportInput!) { importPrices(input: $input) { kept findings { code words } } }",
            new { input = new { requestId = $"find-{months}", fileName = "p.csv", text, name = "own", checkOnly = true, fuel = "PROPANE" } }))["data"]!["importPrices"]!;
        Assert.False((bool)answer["kept"]!);
        Assert.Contains(answer["findings"]!.AsArray(), f => ((string)f!["words"]!).Contains(words, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("month,price\n2024-01,$2.10\n2024-02,€2.10\n", "TWO_CURRENCIES", 3, 2, "Bring the whole file to US dollars")]
    [InlineData("month,price,unit\n2024-01,2.10,gal\n2024-02,0.60,therm\n", "TWO_UNITS", 3, 3, "Give one unit a file")]
    [InlineData("month,price\n2024-01,2.10\n2024-02,-2\n", "NOT_POSITIVE", 3, 2, "Only electricity at a market")]
    [InlineData("month,price\n2024-01,2.10\n2024-01,2.12\n", "DOUBLED", 3, 1, "Keep one price a month")]
    public async Task A_file_that_cannot_be_says_where_and_what_would_be_right_over_http(string text, string code, int line, int column, string remedy)
    {
        var answer = (await host.Ask("mutation($input: ImportInput!) { importPrices(input: $input) { kept faults { code line column remedy } } }",
            new { input = new { requestId = $"bad-{code}", fileName = "p.csv", text, name = "own", checkOnly = true, fuel = "PROPANE", priceUnit = "gal" } }))["data"]!["importPrices"]!;
        var fault = Assert.Single(answer["faults"]!.AsArray(), f => (string)f!["code"]! == code)!;
        Assert.Equal((line, column), ((int)fault["line"]!, (int)fault["column"]!));
        Assert.StartsWith(remedy, (string)fault["remedy"]!, StringComparison.Ordinal);
    }

    private async Task<(string Id, int Revision)> Set()
    {
        var set = (await host.Ask("{ coop { scenarioSet { id revision } } }"))["data"]!["coop"]!["scenarioSet"]!;
        return ((string)set["id"]!, (int)set["revision"]!);
    }

    /// <summary>Middle price of propane in the first Januaries.</summary>
    private async Task<double[]> Middle()
    {
        var p50 = (await host.Ask("{ priceFan(fuel: PROPANE) { p50 } }"))["data"]!["priceFan"]!["p50"]!.AsArray();
        return [.. new[] { 6, 18, 30 }.Select(m => (double)p50[m]!)];
    }
}
