using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace FarmPortfolio.BrowserTests;

/// <summary>A round from its rules to its awards and its paper.</summary>
public partial class RoundTests(Dashboard dashboard) : IClassFixture<Dashboard>
{
    [Fact]
    public async Task Rules_are_kept_as_a_round_which_is_closed_and_its_awards_are_followed()
    {
        var page = await dashboard.Open("/funding?budgetUsd=20000");
        await page.GetByRole(AriaRole.Status).GetByText("Up to date").WaitForAsync(new() { Timeout = 120_000 });
        await page.GetByText("rounds kept").WaitForAsync();
        await page.GetByLabel("name of the round").FillAsync("Spring round");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep as a round" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Spring round would fund" }).WaitForAsync();
        await page.GetByText("0 of the 2 members that a decision needs were present.").WaitForAsync();
        Assert.True(await page.GetByRole(AriaRole.Button, new() { Name = "Close the round" }).IsDisabledAsync());

        await page.GetByRole(AriaRole.Button, new() { Name = "enter who decides, interests and votes" }).ClickAsync();
        foreach (var name in new[] { "the chair", "the treasurer" })
        {
            await page.GetByRole(AriaRole.Button, new() { Name = "add a member" }).ClickAsync();
            await page.GetByLabel("name, or office").Last.FillAsync(name);
        }

        await page.GetByRole(AriaRole.Button, new() { Name = "Save the committee" }).ClickAsync();
        await page.GetByText("the treasurer: for").WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Close the round" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Freeze it and award" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Spring round funded" }).WaitForAsync();
        await page.GetByText("Decision 3", new() { Exact = true }).WaitForAsync();

        // a grant is taken back by a correction, and the next on the frozen list can have the money
        await page.GetByRole(AriaRole.Button, new() { Name = "correct the decision" }).ClickAsync();
        await page.GetByLabel("grant as it should have been").FillAsync("0");
        await page.GetByLabel("what was wrong").FillAsync("the quote was for another house");
        await page.GetByRole(AriaRole.Button, new() { Name = "Make a correcting decision" }).ClickAsync();
        await page.GetByText("corrected, on decision 3; the quote was for another house").WaitForAsync();

        await page.GotoAsync("/awards");
        await page.GetByRole(AriaRole.Link, new() { Name = "Spring round" }).First.WaitForAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Ivy Landing, house 3" }).First.ClickAsync();
        await page.GetByLabel("delivered, % of promised").FillAsync("95");
        await page.GetByLabel("one in twenty is lower, %").FillAsync("98");
        await page.GetByLabel("one in twenty is higher, %").FillAsync("110");
        await page.GetByLabel("what stands behind it").FillAsync("deliveries of two winters");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save the award" }).ClickAsync();
        await page.GetByText("does not lie between").WaitForAsync();
        await page.GetByLabel("one in twenty is lower, %").FillAsync("80");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save the award" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "that delivered 95 %" }).WaitForAsync();
        await dashboard.Close(page);
    }

    [Theory]
    [InlineData("/rounds/fo_demo2/memo", "Letter")]
    [InlineData("/rounds/fo_demo2/memo", "A4")]
    [InlineData("/awards/aw_demo5/letter", "Letter")]
    [InlineData("/awards/aw_demo5/letter", "A4")]
    [InlineData("/houses/h_demo000/sheet?option=foam-now", "Letter")]
    [InlineData("/houses/h_demo022/sheet", "A4")]
    public async Task A_sheet_is_one_page_of_paper(string address, string paper)
    {
        var page = await dashboard.Open(address);
        await page.GetByRole(AriaRole.Status).GetByText("Up to date").WaitForAsync(new() { Timeout = 120_000 });
        await page.ReloadAsync();
        await page.Locator(".sheet-foot").WaitForAsync();
        var pdf = await page.PdfAsync(new() { Format = paper, PreferCSSPageSize = false });
        if (Environment.GetEnvironmentVariable("SCREENSHOTS") is { Length: > 0 } folder)
        {
            await File.WriteAllBytesAsync(Path.Combine(folder, $"{address.Split('/')[^1].Split('?')[0]}-{paper}.pdf"), pdf);
        }

        Assert.Equal(1, SheetOfPaper().Count(Encoding.Latin1.GetString(pdf)));
        await dashboard.Close(page);
    }

    [GeneratedRegex(@"/Type\s*/Page\b(?!s)")]
    private static partial Regex SheetOfPaper();
}
