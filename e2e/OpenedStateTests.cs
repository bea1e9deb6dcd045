using Deque.AxeCore.Playwright;

namespace FarmPortfolio.BrowserTests;

/// <summary>What a page shows only when asked (tables, folds, reasons, forms) is as accessible and as narrow as the page itself.</summary>
public class OpenedStateTests(Dashboard dashboard) : IClassFixture<Dashboard>
{
    /// <summary>Opens every fold and everything that says it can be opened, until nothing is shut; tells how many were opened.</summary>
    private const string OpenAll = """
        async () => {
          let opened = 0;
          for (let turn = 0; turn < 4; turn++) {
            const shut = [...document.querySelectorAll('main details:not([open]) > summary, main button[aria-expanded="false"]')];
            if (shut.length === 0) break;
            shut.forEach((e) => e.click());
            opened += shut.length;
            await new Promise((r) => setTimeout(r, 400));
          }
          return opened;
        }
        """;

    [Theory]
    [InlineData("/", 1)]
    [InlineData("/houses/h_demo000?option=foam-now", 2)]
    [InlineData("/options/h_demo000~foam-now", 3)]
    [InlineData("/funding", 10)]
    [InlineData("/fuel?fuel=PROPANE", 2)]
    [InlineData("/winters", 3)]
    [InlineData("/evidence", 1)]
    public async Task All_that_can_be_opened_is_accessible_and_fits(string address, int least)
    {
        foreach (var (width, dark) in new[] { (1440, true), (390, false) })
        {
            var page = await dashboard.Open(address, width, dark);
            await page.Locator("h1").First.WaitForAsync();
            await page.Locator("main section").First.WaitForAsync();
            await page.WaitForLoadStateAsync(Microsoft.Playwright.LoadState.NetworkIdle);
            var opened = await page.EvaluateAsync<int>(OpenAll);
            for (var look = 0; look < 25 && opened < least; look++)
            {
                // a part whose figures come late is opened when it is there
                await Task.Delay(400);
                opened += await page.EvaluateAsync<int>(OpenAll);
            }

            Assert.True(opened >= least, $"{address}: {opened} opened, at least {least} expected");
            var wide = await page.EvaluateAsync<int>("document.documentElement.scrollWidth");
            Assert.True(wide <= width, $"{address}, all opened, is {wide} pixels wide on a screen of {width}");
            var found = await page.RunAxe();
            Assert.True(found.Violations.Length == 0, $"{address} at {width}: {string.Join("; ", found.Violations.Select(v => $"{v.Id} {v.Help}: {string.Join(", ", v.Nodes.Take(3).Select(n => n.Html))}"))}");
            await Dashboard.Keep(page, $"opened-{address.Split('/', '?')[1]}-{width}-{(dark ? "dark" : "light")}");
            await dashboard.Close(page);
        }
    }
}
