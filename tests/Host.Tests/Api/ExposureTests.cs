using System.Text.Json.Nodes;

namespace FarmPortfolio.Host.Tests.Api;

/// <summary>The fuel page and the farms page speak of the same season of the same houses: what one says the other must not contradict.</summary>
public class ExposureTests(TemporaryHost host) : IClassFixture<TemporaryHost>
{
    /// <summary>Drawing the loss by path moves the middle of a season a little; without the bills the second farm would be a quarter too low.</summary>
    private const double Tolerance = 0.03;

    [Theory]
    [InlineData("f_demo00")]
    [InlineData("f_demo05")]
    [InlineData("f_demo08")]
    public async Task A_farm_with_bills_costs_as_bought_now_what_the_study_finds(string farm)
    {
        await host.StudyDone();
        var answer = await host.Ask("query($id: ID!) { farm(id: $id) { bills { usd { p50 } } } exposure(farmId: $id, season: 0) { ways { isOwn costUsd { p50 } } } }", new { id = farm });
        var study = answer["data"]!["farm"]!["bills"]!.AsArray().Single()!["usd"]!["p50"]!.GetValue<double>();
        var own = answer["data"]!["exposure"]!["ways"]!.AsArray().Single(IsOwn)!["costUsd"]!["p50"]!.GetValue<double>();
        Assert.True(Math.Abs(own / study - 1) < Tolerance, $"{farm}: as bought now {own:0}, the study {study:0}, apart by {100 * (own / study - 1):0.0} %, at most {100 * Tolerance} %");
    }

    private static bool IsOwn(JsonNode? way) => way!["isOwn"]!.GetValue<bool>();
}
