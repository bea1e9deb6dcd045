using Microsoft.AspNetCore.Mvc.Testing;

namespace FarmPortfolio.Host.Tests;

public class HealthTests(WebApplicationFactory<Program> host) : IClassFixture<WebApplicationFactory<Program>>
{
    [Fact]
    public async Task TheHostAnswers() => Assert.Equal("ok", await host.CreateClient().GetStringAsync(new Uri("/health", UriKind.Relative)));
}
