using System.Net.Http.Json;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;

namespace FarmPortfolio.Host.Tests;

/// <summary>The real host over a database file of its own, gone afterwards.</summary>
public sealed class TemporaryHost : WebApplicationFactory<Program>
{
    private readonly string folder = Directory.CreateTempSubdirectory("farm-portfolio-").FullName;

    public async Task<JsonNode> Ask(string query, object? variables = null)
    {
        var response = await CreateClient().PostAsJsonAsync(new Uri("/graphql", UriKind.Relative), new { query, variables });
        return (await response.Content.ReadFromJsonAsync<JsonNode>())!;
    }

    public async Task<JsonNode> StudyDone()
    {
        for (var i = 0; i < 600; i++)
        {
            var answer = await Ask("{ coop { newestStudy { id number state resultSha256 inputSha256 changedSince } runningStudy { id } } }");
            if (answer["data"]!["coop"]!["newestStudy"] is { } study && answer["data"]!["coop"]!["runningStudy"] is null)
            {
                return study;
            }

            await Task.Delay(200);
        }

        throw new TimeoutException("the study did not end in two minutes");
    }

    protected override void ConfigureWebHost(IWebHostBuilder builder) => builder.UseSetting("Storage:Folder", folder);

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
