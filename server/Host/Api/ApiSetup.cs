using GraphQL;
using GraphQL.Types;
using GraphQL.Validation.Complexity;

namespace FarmPortfolio.Host.Api;

/// <summary>Registers the GraphQL schema.</summary>
public static class ApiSetup
{
    /// <summary>Deepest nesting of a query.</summary>
    public const int MaxDepth = 15;

    /// <summary>Most a query may cost: one a field, times 20 in every list around it. The dearest page asks for about a third.</summary>
    public const int MaxComplexity = 50_000;

    /// <summary>The schema of <see cref="Query"/>, <see cref="Mutation"/> and <see cref="Subscription"/>.</summary>
    /// <param name="services">Services.</param>
    /// <returns>The services.</returns>
    public static IServiceCollection AddApi(this IServiceCollection services)
    {
        services.AddScoped<ChosenCoop>().AddScoped<Register>().AddScoped<RoundsDesk>();
        services.AddGraphQL(b => b
            .AddAutoSchema<Query>(s => s.WithMutation<Mutation>().WithSubscription<Subscription>())
            .AddSystemTextJson()
            .AddComplexityAnalyzer(o =>
            {
                o.MaxDepth = MaxDepth;
                o.MaxComplexity = MaxComplexity;
            })
            .AddErrorInfoProvider(o =>
            {
                o.ExposeCodes = false;
                o.ExposeExceptionDetails = false;
            }));
        return services;
    }

    /// <summary>Makes the schema ready before the first request; a fault in it stops the start. Reading the schema is free of cost: it is no secret, docs/schema.graphql says the same.</summary>
    /// <param name="services">Services.</param>
    /// <returns>The schema.</returns>
    internal static ISchema ReadySchema(this IServiceProvider services)
    {
        var schema = services.GetRequiredService<ISchema>();
        schema.WithIntrospectionComplexityImpact(0);
        schema.Initialize();
        return schema;
    }
}

/// <summary>Prints the schema.</summary>
public static class SchemaFile
{
    /// <summary>Writes the schema to a file, sorted by name.</summary>
    /// <param name="file">Path.</param>
    /// <returns>Exit code 0.</returns>
    public static int Write(string file)
    {
        using var services = new ServiceCollection().AddLogging().AddApi().BuildServiceProvider();
        File.WriteAllText(file, services.ReadySchema().Print(new() { StringComparison = StringComparison.Ordinal }).ReplaceLineEndings("\n"));
        return 0;
    }
}
