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
        await Dashboard.Seen(page.GetByText("rounds kept"));
        await page.GetByLabel("name of the round").FillAsync("Spring round");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep as a round", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByRole(AriaRole.Heading, new() { Name = "Spring round would fund" }));
        await Dashboard.Seen(page.GetByText("0 of the 2 members that a decision needs were present."));
        Assert.True(await page.GetByRole(AriaRole.Button, new() { Name = "Close the round", Exact = true }).IsDisabledAsync());

        await page.GetByRole(AriaRole.Button, new() { Name = "enter who decides, interests and votes", Exact = true }).ClickAsync();
        foreach (var name in new[] { "the chair", "the treasurer" })
        {
            await page.GetByRole(AriaRole.Button, new() { Name = "add a member", Exact = true }).ClickAsync();
            await page.GetByLabel("name, or office").Last.FillAsync(name);
        }

        await page.GetByRole(AriaRole.Button, new() { Name = "Save the committee", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByText("the treasurer: for"));
        await page.GetByRole(AriaRole.Button, new() { Name = "Close the round", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Freeze it and award" }).ClickAsync();
        await Dashboard.Seen(page.GetByRole(AriaRole.Heading, new() { Name = "Spring round funded" }));
        await Dashboard.Seen(page.GetByText("Decision 3", new() { Exact = true }));

        // a grant is taken back by a correction, and the next on the frozen list can have the money
        await page.GetByRole(AriaRole.Button, new() { Name = "correct the decision", Exact = true }).ClickAsync();
        await page.GetByLabel("grant as it should have been").FillAsync("0");
        await page.GetByLabel("what was wrong").FillAsync("the quote was for another house");
        await page.GetByRole(AriaRole.Button, new() { Name = "Make a correcting decision", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByText("corrected, on decision 3; the quote was for another house"));

        await Dashboard.Go(page, "/awards");
        await Dashboard.Seen(page.GetByRole(AriaRole.Link, new() { Name = "Spring round", Exact = true }));
        await page.GetByRole(AriaRole.Link, new() { Name = "Ivy Landing, house 3", Exact = true }).First.ClickAsync();
        await page.GetByLabel("delivered, % of promised").FillAsync("95");
        await page.GetByLabel("one in twenty is lower, %").FillAsync("98");
        await page.GetByLabel("one in twenty is higher, %").FillAsync("110");
        await page.GetByLabel("what stands behind it").FillAsync("deliveries of two winters");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save the award", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByText("does not lie between"));
        await page.GetByLabel("one in twenty is lower, %").FillAsync("80");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save the award", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByRole(AriaRole.Heading, new() { Name = "that delivered 95 %" }));
        await dashboard.Close(page);
    }

    [Fact]
    public async Task An_earlier_round_is_entered_by_hand_marked_as_such_counted_deleted_and_brought_back()
    {
        var page = await dashboard.Open("/rounds");
        await page.GetByRole(AriaRole.Link, new() { Name = "enter an earlier round from its papers", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByText("a name, the day it was decided"));
        await page.GetByLabel("name of the round").FillAsync("Round of 2019");
        await page.GetByLabel("decided on").FillAsync("2019-03-05");
        await page.GetByLabel("its rules in short").FillAsync("half of the cost");
        await page.GetByLabel("by farm or name").FillAsync("dunmoor");
        await page.GetByLabel("house of award 1").SelectOptionAsync(new SelectOptionValue { Label = "Dunmoor Gardens, house 2" });
        await page.GetByLabel("what was paid for").SelectOptionAsync("curtain");
        await page.GetByLabel("grant, $").FillAsync("4,000");
        await page.GetByLabel("whole cost, $").FillAsync("3,000");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the round", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByText("Give dollars over 0, and a cost that is at least the grant."));
        await page.GetByLabel("whole cost, $").FillAsync("9,000");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the round", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByRole(AriaRole.Heading, new() { Name = "Round of 2019 gave $4,000 to 1 house on 2019-03-05." }));
        await Dashboard.Seen(page.GetByText("Entered by hand, not decided here."));
        await Dashboard.Keep(page, "round-entered");
        await Dashboard.Go(page, "/awards");
        await Dashboard.Seen(page.GetByRole(AriaRole.Row, new() { NameRegex = EnteredRow() }));
        await page.GetByRole(AriaRole.Link, new() { Name = "Round of 2019", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "delete the round with its awards", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByText("Round of 2019 is deleted with its awards."));
        await page.GetByRole(AriaRole.Button, new() { Name = "undo", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByRole(AriaRole.Link, new() { Name = "Round of 2019", Exact = true }));
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
        await Dashboard.Settled(page);
        await Dashboard.Seen(page.Locator(".sheet-foot"));
        var pdf = await page.PdfAsync(new() { Format = paper, PreferCSSPageSize = false });
        if (Environment.GetEnvironmentVariable("SCREENSHOTS") is { Length: > 0 } folder)
        {
            await File.WriteAllBytesAsync(Path.Combine(folder, $"{address.Split('/')[^1].Split('?')[0]}-{paper}.pdf"), pdf);
        }

        Assert.Equal(1, SheetOfPaper().Count(Encoding.Latin1.GetString(pdf)));
        await dashboard.Close(page);
    }

    [GeneratedRegex("Dunmoor Gardens, house 2.*entered by hand, not decided here")]
    private static partial Regex EnteredRow();

    [GeneratedRegex(@"/Type\s*/Page\b(?!s)")]
    private static partial Regex SheetOfPaper();
}
