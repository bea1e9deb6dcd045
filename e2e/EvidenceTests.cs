using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace FarmPortfolio.BrowserTests;

/// <summary>Evidence by hand and nights set aside, as one does them.</summary>
public class EvidenceTests(Dashboard dashboard) : IClassFixture<Dashboard>
{
    [Fact]
    public async Task A_result_is_typed_looked_at_and_kept()
    {
        var page = await dashboard.Open("/evidence");
        var form = page.Locator("section").Filter(new() { Has = page.GetByRole(AriaRole.Heading, new() { Name = "Add a result by hand" }) });
        await form.GetByLabel("retrofit").SelectOptionAsync("blanket");
        await form.GetByLabel("result, %").FillAsync("20");
        await form.GetByLabel("one in twenty is lower, %").FillAsync("25");
        await form.GetByLabel("one in twenty is higher, %").FillAsync("26");
        await form.GetByLabel("source: who, where, when").FillAsync("extension note on porous blankets");
        await form.GetByRole(AriaRole.Button, new() { Name = "Look at it", Exact = true }).ClickAsync();
        await Dashboard.Seen(form.GetByText("does not hold 20 % inside"));
        await form.GetByLabel("one in twenty is lower, %").FillAsync("15");
        await form.GetByRole(AriaRole.Button, new() { Name = "Look at it", Exact = true }).ClickAsync();
        await Dashboard.Seen(form.GetByText("Not kept yet."));
        await Dashboard.Keep(page, "evidence-by-hand");
        await form.GetByRole(AriaRole.Button, new() { Name = "Keep the evidence", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByText("published: extension note on porous blankets"));
        await Accessible(page);
        await dashboard.Close(page);
    }

    [Fact]
    public async Task Nights_are_set_aside_with_a_reason_and_taken_back()
    {
        var page = await dashboard.Open("/evidence", 390, true);
        await page.GetByRole(AriaRole.Button, new() { Name = "set nights aside, with a reason", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Set them aside", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByText("set aside without a reason"));
        await page.GetByLabel("why", new() { Exact = true }).FillAsync("door open for a delivery");
        await Accessible(page);
        await Dashboard.Keep(page, "evidence-nights-390");
        await page.GetByRole(AriaRole.Button, new() { Name = "Set them aside", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByText("by hand: house"));
        await page.GetByRole(AriaRole.Button, new() { Name = "take them back in", Exact = true }).ClickAsync();
        await Dashboard.Gone(page.GetByText("by hand: house"));
        await dashboard.Close(page);
    }

    private static async Task Accessible(IPage page)
    {
        var found = await page.RunAxe();
        Assert.True(found.Violations.Length == 0, string.Join("; ", found.Violations.Select(v => $"{v.Id} {v.Help}: {string.Join(", ", v.Nodes.Take(3).Select(n => n.Html))}")));
    }
}
