using System.Text.Json;
using GraphQL;
using GraphQL.Transport;
using GraphQL.Types;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.Net.Http.Headers;

namespace FarmPortfolio.Host.Api;

/// <summary>
/// GraphQL over HTTP: POST of JSON to /graphql, nothing else, so that a foreign page cannot send one without the browser asking first.
/// Subscriptions come as server-sent events to whoever accepts text/event-stream.
/// </summary>
public static partial class GraphQLEndpoint
{
    /// <summary>Largest request, bytes: 4 MiB.</summary>
    public const long MostBytes = 4 << 20;

    private const string Path = "/graphql";
    private static readonly string[] OtherMethods = ["GET", "HEAD", "PUT", "PATCH", "DELETE"];

    /// <summary>Maps the endpoint.</summary>
    /// <param name="app">The host.</param>
    public static void MapGraphQL(this WebApplication app)
    {
        app.Services.ReadySchema();
        app.MapPost(Path, Answer);
        app.MapMethods(Path, OtherMethods, http =>
        {
            http.Response.Headers.Allow = "POST";
            return Refuse(http, StatusCodes.Status405MethodNotAllowed, "POST_ONLY", "Send the query as JSON by POST.");
        });
    }

    private static async Task Answer(HttpContext http)
    {
        if (!http.Request.HasJsonContentType())
        {
            await Refuse(http, StatusCodes.Status415UnsupportedMediaType, "JSON_ONLY", "Send the query with the content type application/json.");
            return;
        }

        if (http.Request.ContentLength > MostBytes)
        {
            await Refuse(http, StatusCodes.Status413PayloadTooLarge, "TOO_LARGE", $"A request may have {MostBytes >> 20} MiB.");
            return;
        }

        if (http.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size)
        {
            size.MaxRequestBodySize = MostBytes;
        }

        var serializer = http.RequestServices.GetRequiredService<IGraphQLTextSerializer>();
        GraphQLRequest? request;
        try
        {
            request = await serializer.ReadAsync<GraphQLRequest>(http.Request.Body, http.RequestAborted);
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            request = null;
        }

        if (string.IsNullOrWhiteSpace(request?.Query))
        {
            await Refuse(http, StatusCodes.Status400BadRequest, "NO_QUERY", "The body is no JSON object with a \"query\".");
            return;
        }

        var (document, refusal) = DocumentLimits.Read(request.Query);
        if (refusal is not null)
        {
            await Refuse(http, StatusCodes.Status400BadRequest, "QUERY_TOO_LARGE", refusal);
            return;
        }

        http.RequestServices.GetRequiredService<ChosenCoop>().Read(http.Request.Headers);
        var log = http.RequestServices.GetRequiredService<ILoggerFactory>().CreateLogger("FarmPortfolio.GraphQL");
        var result = await http.RequestServices.GetRequiredService<IDocumentExecuter<ISchema>>().ExecuteAsync(new ExecutionOptions
        {
            Query = request.Query,
            Document = document,
            OperationName = request.OperationName,
            Variables = request.Variables,
            RequestServices = http.RequestServices,
            User = http.User,
            CancellationToken = http.RequestAborted,
            UnhandledExceptionDelegate = context =>
            {
                if (context.OriginalException is not (GraphQLParser.Exceptions.GraphQLParserException or OperationCanceledException or ExecutionError))
                {
                    LogUnanswered(log, context.OriginalException, context.FieldContext?.FieldDefinition.Name ?? "the request");
                }

                return Task.CompletedTask;
            },
        });
        if (http.Request.Headers.Accept.ToString().Contains(EventStream.ContentType, StringComparison.OrdinalIgnoreCase))
        {
            await EventStream.Write(http, serializer, result, log);
            return;
        }

        http.Response.StatusCode = result.Executed ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest;
        http.Response.ContentType = "application/json; charset=utf-8";
        http.Response.Headers[HeaderNames.CacheControl] = "no-store";
        await serializer.WriteAsync(http.Response.Body, result, http.RequestAborted);
    }

    private static Task Refuse(HttpContext http, int status, string code, string message)
    {
        http.Response.StatusCode = status;
        return http.Response.WriteAsJsonAsync(new { errors = new[] { new { message, extensions = new { code } } } });
    }

    [LoggerMessage(LogLevel.Error, "{Field} could not be answered")]
    private static partial void LogUnanswered(ILogger log, Exception error, string field);
}
