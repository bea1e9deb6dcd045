using Microsoft.Playwright;

namespace FarmPortfolio.BrowserTests;

/// <summary>A page prints as a sheet on letter and A4: ink on white, nothing to press, every chart on the paper.</summary>
public class PrintTests(Dashboard dashboard) : IClassFixture<Dashboard>
{
    /// <summary>What is seen and cannot be used on paper, and charts that have no size there.</summary>
    private const string Wrong = """
        () => {
          const seen = (e) => e.getClientRects().length > 0 && e.getBoundingClientRect().width > 1;
          const pressed = [...document.querySelectorAll('button, nav a, select, input:not(.inline), textarea')].filter(seen).map((e) => e.outerHTML.slice(0, 80));
          const lost = [...document.querySelectorAll('figure svg.recharts-surface, figure svg[role=img]')]
            .filter((s) => s.getBoundingClientRect().width < 100 || s.getBoundingClientRect().height < 60).map((s) => 'no picture: ' + s.outerHTML.slice(0, 80));
          const wide = document.documentElement.scrollWidth > window.innerWidth + 1 ? ['wider than the paper: ' + document.documentElement.scrollWidth] : [];
          const paper = getComputedStyle(document.body).backgroundColor === 'rgb(255, 255, 255)' ? [] : ['paper ' + getComputedStyle(document.body).backgroundColor];
          const ink = getComputedStyle(document.body).color === 'rgb(30, 36, 33)' ? [] : ['ink ' + getComputedStyle(document.body).color];
          return [...pressed, ...lost, ...wide, ...paper, ...ink];
        }
        """;

    [Theory]
    [InlineData("/")]
    [InlineData("/houses/h_demo000?option=foam-now")]
    [InlineData("/options/h_demo000~foam-now")]
    [InlineData("/funding")]
    [InlineData("/fuel?fuel=PROPANE")]
    public async Task A_page_prints_on_letter_and_A4(string address)
    {
        var page = await dashboard.Open(address, dark: true);
        await Dashboard.Settled(page);
        foreach (var (format, width) in new[] { ("Letter", 716), ("A4", 688) })
        {
            var sheet = await page.PdfAsync(new() { Format = format });
            Assert.Equal("%PDF"u8.ToArray(), sheet[..4]);
            await page.EmulateMediaAsync(new() { Media = Media.Print });
            await page.SetViewportSizeAsync(width, 900);
            Assert.Empty(await Settled(page));
            await page.EmulateMediaAsync(new() { Media = Media.Screen });
        }

        await dashboard.Close(page);
    }

    /// <summary>Charts take the new width a moment after the paper has it: what is still wrong after five seconds is wrong.</summary>
    private static async Task<string[]> Settled(IPage page)
    {
        var wrong = await page.EvaluateAsync<string[]>(Wrong);
        for (var look = 0; look < 25 && wrong.Length > 0; look++)
        {
            await Task.Delay(200);
            wrong = await page.EvaluateAsync<string[]>(Wrong);
        }

        return wrong;
    }
}
