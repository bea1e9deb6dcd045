using System.Text.Json.Nodes;

namespace FarmPortfolio.Host.Tests.Api;

/// <summary>What an outlay brings back, as a ratio and as a rate: terminal value of the savings over the outlay, to the power of one over the years (10 CFR 436.22).</summary>
public class ReturnTests(TemporaryHost host) : IClassFixture<TemporaryHost>
{
    [Fact]
    public async Task A_rate_of_return_grows_the_outlay_to_what_the_savings_come_to()
    {
        await host.StudyDone();
        var answer = (await host.Ask("{ coop { scenarioSet { discountRate } } house(id: \"h_demo000\") { options { key isRunningChange result { startSeason netUsdBySeason { p50 } lossShare savingsToInvestment { p10 p50 p90 } rateOfReturn { p10 p50 p90 } } } } }"))["data"]!;
        var discount = (double)answer["coop"]!["scenarioSet"]!["discountRate"]!;
        var options = answer["house"]!["options"]!.AsArray().Where(o => o!["result"] is not null && (string)o["key"]! != "none").ToList();
        Assert.All(options.Where(o => (bool)o!["isRunningChange"]!), o => Assert.Null(o!["result"]!["rateOfReturn"]));
        var built = options.Where(o => !(bool)o!["isRunningChange"]!).ToList();
        Assert.NotEmpty(built);
        Assert.All(built, Grows);

        void Grows(JsonNode? option)
        {
            var (result, years) = (option!["result"]!, option["result"]!["netUsdBySeason"]!.AsArray().Count - (int)option["result"]!["startSeason"]!);
            foreach (var level in new[] { "p10", "p50", "p90" })
            {
                var (ratio, rate) = ((double)result["savingsToInvestment"]![level]!, (double)result["rateOfReturn"]![level]!);
                Assert.Equal(Math.Max(0, ratio) * Math.Pow(1 + discount, years), Math.Pow(1 + rate, years), 1e-9 * (1 + Math.Abs(ratio)) * Math.Pow(1 + discount, years));
            }

            // money is lost where the rate stays below the discount rate
            Assert.Equal((double)result["lossShare"]! > 0.5, (double)result["rateOfReturn"]!["p50"]! < discount);
        }
    }
}
