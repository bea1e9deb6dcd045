using System.Globalization;
using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Hosting;

namespace FarmPortfolio.Host.Tests.Api;

/// <summary>Files that are longer than a request of the API.</summary>
public class UploadTests(TemporaryHost host) : IClassFixture<TemporaryHost>
{
    private const string Import = "mutation($input: ImportInput!) { importWeather(input: $input) { kept rows summary faults { code field message } } }";

    // a client that may be led elsewhere gathers the whole file first
    private static readonly Microsoft.AspNetCore.Mvc.Testing.WebApplicationFactoryClientOptions Plain = new() { AllowAutoRedirect = false, HandleCookies = false };

    [Fact]
    public async Task A_record_longer_than_a_request_is_sent_looked_at_and_imported_and_then_gone()
    {
        var record = Hourly(25);
        Assert.True(record.Length > 4 << 20, "longer than a request may be");
        var (status, answer) = await Send(host, "weather", "hours.csv", new ByteArrayContent(record));
        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Equal(record.Length, (int)answer["bytes"]!);
        var id = (string)answer["uploadId"]!;
        var look = await Weather(id, checkOnly: true);
        Assert.False((bool)look["kept"]!);
        Assert.True((int)look["rows"]! > 200_000, look.ToJsonString());
        var kept = await Weather(id, checkOnly: false);
        Assert.True((bool)kept["kept"]!, kept.ToJsonString());
        var again = await Weather(id, checkOnly: true);
        Assert.Equal("NOT_FOUND", (string)again["faults"]![0]!["code"]!);
    }

    [Fact]
    public async Task A_record_is_named_by_the_file_that_was_sent_whatever_the_request_calls_it()
    {
        var (_, answer) = await Send(host, "weather", "burke.csv", new ByteArrayContent(Hourly(1)));
        var kept = (await host.Ask(Import, new { input = new { requestId = "named", fileName = "pasted", uploadId = (string)answer["uploadId"]!, name = string.Empty, latitudeDeg = 43.6, checkOnly = false, utcOffsetHours = -5.0 } }))["data"]!["importWeather"]!;
        Assert.True((bool)kept["kept"]!, kept.ToJsonString());
        var stations = (await host.Ask("{ coop { weatherStations { name note } } }"))["data"]!["coop"]!["weatherStations"]!.AsArray();
        Assert.Equal("burke.csv", (string)Assert.Single(stations, s => (string)s!["name"]! == "burke")!["note"]!);
    }

    [Fact]
    public async Task A_file_sent_for_one_co_op_is_opened_by_no_other()
    {
        var (_, answer) = await Send(host, "weather", "hours.csv", new ByteArrayContent(Hourly(1)));
        var other = (string)(await host.Ask("mutation { newCoop(name: \"Elsewhere\", requestId: \"elsewhere\") { coopId } }"))["data"]!["newCoop"]!["coopId"]!;
        var tried = (await host.Ask(Import, new { input = Input((string)answer["uploadId"]!, true) }, other))["data"]!["importWeather"]!;
        Assert.Equal("NOT_FOUND", (string)tried["faults"]![0]!["code"]!);
        var guessed = await Weather("../farm-portfolio.db", checkOnly: true);
        Assert.Equal("NOT_FOUND", (string)guessed["faults"]![0]!["code"]!);
    }

    [Fact]
    public async Task A_record_without_a_whole_season_is_refused()
    {
        const string Asked = "mutation($input: ImportInput!) { importWeather(input: $input) { kept canImport faults { code } } }";
        var text = Encoding.UTF8.GetString(Hourly(1)).Split('\n')[..2000];
        var answer = (await host.Ask(Asked, new { input = new { requestId = "short", fileName = "short.csv", text = string.Join('\n', text), name = "Short", latitudeDeg = 43.6, checkOnly = false, goodRowsOnly = true, utcOffsetHours = -5.0 } }))["data"]!["importWeather"]!;
        Assert.False((bool)answer["kept"]! || (bool)answer["canImport"]!);
        Assert.Contains(answer["faults"]!.AsArray(), f => (string)f!["code"]! == "NO_SEASON");
    }

    [Fact]
    public async Task Garbage_is_refused_after_its_first_64_kB_however_long_it_is()
    {
        using var garbage = new Endless(256L << 20, Encoding.ASCII.GetBytes(string.Concat(Enumerable.Repeat("lorem ipsum, dolor sit amet\n", 300))));
        var (status, answer) = await Send(host, "weather", "garbage.csv", garbage);
        Assert.True(status == HttpStatusCode.UnprocessableEntity, $"{status} {answer.ToJsonString()}, {garbage.Sent:#,0} bytes were sent");
        Assert.Equal("NO_HEAD", (string)answer["faults"]![0]!["code"]!);
        Assert.InRange(garbage.Sent, 1, 16 << 20);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_file_longer_than_the_setting_is_refused_and_leaves_nothing(bool saysItsLength)
    {
        await using var small = new SmallHost();
        using var content = saysItsLength ? new ByteArrayContent(Hourly(1)) : (HttpContent)new Endless(8 << 20, Hourly(1));
        var (status, answer) = await Send(small, "weather", "hours.csv", content);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, status);
        Assert.Equal("TOO_LARGE", (string)answer["faults"]![0]!["code"]!);
        Assert.Contains("Import:MaxBytes", (string)answer["faults"]![0]!["remedy"]!, StringComparison.Ordinal);
        Assert.True(!Directory.Exists(small.Uploads) || !Directory.EnumerateFiles(small.Uploads).Any());
    }

    [Theory]
    [InlineData("weather", "text/plain", HttpStatusCode.UnsupportedMediaType)]
    [InlineData("recipes", "application/octet-stream", HttpStatusCode.NotFound)]
    public async Task What_no_import_takes_is_refused(string kind, string type, HttpStatusCode expected)
    {
        var content = new ByteArrayContent(Hourly(1));
        content.Headers.ContentType = new(type);
        Assert.Equal(expected, (await host.CreateClient().PostAsync(new Uri($"/uploads/{kind}?file=x.csv", UriKind.Relative), content)).StatusCode);
    }

    private static async Task<(HttpStatusCode Status, JsonNode Answer)> Send(TemporaryHost host, string kind, string file, HttpContent content)
    {
        content.Headers.ContentType = new MediaTypeHeaderValue("application/octet-stream");
        var response = await host.CreateClient(Plain).PostAsync(new Uri($"/uploads/{kind}?file={file}", UriKind.Relative), content);
        return (response.StatusCode, (await response.Content.ReadFromJsonAsync<JsonNode>())!);
    }

    private static byte[] Hourly(int years)
    {
        var text = new StringBuilder("time,temperature (C)\n");
        var end = new DateTime(1995 + years, 7, 1, 0, 0, 0, DateTimeKind.Unspecified);
        for (var at = new DateTime(1995, 7, 1, 0, 0, 0, DateTimeKind.Unspecified); at < end; at = at.AddHours(1))
        {
            text.Append(CultureInfo.InvariantCulture, $"{at:yyyy-MM-dd HH:mm},{10 - 14 * Math.Cos(2 * Math.PI * (at.DayOfYear - 15) / 365.0):0.0}\n");
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private static object Input(string uploadId, bool checkOnly) => new { requestId = Guid.NewGuid().ToString(), fileName = "hours.csv", uploadId, name = "Sent station", latitudeDeg = 43.6, checkOnly, utcOffsetHours = -5.0 };

    private async Task<JsonNode> Weather(string uploadId, bool checkOnly) => (await host.Ask(Import, new { input = Input(uploadId, checkOnly) }))["data"]!["importWeather"]!;

    /// <summary>Bytes without a length told before, repeated up to a length.</summary>
    private sealed class Endless(long most, byte[] block) : HttpContent
    {
        public long Sent { get; private set; }

        protected override async Task SerializeToStreamAsync(Stream stream, TransportContext? context)
        {
            while (Sent < most)
            {
                await stream.WriteAsync(block);
                Sent += block.Length;
            }
        }

        protected override bool TryComputeLength(out long length)
        {
            length = 0;
            return false;
        }
    }

    private sealed class SmallHost : TemporaryHost
    {
        private readonly string folder = Directory.CreateTempSubdirectory("farm-portfolio-").FullName;

        public string Uploads => Path.Combine(folder, "uploads");

        protected override bool Demo => false;

        protected override void ConfigureWebHost(IWebHostBuilder builder)
        {
            base.ConfigureWebHost(builder);
            builder.UseSetting("Import:MaxBytes", "100000").UseSetting("Storage:Folder", folder);
        }

        protected override void Dispose(bool disposing)
        {
            base.Dispose(disposing);
            if (Directory.Exists(folder))
            {
                Directory.Delete(folder, recursive: true);
            }
        }
    }
}
