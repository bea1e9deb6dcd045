using System.Text.Json.Nodes;

namespace FarmPortfolio.Host.Tests.Api;

/// <summary>What the sheet for the grower asks for.</summary>
public class SheetTests(TemporaryHost host) : IClassFixture<TemporaryHost>
{
    [Fact]
    public async Task An_outlay_spreads_about_its_mean_as_a_study_draws_it_and_a_house_tells_its_grants()
    {
        var house = (await host.Ask("{ house(id: \"h_demo022\") { awards { id round } options { key isRunningChange outlayUsd outlayBasis outlayRange { p10 p90 } } } }"))["data"]!["house"]!;
        Assert.Equal("aw_demo5", (string)Assert.Single(house["awards"]!.AsArray())!["id"]!);
        var options = house["options"]!.AsArray().Where(o => (string)o!["key"]! != "none").ToList();
        Assert.All(options.Where(o => (bool)o!["isRunningChange"]!), o => Assert.Null(o!["outlayRange"]));
        Assert.All(options.Where(o => !(bool)o!["isRunningChange"]!), Spreads);
        Assert.Contains(options, o => o!["outlayRange"] is not null);

        static void Spreads(JsonNode? option)
        {
            // ends of a lognormal with that mean: p10 p90 = mean^2 e^(-sd^2), ln(p90 / p10) = 2 x 1.28155 sd
            var (mean, p10, p90) = ((double)option!["outlayUsd"]!, (double)option["outlayRange"]!["p10"]!, (double)option["outlayRange"]!["p90"]!);
            var sd = Math.Log(p90 / p10) / (2 * 1.2815515655446004);
            Assert.InRange(sd, 0.01, 0.6);
            Assert.Equal(mean * mean * Math.Exp(-sd * sd), p10 * p90, 1e-6 * mean * mean);
        }
    }
}
