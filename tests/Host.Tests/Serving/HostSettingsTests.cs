using FarmPortfolio.Host.Serving;
using Microsoft.Extensions.Configuration;

namespace FarmPortfolio.Host.Tests.Serving;

public class HostSettingsTests
{
    [Fact]
    public void Without_a_word_the_documented_defaults_hold()
    {
        var (settings, faults) = Read([]);
        Assert.Empty(faults);
        Assert.Equal("http://localhost:5080", settings!.Urls);
        Assert.EndsWith("farm-portfolio", settings.StorageFolder, StringComparison.Ordinal);
        Assert.True(Path.IsPathRooted(settings.StorageFolder));
        Assert.True(settings.DemoEnabled);
        Assert.False(settings.AllowRemote);
        Assert.Equal(256 * 1024 * 1024, settings.ImportMaxBytes);
        Assert.Empty(settings.HostNames);
    }

    [Fact]
    public void Every_setting_is_described_with_its_default()
    {
        var text = Repository.Text("docs", "settings.md");
        Assert.All(["--urls", "Storage:Folder", "Demo:Enabled", "Import:MaxBytes", "Access:AllowRemote", "Access:Hosts"], name => Assert.Contains($"| `{name}` |", text, StringComparison.Ordinal));
        Assert.Contains(HostSettings.DefaultUrl, text, StringComparison.Ordinal);
        Assert.Contains($"{HostSettings.DefaultImportMaxBytes}", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Demo:Enabled", "perhaps")]
    [InlineData("Access:AllowRemote", "1")]
    [InlineData("Import:MaxBytes", "256 MiB")]
    [InlineData("Import:MaxBytes", "-1")]
    [InlineData("Import:MaxBytes", "10")]
    public void A_setting_that_makes_no_sense_is_named_with_what_would(string name, string value)
    {
        var (settings, faults) = Read([(name, value)]);
        Assert.Null(settings);
        var fault = Assert.Single(faults);
        Assert.Contains(name, fault, StringComparison.Ordinal);
        Assert.Contains(value, fault, StringComparison.Ordinal);
        Assert.Contains("must be", fault, StringComparison.Ordinal);
    }

    [Fact]
    public void Given_values_hold()
    {
        var (settings, _) = Read([("urls", "http://127.0.0.1:5999"), ("Storage:Folder", "here"), ("Demo:Enabled", "False"), ("Import:MaxBytes", "4096"), ("Access:Hosts", "farm.example; coop.example")]);
        Assert.Equal(("http://127.0.0.1:5999", "here", false, 4096), (settings!.Urls, settings.StorageFolder, settings.DemoEnabled, settings.ImportMaxBytes));
        Assert.Equal(["farm.example", "coop.example"], settings.HostNames);
    }

    [Theory]
    [InlineData("http://localhost:5080", true)]
    [InlineData("http://127.0.0.1:5080;http://[::1]:5080", true)]
    [InlineData("http://127.8.0.1:80", true)]
    [InlineData("http://0.0.0.0:5080", false)]
    [InlineData("http://*:5080", false)]
    [InlineData("http://+:5080", false)]
    [InlineData("http://[::]:5080", false)]
    [InlineData("http://192.168.1.4:5080", false)]
    [InlineData("http://loopback:5080", false)]
    [InlineData("http://localhost:5080;http://farm.example:80", false)]
    public void Listening_beyond_this_machine_needs_leave_and_then_brings_a_warning(string urls, bool local)
    {
        var (refusal, warning) = Judge(("urls", urls));
        Assert.Equal(local, refusal is null);
        Assert.Null(warning);
        (refusal, warning) = Judge(("urls", urls), ("Access:AllowRemote", "true"));
        Assert.Null(refusal);
        Assert.Equal(local, warning is null);
    }

    [Fact]
    public void An_address_under_Kestrel_counts_too()
    {
        var (refusal, _) = Judge(("Kestrel:Endpoints:Open:Url", "http://0.0.0.0:5080"));
        Assert.Contains("http://0.0.0.0:5080", refusal, StringComparison.Ordinal);
        Assert.Contains("Access:AllowRemote=true", refusal, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_no_address_is_refused_by_name() => Assert.Contains("\"5080\"", Judge(("urls", "5080")).Refusal, StringComparison.Ordinal);

    private static (string? Refusal, string? Warning) Judge(params (string, string)[] given) => Listening.Judge(Configuration(given), Read(given).Settings!);

    private static (HostSettings? Settings, IReadOnlyList<string> Faults) Read((string, string)[] given) => HostSettings.Read(Configuration(given));

    private static IConfiguration Configuration((string Name, string Value)[] given) =>
        new ConfigurationBuilder().AddInMemoryCollection(given.Select(g => new KeyValuePair<string, string?>(g.Name, g.Value))).Build();
}
