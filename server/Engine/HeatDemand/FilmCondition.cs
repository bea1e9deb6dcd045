using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Retrofits;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>
/// The state of a covering as it moves the air changes where nobody told them: torn takes the leaky end of the catalogue's range for that covering, worn the geometric mean of typical and leaky (common practice, no source).
/// Air changes that were entered, and U-values, are not moved.
/// </summary>
internal static class FilmCondition
{
    /// <summary>Tight enough.</summary>
    public const string Sound = "sound";

    /// <summary>Loose, patched, gaps at the edges.</summary>
    public const string Worn = "worn";

    /// <summary>Open holes.</summary>
    public const string Torn = "torn";

    /// <summary>Whether a word is a state.</summary>
    public static bool Known(string? word) => word is null or Sound or Worn or Torn;

    /// <summary>The worst state told of any part; null = sound or not told.</summary>
    public static string? Worst(IReadOnlyList<SurfaceFacts> surfaces) =>
        surfaces.Any(s => s.Condition == Torn) ? Torn : surfaces.Any(s => s.Condition == Worn) ? Worn : null;

    /// <summary>Air changes an hour in a state.</summary>
    public static double AirChanges(CatalogueValue usual, string? condition)
    {
        var leaky = Math.Max(usual.High ?? usual.Value, usual.Value);
        return condition switch { Torn => leaky, Worn => Math.Sqrt(usual.Value * leaky), _ => usual.Value };
    }
}
