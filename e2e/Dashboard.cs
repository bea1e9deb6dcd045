using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.Playwright;

namespace FarmPortfolio.BrowserTests;

/// <summary>The real host on a port of its own, with a fresh demo, and a browser that looks at it.</summary>
public sealed class Dashboard : IAsyncLifetime
{
    private static readonly string[] Flags = ["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-component-update", "--disable-sync", "--no-first-run", "--disable-quic"];
    private readonly HostOnAPort host = new();
    private IPlaywright? playwright;
    private IBrowser? browser;

    public async ValueTask InitializeAsync()
    {
        host.UseKestrel(0);
        host.StartServer();
        var (path, environment) = ChromiumFiles.Find();
        playwright = await Playwright.CreateAsync();
        browser = await playwright.Chromium.LaunchAsync(new() { ExecutablePath = path, Args = Flags, Env = environment.Count > 0 ? Merged(environment) : null });
    }

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
        await page.GotoAsync(address);
        return page;
    }

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

        protected override void ConfigureWebHost(IWebHostBuilder builder) => builder.UseSetting("Storage:Folder", folder);

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
