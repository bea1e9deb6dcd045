using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace FarmPortfolio.BrowserTests;

/// <summary>From nothing to a result: a co-op of one's own, a farm, a house, a study.</summary>
public class OwnCoopTests(Dashboard dashboard) : IClassFixture<Dashboard>
{
    [Theory]
    [InlineData(1440, false)]
    [InlineData(390, true)]
    public async Task A_new_co_op_gets_a_farm_a_house_a_study_and_an_answer(int width, bool dark)
    {
        var page = await dashboard.Open("/co-ops", width, dark);
        await page.GetByLabel("name of the co-op").FillAsync($"Own growers {width}");
        await page.GetByText("take the example's invented weather stations along").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin an empty co-op", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByText("What comes next"));
        await Dashboard.Seen(page.GetByText("good to learn with, not to decide by"));
        await Fits(page, $"own-coop-empty-{width}-{(dark ? "dark" : "light")}", width);

        await page.GetByRole(AriaRole.Link, new() { Name = "Add a house by nine questions", Exact = true }).ClickAsync();
        await page.GetByLabel("name of the new farm").FillAsync("Larkrise");
        await page.GetByLabel("weather station").SelectOptionAsync(new SelectOptionValue { Label = "Stonemill" });
        await page.GetByLabel("name of the house").FillAsync("house 1");
        await page.GetByLabel("width of a bay, ft").FillAsync("30");
        await page.GetByLabel("length, ft").FillAsync("96");
        await Dashboard.Seen(page.GetByText("We reckon"));
        await page.GetByRole(AriaRole.Button, new() { Name = "Add the house", Exact = true }).ClickAsync();
        await Dashboard.Reached(page, "/houses/h_");
        await page.GetByRole(AriaRole.Button, new() { Name = "run the first study", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByText("Up to date"));
        await Dashboard.Seen(page.GetByText("pays back in"));
        await Dashboard.Go(page, "/");
        await Dashboard.Seen(page.GetByText("Heating the one house"));
        await Fits(page, $"own-coop-first-{width}-{(dark ? "dark" : "light")}", width);

        await page.GetByLabel("co-op", new() { Exact = true }).SelectOptionAsync("demo");
        await Dashboard.Seen(page.GetByText("Invented example: co-op"));
        Assert.Equal(0, await page.GetByText("Heating the one house ").CountAsync());
        await dashboard.Close(page);
    }

    private static async Task Fits(IPage page, string name, int width)
    {
        await Dashboard.Settled(page);
        await Dashboard.Keep(page, name);
        var found = await page.RunAxe();
        Assert.True(found.Violations.Length == 0, string.Join("; ", found.Violations.Select(v => $"{v.Id}: {string.Join(", ", v.Nodes.Take(3).Select(n => n.Html))}")));
        Assert.True(await page.EvaluateAsync<int>("document.documentElement.scrollWidth") <= width);
    }
}
