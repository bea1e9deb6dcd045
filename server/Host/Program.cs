var builder = WebApplication.CreateBuilder(args);
var app = builder.Build();
app.MapGet("/health", () => "ok");
app.Run();

/// <summary>The entry point; public so that tests can host it.</summary>
public partial class Program;
