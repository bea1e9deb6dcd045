using System.Globalization;
using System.Text;
using Microsoft.Playwright;

namespace FarmPortfolio.BrowserTests;

/// <summary>A file too long for a request, and many houses at once.</summary>
public class LongFileTests(Dashboard dashboard) : IClassFixture<Dashboard>
{
    [Fact]
    public async Task A_long_record_is_sent_looked_at_and_kept_and_garbage_is_refused()
    {
        var page = await dashboard.Open("/import");
        await page.GetByLabel("what it is").SelectOptionAsync("weather");
        await page.Locator("input[type=file]").SetInputFilesAsync(new FilePayload { Name = "garbage.csv", MimeType = "text/csv", Buffer = Encoding.ASCII.GetBytes(string.Concat(Enumerable.Repeat("lorem ipsum\n", 120_000))) });
        await Dashboard.Seen(page.GetByText("hold no head"));
        await page.Locator("input[type=file]").SetInputFilesAsync(new FilePayload { Name = "hours.csv", MimeType = "text/csv", Buffer = Hourly(8) });
        await Dashboard.Seen(page.GetByText("look at the file now"));
        await page.GetByLabel("name to keep it under").FillAsync("Long station");
        await page.GetByLabel("latitude, degrees north").FillAsync("43.6");
        await page.GetByRole(AriaRole.Button, new() { Name = "Look at the file", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Import 7" }).ClickAsync();
        await Dashboard.Seen(page.GetByText("Kept: "));
        await page.Context.CloseAsync();
    }

    [Theory]
    [InlineData(1440, false)]
    [InlineData(390, true)]
    public async Task Many_houses_change_at_once_and_one_undo_takes_it_back(int width, bool dark)
    {
        var page = await dashboard.Open("/houses", width, dark);
        await page.Locator("label:has(> span:text-is('fuel')) select").SelectOptionAsync("FUEL_OIL");
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new("tick the \\d+ shown") }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new("change the \\d+ ticked") }).ClickAsync();
        await page.GetByLabel("air changes an hour").FillAsync("900");
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Change \\d+ houses") }).ClickAsync();
        await Dashboard.Seen(page.GetByText("is outside"));
        await page.GetByLabel("air changes an hour").FillAsync(width == 390 ? "1.1" : "1.2");
        await Dashboard.Settled(page);
        Assert.True(await page.EvaluateAsync<int>("document.documentElement.scrollWidth") <= width);
        await Dashboard.Keep(page, $"houses-{width}-{(dark ? "dark" : "light")}");
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Change \\d+ houses") }).ClickAsync();
        await Dashboard.Seen(page.GetByText("houses changed alike."));
        await page.GetByRole(AriaRole.Button, new() { Name = "undo", Exact = true }).ClickAsync();
        await Dashboard.Gone(page.GetByText("houses changed alike."));
        await page.Locator("table a").First.ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "show who changed what", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByText("is undone"));
        await dashboard.Close(page);
    }

    private static byte[] Hourly(int years)
    {
        var text = new StringBuilder("time,temperature (C)\n");
        var end = new DateTime(1995 + years, 7, 1, 0, 0, 0, DateTimeKind.Unspecified);
        for (var at = new DateTime(1995, 7, 1, 0, 0, 0, DateTimeKind.Unspecified); at < end; at = at.AddHours(1))
        {
            text.Append(CultureInfo.InvariantCulture, $"{at:yyyy-MM-dd HH:mm},{10 - 14 * Math.Cos(2 * Math.PI * (at.DayOfYear - 15) / 365.0):0.0}\n");
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }
}
