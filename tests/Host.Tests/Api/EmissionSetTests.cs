namespace FarmPortfolio.Host.Tests.Api;

/// <summary>Emission factors are chosen by name for studies to come; a study keeps those it froze.</summary>
public class EmissionSetTests(TemporaryHost host) : IClassFixture<TemporaryHost>
{
    private const string Use = "mutation($input: EmissionSetInput!) { useEmissionSet(input: $input) { changeId faults { code field message } } }";

    [Fact]
    public async Task A_chosen_set_is_in_use_from_then_on_and_the_study_that_is_done_keeps_its_own()
    {
        await host.StudyDone();
        Assert.Equal("40 CFR 98, 2016", await Studied());
        var wrong = (await Answer("EIA 1850"))["data"]!["useEmissionSet"]!;
        Assert.Equal(("UNKNOWN_SET", "emissionSet"), ((string)wrong["faults"]![0]!["code"]!, (string)wrong["faults"]![0]!["field"]!));
        Assert.NotNull((await Answer("EIA 2016"))["data"]!["useEmissionSet"]!["changeId"]);
        var sets = (await host.Ask("{ emissionSets { name inUse } }"))["data"]!["emissionSets"]!.AsArray();
        Assert.Equal("EIA 2016", (string)sets.Single(s => (bool)s!["inUse"]!)!["name"]!);
        Assert.Equal("40 CFR 98, 2016", await Studied());
        Assert.NotEmpty((await host.StudyDone())["changedSince"]!.AsArray());
    }

    private async Task<string> Studied() => (string)(await host.Ask("{ coop { newestStudy { emissionFactors } } }"))["data"]!["coop"]!["newestStudy"]!["emissionFactors"]!;

    private async Task<System.Text.Json.Nodes.JsonNode> Answer(string name)
    {
        var set = (await host.Ask("{ coop { scenarioSet { id revision } } }"))["data"]!["coop"]!["scenarioSet"]!;
        return await host.Ask(Use, new { input = new { setId = (string)set["id"]!, expectedRevision = (int)set["revision"]!, requestId = Guid.NewGuid().ToString(), name } });
    }
}
