using FarmPortfolio.Host.Api;
using FarmPortfolio.Host.Demo;
using FarmPortfolio.Host.Storage;
using FarmPortfolio.Host.Studies;

if (args is ["schema", var file])
{
    return SchemaFile.Write(file);
}

var builder = WebApplication.CreateBuilder(args);
builder.WebHost.UseUrls(builder.Configuration["urls"] ?? "http://localhost:5080");
builder.Services.AddStorage(builder.Configuration).AddStudies().AddApi();
var app = builder.Build();
if (Access.Refusal(app.Configuration) is { } refusal)
{
    Console.Error.WriteLine(refusal);
    return 2;
}

app.FillDemo();
app.UseAccessRules();
app.MapGraphQL();
app.MapGet("/health", () => "ok");
app.UseWebFiles();
try
{
    app.Start();
}
catch (IOException e)
{
    Console.Error.WriteLine($"Cannot listen: {e.Message} Choose another address with --urls http://localhost:PORT.");
    return 3;
}

Console.WriteLine($"FarmPortfolio serves on {string.Join(", ", app.Urls)}");
app.WaitForShutdown();
return 0;

/// <summary>The entry point; public so that tests can host it.</summary>
public partial class Program;
