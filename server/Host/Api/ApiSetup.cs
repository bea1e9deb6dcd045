using GraphQL;
using GraphQL.Types;

namespace FarmPortfolio.Host.Api;

/// <summary>Registers the GraphQL schema.</summary>
public static class ApiSetup
{
    /// <summary>The schema of <see cref="Query"/>, <see cref="Mutation"/> and <see cref="Subscription"/>.</summary>
    /// <param name="services">Services.</param>
    /// <returns>The services.</returns>
    public static IServiceCollection AddApi(this IServiceCollection services)
    {
        services.AddScoped<Register>();
        services.AddGraphQL(b => b
            .AddAutoSchema<Query>(s => s.WithMutation<Mutation>().WithSubscription<Subscription>())
            .AddSystemTextJson()
            .AddComplexityAnalyzer(o => o.MaxDepth = 15)
            .AddErrorInfoProvider(o =>
            {
                o.ExposeCodes = false;
                o.ExposeExceptionDetails = false;
            }));
        return services;
    }
}

/// <summary>Prints the schema.</summary>
public static class SchemaFile
{
    /// <summary>Writes the schema to a file.</summary>
    /// <param name="file">Path.</param>
    /// <returns>Exit code 0.</returns>
    public static int Write(string file)
    {
        using var services = new ServiceCollection().AddLogging().AddApi().BuildServiceProvider();
        var schema = services.GetRequiredService<ISchema>();
        schema.Initialize();
        File.WriteAllText(file, schema.Print(new() { StringComparison = StringComparison.Ordinal }).ReplaceLineEndings("\n"));
        return 0;
    }
}
