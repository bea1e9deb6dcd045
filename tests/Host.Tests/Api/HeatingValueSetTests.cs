using System.Text.Json.Nodes;

namespace FarmPortfolio.Host.Tests.Api;

/// <summary>Heating values are chosen by name for all that is reckoned from then on; a study keeps those it froze, and says that it is out of date.</summary>
public class HeatingValueSetTests(TemporaryHost host) : IClassFixture<TemporaryHost>
{
    private const string Use = "mutation($input: HeatingValueSetInput!) { useHeatingValueSet(input: $input) { changeId faults { code field message } } }";

    [Fact]
    public async Task A_chosen_set_is_kept_moves_the_next_study_and_marks_the_last_one()
    {
        await host.StudyDone();
        Assert.Equal("EIA 2012", await Studied());
        var before = await OilHeat();
        var wrong = (await Answer("EIA 1850"))["data"]!["useHeatingValueSet"]!;
        Assert.Equal(("UNKNOWN_SET", "heatingValueSet"), ((string)wrong["faults"]![0]!["code"]!, (string)wrong["faults"]![0]!["field"]!));
        Assert.NotNull((await Answer("EIA 2022"))["data"]!["useHeatingValueSet"]!["changeId"]);
        var sets = (await host.Ask("{ heatingValueSets { name inUse } }"))["data"]!["heatingValueSets"]!.AsArray();
        Assert.Equal("EIA 2022", (string)sets.Single(s => (bool)s!["inUse"]!)!["name"]!);
        // the study that is done keeps its own and is out of date
        Assert.Equal("EIA 2012", await Studied());
        Assert.NotEmpty((await host.StudyDone())["changedSince"]!.AsArray());
        // a year of heat on oil: 138,690 and 137,381 Btu a gallon, so the middle price of its heat rises by as much
        Assert.Equal(138690.0 / 137381, await OilHeat() / before, 1e-6);
        // back to the set of before, nothing is left of the choice
        Assert.NotNull((await Answer("EIA 2012"))["data"]!["useHeatingValueSet"]!["changeId"]);
        Assert.Empty((await host.StudyDone())["changedSince"]!.AsArray());
        Assert.Equal(before, await OilHeat());
    }

    private async Task<double> OilHeat()
    {
        var years = (await host.Ask("{ heatCostHistory { year oilUsdPerMmbtu } }"))["data"]!["heatCostHistory"]!.AsArray();
        return (double)years.First(y => (int)y!["year"]! == 2010)!["oilUsdPerMmbtu"]!;
    }

    private async Task<string> Studied() => (string)(await host.Ask("{ coop { newestStudy { heatingValues } } }"))["data"]!["coop"]!["newestStudy"]!["heatingValues"]!;

    private async Task<JsonNode> Answer(string name)
    {
        var set = (await host.Ask("{ coop { scenarioSet { id revision } } }"))["data"]!["coop"]!["scenarioSet"]!;
        return await host.Ask(Use, new { input = new { setId = (string)set["id"]!, expectedRevision = (int)set["revision"]!, requestId = Guid.NewGuid().ToString(), name } });
    }
}
