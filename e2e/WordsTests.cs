using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace FarmPortfolio.BrowserTests;

/// <summary>What a page calls itself, in which units it speaks, and what it says to a figure that cannot be right.</summary>
public partial class WordsTests(Dashboard dashboard) : IClassFixture<Dashboard>
{
    [Theory]
    [InlineData("/houses/h_demo000", "house 1, Alder Reach - FarmPortfolio")]
    [InlineData("/options/h_demo000~foam-now", "Foam between the films, by night, house 1, Alder Reach - FarmPortfolio")]
    [InlineData("/farms/f_demo00", "Alder Reach - FarmPortfolio")]
    [InlineData("/supplies/sg_demo00", "tank bank, Alder Reach - FarmPortfolio")]
    public async Task A_page_of_one_thing_names_it(string address, string title)
    {
        var page = await dashboard.Open(address);
        await Dashboard.Seen(page.GetByRole(AriaRole.Navigation, new() { Name = "where this page belongs", Exact = true }));
        await Assertions.Expect(page).ToHaveTitleAsync(title, new() { Timeout = 60_000 });
        // coming back from another page the name stands again, though nothing is read anew
        await page.GetByRole(AriaRole.Link, new() { Name = "Winters", Exact = true }).ClickAsync();
        // going back before the other page has come would leave the dashboard
        await Dashboard.Reached(page, "/winters$");
        await page.GoBackAsync();
        await Assertions.Expect(page).ToHaveTitleAsync(title, new() { Timeout = 60_000 });
        await dashboard.Close(page);
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/houses/h_demo000")]
    [InlineData("/options/h_demo000~foam-now")]
    [InlineData("/fuel?fuel=PROPANE")]
    [InlineData("/fuel?farm=f_demo03&fuel=NATURAL_GAS")]
    [InlineData("/evidence")]
    [InlineData("/winters")]
    [InlineData("/funding")]
    [InlineData("/houses")]
    [InlineData("/fuel/prices")]
    [InlineData("/fuel/prices?fuel=NATURAL_GAS")]
    [InlineData("/assumptions")]
    public async Task Under_SI_no_figure_is_left_in_US_units(string address)
    {
        var page = await dashboard.Open(address);
        await page.GetByRole(AriaRole.Button, new() { Name = "SI", Exact = true }).ClickAsync();
        await Dashboard.Settled(page);
        // names that people gave their contracts keep what they say
        var words = (await page.Locator("main").InnerTextAsync()).Replace("4,000 gal paid in August", string.Empty, StringComparison.Ordinal);
        Assert.Empty(UsUnits().Matches(words).Select(m => words[Math.Max(0, m.Index - 30)..Math.Min(words.Length, m.Index + m.Length + 10)]));
        await dashboard.Close(page);
    }

    [Fact]
    public async Task A_figure_that_cannot_be_right_is_answered_at_its_field_and_kept()
    {
        var page = await dashboard.Open("/fuel?fuel=PROPANE");
        var cash = page.GetByLabel("cash set aside");
        var hold = page.GetByRole(AriaRole.Button, new() { Name = "hold the season against it", Exact = true });
        foreach (var (typed, said) in new[] { ("-5", "Give 0 to"), ("30000,5", "Write a point: 30000.5"), ("much", "is no number"), ("1e15", "Give 0 to") })
        {
            await cash.FillAsync(typed);
            await Dashboard.Seen(page.GetByText(said));
            await hold.ClickAsync();
            Assert.Equal(typed, await cash.InputValueAsync());
            Assert.Equal(0, await page.GetByText("is too little in").CountAsync());
        }

        await cash.FillAsync("$30,000");
        await hold.ClickAsync();
        await Dashboard.Seen(page.GetByText("is too little in"));

        await Dashboard.Go(page, "/funding");
        var budget = page.GetByLabel("budget, dollars");
        await budget.FillAsync("-5");
        await budget.PressAsync("Enter");
        await Dashboard.Seen(page.GetByText("−5 is outside. Give 0 to"));
        Assert.DoesNotContain("budgetUsd", page.Url, StringComparison.Ordinal);
        await budget.FillAsync("60,000");
        await budget.PressAsync("Enter");
        await Dashboard.Seen(page.GetByRole(AriaRole.Heading, new() { Name = "$60,000 funds" }));
        await dashboard.Close(page);
    }

    [Fact]
    public async Task A_table_wider_than_the_phone_says_which_columns_are_out_of_sight()
    {
        var page = await dashboard.Open("/supplies/sg_demo00", 390);
        var region = page.GetByRole(AriaRole.Region, new() { Name = "a past season by month, scrolls sideways", Exact = true });
        await Dashboard.Seen(region);
        await Dashboard.Seen(page.GetByText("Still to the right: "));
        await region.FocusAsync();
        await page.Keyboard.PressAsync("End");
        await region.EvaluateAsync("e => { e.scrollLeft = e.scrollWidth; }");
        await Dashboard.Seen(page.GetByText("This is its right end."));
        await dashboard.Close(page);
    }

    [GeneratedRegex(@"\d ?(ft²?|gal|gallons|therms?|MMBtu|mcf|kBtu/h|Btu/h|mph|F)\b|\$ a (gal|therm|MMBtu|mcf|ft²)|a (gal|gallon|therm|MMBtu|mcf)\b")]
    private static partial Regex UsUnits();
}
