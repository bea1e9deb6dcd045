using Microsoft.Playwright;

namespace FarmPortfolio.BrowserTests;

/// <summary>A link opens the same view for whoever follows it: the address names the co-op.</summary>
public class LinkTests(Dashboard dashboard) : IClassFixture<Dashboard>
{
    [Fact]
    public async Task A_link_opens_its_co_op_for_whoever_follows_it()
    {
        var writer = await dashboard.Open("/co-ops");
        await writer.GetByLabel("name of the co-op").FillAsync("Link growers");
        await writer.GetByRole(AriaRole.Button, new() { Name = "Begin an empty co-op", Exact = true }).ClickAsync();
        await Dashboard.Seen(writer.GetByText("What comes next"));
        await Dashboard.Reached(writer, "/co-op/co_[0-9a-f]{32}/farms$");
        await writer.GetByRole(AriaRole.Link, new() { Name = "Winters", Exact = true }).ClickAsync();
        await Dashboard.Reached(writer, "/co-op/co_[0-9a-f]{32}/winters$");
        var sent = writer.Url;

        // the receiver's browser remembers nothing, and then the example; the link opens the writer's all the same
        var receiver = await dashboard.Open(sent);
        await Dashboard.Seen(receiver.GetByRole(AriaRole.Link, new() { Name = "Link growers", Exact = true }));
        await Dashboard.Go(receiver, "/co-op/demo/farms");
        await Dashboard.Seen(receiver.GetByText("Invented example: co-op"));
        await Dashboard.Go(receiver, sent);
        await Dashboard.Seen(receiver.GetByRole(AriaRole.Link, new() { Name = "Link growers", Exact = true }));

        // a house of another co-op opens that one, and says whose it is; an old address does too
        var own = sent[..sent.LastIndexOf('/')];
        foreach (var address in new[] { $"{own}/houses/h_demo000", "/houses/h_demo000" })
        {
            await Dashboard.Go(receiver, sent);
            await Dashboard.Seen(receiver.GetByRole(AriaRole.Link, new() { Name = "Link growers", Exact = true }));
            await Dashboard.Go(receiver, address);
            await Dashboard.Seen(receiver.GetByRole(AriaRole.Note).Filter(new() { HasText = "so that co-op is open now, not Link growers" }));
            await Dashboard.Seen(receiver.GetByText("Invented example: co-op"));
            await Dashboard.Reached(receiver, "/co-op/demo/houses/h_demo000$");
        }

        // a co-op that is not here is said to be missing, with a way on
        await Dashboard.Go(receiver, "/co-op/co_nowhere/farms");
        await Dashboard.Seen(receiver.GetByText("There is no co-op"));
        await receiver.GetByRole(AriaRole.Link, new() { Name = "choose a co-op", Exact = true }).ClickAsync();
        await Dashboard.Seen(receiver.GetByText("are kept on this machine"));
        await dashboard.Close(receiver);
        await dashboard.Close(writer);
    }
}
