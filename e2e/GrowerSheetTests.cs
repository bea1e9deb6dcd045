using Microsoft.Playwright;

namespace FarmPortfolio.BrowserTests;

/// <summary>The sheet that a grower takes home.</summary>
public class GrowerSheetTests(Dashboard dashboard) : IClassFixture<Dashboard>
{
    [Fact]
    public async Task The_growers_sheet_tells_ranges_dangers_and_its_study_and_is_reached_from_house_and_option()
    {
        var page = await dashboard.Open("/houses/h_demo000?option=foam-now");
        await page.GetByRole(AriaRole.Link, new() { Name = "sheet for the grower to print", Exact = true }).ClickAsync();
        await Dashboard.Reached(page, "/houses/h_demo000/sheet\\?option=foam-now$");
        await Dashboard.Seen(page.Locator(".sheet .point"));
        var sheet = await page.Locator(".sheet").InnerTextAsync();
        foreach (var danger in new[] { "Carbon monoxide", "Wiring", "Pumps and wet floors", "Snow:", "Borrowing", "Local codes and licensed trades", "This is a range, not a promise" })
        {
            Assert.Contains(danger, sheet, StringComparison.Ordinal);
        }

        var numbers = await page.Locator(".sheet .point > b:first-child").AllInnerTextsAsync();
        Assert.Equal(numbers.Select(n => int.Parse(n.Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture)).Order(), numbers.Select(n => int.Parse(n.Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture)));
        Assert.True(numbers.Count >= 14, string.Join("; ", numbers));
        Assert.Matches(@"saves \$[\d,]+ \(one in ten under .*one in ten over \$[\d,]+\) a season", await page.Locator(".sheet h1").InnerTextAsync());
        Assert.Matches(@"As it stands \$[\d,]+ \(one in ten under \$[\d,]+, one in ten over \$[\d,]+\); with the work \$", sheet);
        Assert.Matches(@"study \d+ of \d{4}-\d\d-\d\d, [\d,]+ futures.*Invented example", await page.Locator(".sheet-foot").InnerTextAsync());
        await page.EmulateMediaAsync(new() { Media = Media.Print });
        await page.SetViewportSizeAsync(716, 960);
        await Dashboard.Keep(page, "grower-sheet-paper");
        await page.EmulateMediaAsync(new() { Media = Media.Screen });
        await page.SetViewportSizeAsync(1440, 900);
        await Dashboard.Keep(page, "grower-sheet-screen");
        await page.GetByRole(AriaRole.Link, new() { Name = "Foam", Exact = false }).First.ClickAsync();
        await Dashboard.Seen(page.GetByRole(AriaRole.Link, new() { Name = "sheet for the grower to print", Exact = true }));
        await dashboard.Close(page);
    }
}
