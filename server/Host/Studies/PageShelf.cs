using System.Collections.Concurrent;

namespace FarmPortfolio.Host.Studies;

/// <summary>
/// What pages ask for again and again and that takes long to reckon, kept by a name that says all it is made of: the co-op, the number of its last change, the study, the rules.
/// So what is kept is never out of date; whoever asks while it is reckoned waits for it instead of reckoning it too.
/// </summary>
public sealed class PageShelf
{
    private const int Kept = 48;
    private readonly ConcurrentDictionary<string, Lazy<object?>> known = new(StringComparer.Ordinal);

    /// <summary>Something by its name.</summary>
    /// <typeparam name="T">What it is.</typeparam>
    /// <param name="name">All that it is made of.</param>
    /// <param name="reckon">Reckons it; null is not kept, nor what throws.</param>
    /// <returns>The thing, or null.</returns>
    public T? Of<T>(string name, Func<T?> reckon)
        where T : class
    {
        if (known.Count >= Kept)
        {
            known.Clear();
        }

        var slot = known.GetOrAdd(name, _ => new(() => reckon()));
        try
        {
            if (slot.Value is T found)
            {
                return found;
            }
        }
        catch
        {
            known.TryRemove(new(name, slot));
            throw;
        }

        known.TryRemove(new(name, slot));
        return null;
    }
}
