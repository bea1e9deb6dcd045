using System.Text.RegularExpressions;
using FarmPortfolio.Host.Serving;
using Microsoft.Extensions.Configuration;

namespace FarmPortfolio.Host.Tests.Structure;

/// <summary>No engine is at hand to build the image, so every path, name and setting in its files is held against the build.</summary>
public partial class DockerFilesTests
{
    private readonly string image = Repository.Text("docker", "Dockerfile");
    private readonly string compose = Repository.Text("docker", "compose.yaml");

    [Fact]
    public void What_the_image_publishes_and_starts_is_what_the_build_makes()
    {
        var project = Publish().Match(image).Groups["project"].Value;
        Assert.True(File.Exists(Repository.At(project, Path.GetFileName(project) + ".csproj")), project);
        Assert.Equal(typeof(Program).Assembly.GetName().Name + ".dll", Entry().Match(image).Groups["dll"].Value);
        Assert.True(File.Exists(Path.Combine(AppContext.BaseDirectory, Entry().Match(image).Groups["dll"].Value)));
    }

    [Fact]
    public void Its_major_versions_are_those_the_project_asks_for()
    {
        Assert.All(Image().Matches(image), m => Assert.Contains($"net{m.Groups["version"].Value}", Repository.Text("Directory.Build.props"), StringComparison.Ordinal));
        Assert.Equal(2, Image().Count(image));
        Assert.Contains($"\"node\": \">={Node().Match(image).Groups["version"].Value}", Repository.Text("web", "package.json"), StringComparison.Ordinal);
    }

    [Fact]
    public void The_host_understands_its_settings_and_starts_with_a_warning()
    {
        var given = Setting().Matches(image).Select(m => new KeyValuePair<string, string?>(m.Groups["name"].Value.Replace("__", ":", StringComparison.Ordinal), m.Groups["value"].Value))
            .Append(new("urls", Entry().Match(image).Groups["urls"].Value));
        var configuration = new ConfigurationBuilder().AddInMemoryCollection(given).Build();
        var (settings, faults) = HostSettings.Read(configuration);
        Assert.Empty(faults);
        var (refusal, warning) = Listening.Judge(configuration, settings!);
        Assert.Null(refusal);
        Assert.NotNull(warning);
        Assert.Contains($"VOLUME {settings!.StorageFolder}", image, StringComparison.Ordinal);
        Assert.Contains($"data:{settings.StorageFolder}", compose, StringComparison.Ordinal);
        Assert.EndsWith(":" + Port().Match(compose).Groups["inside"].Value, settings.Urls, StringComparison.Ordinal);
    }

    [Fact]
    public void Compose_names_the_image_file_and_publishes_its_port_to_this_machine_alone()
    {
        var file = Named().Match(compose).Groups["file"].Value;
        Assert.True(File.Exists(Repository.At(file)), file);
        Assert.Contains($"EXPOSE {Port().Match(compose).Groups["inside"].Value}", image, StringComparison.Ordinal);
        Assert.Single(Port().Matches(compose));
    }

    [GeneratedRegex(@"dotnet publish (?<project>\S+)")]
    private static partial Regex Publish();

    [GeneratedRegex(@"ENTRYPOINT \[""dotnet"", ""(?<dll>[^""]+)"", ""--urls=(?<urls>[^""]+)""\]")]
    private static partial Regex Entry();

    [GeneratedRegex(@"/dotnet/\w+:(?<version>[\d.]+)")]
    private static partial Regex Image();

    [GeneratedRegex(@"FROM node:(?<version>\d+)")]
    private static partial Regex Node();

    [GeneratedRegex(@"(?<name>\w+__\w+)=(?<value>\S+)")]
    private static partial Regex Setting();

    [GeneratedRegex(@"dockerfile: (?<file>\S+)")]
    private static partial Regex Named();

    [GeneratedRegex(@"127\.0\.0\.1:\d+:(?<inside>\d+)")]
    private static partial Regex Port();
}
