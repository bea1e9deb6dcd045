using System.Text.RegularExpressions;

namespace FarmPortfolio.Host.Tests;

/// <summary>No engine is at hand to build the image, so every path and name in its files is held against the build.</summary>
public partial class DockerFilesTests
{
    private static readonly string Root = Path.GetFullPath(Path.Combine(AppContext.BaseDirectory, "../../../../.."));

    [Fact]
    public void What_the_image_publishes_and_starts_is_what_the_build_makes()
    {
        var text = File.ReadAllText(Path.Combine(Root, "docker", "Dockerfile"));
        var project = Publish().Match(text).Groups["project"].Value;
        Assert.True(File.Exists(Path.Combine(Root, project, Path.GetFileName(project) + ".csproj")), project);
        Assert.Equal(typeof(Program).Assembly.GetName().Name + ".dll", Entry().Match(text).Groups["dll"].Value);
        Assert.Contains("Storage__Folder=/data", text, StringComparison.Ordinal);
        Assert.Contains("VOLUME /data", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Compose_names_the_image_file_and_the_port_it_exposes()
    {
        var compose = File.ReadAllText(Path.Combine(Root, "docker", "compose.yaml"));
        var file = Named().Match(compose).Groups["file"].Value;
        Assert.True(File.Exists(Path.Combine(Root, file)), file);
        var port = Port().Match(compose).Groups["inside"].Value;
        Assert.Contains($"EXPOSE {port}", File.ReadAllText(Path.Combine(Root, file)), StringComparison.Ordinal);
    }

    [GeneratedRegex(@"dotnet publish (?<project>\S+)")]
    private static partial Regex Publish();

    [GeneratedRegex(@"ENTRYPOINT \[""dotnet"", ""(?<dll>[^""]+)""\]")]
    private static partial Regex Entry();

    [GeneratedRegex(@"dockerfile: (?<file>\S+)")]
    private static partial Regex Named();

    [GeneratedRegex(@"127\.0\.0\.1:\d+:(?<inside>\d+)")]
    private static partial Regex Port();
}
