using System.Reflection;

namespace FarmPortfolio.Host.Tests;

/// <summary>The folders of the engine follow the flow of data; SQL stands in Storage alone; nothing but the named entries stands at the top.</summary>
public class StructureTests
{
    private static readonly string Root = Path.GetFullPath(Path.Combine(AppContext.BaseDirectory, "../../../../.."));

    private static readonly (string Folder, string[] MayUse)[] Engine =
    [
        ("Units", []),
        ("Farms", ["Units"]),
        ("Weather", ["Units", "Farms"]),
        ("Fuel", ["Units", "Farms", "Scenarios"]),
        ("Retrofits", ["Units", "Farms", "Weather", "Fuel"]),
        ("HeatDemand", ["Units", "Farms", "Weather", "Fuel", "Retrofits"]),
        ("Scenarios", ["Units", "Farms", "Weather", "Fuel", "Retrofits", "HeatDemand"]),
        ("Economics", ["Units", "Farms", "Weather", "Fuel", "Retrofits", "HeatDemand", "Scenarios"]),
        ("Studies", ["Units", "Farms", "Weather", "Fuel", "Retrofits", "HeatDemand", "Scenarios", "Economics"]),
        ("Funding", ["Units", "Farms", "Weather", "Fuel", "Retrofits", "HeatDemand", "Scenarios", "Economics", "Studies"]),
    ];

    public static IEnumerable<TheoryDataRow<string>> Folders => Engine.Select(e => new TheoryDataRow<string>(e.Folder));

    [Theory, MemberData(nameof(Folders))]
    public void A_folder_of_the_engine_sees_only_what_lies_before_it(string folder)
    {
        var may = Engine.First(e => e.Folder == folder).MayUse;
        foreach (var file in Directory.EnumerateFiles(Path.Combine(Root, "server/Engine", folder), "*.cs"))
        {
            var text = File.ReadAllText(file);
            foreach (var (other, _) in Engine.Where(e => e.Folder != folder && !may.Contains(e.Folder)))
            {
                Assert.False(text.Contains($"FarmPortfolio.Engine.{other};", StringComparison.Ordinal) || text.Contains($" {other}.", StringComparison.Ordinal) && text.Contains($"({other}.", StringComparison.Ordinal),
                    $"{file} uses {other}, which lies after {folder}");
            }
        }
    }

    [Fact]
    public void Sql_stands_in_storage_alone()
    {
        foreach (var file in Directory.EnumerateFiles(Path.Combine(Root, "server/Host"), "*.cs", SearchOption.AllDirectories).Where(f => !f.Contains("/Storage/", StringComparison.Ordinal) && !f.Contains("/obj/", StringComparison.Ordinal) && !f.Contains("/bin/", StringComparison.Ordinal)))
        {
            Assert.DoesNotContain("SELECT ", File.ReadAllText(file), StringComparison.Ordinal);
            Assert.DoesNotContain("using Dapper", File.ReadAllText(file), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Only_the_named_entries_stand_at_the_top()
    {
        string[] named = ["README.md", "DEVELOPERS.md", "FarmPortfolio.sln", "server", "web", "tests", "e2e", "docker", "docs", "global.json", "Directory.Build.props", "Directory.Packages.props", "TestResults"];
        var found = Directory.EnumerateFileSystemEntries(Root).Select(Path.GetFileName).OfType<string>().Where(n => !n.StartsWith('.'));
        Assert.Empty(found.Except(named));
    }

    [Fact]
    public void Every_public_store_method_takes_the_viewer_first()
    {
        var stores = typeof(Storage.CoopStore).Assembly.GetTypes().Where(t => t.Namespace?.StartsWith("FarmPortfolio.Host.Storage", StringComparison.Ordinal) == true && t.Name.EndsWith("Store", StringComparison.Ordinal));
        var methods = stores.SelectMany(t => t.GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly)).ToList();
        Assert.True(methods.Count > 10);
        Assert.All(methods, m => Assert.Equal(typeof(Accounts.Viewer), m.GetParameters()[0].ParameterType));
    }

    [Fact]
    public void The_lock_file_names_no_registry() => Assert.DoesNotContain("\"resolved\"", File.ReadAllText(Path.Combine(Root, "web/package-lock.json")), StringComparison.Ordinal);
}
