using System.Runtime.CompilerServices;

namespace FarmPortfolio.Published.Heat;

/// <summary>The drawing in the docs is what the engine reckons now. To draw it anew run these tests with DRAW_DOCS=1.</summary>
public class OperationDrawingTests
{
    [Fact]
    public void The_drawing_in_the_docs_is_what_the_engine_reckons()
    {
        var drawn = OperationDrawing.Svg();
        if (Environment.GetEnvironmentVariable("DRAW_DOCS") == "1")
        {
            File.WriteAllText(At(), drawn);
        }

        Assert.Equal(drawn, File.ReadAllText(At()).ReplaceLineEndings("\n"));
    }

    [Fact]
    public void Used_in_the_dark_the_share_falls_with_the_cold_and_kept_by_cold_it_rises()
    {
        var dark = OperationDrawing.Curve(OperationDrawing.Rules[0].Physics).Where(p => !double.IsNaN(p.Saving)).ToArray();
        var kept = OperationDrawing.Curve(OperationDrawing.Rules[2].Physics).Where(p => !double.IsNaN(p.Saving)).ToArray();
        Assert.True(dark[^1].Saving > dark[0].Saving, "in the dark alone");
        Assert.True(kept[0].Saving > kept[^1].Saving, "kept by cold");
    }

    private static string At([CallerFilePath] string here = "") => Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "..", "docs", "method", "operation.svg");
}
