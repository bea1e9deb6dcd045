using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.RegularExpressions;

namespace FarmPortfolio.Host.Tests.Serving;

/// <summary>What the host answers to a browser, and to one that means no good.</summary>
public partial class AnswersTests(EmptyHost host) : IClassFixture<EmptyHost>
{
    [Theory]
    [InlineData("/")]
    [InlineData("/farms")]
    [InlineData("/houses/h_demo000")]
    [InlineData("/options/h_demo000~foam-now")]
    public async Task Every_page_has_its_own_address(string address)
    {
        var answer = await host.CreateClient().GetAsync(new Uri(address, UriKind.Relative));
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("text/html", answer.Content.Headers.ContentType!.MediaType);
        Assert.Equal("no-cache", answer.Headers.CacheControl!.ToString());
        Assert.Contains("<div id=\"root\">", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Files_with_a_hash_in_their_name_are_kept_and_missing_ones_are_missing()
    {
        var client = host.CreateClient();
        var script = Script().Match(await client.GetStringAsync(new Uri("/", UriKind.Relative))).Groups["path"].Value;
        var answer = await client.GetAsync(new Uri(script, UriKind.Relative));
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Contains("immutable", answer.Headers.CacheControl!.ToString(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await client.GetAsync(new Uri("/assets/none.js", UriKind.Relative))).StatusCode);
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/health")]
    [InlineData("/assets/none.js")]
    public async Task Every_answer_says_what_a_browser_may_do_with_it(string address)
    {
        var headers = (await host.CreateClient().GetAsync(new Uri(address, UriKind.Relative))).Headers;
        var policy = headers.GetValues("Content-Security-Policy").Single();
        Assert.Contains("default-src 'none'", policy, StringComparison.Ordinal);
        Assert.Contains("script-src 'self';", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("http", policy, StringComparison.Ordinal);
        Assert.Equal("nosniff", headers.GetValues("X-Content-Type-Options").Single());
        Assert.Equal("no-referrer", headers.GetValues("Referrer-Policy").Single());
    }

    [Theory]
    [InlineData("localhost:5080", true)]
    [InlineData("LOCALHOST", true)]
    [InlineData("127.0.0.1:80", true)]
    [InlineData("[::1]:5080", true)]
    [InlineData("farm.example", false)]
    [InlineData("localhost.farm.example", false)]
    [InlineData("192.168.1.4:5080", false)]
    public async Task A_request_under_a_foreign_name_is_not_answered(string name, bool answered)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/health") { Headers = { Host = name } };
        var answer = await host.CreateClient().SendAsync(request);
        Assert.Equal(answered ? HttpStatusCode.OK : HttpStatusCode.MisdirectedRequest, answer.StatusCode);
        Assert.Equal(answered, await answer.Content.ReadAsStringAsync() == "ok");
    }

    [Theory]
    [InlineData("text/plain", "{\"query\":\"{ version }\"}", HttpStatusCode.UnsupportedMediaType, "JSON_ONLY")]
    [InlineData("application/x-www-form-urlencoded", "query={version}", HttpStatusCode.UnsupportedMediaType, "JSON_ONLY")]
    [InlineData("application/json", "{\"query\":", HttpStatusCode.BadRequest, "NO_QUERY")]
    [InlineData("application/json", "[1, 2]", HttpStatusCode.BadRequest, "NO_QUERY")]
    [InlineData("application/json", "\"{ version }\"", HttpStatusCode.BadRequest, "NO_QUERY")]
    [InlineData("application/json", "{\"query\":5}", HttpStatusCode.BadRequest, "NO_QUERY")]
    [InlineData("application/json", "{}", HttpStatusCode.BadRequest, "NO_QUERY")]
    [InlineData("application/json", "", HttpStatusCode.BadRequest, "NO_QUERY")]
    [InlineData("application/json", "null", HttpStatusCode.BadRequest, "NO_QUERY")]
    public async Task What_is_no_query_is_refused_with_a_code(string type, string body, HttpStatusCode status, string code)
    {
        using var content = new StringContent(body, Encoding.UTF8, MediaTypeHeaderValue.Parse(type));
        var answer = await host.CreateClient().PostAsync(new Uri("/graphql", UriKind.Relative), content);
        Assert.Equal(status, answer.StatusCode);
        Assert.Contains($"\"code\":\"{code}\"", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Origin", "http://farm.example", false)]
    [InlineData("Origin", "null", false)]
    [InlineData("Origin", "http://localhost:81", false)]
    [InlineData("Sec-Fetch-Site", "cross-site", false)]
    [InlineData("Sec-Fetch-Site", "same-site", false)]
    [InlineData("Sec-Fetch-Site", "same-origin", true)]
    [InlineData("Origin", "http://localhost", true)]
    public async Task What_a_foreign_page_sends_is_refused(string header, string value, bool answered)
    {
        foreach (var address in new[] { "/graphql", "/uploads/prices?file=a.csv" })
        {
            using var request = new HttpRequestMessage(HttpMethod.Post, address) { Content = new StringContent("{\"query\":\"{ version }\"}", Encoding.UTF8, MediaTypeHeaderValue.Parse("application/json")) };
            request.Headers.Add(header, value);
            var answer = await host.CreateClient().SendAsync(request);
            Assert.Equal(!answered, answer.StatusCode == HttpStatusCode.Forbidden);
            Assert.Equal(!answered, (await answer.Content.ReadAsStringAsync()).Contains("FOREIGN_ORIGIN", StringComparison.Ordinal));
        }
    }

    [Fact]
    public async Task A_query_in_the_address_is_refused()
    {
        var answer = await host.CreateClient().GetAsync(new Uri("/graphql?query={version}", UriKind.Relative));
        Assert.Equal(HttpStatusCode.MethodNotAllowed, answer.StatusCode);
        Assert.Equal("POST", answer.Content.Headers.Allow.Single());
    }

    [Fact]
    public async Task A_request_beyond_the_limit_is_refused_before_it_is_read()
    {
        using var content = new StringContent("{\"query\":\"" + new string(' ', (int)FarmPortfolio.Host.Api.GraphQLEndpoint.MostBytes) + "\"}", Encoding.UTF8, MediaTypeHeaderValue.Parse("application/json"));
        var answer = await host.CreateClient().PostAsync(new Uri("/graphql", UriKind.Relative), content);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
    }

    [GeneratedRegex("<script[^>]* src=\"(?<path>/assets/[^\"]+)\"")]
    private static partial Regex Script();
}
