using System.Text.RegularExpressions;

namespace FarmPortfolio.Host.Tests.Structure;

/// <summary>What the documents name is there: types, tests, files; and a paper that a comment cites has its row among the sources.</summary>
public partial class DocumentsTests
{
    private static readonly string[] Folders = ["server", "tests", "e2e"];

    private static IEnumerable<string> Documents => [Repository.At("README.md"), Repository.At("DEVELOPERS.md"), .. Repository.Files("*.md", "docs")];

    private static IReadOnlyList<string> Code { get; } = [.. Folders.SelectMany(f => Repository.Files("*.cs", f))];

    [Fact]
    public void Names_of_types_in_the_documents_are_in_the_code()
    {
        var files = Code.Where(f => Path.GetFileName(f) != nameof(DocumentsTests) + ".cs").Concat(Repository.Files("*.ts*", "web", "src")).Concat(Folders.SelectMany(f => Repository.Files("*.csproj", f)))
            .Append(Repository.At("Directory.Packages.props"));
        var words = files.SelectMany(f => Word().Matches(File.ReadAllText(f)).Select(m => m.Value)).ToHashSet(StringComparer.Ordinal);
        var named = Documents.SelectMany(d => Quoted().Matches(File.ReadAllText(d)).SelectMany(q => TypeName().Matches(q.Value).Select(t => (Document: Repository.Name(d), Name: t.Value)))).Distinct().ToList();
        Assert.True(named.Count > 100, $"only {named.Count} names were found");
        // a part of a chart package, a setting as the environment writes it, and this test, whose own words do not count
        string[] foreign = ["ErrorBar", "Demo__Enabled", nameof(DocumentsTests)];
        Assert.All(named.Where(n => !foreign.Contains(n.Name)), n => Assert.True(words.Contains(n.Name), $"{n.Document} names {n.Name}"));
    }

    [Fact]
    public void Tests_that_the_documents_name_are_tests()
    {
        var tests = Code.Select(File.ReadAllText).Where(t => t.Contains("[Fact]", StringComparison.Ordinal) || t.Contains("[Theory", StringComparison.Ordinal)).ToList();
        var named = Documents.SelectMany(d => TestName().Matches(File.ReadAllText(d)).Select(m => (Document: Repository.Name(d), Class: m.Groups["class"].Value, Test: m.Groups["test"].Value))).Distinct().ToList();
        Assert.True(named.Count > 40, $"only {named.Count} tests were found");
        Assert.All(named, n => Assert.True(
            tests.Any(t => Regex.IsMatch(t, $@"\bclass {n.Class}\b") && (n.Test.Length == 0 || t.Contains($" {n.Test}(", StringComparison.Ordinal))), $"{n.Document} names {n.Class}.{n.Test}"));
    }

    [Fact]
    public void Links_between_the_documents_lead_somewhere() =>
        Assert.All(Documents, d => Assert.All(Link().Matches(File.ReadAllText(d)).Select(m => m.Groups["to"].Value).Where(to => !to.Contains("://", StringComparison.Ordinal)),
            to => Assert.True(Path.Exists(Path.Combine(Path.GetDirectoryName(d)!, to)), $"{Repository.Name(d)} leads to {to}")));

    [Fact]
    public void A_paper_that_a_comment_cites_stands_among_the_sources()
    {
        var rows = Repository.Text("docs", "SOURCES.md").Split('\n');
        var cited = Code.SelectMany(f => Comment().Matches(File.ReadAllText(f)).SelectMany(c => Cited().Matches(c.Value).Select(m => (File: Repository.Name(f), Names: m.Groups["name"].Captures.Select(n => n.Value).ToList(), Year: m.Groups["year"].Value)))).ToList();
        Assert.True(cited.Count > 20, $"only {cited.Count} were found");
        Assert.All(cited, c => Assert.True(rows.Any(r => r.Contains(c.Year, StringComparison.Ordinal) && c.Names.Any(n => r.Contains(n, StringComparison.Ordinal))), $"{c.File} cites {string.Join(", ", c.Names)} ({c.Year})"));
    }

    [GeneratedRegex(@"\b[A-Za-z_]\w+\b")]
    private static partial Regex Word();

    [GeneratedRegex("`[^`\n]+`")]
    private static partial Regex Quoted();

    /// <summary>Two words or more in one, as types and members are written.</summary>
    [GeneratedRegex(@"\b[A-Z][a-z0-9]+(?:_*[A-Z][A-Za-z0-9]*)+\b")]
    private static partial Regex TypeName();

    [GeneratedRegex(@"`(?<class>[A-Z]\w+Tests)(?:\.(?<test>\w+))?`")]
    private static partial Regex TestName();

    [GeneratedRegex(@"\]\((?<to>[^)#\s]+)")]
    private static partial Regex Link();

    [GeneratedRegex("//.*")]
    private static partial Regex Comment();

    /// <summary>Authors and a year in brackets: Klein and Beckman (1983).</summary>
    [GeneratedRegex(@"(?:(?<name>[A-Z][A-Za-z]+)(?:, | and others | and | ))+\((?<year>(?:19|20)\d\d)\)")]
    private static partial Regex Cited();
}
