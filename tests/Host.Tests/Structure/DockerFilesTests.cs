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
        Assert.All(Image().Matches(image), m => Assert.Contains($"net{string.Join('.', m.Groups["version"].Value.Split('.').Take(2))}", Repository.Text("Directory.Build.props"), StringComparison.Ordinal));
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

    [Fact]
    public void Every_image_is_named_by_a_whole_version_and_the_last_runs_as_no_root_and_is_asked_for_its_page()
    {
        var bases = From().Matches(image);
        Assert.Equal(3, bases.Count);
        Assert.All(bases, m => Assert.Matches(@"^\d+\.\d+\.\d+", m.Groups["tag"].Value));
        var last = image[bases[^1].Index..];
        Assert.Contains("USER $APP_UID", last, StringComparison.Ordinal);
        Assert.Contains($"/dev/tcp/127.0.0.1/{Port().Match(compose).Groups["inside"].Value} ", Health().Match(last).Value, StringComparison.Ordinal);
    }

    [Fact]
    public void What_the_build_reads_is_not_kept_out_of_its_folder()
    {
        // as the build file names them: the pages' schema, the sources, the versions; none lies under a line of .dockerignore
        var ignored = Repository.Text(".dockerignore").Split('\n', StringSplitOptions.RemoveEmptyEntries).Where(l => !l.Contains('*', StringComparison.Ordinal)).ToList();
        string[] needed = ["server/Host/Host.csproj", "server/Engine/Engine.csproj", "web/package-lock.json", "web/src/app/main.tsx", "docs/schema.graphql", "Directory.Build.props", "Directory.Packages.props", "global.json", ".editorconfig"];
        Assert.All(needed, path => Assert.True(File.Exists(Repository.At(path)), path));
        Assert.All(needed, path => Assert.DoesNotContain(ignored, line => path == line || path.StartsWith(line + "/", StringComparison.Ordinal)));
    }

    [GeneratedRegex(@"FROM \S+?:(?<tag>\S+)")]
    private static partial Regex From();

    [GeneratedRegex(@"HEALTHCHECK .*")]
    private static partial Regex Health();

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
