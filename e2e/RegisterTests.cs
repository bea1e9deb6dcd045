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
        await page.GetByText("If these are metres").WaitForAsync();
        await page.GetByLabel("width of a bay, ft").FillAsync("300");
        await page.GetByText("is outside").WaitForAsync();
        await page.GetByLabel("width of a bay, ft").FillAsync("30");
        await page.GetByLabel("length, ft").FillAsync("96");
        await page.GetByLabel("used last winter, gal").FillAsync("1500");
        await page.GetByText("you told").WaitForAsync();
        await page.GetByText("Taken for granted").WaitForAsync();
        await Dashboard.Settled(page);
        var found = await page.RunAxe();
        Assert.True(found.Violations.Length == 0, string.Join("; ", found.Violations.Select(v => $"{v.Id}: {string.Join(", ", v.Nodes.Take(3).Select(n => n.Html))}")));
        Assert.True(await page.EvaluateAsync<int>("document.documentElement.scrollWidth") <= width);
        await Dashboard.Keep(page, $"new-house-{width}-{(dark ? "dark" : "light")}");
        await page.GetByRole(AriaRole.Button, new() { Name = "Add the house" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = $"Wren Mill {width}, house 1 loses" }).WaitForAsync();
        await page.GetByText("we reckon").WaitForAsync();
        await dashboard.Close(page);
    }

    [Fact]
    public async Task A_sheet_shows_its_faults_then_its_good_rows_come_in_and_can_be_taken_back()
    {
        var page = await dashboard.Open("/import");
        await page.GetByLabel("or paste it").FillAsync("farm,weather station,house,width (ft),length (ft),fuel\nTern Bank,Stonemill,house 1,30,96,propane\nTern Bank,,house 2,thirty,96,propane\n");
        await page.GetByRole(AriaRole.Button, new() { Name = "Look at the file" }).ClickAsync();
        await page.GetByText("\"thirty\" is no number.").WaitForAsync();
        await page.GetByLabel("keep the good rows only").CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Import the good rows" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Kept:" }).WaitForAsync();
        await page.GotoAsync("/farms?find=Tern");
        await page.GetByRole(AriaRole.Link, new() { Name = "house 1" }).WaitForAsync();
        await TakeBack(page, "Tern Bank");
        await page.GotoAsync("/farms?find=Tern");
        await page.GetByRole(AriaRole.Heading, new() { Name = "0 farms" }).WaitForAsync();
        await dashboard.Close(page);
    }

    [Fact]
    public async Task A_sheet_of_quotes_comes_in_and_stands_on_the_page_of_its_farm()
    {
        var page = await dashboard.Open("/import");
        await page.GetByLabel("what it is").SelectOptionAsync("quotes");
        await page.GetByText("Rows of one farm, supplier and date are one quote").WaitForAsync();
        await page.GetByLabel("or paste it").FillAsync("farm,house,retrofit,material,labour,supplier,date,kind\nAlder Reach,house 1,endwalls,1234,766,a builder of sheets,2027-04-05,firm\nAlder Reech,house 1,seal,5,,x,2027-04-05,firm\n");
        await page.GetByRole(AriaRole.Button, new() { Name = "Look at the file" }).ClickAsync();
        await page.GetByText("Write \"Alder Reach\" if that is the farm.").WaitForAsync();
        await Dashboard.Keep(page, "quotes-import-1440-light");
        await page.GetByLabel("keep the good rows only").CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Import the good rows" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Kept: 1 quote of 2 lines for 1 farm." }).WaitForAsync();
        await page.GotoAsync("/farms/f_demo00");
        await page.GetByText("a builder of sheets").First.WaitForAsync();
        await TakeBack(page, "1 quote is brought in from");
        await dashboard.Close(page);
    }

    [Fact]
    public async Task A_house_is_copied_then_deleted_after_saying_what_goes_with_it_then_brought_back()
    {
        var page = await dashboard.Open("/houses/h_demo101");
        await page.GetByRole(AriaRole.Button, new() { Name = "copy the house" }).ClickAsync();
        await page.GetByLabel("name of the copy").FillAsync("house 9");
        await page.GetByRole(AriaRole.Button, new() { Name = "Copy it" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "house 9 loses" }).WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "delete house 9" }).ClickAsync();
        await page.GetByText("option set").WaitForAsync();
        await Dashboard.Keep(page, "house-delete-1440-light");
        await page.GetByRole(AriaRole.Button, new() { Name = "Delete house 9" }).ClickAsync();
        await page.GetByText("house 9 is deleted.").WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "undo" }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "house 9" }).WaitForAsync();
        await dashboard.Close(page);
    }

    /// <summary>Undoes the newest change on the studies page, which the words are of.</summary>
    private static async Task TakeBack(IPage page, string words)
    {
        await page.GotoAsync("/studies");
        var undone = page.GetByText("is undone");
        await page.GetByText(words).First.WaitForAsync();
        var before = await undone.CountAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "undo" }).First.ClickAsync();

        // another change may have been taken back already: its line must not pass for this one's
        await undone.Nth(before).WaitForAsync();
    }
}
