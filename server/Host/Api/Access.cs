using Microsoft.Extensions.FileProviders;

namespace FarmPortfolio.Host.Api;

/// <summary>Who may reach the host, and what a browser may do with it.</summary>
public static class Access
{
    private const string ContentPolicy = "default-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; frame-ancestors 'none'; base-uri 'self'; form-action 'self'";

    /// <summary>Why the host refuses to start.</summary>
    /// <param name="configuration">Settings.</param>
    /// <returns>The reason; null = it may start.</returns>
    public static string? Refusal(IConfiguration configuration)
    {
        var remote = (configuration["urls"] ?? string.Empty).Split(';', StringSplitOptions.RemoveEmptyEntries).Where(u => !Loopback(u)).ToList();
        if (remote.Count == 0)
        {
            return null;
        }

        if (configuration.GetValue("Access:AllowRemote", false))
        {
            Console.Error.WriteLine($"Warning: {string.Join(", ", remote)} can be reached from other machines, and there is no sign-in.");
            return null;
        }

        return $"{string.Join(", ", remote)} would be reachable from other machines, and there is no sign-in. Listen on localhost, or set Access:AllowRemote=true.";
    }

    /// <summary>Checks the Host header and sets the security headers.</summary>
    /// <param name="app">The host.</param>
    public static void UseAccessRules(this WebApplication app)
    {
        var remote = app.Configuration.GetValue("Access:AllowRemote", false);
        app.Use(async (http, next) =>
        {
            if (!remote && http.Request.Host.Host is not ("localhost" or "127.0.0.1" or "[::1]"))
            {
                http.Response.StatusCode = StatusCodes.Status400BadRequest;
                await http.Response.WriteAsync("This host answers to localhost only.");
                return;
            }

            http.Response.Headers.ContentSecurityPolicy = ContentPolicy;
            http.Response.Headers.XContentTypeOptions = "nosniff";
            http.Response.Headers["Referrer-Policy"] = "no-referrer";
            await next();
        });
    }

    /// <summary>Serves the built front end, and its first page for every address of its own.</summary>
    /// <param name="app">The host.</param>
    public static void UseWebFiles(this WebApplication app)
    {
        var folder = Path.Combine(AppContext.BaseDirectory, "web");
        if (!Directory.Exists(folder))
        {
            return;
        }

        var files = new PhysicalFileProvider(folder);
        app.UseDefaultFiles(new DefaultFilesOptions { FileProvider = files });
        app.UseStaticFiles(new StaticFileOptions { FileProvider = files });
        app.MapFallbackToFile("index.html", new StaticFileOptions { FileProvider = files });
    }

    private static bool Loopback(string url) => Uri.TryCreate(url.Replace("*", "remote", StringComparison.Ordinal).Replace("+", "remote", StringComparison.Ordinal), UriKind.Absolute, out var uri) && uri.IsLoopback;
}
