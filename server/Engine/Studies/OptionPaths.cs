using System.Collections.Concurrent;
using FarmPortfolio.Engine.Economics;

namespace FarmPortfolio.Engine.Studies;

/// <summary>What an option does in every single future.</summary>
/// <param name="HouseId">House.</param>
/// <param name="Key">Option's key.</param>
/// <param name="SavingUsd">Net saving of a season, mean over the horizon, by path.</param>
/// <param name="LastingSeason">Lasting payback by path, seasons from installation; 0 = never.</param>
public sealed record OptionPaths(string HouseId, string Key, float[] SavingUsd, byte[] LastingSeason)
{
    internal static OptionPaths Of(string houseId, string key, PaybackSeasons payback, int seasons)
    {
        var saving = new float[payback.SumUsd.Length];
        for (var p = 0; p < saving.Length; p++)
        {
            saving[p] = (float)(payback.SumUsd[p] / seasons);
        }

        return new(houseId, key, saving, [.. payback.Lasting]);
    }
}

/// <summary>Single futures at hand, by unit, up to so many bytes; what does not fit is reckoned again when it is asked for.</summary>
/// <param name="mostBytes">Bytes kept at most.</param>
public sealed class PathStore(long mostBytes)
{
    private readonly ConcurrentDictionary<string, IReadOnlyList<OptionPaths>> byUnit = new(StringComparer.Ordinal);
    private long bytes;

    /// <summary>Keeps a unit's single futures where they fit.</summary>
    /// <param name="unitSha256">Unit.</param>
    /// <param name="paths">Its options.</param>
    public void Keep(string unitSha256, IReadOnlyList<OptionPaths> paths)
    {
        var size = paths.Sum(p => 5L * p.SavingUsd.Length);
        if (Interlocked.Add(ref bytes, size) > mostBytes || !byUnit.TryAdd(unitSha256, paths))
        {
            Interlocked.Add(ref bytes, -size);
        }
    }

    /// <summary>Lets go of all units but some.</summary>
    /// <param name="units">Units to keep.</param>
    public void Only(IReadOnlyCollection<string> units)
    {
        var wanted = units.ToHashSet(StringComparer.Ordinal);
        foreach (var unit in byUnit.Keys.Where(u => !wanted.Contains(u)).ToList())
        {
            if (byUnit.TryRemove(unit, out var paths))
            {
                Interlocked.Add(ref bytes, -paths.Sum(p => 5L * p.SavingUsd.Length));
            }
        }
    }

    /// <summary>A unit's single futures.</summary>
    /// <param name="unitSha256">Unit.</param>
    /// <returns>Its options; null where they are not at hand.</returns>
    public IReadOnlyList<OptionPaths>? Find(string unitSha256) => byUnit.GetValueOrDefault(unitSha256);
}
