using System.Text.Json;
using System.Threading.Channels;
using GraphQL;
using GraphQL.Transport;
using GraphQL.Types;

namespace FarmPortfolio.Host.Api;

/// <summary>GraphQL over HTTP: POST of JSON to /graphql; subscriptions by server-sent events.</summary>
public static class GraphQLEndpoint
{
    private const long MostBytes = 4 << 20;

    /// <summary>Maps the endpoint.</summary>
    /// <param name="app">The host.</param>
    public static void MapGraphQL(this WebApplication app) => app.MapPost("/graphql", Answer);

    private static async Task Answer(HttpContext http)
    {
        if (!http.Request.HasJsonContentType())
        {
            http.Response.StatusCode = StatusCodes.Status415UnsupportedMediaType;
            return;
        }

        if (http.Features.Get<Microsoft.AspNetCore.Http.Features.IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size)
        {
            size.MaxRequestBodySize = MostBytes;
        }

        var serializer = http.RequestServices.GetRequiredService<IGraphQLTextSerializer>();
        GraphQLRequest? request;
        try
        {
            request = await serializer.ReadAsync<GraphQLRequest>(http.Request.Body, http.RequestAborted);
        }
        catch (JsonException)
        {
            http.Response.StatusCode = StatusCodes.Status400BadRequest;
            return;
        }

        var result = await http.RequestServices.GetRequiredService<IDocumentExecuter<ISchema>>().ExecuteAsync(new ExecutionOptions
        {
            Query = request?.Query,
            OperationName = request?.OperationName,
            Variables = request?.Variables,
            RequestServices = http.RequestServices,
            CancellationToken = http.RequestAborted,
            UnhandledExceptionDelegate = context =>
            {
                http.RequestServices.GetRequiredService<ILoggerFactory>().CreateLogger("GraphQL").LogError(context.OriginalException, "a field could not be answered");
                return Task.CompletedTask;
            },
        });
        if (http.Request.Headers.Accept.ToString().Contains("text/event-stream", StringComparison.Ordinal))
        {
            await Stream(http, serializer, result);
            return;
        }

        http.Response.StatusCode = result.Executed ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest;
        http.Response.ContentType = "application/json";
        await serializer.WriteAsync(http.Response.Body, result, http.RequestAborted);
    }

    private static async Task Stream(HttpContext http, IGraphQLTextSerializer serializer, ExecutionResult result)
    {
        http.Response.ContentType = "text/event-stream";
        http.Response.Headers.CacheControl = "no-cache";
        if (result.Streams is not { Count: > 0 } streams)
        {
            await Send(http, serializer.Serialize(result));
        }
        else
        {
            var channel = Channel.CreateBounded<ExecutionResult>(new BoundedChannelOptions(64) { FullMode = BoundedChannelFullMode.DropOldest });
            using var subscription = streams.Values.First().Subscribe(new Pipe(channel.Writer));
            try
            {
                await foreach (var next in channel.Reader.ReadAllAsync(http.RequestAborted))
                {
                    await Send(http, serializer.Serialize(next));
                }
            }
            catch (OperationCanceledException)
            {
                return;
            }
        }

        await http.Response.WriteAsync("event: complete\ndata: \n\n", http.RequestAborted);
    }

    private static async Task Send(HttpContext http, string json)
    {
        await http.Response.WriteAsync($"event: next\ndata: {json}\n\n", http.RequestAborted);
        await http.Response.Body.FlushAsync(http.RequestAborted);
    }

    private sealed class Pipe(ChannelWriter<ExecutionResult> writer) : IObserver<ExecutionResult>
    {
        public void OnCompleted() => writer.TryComplete();

        public void OnError(Exception error) => writer.TryComplete(error);

        public void OnNext(ExecutionResult value) => writer.TryWrite(value);
    }
}
