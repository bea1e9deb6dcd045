namespace FarmPortfolio.Host.Storage.Items;

/// <summary>Wakes whoever waits for changes; what changed is then read from the store.</summary>
public sealed class ChangeFeed
{
    private TaskCompletionSource next = new(TaskCreationOptions.RunContinuationsAsynchronously);

    /// <summary>Ends with the next change. Take it before reading, so that none is missed.</summary>
    public Task Next => Volatile.Read(ref next).Task;

    /// <summary>Something changed.</summary>
    public void Tell() => Interlocked.Exchange(ref next, new(TaskCreationOptions.RunContinuationsAsynchronously)).SetResult();
}
