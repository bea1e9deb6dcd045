using System.Threading.Channels;
using GraphQL;
using Microsoft.Net.Http.Headers;

namespace FarmPortfolio.Host.Api;

/// <summary>Writes results as server-sent events, one connection an operation: "next" for each result, then "complete".</summary>
internal static partial class EventStream
{
    /// <summary>What a client must accept to get events.</summary>
    public const string ContentType = "text/event-stream";

    private const int MostWaiting = 64;
    private static readonly TimeSpan Quiet = TimeSpan.FromSeconds(15);

    /// <summary>Writes until the operation ends or the client goes. A slow reader loses the oldest results, never the newest.</summary>
    /// <param name="http">Request.</param>
    /// <param name="serializer">Serializer.</param>
    /// <param name="result">A subscription's streams; anything else is sent as one result.</param>
    /// <param name="log">Log.</param>
    public static async Task Write(HttpContext http, IGraphQLTextSerializer serializer, ExecutionResult result, ILogger log)
    {
        http.Response.ContentType = ContentType;
        http.Response.Headers[HeaderNames.CacheControl] = "no-store";
        try
        {
            // the reader learns at once that it is heard, though nothing may come for long
            await http.Response.StartAsync(http.RequestAborted);
            await http.Response.Body.FlushAsync(http.RequestAborted);
            if (result.Streams is { Count: > 0 } streams)
            {
                await Follow(http, serializer, streams.Values.First(), log);
            }
            else
            {
                await Send(http, Next(serializer.Serialize(result)));
            }

            await Send(http, "event: complete\ndata: \n\n");
        }
        catch (OperationCanceledException) when (http.RequestAborted.IsCancellationRequested)
        {
            // the reader has gone; disposing the subscription has stopped the producer
        }
    }

    private static async Task Follow(HttpContext http, IGraphQLTextSerializer serializer, IObservable<ExecutionResult> stream, ILogger log)
    {
        var waiting = Channel.CreateBounded<ExecutionResult>(new BoundedChannelOptions(MostWaiting) { FullMode = BoundedChannelFullMode.DropOldest });
        using var subscription = stream.Subscribe(new Pipe(waiting.Writer));
        try
        {
            while (await More(waiting.Reader, http))
            {
                while (waiting.Reader.TryRead(out var next))
                {
                    await Send(http, Next(serializer.Serialize(next)));
                }
            }
        }
        catch (Exception e) when (e is not OperationCanceledException)
        {
            LogBroken(log, e);
            await Send(http, Next("{\"errors\":[{\"message\":\"The subscription broke off.\",\"extensions\":{\"code\":\"SUBSCRIPTION_BROKEN\"}}]}"));
        }
    }

    // a comment now and then keeps the connection open, and shows when the reader has gone
    private static async Task<bool> More(ChannelReader<ExecutionResult> reader, HttpContext http)
    {
        var more = reader.WaitToReadAsync(http.RequestAborted).AsTask();
        while (await Task.WhenAny(more, Task.Delay(Quiet, http.RequestAborted)) != more)
        {
            await Send(http, ":\n\n");
        }

        return await more;
    }

    private static string Next(string json) => $"event: next\ndata: {json}\n\n";

    private static async Task Send(HttpContext http, string text)
    {
        await http.Response.WriteAsync(text, http.RequestAborted);
        await http.Response.Body.FlushAsync(http.RequestAborted);
    }

    [LoggerMessage(LogLevel.Error, "a subscription broke off")]
    private static partial void LogBroken(ILogger log, Exception error);

    private sealed class Pipe(ChannelWriter<ExecutionResult> writer) : IObserver<ExecutionResult>
    {
        public void OnCompleted() => writer.TryComplete();

        public void OnError(Exception error) => writer.TryComplete(error);

        public void OnNext(ExecutionResult value) => writer.TryWrite(value);
    }
}
