using System.Net;

namespace FarmPortfolio.Host.Serving;

/// <summary>Which requests are answered at all, and what a browser may do with the answers.</summary>
public static class AccessRules
{
    private const string ContentPolicy =
        "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; img-src 'self' data:; connect-src 'self'; manifest-src 'self'; " +
        "frame-ancestors 'none'; base-uri 'none'; form-action 'none'";

    /// <summary>
    /// Answers only requests whose Host header names this machine (so that no foreign page can reach it under a name of its own), no request that a page of another origin sends but for reading pages,
    /// and sends the security headers with every answer.
    /// With Access:AllowRemote the machine's own name and plain IP numbers count as well; Access:Hosts adds names.
    /// </summary>
    /// <param name="app">The host.</param>
    public static void UseAccessRules(this WebApplication app)
    {
        var settings = app.Services.GetRequiredService<HostSettings>();
        app.Use(async (http, next) =>
        {
            var headers = http.Response.Headers;
            headers.ContentSecurityPolicy = ContentPolicy;
            headers.XContentTypeOptions = "nosniff";
            headers["Referrer-Policy"] = "no-referrer";
            headers["Cross-Origin-Opener-Policy"] = "same-origin";
            headers["Cross-Origin-Resource-Policy"] = "same-origin";
            headers["Permissions-Policy"] = "camera=(), microphone=(), geolocation=()";
            if (!IsOurs(http.Request.Host.Host, settings))
            {
                http.Response.StatusCode = StatusCodes.Status421MisdirectedRequest;
                await http.Response.WriteAsync("This host does not answer to that name. Open it as localhost, or add the name to Access:Hosts.");
                return;
            }

            if (!HttpMethods.IsGet(http.Request.Method) && !HttpMethods.IsHead(http.Request.Method) && IsForeign(http.Request))
            {
                http.Response.StatusCode = StatusCodes.Status403Forbidden;
                await http.Response.WriteAsJsonAsync(new { errors = new[] { new { message = "Another page sent this request; only the pages of this host may.", extensions = new { code = "FOREIGN_ORIGIN" } } } });
                return;
            }

            await next();
        });
    }

    /// <summary>Whether a browser says that a page of another origin sends the request. Programs that are no browser name no origin.</summary>
    private static bool IsForeign(HttpRequest request)
    {
        if (request.Headers["Sec-Fetch-Site"].ToString() is "cross-site" or "same-site")
        {
            return true;
        }

        var origin = request.Headers.Origin.ToString();
        return origin.Length > 0 && !(Uri.TryCreate(origin, UriKind.Absolute, out var from) && string.Equals(from.Authority, request.Host.Value, StringComparison.OrdinalIgnoreCase));
    }

    private static bool IsOurs(string host, HostSettings settings)
    {
        if (host is "127.0.0.1" or "[::1]" || string.Equals(host, "localhost", StringComparison.OrdinalIgnoreCase) || settings.HostNames.Contains(host, StringComparer.OrdinalIgnoreCase))
        {
            return true;
        }

        return settings.AllowRemote && (string.Equals(host, Environment.MachineName, StringComparison.OrdinalIgnoreCase) || IPAddress.TryParse(host.Trim('[', ']'), out _));
    }
}
