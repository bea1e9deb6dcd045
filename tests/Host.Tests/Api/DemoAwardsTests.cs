using System.Text.Json.Nodes;

namespace FarmPortfolio.Host.Tests.Api;

/// <summary>Awards of the demo as they come, before anybody decides another round.</summary>
public class DemoAwardsTests(TemporaryHost host) : IClassFixture<TemporaryHost>
{
    [Fact]
    public async Task The_demos_awards_are_late_verified_and_bounded_as_their_facts_say()
    {
        var coop = (await host.Ask("{ coop { delivered { awards verifiedAwards share low high } awards { id farm state payableUsd grantCapUsd freedUsd verified { share } } fundingRounds { id state decisions { number kind } } } }"))["data"]!["coop"]!;
        var delivered = coop["delivered"]!;
        Assert.Equal(5, (int)delivered["awards"]!);
        Assert.Equal(2, (int)delivered["verifiedAwards"]!);

        // (0.92 x 26,400 + 0.61 x 9,300) kWh of the 35,700 promised by the two, and of the 96,300 by all, the one returned at nothing
        Assert.Equal(29961.0 / 35700, (double)delivered["share"]!, 1e-9);
        Assert.Equal(29961.0 / 96300, (double)delivered["low"]!, 1e-9);
        Assert.Equal((29961.0 + 6900 + 15200) / 96300, (double)delivered["high"]!, 1e-9);
        var cheaper = coop["awards"]!.AsArray().Single(a => (string)a!["id"]! == "aw_demo2")!;
        Assert.Equal((588, 102), ((double)cheaper["payableUsd"]!, (double)cheaper["freedUsd"]!));
        Assert.Equal(["ENTERED", "WAITING_LIST"], coop["fundingRounds"]!.AsArray().Single(r => (string)r!["id"]! == "fo_demo1")!["decisions"]!.AsArray().Select(d => (string)d!["kind"]!));
    }
}
