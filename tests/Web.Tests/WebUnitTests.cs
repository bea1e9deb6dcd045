using System.Diagnostics;
using System.Reflection;
using System.Text.Json;

namespace FarmPortfolio.Web.Tests;

/// <summary>Runs the web's own unit tests once and shows each as a case; a file that cannot be loaded is a failing case.</summary>
public class WebUnitTests
{
    private static readonly Lazy<Dictionary<string, string?>> Results = new(Run);

    public static IEnumerable<TheoryDataRow<string>> Names => Results.Value.Keys.Select(n => new TheoryDataRow<string>(n));

    [Theory, MemberData(nameof(Names), DisableDiscoveryEnumeration = true)]
    public void Web_unit_test(string name) => Assert.True(Results.Value[name] is null, $"{name}: {Results.Value[name]}");

    private static Dictionary<string, string?> Run()
    {
        var web = typeof(WebUnitTests).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>().First(a => a.Key == "WebFolder").Value!;
        var output = Path.Combine(Path.GetTempPath(), $"web-tests-{Guid.NewGuid():N}.json");
        using var process = Process.Start(new ProcessStartInfo("node", ["node_modules/vitest/vitest.mjs", "run", "--reporter=json", $"--outputFile={output}"])
        {
            WorkingDirectory = web,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        var said = process.StandardError.ReadToEndAsync();
        process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        if (!File.Exists(output))
        {
            return new() { ["vitest"] = "it wrote no result: " + said.Result };
        }

        using var json = JsonDocument.Parse(File.ReadAllText(output));
        File.Delete(output);
        var results = new Dictionary<string, string?>();
        foreach (var file in json.RootElement.GetProperty("testResults").EnumerateArray())
        {
            var name = Path.GetRelativePath(web, file.GetProperty("name").GetString()!);
            var cases = file.GetProperty("assertionResults").EnumerateArray().ToList();
            if (cases.Count == 0)
            {
                results[name] = file.TryGetProperty("message", out var message) ? message.GetString() : "it could not be loaded";
            }

            foreach (var test in cases)
            {
                var failed = test.GetProperty("status").GetString() != "passed";
                results[$"{name}: {test.GetProperty("fullName").GetString()}"] = failed ? string.Join("\n", test.GetProperty("failureMessages").EnumerateArray().Select(m => m.GetString())) : null;
            }
        }

        return results;
    }
}
