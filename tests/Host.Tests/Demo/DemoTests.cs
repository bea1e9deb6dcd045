using System.Text.Json.Nodes;

namespace FarmPortfolio.Host.Tests.Demo;

/// <summary>The invented co-op is whole, and its numbers are ones that a grower believes.</summary>
public class DemoTests(TemporaryHost host) : IClassFixture<TemporaryHost>
{
    private const double MmbtuKwh = 293.0711;
    private const double Foot2M2 = 0.09290304;

    [Fact]
    public async Task It_has_every_shape_fuel_crop_and_kind_of_record_that_it_should()
    {
        var farms = await Farms("supplyGroups { fuel contracts { kind standing } } quotes { firmness validUntilOn } houses { shape heatingPlanCode supplies { supplyGroupId } covering retrofitsInstalled faults { message } }");
        Assert.InRange(farms.Count, 12, 20);
        var houses = farms.SelectMany(f => f!["houses"]!.AsArray()).ToList();
        Assert.InRange(houses.Count, 35, 60);
        Assert.Equal(4, Distinct(houses, "shape"));
        Assert.InRange(Distinct(houses, "heatingPlanCode"), 5, 20);
        Assert.All(houses, h => Assert.Empty(h!["faults"]!.AsArray()));
        Assert.Contains(houses, h => h!["supplies"]!.AsArray().Count == 2);
        Assert.Contains(houses, h => h!["retrofitsInstalled"]!.AsArray().Count > 0);
        var groups = farms.SelectMany(f => f!["supplyGroups"]!.AsArray()).ToList();
        Assert.Equal(4, Distinct(groups, "fuel"));
        Assert.InRange(Distinct(groups.SelectMany(g => g!["contracts"]!.AsArray()).ToList(), "kind"), 4, 5);
        Assert.Equal(2, Distinct(farms.SelectMany(f => f!["quotes"]!.AsArray()).ToList(), "firmness"));
    }

    [Fact]
    public async Task Heat_by_floor_lies_in_the_range_reckoned_for_the_climate()
    {
        // Feb to May and Nov to Apr of the 30 x 96 ft double-film house at 60/65 F: 122 and 291 MMBtu in the milder climate (New York's record), 230 and 499
        // twelve degrees colder (computed by an independent script), on 2,880 ft2. The demo lies between them, reckoned at 1.10 times the loss, and its
        // houses have other lengths and walls: a third is left above for both, and the milder figure below.
        foreach (var (plan, low, high) in new[] { ("spring", 122, 230), ("winter-long", 291, 499) })
        {
            var (from, to) = (low * 1000.0 / 2880, 1.33 * high * 1000 / 2880);
            foreach (var house in (await Houses()).Where(h => (string?)h["heatingPlanCode"] == plan && (string?)h["covering"] == "Double film, inflated" && h["retrofitsInstalled"]!.AsArray().Count == 0))
            {
                var thousandBtu = ThousandBtuByFoot2(house);
                Assert.True(thousandBtu >= from && thousandBtu <= to, $"{house["name"]}, {plan}: {thousandBtu:0} thousand Btu a square foot, {from:0} to {to:0} expected");
            }
        }
    }

    [Fact]
    public async Task What_loses_more_is_seen_to()
    {
        var houses = await Houses();
        var glass = Assert.Single(houses, h => (string?)h["covering"] == "Single glass");
        var film = houses.Single(h => (string?)h["farm"]!["name"] == "Dunmoor Gardens" && (string?)h["name"] == "house 2");
        Assert.Equal((string?)glass["heatingPlanCode"], (string?)film["heatingPlanCode"]);
        Assert.InRange(ThousandBtuByFoot2(glass) / ThousandBtuByFoot2(film), 1.3, 2.2);
    }

    [Fact]
    public async Task Its_bills_are_the_sum_of_all_it_costs()
    {
        await host.StudyDone();
        var bills = (await Farms("bills { usd { mean p50 p90 } houseIds }")).SelectMany(f => f!["bills"]!.AsArray()).ToList();
        var whole = (await host.Ask("{ coop { newestStudy { houseCount costUsdBySeason { mean p90 } } } }"))["data"]!["coop"]!["newestStudy"]!;
        Assert.Equal((double)whole["costUsdBySeason"]![0]!["mean"]!, bills.Sum(b => (double)b!["usd"]!["mean"]!), 1.0);
        Assert.True(bills.Sum(b => (double)b!["usd"]!["p90"]!) > (double)whole["costUsdBySeason"]![0]!["p90"]!, "one in ten over is read from the sum, not added up");
        Assert.Equal((int)whole["houseCount"]!, bills.Sum(b => b!["houseIds"]!.AsArray().Count));
    }

    private static double ThousandBtuByFoot2(JsonNode house) => 1000 * (double)house["heat"]!["demandKwh"]! / MmbtuKwh / ((double)house["geometry"]!["floorM2"]! / Foot2M2);

    private static int Distinct(IEnumerable<JsonNode?> nodes, string field) => nodes.Select(n => (string?)n![field]).Distinct().Count();

    private async Task<JsonArray> Farms(string fields)
    {
        var answer = await host.Ask($"{{ coop {{ farms(first: 20) {{ items {{ {fields} }} }} }} }}");
        Assert.True(answer["errors"] is null, answer["errors"]?.ToJsonString());
        return answer["data"]!["coop"]!["farms"]!["items"]!.AsArray();
    }

    private async Task<List<JsonNode>> Houses() => [.. (await Farms("houses { name heatingPlanCode covering retrofitsInstalled farm { name } heat { demandKwh } geometry { floorM2 } }")).SelectMany(f => f!["houses"]!.AsArray()).Select(h => h!)];
}
