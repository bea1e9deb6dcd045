using Deque.AxeCore.Playwright;

namespace FarmPortfolio.BrowserTests;

/// <summary>What a page shows only when asked (tables, folds, reasons, forms) is as accessible and as narrow as the page itself.</summary>
public class OpenedStateTests(Dashboard dashboard) : IClassFixture<Dashboard>
{
    /// <summary>Opens every fold and everything that says it can be opened; tells how many were shut.</summary>
    private const string OpenAll = """
        () => {
          const shut = [...document.querySelectorAll('main details:not([open]) > summary, main button[aria-expanded="false"]')];
          shut.forEach((e) => e.click());
          return shut.length;
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
            var opened = 0;
            // what is opened may bring more to open
            for (int more = -1; more != 0; opened += more)
            {
                await Dashboard.Settled(page);
                more = await page.EvaluateAsync<int>(OpenAll);
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
