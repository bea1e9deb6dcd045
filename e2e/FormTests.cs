using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace FarmPortfolio.BrowserTests;

public class FormTests(Dashboard dashboard) : IClassFixture<Dashboard>
{
    [Fact]
    public async Task A_farm_a_tank_its_contract_and_a_quote_are_entered_on_their_pages()
    {
        var page = await dashboard.Open("/farms");
        await page.GetByRole(AriaRole.Link, new() { Name = "Barrow Fields", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "change the farm", Exact = true }).ClickAsync();
        await page.GetByLabel("sales of a year, $").FillAsync("-5");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save the farm", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByText("is outside 0 to"));
        await page.GetByLabel("sales of a year, $").FillAsync("99000");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save the farm", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByRole(AriaRole.Button, new() { Name = "change the farm", Exact = true }));
        await page.GetByRole(AriaRole.Button, new() { Name = "add a quote", Exact = true }).ClickAsync();
        await page.GetByLabel("sum, $").FillAsync("9800");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save the quote", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByText("$9,800 for curtain on house 1"));
        await Sound(page, "farm");
        await page.GetByRole(AriaRole.Link, new() { Name = "tank bank", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "change monthly index", Exact = true }).ClickAsync();
        await page.GetByLabel("how it pays").SelectOptionAsync("FIXED");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save the contract", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByText("A fixed contract needs its price."));
        await page.GetByLabel("price, $ a gal").FillAsync("2.31");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save the contract", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByText("$2.31 a gal"));
        await page.GetByRole(AriaRole.Button, new() { Name = "change the tank or meter", Exact = true }).ClickAsync();
        await Sound(page, "tank-form");
        // untouched it is left without a word
        await page.GetByRole(AriaRole.Link, new() { Name = "Barrow Fields", Exact = true }).First.ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "change the farm", Exact = true }).ClickAsync();
        await page.GetByLabel("sales of a year, $").FillAsync("88000");
        await page.GetByRole(AriaRole.Link, new() { Name = "Studies", Exact = true }).ClickAsync();
        var question = page.GetByRole(AriaRole.Alertdialog, new() { Name = "What you typed is not saved", Exact = true });
        await Dashboard.Seen(question);
        await Sound(page, "leaving");
        await page.Keyboard.PressAsync("Escape");
        await Dashboard.Gone(question);
        Assert.Equal("88000", await page.GetByLabel("sales of a year, $").InputValueAsync());
        await page.GetByRole(AriaRole.Link, new() { Name = "Studies", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "leave without saving", Exact = true }).ClickAsync();
        await Dashboard.Reached(page, "/studies$");
        await dashboard.Close(page);
    }

    [Theory]
    [InlineData(1440, false)]
    [InlineData(390, true)]
    public async Task A_house_takes_own_periods_and_its_options_are_chosen(int width, bool dark)
    {
        var page = await dashboard.Open($"/houses/h_demo08{(dark ? 1 : 0)}", width, dark);
        await page.GetByRole(AriaRole.Button, new() { Name = "change the house", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "own periods instead of the plan", Exact = true }).ClickAsync();
        await page.GetByLabel("night, F").FillAsync("200");
        await Dashboard.Seen(page.GetByText("are no crop's"));
        await page.GetByLabel("night, F").FillAsync("55");
        await Dashboard.Gone(page.GetByText("are no crop's"));
        await page.GetByLabel("rated input, Btu/h").FillAsync("big");
        await Dashboard.Seen(page.GetByText("is no number"));
        await page.GetByLabel("rated input, Btu/h").FillAsync("400000");
        await Dashboard.Gone(page.GetByText("is no number"));
        await Sound(page, $"house-form-{width}-{(dark ? "dark" : "light")}", width);
        await page.GetByRole(AriaRole.Button, new() { Name = "Save the house", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByRole(AriaRole.Button, new() { Name = "change the house", Exact = true }));
        await page.GetByRole(AriaRole.Button, new() { Name = "choose which options are studied", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Checkbox, new() { Name = "Knee walls boarded" }).CheckAsync();
        await page.GetByRole(AriaRole.Checkbox, new() { Name = "Foam between the films, by night" }).CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "put it on the list", Exact = true }).ClickAsync();
        await Sound(page, $"option-set-{width}-{(dark ? "dark" : "light")}", width);
        await page.GetByRole(AriaRole.Button, new() { Name = "Save the options", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByRole(AriaRole.Button, new() { Name = "choose which options are studied", Exact = true }));
        await Dashboard.Seen(page.GetByText("Knee walls"));
        await dashboard.Close(page);
    }

    private static async Task Sound(IPage page, string name, int width = 1440)
    {
        var found = await page.RunAxe();
        Assert.True(found.Violations.Length == 0, $"{name}: {string.Join("; ", found.Violations.Select(v => $"{v.Id}: {string.Join(", ", v.Nodes.Take(3).Select(n => n.Html))}"))}");
        var wide = await page.EvaluateAsync<int>("document.documentElement.scrollWidth");
        Assert.True(wide <= width, $"{name} is {wide} pixels wide on a screen of {width}");
        await Dashboard.Keep(page, name);
    }
}
