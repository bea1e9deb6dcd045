using System.Globalization;
using System.Text;
using System.Text.Json;

namespace FarmPortfolio.Host.Tests.Api;

/// <summary>Trials and evidence over the real pipeline: the demo's trial, a notebook brought in, evidence set aside.</summary>
public class TrialTests
{
    private static readonly string[] Alike = ["h_demo000", "h_demo001"];

    [Fact]
    public async Task The_demo_trial_answers_with_intervals_and_updates_what_studies_take()
    {
        await using var host = new TemporaryHost();
        var coop = (await Data(host, "{ coop { trials { name control faults { message } comparisons { retrofitCode saving { value low high } factor { value low high } idleKnown words elsewhere { station saving { value } } worth { fuel usd { value } } } } realisedFactors { retrofitCode sites priorMean mean sd } evidence { retrofitCode counted setAsideReason } } }")).GetProperty("coop");
        var trial = Assert.Single(coop.GetProperty("trials").EnumerateArray());
        Assert.Empty(trial.GetProperty("faults").EnumerateArray());
        var comparisons = trial.GetProperty("comparisons").EnumerateArray().ToDictionary(c => c.GetProperty("retrofitCode").GetString()!);
        Assert.Equal(["curtain", "foam"], comparisons.Keys.Order(StringComparer.Ordinal));
        foreach (var (code, truth) in new[] { ("curtain", 1.04), ("foam", 0.90) })
        {
            var factor = comparisons[code].GetProperty("factor");
            Assert.InRange(truth, factor.GetProperty("low").GetDouble() - 0.1, factor.GetProperty("high").GetDouble() + 0.1);
            Assert.True(comparisons[code].GetProperty("idleKnown").GetBoolean());
            Assert.Equal(3, comparisons[code].GetProperty("elsewhere").GetArrayLength());
            Assert.Equal(4, comparisons[code].GetProperty("worth").GetArrayLength());
        }

        Assert.Contains(comparisons["foam"].GetProperty("words").EnumerateArray(), w => w.GetString()!.Contains("stay in", StringComparison.Ordinal));
        var factors = coop.GetProperty("realisedFactors").EnumerateArray().ToDictionary(f => f.GetProperty("retrofitCode").GetString()!);
        Assert.Equal(1, factors["foam"].GetProperty("sites").GetInt32());
        Assert.Equal(0, factors["irfilm"].GetProperty("sites").GetInt32());
        Assert.NotEqual(factors["foam"].GetProperty("priorMean").GetDouble(), factors["foam"].GetProperty("mean").GetDouble());
    }

    [Fact]
    public async Task A_notebook_is_looked_at_then_kept_with_its_evidence_as_one_change()
    {
        await using var host = new TemporaryHost();
        var text = Notebook(controlUses: true);
        var looked = await Import(host, text, null, true);
        Assert.Equal(["A", "B"], looked.GetProperty("houses").EnumerateArray().Select(h => h.GetProperty("label").GetString()));
        var houses = Alike.Select((h, i) => new { label = i == 0 ? "A" : "B", role = i == 0 ? "CONTROL" : "TREATED", retrofitCode = i == 0 ? null : "curtain", houseId = h, unit = "gal" }).ToArray();
        var kept = await Import(host, text, houses, false);
        Assert.True(kept.GetProperty("kept").GetBoolean(), kept.ToString());
        Assert.Contains("House B", Assert.Single(kept.GetProperty("answers").EnumerateArray()).GetString(), StringComparison.Ordinal);
        var coop = (await Data(host, "{ coop { trials { name } evidence { retrofitCode kind source counted id revision } changes(first: 1) { id said itemCount } } }")).GetProperty("coop");
        Assert.Equal(2, coop.GetProperty("trials").GetArrayLength());
        Assert.Equal(2, coop.GetProperty("changes")[0].GetProperty("itemCount").GetInt32());
        var evidence = coop.GetProperty("evidence").EnumerateArray().Single(e => e.GetProperty("source").GetString()!.StartsWith("valley", StringComparison.Ordinal));
        var aside = await Data(host, "mutation($id: ID!, $r: Int!) { a: countEvidence(id: $id, expectedRevision: $r, counted: false, requestId: \"c1\") { faults { code } } b: countEvidence(id: $id, expectedRevision: $r, counted: false, reason: \"meter doubted\", requestId: \"c2\") { faults { code } changeId } }",
            new { id = evidence.GetProperty("id").GetString(), r = evidence.GetProperty("revision").GetInt32() });
        Assert.Equal("REASON_NEEDED", aside.GetProperty("a").GetProperty("faults")[0].GetProperty("code").GetString());
        Assert.NotNull(aside.GetProperty("b").GetProperty("changeId").GetString());
    }

    [Fact]
    public async Task A_control_that_used_no_fuel_keeps_nothing()
    {
        await using var host = new TemporaryHost();
        var houses = Alike.Select((h, i) => new { label = i == 0 ? "A" : "B", role = i == 0 ? "CONTROL" : "TREATED", retrofitCode = i == 0 ? null : "curtain", houseId = h, unit = "gal" }).ToArray();
        var answer = await Import(host, Notebook(controlUses: false), houses, false);
        Assert.False(answer.GetProperty("kept").GetBoolean());
        Assert.Contains(answer.GetProperty("faults").EnumerateArray(), f => f.GetProperty("message").GetString()!.Contains("used no fuel", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_published_saving_is_set_against_a_house_like_it_looked_at_then_kept()
    {
        await using var host = new TemporaryHost();
        const string Add = "mutation($input: EvidenceInput!) { addEvidence(input: $input) { changeId words faults { code field message } } }";
        async Task<JsonElement> Added(bool checkOnly, double value, double low, double high, string? like = "h_demo000", string source = "extension report, two winters", string kind = "PUBLISHED", string code = "blanket") => (await Data(host, Add,
            new { input = new { requestId = Guid.NewGuid().ToString(), retrofitCode = code, kind, source, value, low, high, likeHouseId = like, checkOnly } })).GetProperty("addEvidence");
        static string Code(JsonElement answer) => Assert.Single(answer.GetProperty("faults").EnumerateArray()).GetProperty("code").GetString()!;
        Assert.Equal("OUT_OF_ORDER", Code(await Added(false, 0.20, 0.25, 0.30)));
        Assert.Equal("OUT_OF_RANGE", Code(await Added(false, 20, 15, 25)));
        Assert.Equal("EMPTY", Code(await Added(false, 0.20, 0.15, 0.25, source: " ")));
        Assert.Equal("UNKNOWN_RETROFIT", Code(await Added(false, 0.20, 0.15, 0.25, code: "quilt")));
        Assert.Equal("NOT_BY_HAND", Code(await Added(false, 0.20, 0.15, 0.25, kind: "TRIAL")));
        Assert.Equal("NO_HOUSE", Code(await Added(false, 0.20, 0.15, 0.25, like: "h_none")));
        var looked = await Added(true, 0.20, 0.15, 0.25);
        Assert.Null(looked.GetProperty("changeId").GetString());
        Assert.Contains("The model expects", looked.GetProperty("words").GetString(), StringComparison.Ordinal);
        var kept = await Added(false, 0.20, 0.15, 0.25);
        Assert.NotNull(kept.GetProperty("changeId").GetString());
        var coop = (await Data(host, "{ coop { evidence { retrofitCode kind source savingShare factorMean factorSd counted } realisedFactors { retrofitCode sites priorMean mean sd priorSd } } }")).GetProperty("coop");
        var evidence = coop.GetProperty("evidence").EnumerateArray().Single(e => e.GetProperty("retrofitCode").GetString() == "blanket");
        Assert.Equal(0.20, evidence.GetProperty("savingShare").GetDouble());
        var (mean, sd) = (evidence.GetProperty("factorMean").GetDouble(), evidence.GetProperty("factorSd").GetDouble());
        Assert.InRange(mean, 0.7, 2.0);
        Assert.Equal(0.05 / 1.6448536 / 0.20, sd / mean, 1e-6);
        var factor = coop.GetProperty("realisedFactors").EnumerateArray().Single(f => f.GetProperty("retrofitCode").GetString() == "blanket");
        Assert.Equal(1, factor.GetProperty("sites").GetInt32());
        Assert.True(factor.GetProperty("mean").GetDouble() > factor.GetProperty("priorMean").GetDouble(), factor.ToString());
    }

    [Fact]
    public async Task Nights_set_aside_need_a_reason_and_reckon_the_evidence_again_in_one_change()
    {
        await using var host = new TemporaryHost();
        const string Look = "{ coop { trials { id revision houses nightsAside { no house from to reason } comparisons { retrofitCode saving { value } nights { leftOut } } } evidence { retrofitCode kind factorMean revision } changes(first: 1) { itemCount } } }";
        const string Set = "mutation($input: SetNightsAsideInput!) { setNightsAside(input: $input) { changeId conflict faults { code } } }";
        static JsonElement Foam(JsonElement trial) => trial.GetProperty("comparisons").EnumerateArray().Single(c => c.GetProperty("retrofitCode").GetString() == "foam");
        static double Factor(JsonElement coop) => coop.GetProperty("evidence").EnumerateArray().Single(e => e.GetProperty("retrofitCode").GetString() == "foam" && e.GetProperty("kind").GetString() == "TRIAL").GetProperty("factorMean").GetDouble();
        var before = (await Data(host, Look)).GetProperty("coop");
        var trial = before.GetProperty("trials")[0];
        var id = trial.GetProperty("id").GetString();
        var house = trial.GetProperty("houses").EnumerateArray().First().GetString();
        var facts = (await Data(host, "{ coop { trials { startsOn endsOn } } }")).GetProperty("coop").GetProperty("trials")[0];
        var first = DateOnly.Parse(facts.GetProperty("startsOn").GetString()!, CultureInfo.InvariantCulture);
        string On(int days) => first.AddDays(days).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        async Task<JsonElement> Aside(string from, string to, string reason, int revision = 1, string? of = null) => (await Data(host, Set, new { input = new { requestId = Guid.NewGuid().ToString(), trialId = id, expectedRevision = revision, house = of ?? house, from, to, reason } })).GetProperty("setNightsAside");
        static string Code(JsonElement answer) => answer.GetProperty("faults").EnumerateArray().Last().GetProperty("code").GetString()!;
        Assert.Equal("REASON_NEEDED", Code(await Aside(On(20), On(24), " ")));
        Assert.Equal("TIME_BACKWARDS", Code(await Aside(On(24), On(20), "door")));
        Assert.Equal("OUT_OF_RANGE", Code(await Aside("2001-01-01", "2001-01-02", "door")));
        Assert.Equal("NO_HOUSE", Code(await Aside(On(20), On(24), "door", of: "Z")));
        Assert.Equal("TOO_FEW_LEFT", Code(await Aside(On(0), On(400), "all of it")));
        var done = await Aside(On(20), On(34), "door left open for a delivery");
        Assert.NotNull(done.GetProperty("changeId").GetString());
        var after = (await Data(host, Look)).GetProperty("coop");
        Assert.Equal(3, after.GetProperty("changes")[0].GetProperty("itemCount").GetInt32());
        Assert.Equal("door left open for a delivery", Assert.Single(after.GetProperty("trials")[0].GetProperty("nightsAside").EnumerateArray()).GetProperty("reason").GetString());
        Assert.Contains(Foam(after.GetProperty("trials")[0]).GetProperty("nights").EnumerateArray(), n => n.GetProperty("leftOut").GetString() == "door left open for a delivery");
        Assert.NotEqual(Factor(before), Factor(after));
        Assert.True((await Aside(On(20), On(24), "again", 1)).GetProperty("conflict").GetBoolean());
        var back = (await Data(host, "mutation($id: ID!) { takeNightsBack(trialId: $id, expectedRevision: 2, no: 0, requestId: \"b1\") { changeId faults { code } } }", new { id })).GetProperty("takeNightsBack");
        Assert.NotNull(back.GetProperty("changeId").GetString());
        Assert.Equal(Factor(before), Factor((await Data(host, Look)).GetProperty("coop")), 1e-12);
    }

    private static async Task<JsonElement> Data(TemporaryHost host, string query, object? variables = null)
    {
        var answer = await host.Ask(query, variables);
        Assert.True(answer["errors"] is null, answer.ToJsonString());
        return JsonDocument.Parse(answer["data"]!.ToJsonString()).RootElement;
    }

    private static async Task<JsonElement> Import(TemporaryHost host, string text, object? houses, bool checkOnly) => (await Data(host,
        "mutation($input: ImportTrialInput!) { importTrial(input: $input) { kept rows summary houses { label } answers faults { code message } } }",
        new { input = new { requestId = Guid.NewGuid().ToString(), fileName = "n.csv", text, name = "valley trial", weatherStationId = "ws_demo0", houses, checkOnly } })).GetProperty("importTrial");

    private static string Notebook(bool controlUses)
    {
        var text = new StringBuilder("house,time,what,reading,inside (F),outside (F),state\n");
        var (start, a, b) = (new DateTime(2024, 2, 2, 8, 0, 0), 100.0, 300.0);
        for (var n = 0; n < 70; n++)
        {
            var outside = 30 + 12 * Math.Sin(0.7 * n);
            var idle = n % 12 < 4;
            text.Append(CultureInfo.InvariantCulture, $"A,{start.AddDays(n):yyyy-MM-dd HH:mm},meter,{a:0.0},60,{outside:0.0},idle\nB,{start.AddDays(n):yyyy-MM-dd HH:mm},meter,{b:0.0},60,{outside:0.0},{(idle ? "idle" : "in use")}\n");
            var use = 0.6 * (60 - outside) * (1 + 0.04 * Math.Sin(2.3 * n));
            a += controlUses ? use : 0;
            b += use * ((n + 1) % 12 < 4 ? 1 : 0.72);
        }

        return text.ToString();
    }
}
