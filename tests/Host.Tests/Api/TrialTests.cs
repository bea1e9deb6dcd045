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
