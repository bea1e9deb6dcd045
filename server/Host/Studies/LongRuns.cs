using System.Collections.Concurrent;
using System.Threading.Channels;
using FarmPortfolio.Engine.Studies;

namespace FarmPortfolio.Host.Studies;

/// <summary>One piece of long work.</summary>
/// <param name="report">Told how far it is, from any thread.</param>
/// <param name="cancel">Stops it.</param>
/// <param name="stopping">Set as well where the whole program stops, so that the work may be taken up again.</param>
public delegate void LongWork(IProgress<StudyProgress> report, CancellationToken cancel, CancellationToken stopping);

/// <summary>Long work one piece after another, each with all processors, and how far it is.</summary>
/// <param name="log">Log.</param>
public sealed partial class LongRuns(ILogger<LongRuns> log) : BackgroundService
{
    private readonly Channel<(string Id, LongWork Work)> queue = Channel.CreateUnbounded<(string, LongWork)>();
    private readonly ConcurrentDictionary<string, StudyProgress> progress = new();
    private readonly ConcurrentDictionary<string, CancellationTokenSource> running = new();

    /// <summary>Puts work at the end.</summary>
    /// <param name="id">Its identifier.</param>
    /// <param name="work">Does it; keeps its own faults.</param>
    public void Add(string id, LongWork work) => queue.Writer.TryWrite((id, work));

    /// <summary>Stops the work if it runs; who put it there sees to it that it does not begin.</summary>
    /// <param name="id">Identifier.</param>
    public void Cancel(string id)
    {
        if (!running.TryGetValue(id, out var token))
        {
            return;
        }

        try
        {
            token.Cancel();
        }
        catch (ObjectDisposedException)
        {
            // it ended between the two: nothing is left to stop
        }
    }

    /// <summary>How far some work is.</summary>
    /// <param name="id">Identifier.</param>
    /// <returns>Progress; null where it has not begun since the program started.</returns>
    public StudyProgress? Progress(string id) => progress.GetValueOrDefault(id);

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await foreach (var (id, work) in queue.Reader.ReadAllAsync(stoppingToken))
        {
            await Task.Run(() => RunOne(id, work, stoppingToken), stoppingToken);
        }
    }

    private void RunOne(string id, LongWork work, CancellationToken stopping)
    {
        using var token = CancellationTokenSource.CreateLinkedTokenSource(stopping);
        running[id] = token;
        try
        {
            work(new Teller(p => progress[id] = p), token.Token, stopping);
        }
#pragma warning disable CA1031 // whatever went wrong, the queue goes on
        catch (Exception e)
#pragma warning restore CA1031
        {
            LogFailed(e, id);
        }
        finally
        {
            running.TryRemove(id, out _);
            progress[id] = new(1, "done", 0, 0);
        }
    }

    [LoggerMessage(LogLevel.Error, "long work {Id} failed")]
    private partial void LogFailed(Exception e, string id);

    private sealed class Teller(Action<StudyProgress> tell) : IProgress<StudyProgress>
    {
        private readonly Lock gate = new();

        public void Report(StudyProgress value)
        {
            lock (gate)
            {
                tell(value);
            }
        }
    }
}
