using FarmPortfolio.Engine.Studies;
using NetArchTest.Rules;

namespace FarmPortfolio.Host.Tests.Structure;

/// <summary>The folders of the engine are the flow of data, and a folder sees only what lies upstream of it. Read from the compiled types, so nothing hides in a text.</summary>
public class EngineFoldersTests
{
    private const string Root = "FarmPortfolio.Engine";

    private static readonly Dictionary<string, string[]> Upstream = Flow(
        ["Units"], ["Farms", "Weather", "Fuel"], ["Retrofits"], ["HeatDemand"], ["Scenarios", "Trials"], ["Economics"], ["Studies"], ["Funding", "Lending", "Exposure"]);

    public static IEnumerable<TheoryDataRow<string>> Folders => Directory.EnumerateDirectories(Repository.At("server", "Engine")).Select(Path.GetFileName).OfType<string>()
        .Where(f => f is not ("bin" or "obj")).Order(StringComparer.Ordinal).Select(f => new TheoryDataRow<string>(f));

    [Theory, MemberData(nameof(Folders))]
    public void A_folder_sees_only_what_lies_upstream(string folder)
    {
        Assert.True(Upstream.ContainsKey(folder), $"{folder} has no place in the flow: add it to this test and to docs/decisions");
        var hidden = Upstream.Keys.Where(f => f != folder && !Upstream[folder].Contains(f)).Select(f => $"{Root}.{f}").ToArray();
        var result = Types.InAssembly(typeof(StudyRun).Assembly).That().ResideInNamespace($"{Root}.{folder}").ShouldNot().HaveDependencyOnAny(hidden).GetResult();
        Assert.True(result.IsSuccessful, $"{folder} sees downstream: {string.Join(", ", result.FailingTypeNames ?? [])}");
    }

    [Fact]
    public void The_check_can_see_a_wrong_way()
    {
        var result = Types.InAssembly(typeof(StudyRun).Assembly).That().ResideInNamespace($"{Root}.Studies").ShouldNot().HaveDependencyOnAny($"{Root}.Economics").GetResult();
        Assert.False(result.IsSuccessful);
    }

    [Fact]
    public void The_engine_knows_neither_host_nor_web_nor_database()
    {
        string[] foreign = ["FarmPortfolio.Host", "Microsoft.AspNetCore", "Microsoft.Extensions", "Microsoft.Data", "Dapper", "GraphQL", "System.Net", "System.Data"];
        var result = Types.InAssembly(typeof(StudyRun).Assembly).ShouldNot().HaveDependencyOnAny(foreign).GetResult();
        Assert.True(result.IsSuccessful, string.Join(", ", result.FailingTypeNames ?? []));
    }

    private static Dictionary<string, string[]> Flow(params string[][] levels)
    {
        var seen = new List<string>();
        var flow = new Dictionary<string, string[]>();
        foreach (var level in levels)
        {
            foreach (var folder in level)
            {
                flow[folder] = [.. seen];
            }

            seen.AddRange(level);
        }

        // trials read measured heat alone; neighbours otherwise see nothing of one another, except that lending and funding may follow exposure when they come
        flow["Economics"] = [.. flow["Economics"].Except(["Trials"])];
        return flow;
    }
}
