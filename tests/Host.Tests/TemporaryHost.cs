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

    public async Task<JsonNode> StudyDone()
    {
        for (var i = 0; i < 1500; i++)
        {
            var answer = await Ask("{ coop { newestStudy { id number state resultSha256 inputSha256 changedSince } runningStudy { id } } }");
            if (answer["data"]!["coop"]!["newestStudy"] is { } study && answer["data"]!["coop"]!["runningStudy"] is null)
            {
                return study;
            }

            await Task.Delay(200);
        }

        throw new TimeoutException("the study did not end in five minutes");
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

/// <summary>The real host with nothing in it but the starter prices.</summary>
public sealed class EmptyHost : TemporaryHost
{
    protected override bool Demo => false;
}
