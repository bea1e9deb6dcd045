using FarmPortfolio.Host.Api;
using FarmPortfolio.Host.Demo;
using FarmPortfolio.Host.Serving;
using FarmPortfolio.Host.Storage;
using FarmPortfolio.Host.Studies;

if (args is ["schema", var file])
{
    return SchemaFile.Write(file);
}

var builder = WebApplication.CreateBuilder(new WebApplicationOptions { Args = args, ContentRootPath = AppContext.BaseDirectory });
var (settings, faults) = HostSettings.Read(builder.Configuration);
if (settings is null)
{
    Console.Error.WriteLine(string.Join(Environment.NewLine, faults));
    return 2;
}

var (refusal, warning) = Listening.Judge(builder.Configuration, settings);
if ((refusal ?? Listening.Taken(settings)) is { } reason)
{
    Console.Error.WriteLine(reason);
    return refusal is null ? 3 : 2;
}

if (warning is not null)
{
    Console.Error.WriteLine(warning);
}

builder.WebHost.UseUrls(settings.Urls);
builder.Services.AddSingleton(settings).AddStorage().AddStudies().AddApi();
var app = builder.Build();
app.FillDemo();
app.UseAccessRules();
app.MapGraphQL();
app.MapUploads();
app.MapGet("/health", () => "ok");
app.UseWebFiles();
app.Serve();
return 0;

/// <summary>The entry point; public so that tests can host it.</summary>
public partial class Program;
