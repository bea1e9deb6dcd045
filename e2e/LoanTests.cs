using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace FarmPortfolio.BrowserTests;

public partial class LoanTests(Dashboard dashboard) : IClassFixture<Dashboard>
{
    [Theory]
    [InlineData(1440, false)]
    [InlineData(390, true)]
    public async Task A_case_is_typed_answered_as_one_types_saved_and_a_larger_one_is_riskier(int width, bool dark)
    {
        var page = await dashboard.Open("/loans", width, dark);
        await page.GetByRole(AriaRole.Button, new() { Name = "add a loan case", Exact = true }).ClickAsync();
        await page.GetByLabel(HouseLabel()).SelectOptionAsync(new SelectOptionValue { Label = "Alder Reach, house 2" });
        await page.GetByLabel(OptionLabel()).SelectOptionAsync("curtain-now");
        await page.GetByLabel("amount lent, $").FillAsync("-5");
        await Dashboard.Seen(page.GetByText("is outside $100 to"));
        await page.GetByLabel("amount lent, $").FillAsync("8000");
        await Dashboard.Seen(page.GetByText("safe at 95 %"));
        await page.GetByLabel("term, years").FillAsync("40");
        await Dashboard.Seen(page.GetByText("is outside 1 to 30"));
        await page.GetByLabel("term, years").FillAsync("7");
        await Dashboard.Gone(page.GetByText("is outside 1 to 30"));
        await Sound(page, $"loan-form-{width}-{(dark ? "dark" : "light")}", width);
        await page.GetByRole(AriaRole.Button, new() { Name = "Save the case", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByText("Modelled, not a credit score"));
        await Dashboard.Seen(page.GetByRole(AriaRole.Heading, new() { Name = "futures the savings miss the payment" }));
        var before = await page.Locator("h1").First.InnerTextAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "change the terms", Exact = true }).ClickAsync();
        await page.GetByLabel("amount lent, $").FillAsync("16000");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save the case", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByRole(AriaRole.Button, new() { Name = "change the terms", Exact = true }));
        await page.WaitForFunctionAsync("before => document.querySelector('h1').innerText !== before", before);
        var after = await page.Locator("h1").First.InnerTextAsync();
        Assert.True(Misses(after) > Misses(before), $"before: {before}; after: {after}");
        await page.GetByRole(AriaRole.Button, new() { NameRegex = DeleteCase() }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "yes, delete it", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "undo", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByRole(AriaRole.Button, new() { NameRegex = DeleteCase() }));
        await dashboard.Close(page);
    }

    [Theory]
    [InlineData("Letter", "lc_demo000")]
    [InlineData("A4", "lc_demo050")]
    public async Task The_case_sheet_is_one_page_with_its_fifteen_points(string paper, string id)
    {
        var page = await dashboard.Open($"/loans/{id}");
        await Dashboard.Seen(page.GetByText("Fuel twice as dear, two coldest winters"));
        await page.EmulateMediaAsync(new() { Media = Media.Print });
        Assert.Equal(15, await page.Locator(".case-sheet .point").CountAsync());
        await Dashboard.Seen(page.Locator(".case-sheet"));
        Assert.False(await page.Locator(".screen-only").IsVisibleAsync());
        var bytes = await page.PdfAsync(new() { Format = paper, PreferCSSPageSize = false });
        if (Environment.GetEnvironmentVariable("SCREENSHOTS") is { Length: > 0 } folder)
        {
            await File.WriteAllBytesAsync(Path.Combine(folder, $"case-sheet-{paper}.pdf"), bytes);
            await page.SetViewportSizeAsync(740, 960);
            await Dashboard.Keep(page, $"case-sheet-{paper}");
        }

        var pages = PdfPage().Count(Encoding.Latin1.GetString(bytes));
        Assert.Equal(1, pages);
        await dashboard.Close(page);
    }

    private static int Misses(string heading) => int.Parse(Missing().Match(heading).Groups[1].Value, CultureInfo.InvariantCulture);

    private static async Task Sound(IPage page, string name, int width)
    {
        var found = await page.RunAxe();
        Assert.True(found.Violations.Length == 0, $"{name}: {string.Join("; ", found.Violations.Select(v => $"{v.Id}: {string.Join(", ", v.Nodes.Take(3).Select(n => n.Html))}"))}");
        var wide = await page.EvaluateAsync<int>("document.documentElement.scrollWidth");
        Assert.True(wide <= width, $"{name} is {wide} pixels wide on a screen of {width}");
        await Dashboard.Keep(page, name);
    }

    [GeneratedRegex("^house")]
    private static partial Regex HouseLabel();

    [GeneratedRegex("^option")]
    private static partial Regex OptionLabel();

    [GeneratedRegex("^delete (?!statement)")]
    private static partial Regex DeleteCase();

    [GeneratedRegex(@"In (?:under )?(\d+) of 100")]
    private static partial Regex Missing();

    [GeneratedRegex(@"/Type\s*/Page\b")]
    private static partial Regex PdfPage();
}
