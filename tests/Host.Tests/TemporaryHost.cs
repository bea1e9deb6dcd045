using System.Net.Http.Json;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;

namespace FarmPortfolio.Host.Tests;

/// <summary>The real host over a database file of its own, gone afterwards, with the demo and its first study.</summary>
public class TemporaryHost : WebApplicationFactory<Program>
{
    private readonly string folder = Directory.CreateTempSubdirectory("farm-portfolio-").FullName;

    protected virtual bool Demo => true;

    public async Task<JsonNode> Ask(string query, object? variables = null, string? coop = null)
    {
        var client = CreateClient();
        if (coop is not null)
        {
            client.DefaultRequestHeaders.Add("Farm-Coop", coop);
        }

        var response = await client.PostAsJsonAsync(new Uri("/graphql", UriKind.Relative), new { query, variables });
        return (await response.Content.ReadFromJsonAsync<JsonNode>())!;
    }

    /// <summary>Waits for the demo's study, however long a busy machine takes. The co-op is named, since a test beside may have begun one that comes before it.</summary>
    public async Task<JsonNode> StudyDone()
    {
        while (true)
        {
            // what runs is asked for first: a study that ends between the two is then seen as done
            var answer = (await Ask("{ coop { runningStudy { id } newestStudy { id number state resultSha256 inputSha256 changedSince } } }", coop: "demo"))["data"]!["coop"]!;
            if (answer["runningStudy"] is null)
            {
                return answer["newestStudy"] ?? throw new InvalidOperationException("the demo's study has failed or was cancelled");
            }

            await Task.Delay(200);
        }
    }

    protected override void ConfigureWebHost(IWebHostBuilder builder) => builder.UseSetting("Storage:Folder", folder).UseSetting("Demo:Enabled", Demo ? "true" : "false").UseSetting("urls", "http://127.0.0.1:0").UseSetting("Logging:LogLevel:Default", "Warning");

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        if (Directory.Exists(folder))
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}

/// <summary>The real host over a folder of the test's own, which stays when it stops.</summary>
public sealed class HostOn(string folder, bool demo = true) : TemporaryHost
{
    protected override bool Demo => demo;

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        base.ConfigureWebHost(builder);
        builder.UseSetting("Storage:Folder", folder);
    }
}

/// <summary>The real host with nothing in it but the starter prices.</summary>
public sealed class EmptyHost : TemporaryHost
{
    protected override bool Demo => false;
}
