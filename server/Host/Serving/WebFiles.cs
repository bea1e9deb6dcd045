using Microsoft.Extensions.FileProviders;
using Microsoft.Net.Http.Headers;

namespace FarmPortfolio.Host.Serving;

/// <summary>Serves the built front end from the folder web beside the program.</summary>
public static class WebFiles
{
    /// <summary>Files by name, and the first page for every address of a page. Files under assets/ carry a hash in their name and may be kept for ever.</summary>
    /// <param name="app">The host.</param>
    /// <exception cref="DirectoryNotFoundException">The front end was not built.</exception>
    public static void UseWebFiles(this WebApplication app)
    {
        var folder = Path.Combine(AppContext.BaseDirectory, "web");
        if (!File.Exists(Path.Combine(folder, "index.html")))
        {
            throw new DirectoryNotFoundException($"The pages are missing: {folder} holds no index.html. Build again with dotnet build.");
        }

        var options = new StaticFileOptions
        {
            FileProvider = new PhysicalFileProvider(folder),
            OnPrepareResponse = sent => sent.Context.Response.Headers[HeaderNames.CacheControl] =
                sent.Context.Request.Path.StartsWithSegments("/assets", StringComparison.Ordinal) ? "public, max-age=31536000, immutable" : "no-cache",
        };
        app.UseDefaultFiles(new DefaultFilesOptions { FileProvider = options.FileProvider });
        app.UseStaticFiles(options);
        app.MapFallbackToFile("index.html", options);
    }
}
