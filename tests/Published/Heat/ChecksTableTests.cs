using System.Runtime.CompilerServices;

namespace FarmPortfolio.Published.Heat;

/// <summary>The table of checks in the docs is what the engine reckons now. To write it anew run this test with DRAW_DOCS=1.</summary>
public class ChecksTableTests
{
    [Fact]
    public void The_table_in_the_docs_is_what_the_engine_reckons()
    {
        var table = ChecksTable.Markdown();
        var lines = File.ReadAllText(At()).ReplaceLineEndings("\n");
        var (from, to) = (lines.IndexOf("| row, place", StringComparison.Ordinal), lines.LastIndexOf("|\n", StringComparison.Ordinal) + 2);
        Assert.True(from >= 0 && to > from, "the page holds no table");
        if (Environment.GetEnvironmentVariable("DRAW_DOCS") == "1")
        {
            File.WriteAllText(At(), lines[..from] + table + lines[to..]);
        }

        Assert.Contains(table, File.ReadAllText(At()).ReplaceLineEndings("\n"));
    }

    private static string At([CallerFilePath] string here = "") => Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "..", "docs", "method", "heat-checks.md");
}
