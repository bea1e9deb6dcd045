using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace FarmPortfolio.BrowserTests;

public class RegisterTests(Dashboard dashboard) : IClassFixture<Dashboard>
{
    [Theory]
    [InlineData(1440, false)]
    [InlineData(390, true)]
    public async Task Nine_answers_give_a_first_figure_before_anything_is_kept_then_a_house(int width, bool dark)
    {
        var page = await dashboard.Open("/houses/new", width, dark);
        await page.GetByLabel("name of the new farm").FillAsync($"Wren Mill {width}");
        await page.GetByLabel("weather station").SelectOptionAsync(new SelectOptionValue { Label = "Stonemill" });
        await page.GetByLabel("name of the house").FillAsync("house 1");
        await page.GetByLabel("width of a bay, ft").FillAsync("9.1");
        await page.GetByLabel("length, ft").FillAsync("29");
        await Dashboard.Seen(page.GetByText("If these are metres"));
        await page.GetByLabel("width of a bay, ft").FillAsync("300");
        await Dashboard.Seen(page.GetByText("is outside"));
        await page.GetByLabel("width of a bay, ft").FillAsync("30");
        await page.GetByLabel("length, ft").FillAsync("96");
        await page.GetByLabel("used last winter, gal").FillAsync("1500");
        await Dashboard.Seen(page.GetByText("you told"));
        await Dashboard.Seen(page.GetByText("Taken for granted"));
        await Dashboard.Settled(page);
        var found = await page.RunAxe();
        Assert.True(found.Violations.Length == 0, string.Join("; ", found.Violations.Select(v => $"{v.Id}: {string.Join(", ", v.Nodes.Take(3).Select(n => n.Html))}")));
        Assert.True(await page.EvaluateAsync<int>("document.documentElement.scrollWidth") <= width);
        await Dashboard.Keep(page, $"new-house-{width}-{(dark ? "dark" : "light")}");
        await page.GetByRole(AriaRole.Button, new() { Name = "Add the house", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByRole(AriaRole.Heading, new() { Name = $"Wren Mill {width}, house 1 loses" }));
        await Dashboard.Seen(page.GetByText("we reckon"));
        await dashboard.Close(page);
    }

    [Fact]
    public async Task A_sheet_shows_its_faults_then_its_good_rows_come_in_and_can_be_taken_back()
    {
        var page = await dashboard.Open("/import");
        await page.GetByLabel("or paste it").FillAsync("farm,weather station,house,width (ft),length (ft),fuel\nTern Bank,Stonemill,house 1,30,96,propane\nTern Bank,,house 2,thirty,96,propane\n");
        await page.GetByRole(AriaRole.Button, new() { Name = "Look at the file", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByText("\"thirty\" is no number."));
        await page.GetByLabel("keep the good rows only").CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Import the good rows", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByRole(AriaRole.Heading, new() { Name = "Kept:" }));
        await Dashboard.Go(page, "/farms?find=Tern");
        await Dashboard.Seen(page.GetByRole(AriaRole.Link, new() { Name = "house 1", Exact = true }));
        await TakeBack(page, "Tern Bank");
        await Dashboard.Go(page, "/farms?find=Tern");
        await Dashboard.Seen(page.GetByRole(AriaRole.Heading, new() { Name = "0 farms" }));
        await dashboard.Close(page);
    }

    [Fact]
    public async Task A_sheet_of_quotes_comes_in_and_stands_on_the_page_of_its_farm()
    {
        var page = await dashboard.Open("/import");
        await page.GetByLabel("what it is").SelectOptionAsync("quotes");
        await Dashboard.Seen(page.GetByText("Rows of one farm, supplier and date are one quote"));
        await page.GetByLabel("or paste it").FillAsync("farm,house,retrofit,material,labour,supplier,date,kind\nAlder Reach,house 1,endwalls,1234,766,a builder of sheets,2027-04-05,firm\nAlder Reech,house 1,seal,5,,x,2027-04-05,firm\n");
        await page.GetByRole(AriaRole.Button, new() { Name = "Look at the file", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByText("Write \"Alder Reach\" if that is the farm."));
        await Dashboard.Keep(page, "quotes-import-1440-light");
        await page.GetByLabel("keep the good rows only").CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Import the good rows", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByRole(AriaRole.Heading, new() { Name = "Kept: 1 quote of 2 lines for 1 farm." }));
        await Dashboard.Go(page, "/farms/f_demo00");
        await Dashboard.Seen(page.GetByText("a builder of sheets"));
        await TakeBack(page, "1 quote is brought in from");
        await dashboard.Close(page);
    }

    [Fact]
    public async Task A_house_is_copied_then_deleted_after_saying_what_goes_with_it_then_brought_back()
    {
        var page = await dashboard.Open("/houses/h_demo101");
        await page.GetByRole(AriaRole.Button, new() { Name = "copy the house", Exact = true }).ClickAsync();
        await page.GetByLabel("name of the copy").FillAsync("house 9");
        await page.GetByRole(AriaRole.Button, new() { Name = "Copy it", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByRole(AriaRole.Heading, new() { Name = "house 9 loses" }));
        await page.GetByRole(AriaRole.Button, new() { Name = "delete house 9", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByText("option set"));
        await Dashboard.Keep(page, "house-delete-1440-light");
        await page.GetByRole(AriaRole.Button, new() { Name = "Delete house 9", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByText("house 9 is deleted."));
        await page.GetByRole(AriaRole.Button, new() { Name = "undo", Exact = true }).ClickAsync();
        await Dashboard.Seen(page.GetByRole(AriaRole.Link, new() { Name = "house 9", Exact = true }));
        await dashboard.Close(page);
    }

    /// <summary>Undoes the newest change on the studies page, which the words are of.</summary>
    private static async Task TakeBack(IPage page, string words)
    {
        await Dashboard.Go(page, "/studies");
        var undone = page.GetByText("is undone");
        await Dashboard.Seen(page.GetByText(words));
        var before = await undone.CountAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "undo" }).First.ClickAsync();

        // another change may have been taken back already: its line must not pass for this one's
        await Dashboard.Seen(undone.Nth(before));
    }
}
