using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace FarmPortfolio.BrowserTests;

public class WalkTests(Dashboard dashboard) : IClassFixture<Dashboard>
{
    /// <summary>When pictures are kept, every page is met in four ways instead of two.</summary>
    private static bool Keeping => Environment.GetEnvironmentVariable("SCREENSHOTS") is { Length: > 0 };

    public static TheoryData<string, string> Pages => new()
    {
        { "/", "overview" }, { "/farms", "farms" }, { "/houses/h_demo000?option=foam-now", "house" }, { "/options/h_demo000~foam-now", "option" }, { "/funding", "funding" },
        { "/fuel?fuel=PROPANE", "fuel" }, { "/fuel/prices?option=h_demo000~foam-now", "prices" },
        { "/winters", "winters" }, { "/assumptions", "assumptions" }, { "/studies", "studies" }, { "/import", "import" },
        { "/evidence", "evidence" }, { "/farms/f_demo00", "farm" }, { "/supplies/sg_demo00", "supply" }, { "/houses", "houses" }, { "/houses/new", "new-house" }, { "/co-ops", "co-ops" },
        { "/loans", "loans" }, { "/loans/lc_demo000", "loan" }, { "/loans/lc_demo031", "loan-savings-only" }, { "/loans/book", "loan-book" },
        { "/fuel?fuel=WOOD_PELLETS", "pellets" }, { "/options/h_demo060~topellets-now", "switch" }, { "/supplies/sg_demo08", "supply-prebought" },
        { "/rounds", "rounds" }, { "/rounds/fo_demo2", "round" }, { "/rounds/fo_demo1", "round-decided" }, { "/rounds/fo_demo2/memo", "memo" }, { "/awards", "awards" }, { "/awards/aw_demo5", "award" }, { "/awards/aw_demo5/letter", "letter" },
        { "/houses/h_demo000/sheet?option=foam-now", "grower-sheet" }, { "/rounds/enter", "round-enter" },
    };

    [Theory, MemberData(nameof(Pages))]
    public async Task A_page_answers_in_its_heading_and_is_accessible_on_desk_and_phone_by_day_and_night(string address, string name)
    {
        foreach (var (width, dark) in Keeping ? new[] { (1440, false), (390, true), (1440, true), (390, false) } : [(1440, false), (390, true)])
        {
            var page = await dashboard.Open(address, width, dark);
            await Dashboard.Settled(page);
            Assert.Matches("[0-9a-z]", await page.Locator("h1").First.InnerTextAsync());
            var wide = await page.EvaluateAsync<int>("document.documentElement.scrollWidth");
            Assert.True(wide <= width, $"{address} is {wide} pixels wide on a screen of {width}");
            var found = await page.RunAxe();
            Assert.True(found.Violations.Length == 0, $"{address} at {width}, dark {dark}: {string.Join("; ", found.Violations.Select(v => $"{v.Id} {v.Help}: {string.Join(", ", v.Nodes.Take(3).Select(n => n.Html))}"))}");
            await Dashboard.Keep(page, $"{name}-{width}-{(dark ? "dark" : "light")}");
            await dashboard.Close(page);
        }
    }

    [Fact]
    public async Task A_house_is_edited_the_study_goes_out_of_date_is_run_again_and_the_order_changes()
    {
        var page = await dashboard.Open("/funding");
        await Dashboard.Seen(page.Locator("tbody tr"));
        var before = await page.Locator("tbody").First.InnerTextAsync();
        await Dashboard.Go(page, "/houses/h_demo020");
        await page.GetByRole(AriaRole.Button, new() { Name = "change the house", Exact = true }).ClickAsync();
        await page.GetByLabel("air changes an hour").FillAsync("-2");
        await Dashboard.Seen(page.GetByText("is outside"));
        await page.GetByLabel("air changes an hour").FillAsync("2.5");
        await Dashboard.Gone(page.GetByText("is outside"));
        await page.GetByRole(AriaRole.Button, new() { Name = "Save the house", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByRole(AriaRole.Status).GetByText("Out of date"));
        await page.GetByRole(AriaRole.Button, new() { Name = "run study" }).ClickAsync();
        await Dashboard.Seen(page.GetByRole(AriaRole.Status).GetByText("Up to date"));
        await Dashboard.Go(page, "/funding");
        await Dashboard.Seen(page.Locator("tbody tr"));
        Assert.NotEqual(before, await page.Locator("tbody").First.InnerTextAsync());
        await dashboard.Close(page);
    }

    [Fact]
    public async Task A_record_with_faults_shows_them_and_keeps_nothing_and_a_sound_one_is_kept()
    {
        var page = await dashboard.Open("/import");
        await page.GetByLabel("what it is").SelectOptionAsync("prices");
        await page.GetByLabel("or paste it").FillAsync("month,price\n2024-01,2.1\n2024-02,-1\n");
        await page.GetByRole(AriaRole.Button, new() { Name = "Look at the file", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByText("The price of 2024-02 is -1."));
        await page.GetByLabel("or paste it").FillAsync("month,price\n" + string.Concat(Enumerable.Range(0, 36).Select(i => $"{2021 + i / 12}-{i % 12 + 1:00},{2 + 0.01 * i}\n")));
        await page.GetByLabel("name to keep it under").FillAsync("own tickets");
        await page.GetByRole(AriaRole.Button, new() { Name = "Look at the file", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByText("0 faults"));
        await page.GetByRole(AriaRole.Button, new() { Name = "Import 36 rows", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByRole(AriaRole.Heading, new() { Name = "Kept:" }));
        await Dashboard.Go(page, "/fuel?fuel=PROPANE");
        await Dashboard.Seen(page.GetByText("own tickets"));
        await dashboard.Close(page);
    }

    [Fact]
    public async Task Units_switch_and_stay()
    {
        var page = await dashboard.Open("/houses");
        await Dashboard.Seen(page.GetByText("30 ft"));
        await page.GetByRole(AriaRole.Button, new() { Name = "SI", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByText("9.14 m"));
        await page.ReloadAsync();
        await Dashboard.Seen(page.GetByText("9.14 m"));
        await dashboard.Close(page);
    }
}
