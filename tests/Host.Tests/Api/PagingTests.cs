using System.Text.Json.Nodes;

namespace FarmPortfolio.Host.Tests.Api;

/// <summary>Options of a study and rows of an order come page by page: every one once, in one order.</summary>
public class PagingTests(TemporaryHost host) : IClassFixture<TemporaryHost>
{
    private const string Options = "query($first: Int, $after: String, $farm: ID) { coop { newestStudy { optionCount options(first: $first, after: $after, farmId: $farm) { total next items { optionId option { id house { farm { id } } } result { npvUsd { p50 } } } } } } }";

    [Fact]
    public async Task Options_of_a_study_come_once_each_those_worth_most_first()
    {
        await host.StudyDone();
        var (seen, total, count) = await All(60, null);
        Assert.True(total > 100, $"{total} options");
        Assert.Equal(count, total);
        Assert.Equal(total, seen.Select(o => (string)o["optionId"]!).Distinct().Count());
        var worths = seen.Select(o => (double)o["result"]!["npvUsd"]!["p50"]!).ToList();
        Assert.Equal(worths.OrderDescending(), worths);
        Assert.All(seen, o => Assert.Equal((string)o["optionId"]!, (string)o["option"]!["id"]!));

        // pages of another size give the same order
        var (again, _, _) = await All(17, null);
        Assert.Equal(seen.Select(o => (string)o["optionId"]!), again.Select(o => (string)o["optionId"]!));

        var farm = (string)seen[0]["option"]!["house"]!["farm"]!["id"]!;
        var (own, ownTotal, _) = await All(5, farm);
        Assert.Equal(seen.Where(o => (string)o["option"]!["house"]!["farm"]!["id"]! == farm).Select(o => (string)o["optionId"]!), own.Select(o => (string)o["optionId"]!));
        Assert.Equal(own.Count, ownTotal);
    }

    [Theory]
    [InlineData("nonsense")]
    [InlineData("NaN\nh~foam-now")]
    public async Task A_place_that_is_none_is_refused_by_name(string after)
    {
        await host.StudyDone();
        var error = (await host.Ask(Options, new { first = 5, after }))["errors"]![0]!;
        Assert.Equal(("BAD_INPUT", "after"), ((string)error["extensions"]!["code"]!, (string)error["extensions"]!["field"]!));
    }

    [Fact]
    public async Task Rows_of_the_order_and_what_a_rule_keeps_out_come_page_by_page()
    {
        await host.StudyDone();
        async Task<JsonNode> Page(int after) => (await host.Ask(
            "query($a: Int!) { fundingOrder { rowTotal housesOut { houseCount byRule withoutOutlay notStudied } fundedTotal fundedOutlayUsd fundedOwnPartUsd grantUsd notEligibleTotal rows(first: 7, afterRank: $a) { rank funded grantUsd ownPartUsd option { id } result { outlayUsd } } below { rank funded } notEligible(first: 7, after: $a) { option { id } } } }",
            new { a = after }))["data"]!["fundingOrder"]!;
        var first = await Page(0);
        var (rows, kept) = (new List<JsonNode>(), new List<string>());
        for (var after = 0; after < Math.Max((int)first["rowTotal"]!, (int)first["notEligibleTotal"]!); after += 7)
        {
            var page = await Page(after);
            rows.AddRange(page["rows"]!.AsArray().Select(r => r!));
            kept.AddRange(page["notEligible"]!.AsArray().Select(n => (string)n!["option"]!["id"]!));
        }

        Assert.Equal(Enumerable.Range(1, (int)first["rowTotal"]!), rows.Select(r => (int)r["rank"]!));
        Assert.Equal(rows.Count, rows.Select(r => (string)r["option"]!["id"]!).Distinct().Count());
        var others = first["housesOut"]!;
        Assert.Equal((int)others["houseCount"]! - rows.Count, (int)others["byRule"]! + (int)others["withoutOutlay"]! + (int)others["notStudied"]!);
        Assert.InRange((int)others["byRule"]!, 1, (int)first["notEligibleTotal"]!);
        var funded = rows.TakeWhile(r => (bool)r["funded"]!).ToList();
        Assert.Equal(((int)first["fundedTotal"]!, rows.Count(r => (bool)r["funded"]!)), (funded.Count, funded.Count));
        Assert.Equal((double)first["fundedOutlayUsd"]!, funded.Sum(r => (double)r["result"]!["outlayUsd"]!), 0.01);
        Assert.Equal((double)first["fundedOwnPartUsd"]!, funded.Sum(r => (double)r["ownPartUsd"]!), 0.01);
        Assert.Equal(Enumerable.Range(funded.Count + 1, Math.Min(3, rows.Count - funded.Count)), first["below"]!.AsArray().Select(r => (int)r!["rank"]!));
        Assert.Equal((int)first["notEligibleTotal"]!, kept.Distinct().Count());
    }

    private async Task<(List<JsonNode> Seen, int Total, int Count)> All(int first, string? farm)
    {
        var (seen, after) = (new List<JsonNode>(), (string?)null);
        while (true)
        {
            var study = (await host.Ask(Options, new { first, after, farm }))["data"]!["coop"]!["newestStudy"]!;
            var page = study["options"]!;
            seen.AddRange(page["items"]!.AsArray().Select(i => i!));
            after = (string?)page["next"];
            if (after is null)
            {
                return (seen, (int)page["total"]!, (int)study["optionCount"]!);
            }
        }
    }
}
