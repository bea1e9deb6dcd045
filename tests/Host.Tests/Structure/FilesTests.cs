using System.Text.RegularExpressions;

namespace FarmPortfolio.Host.Tests.Structure;

/// <summary>What may stand where, how long a file may be, and what no file may name.</summary>
public partial class FilesTests
{
    private const int MostLines = 400;

    // longer for a reason: none so far
    private static readonly HashSet<string> Longer = [];

    private static readonly string[] Top =
    [
        "README.md", "DEVELOPERS.md", "FarmPortfolio.sln", "global.json", "Directory.Build.props", "Directory.Build.targets", "Directory.Packages.props", "server", "web", "tests", "e2e", "docker", "docs",
    ];

    private static IEnumerable<string> Code => new[] { "server", "tests", "e2e" }.SelectMany(f => Repository.Files("*.cs", f)).Concat(new[] { "*.ts", "*.tsx", "*.css" }.SelectMany(p => Repository.Files(p, "web", "src")));

    [Fact]
    public void Only_the_named_entries_stand_at_the_top()
    {
        var found = Directory.EnumerateFileSystemEntries(Repository.Root).Select(Path.GetFileName).OfType<string>().Where(n => !n.StartsWith('.') && n != "TestResults");
        Assert.Empty(found.Except(Top));
    }

    [Fact]
    public void No_file_of_code_is_longer_than_four_hundred_lines()
    {
        var files = Code.ToList();
        Assert.True(files.Count > 100);
        var over = files.Select(f => (Name: Repository.Name(f), Lines: File.ReadAllLines(f).Length)).Where(f => f.Lines > MostLines && !Longer.Contains(f.Name));
        Assert.True(!over.Any(), string.Join(", ", over.Select(f => $"{f.Name} has {f.Lines} lines")));
    }

    [Fact]
    public void A_namespace_is_its_folder()
    {
        foreach (var file in Repository.Files("*.cs", "server").Where(f => Path.GetFileName(f) != "Program.cs"))
        {
            var folder = "FarmPortfolio." + Path.GetDirectoryName(Path.GetRelativePath(Repository.At("server"), file))!.Replace(Path.DirectorySeparatorChar, '.');
            var said = Namespace().Match(File.ReadAllText(file)).Groups["name"].Value;
            // what every folder speaks of (faults, kinds of fuel) stands in the root namespace
            Assert.True(said == folder || (said == "FarmPortfolio.Engine" && folder == "FarmPortfolio.Engine.Units"), $"{Repository.Name(file)} says {said}");
        }
    }

    [Fact]
    public void Nothing_is_left_for_later()
    {
        string[] marks = ["TO" + "DO", "FIX" + "ME", "X" + "XX", "NotImplemented" + "Exception", "Skip" + " = ", "it." + "skip", "it." + "only", "describe." + "only"];
        Assert.All(Code, f => Assert.All(marks, m => Assert.False(File.ReadAllText(f).Contains(m, StringComparison.Ordinal), $"{Repository.Name(f)} has {m}")));
    }

    [Fact]
    public void The_lock_file_names_no_registry()
    {
        var text = Repository.Text("web", "package-lock.json");
        Assert.DoesNotContain("\"resolved\"", text, StringComparison.Ordinal);
        Assert.Contains("omit-lockfile-registry-resolved=true", Repository.Text("web", ".npmrc"), StringComparison.Ordinal);
    }

    [Fact]
    public void Every_package_has_its_reason()
    {
        var reasons = Repository.Text("docs", "decisions", "dependencies.md");
        var packages = Package().Matches(Repository.Text("Directory.Packages.props")).Select(m => m.Groups["name"].Value)
            .Concat(Dependency().Matches(Repository.Text("web", "package.json")).Select(m => m.Groups["name"].Value)).ToList();
        Assert.True(packages.Count > 30);
        Assert.All(packages, p => Assert.Contains($"`{p}`", reasons, StringComparison.Ordinal));
    }

    [GeneratedRegex(@"^namespace (?<name>[\w.]+);", RegexOptions.Multiline)]
    private static partial Regex Namespace();

    [GeneratedRegex("<PackageVersion Include=\"(?<name>[^\"]+)\"")]
    private static partial Regex Package();

    [GeneratedRegex("^    \"(?<name>[@a-z0-9/.-]+)\": \"[\\^~]?\\d", RegexOptions.Multiline)]
    private static partial Regex Dependency();
}
