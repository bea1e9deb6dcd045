using System.Collections.Concurrent;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.Playwright;

namespace FarmPortfolio.BrowserTests;

/// <summary>The real host on a port of its own, with a fresh demo, and a browser that looks at it.</summary>
public sealed class Dashboard : IAsyncLifetime
{
    private static readonly string[] Flags = ["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-component-update", "--disable-sync", "--no-first-run", "--disable-quic"];

    private const string Standing = """
        () => {
          const main = document.querySelector('#main[aria-busy=false]');
          const words = main && main.querySelector('h1') ? main.innerText : undefined;
          const same = words !== undefined && window.wordsOnce === words;
          if (!same) {
            window.wordsOnce = words;
            window.wordsSince = performance.now();
          }
          return same && performance.now() - window.wordsSince >= 400;
        }
        """;

    private readonly HostOnAPort host = new();
    private readonly ConcurrentDictionary<IPage, ConcurrentQueue<string>> complaints = new();
    private IPlaywright? playwright;
    private IBrowser? browser;

    public async ValueTask InitializeAsync()
    {
        host.UseKestrel(0);
        host.StartServer();
        await FirstStudy();
        var (path, environment) = ChromiumFiles.Find();
        playwright = await Playwright.CreateAsync();
        browser = await playwright.Chromium.LaunchAsync(new() { ExecutablePath = path, Args = Flags, Env = environment.Count > 0 ? Merged(environment) : null });
    }

    /// <summary>Opens an address in a browser that remembers nothing.</summary>
    public async Task<IPage> Open(string address, int width = 1440, bool dark = false)
    {
        var context = await browser!.NewContextAsync(new()
        {
            BaseURL = host.ClientOptions.BaseAddress.ToString(),
            ViewportSize = new() { Width = width, Height = 900 },
            ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light,
            ReducedMotion = ReducedMotion.Reduce,
        });
        var page = await context.NewPageAsync();
        page.SetDefaultTimeout(60_000);
        var heard = complaints.GetOrAdd(page, _ => []);
        page.Console += (_, said) => heard.Enqueue(said.Type == "error" ? $"{said.Text} ({said.Location})" : string.Empty);
        page.PageError += (_, error) => heard.Enqueue(error);
        page.Request += (_, request) => heard.Enqueue(request.Url.StartsWith(host.ClientOptions.BaseAddress.ToString(), StringComparison.Ordinal) || request.Url.StartsWith("data:", StringComparison.Ordinal) ? string.Empty : $"asks {request.Url}");
        await Go(page, address);
        return page;
    }

    /// <summary>Goes to an address and waits until the page has all it needs: a test that acts before would meet another page on a slow machine than on a quick one.</summary>
    public static async Task Go(IPage page, string address)
    {
        await page.GotoAsync(address);
        await page.Locator("main:not([aria-busy=true]) h1").First.WaitForAsync(new() { Timeout = 120_000 });
    }

    /// <summary>Closes a page; fails where it complained on the console, threw, broke the content policy or asked another host for anything.</summary>
    public async Task Close(IPage page)
    {
        await page.Context.CloseAsync();
        Assert.True(complaints.TryRemove(page, out var heard));
        Assert.DoesNotContain(heard, h => h.Length > 0);
    }

    /// <summary>Waits until the address reads as the pattern. It looks again and again: waiting for the one event of arrival misses it where it comes between the look and the wait.</summary>
    public static Task Reached(IPage page, string pattern) => Assertions.Expect(page).ToHaveURLAsync(new Regex(pattern), new() { Timeout = 60_000 });

    /// <summary>Waits until the page has all it needs and its words have stood for a while: the network is never a sign of that, for figures come late and events never end.</summary>
    public static Task Settled(IPage page) => page.WaitForFunctionAsync(Standing, options: new() { PollingInterval = 100, Timeout = 120_000 });

    /// <summary>Waits until one of what is looked for can be seen. That it stands twice is no fault of the page; two minutes are a study's time on a busy machine.</summary>
    public static Task Seen(ILocator looked) => looked.Filter(new() { Visible = true }).First.WaitForAsync(new() { Timeout = 120_000 });

    /// <summary>Waits until none of what is looked for is left.</summary>
    public static Task Gone(ILocator looked) => Assertions.Expect(looked).ToHaveCountAsync(0, new() { Timeout = 60_000 });

    /// <summary>Keeps a picture where SCREENSHOTS names a folder.</summary>
    public static async Task Keep(IPage page, string name)
    {
        if (Environment.GetEnvironmentVariable("SCREENSHOTS") is { Length: > 0 } folder)
        {
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, name + ".png"), FullPage = true });
        }
    }

    public async ValueTask DisposeAsync()
    {
        if (browser is not null)
        {
            await browser.DisposeAsync();
        }

        playwright?.Dispose();
        await host.DisposeAsync();
    }

    /// <summary>The demo's first study has ended: every page stands on it.</summary>
    private async Task FirstStudy()
    {
        using var client = host.CreateClient();
        for (var end = DateTime.UtcNow.AddMinutes(5); DateTime.UtcNow < end; await Task.Delay(200))
        {
            using var answer = await client.PostAsJsonAsync(new Uri("/graphql", UriKind.Relative), new { query = "{ coop { newestStudy { id } runningStudy { id } } }" });
            var coop = (await answer.Content.ReadFromJsonAsync<JsonNode>())!["data"]!["coop"]!;
            if (coop["newestStudy"] is not null && coop["runningStudy"] is null)
            {
                return;
            }
        }

        throw new TimeoutException("the demo's first study did not end in five minutes");
    }

    private static Dictionary<string, string> Merged(Dictionary<string, string> more)
    {
        var all = Environment.GetEnvironmentVariables().Cast<System.Collections.DictionaryEntry>().ToDictionary(e => (string)e.Key, e => (string)e.Value!);
        foreach (var (key, value) in more)
        {
            all[key] = value;
        }

        return all;
    }

    private sealed class HostOnAPort : WebApplicationFactory<Program>
    {
        private readonly string folder = Directory.CreateTempSubdirectory("farm-portfolio-").FullName;

        protected override void ConfigureWebHost(IWebHostBuilder builder) => builder.UseSetting("Storage:Folder", folder).UseSetting("urls", "http://127.0.0.1:0").UseSetting("Logging:LogLevel:Default", "Warning");

        protected override void Dispose(bool disposing)
        {
            base.Dispose(disposing);
            if (Directory.Exists(folder))
            {
                Directory.Delete(folder, recursive: true);
            }
        }
    }
}
