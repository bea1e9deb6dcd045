namespace FarmPortfolio.Engine.Retrofits;

/// <summary>Retrofits, coverings, heaters, plans and defaults by kind and code; a co-op's own entries lie over the built-in ones.</summary>
public sealed class Catalogue
{
    private readonly Dictionary<(CatalogueKind, string), CatalogueFacts> entries;

    private Catalogue(IEnumerable<CatalogueFacts> all) => entries = all.ToDictionary(e => (e.Kind, e.Code));

    /// <summary>What ships with the program.</summary>
    public static Catalogue BuiltIn { get; } = new(
        [.. BuiltInCoverings.All, .. BuiltInHeaters.All, .. BuiltInPlans.All, .. BuiltInInsulation.All, .. BuiltInMeasures.All, .. BuiltInSwitches.All, .. BuiltInDefaults.All]);

    /// <summary>All entries in order of kind and code.</summary>
    public IEnumerable<CatalogueFacts> Entries => entries.Values.OrderBy(e => e.Kind).ThenBy(e => e.Code, StringComparer.Ordinal);

    /// <summary>This catalogue with a co-op's own entries over it; an own entry's numbers replace those of the same name.</summary>
    /// <param name="own">Own entries.</param>
    /// <returns>The combined catalogue.</returns>
    public Catalogue With(IEnumerable<CatalogueFacts> own)
    {
        var all = new Dictionary<(CatalogueKind, string), CatalogueFacts>(entries);
        foreach (var entry in own)
        {
            var key = (entry.Kind, entry.Code);
            if (all.TryGetValue(key, out var built))
            {
                var values = new SortedDictionary<string, CatalogueValue>(built.Values.ToDictionary(), StringComparer.Ordinal);
                foreach (var (name, value) in entry.Values)
                {
                    values[name] = value;
                }

                all[key] = built with { Values = values, Periods = entry.Periods.Count > 0 ? entry.Periods : built.Periods };
            }
            else
            {
                all[key] = entry;
            }
        }

        return new(all.Values);
    }

    /// <summary>An entry, or null.</summary>
    /// <param name="kind">Kind.</param>
    /// <param name="code">Code.</param>
    /// <returns>The entry; null where there is none.</returns>
    public CatalogueFacts? Find(CatalogueKind kind, string code) => entries.GetValueOrDefault((kind, code));

    /// <summary>A number of an entry.</summary>
    /// <param name="kind">Kind.</param>
    /// <param name="code">Code.</param>
    /// <param name="name">Name of the number.</param>
    /// <param name="otherwise">What stands where entry or number is missing.</param>
    /// <returns>The number, SI.</returns>
    public double Value(CatalogueKind kind, string code, string name, double otherwise = 0) =>
        Find(kind, code) is { } entry && entry.Values.TryGetValue(name, out var value) ? value.Value : otherwise;

    /// <summary>A default of the house.</summary>
    /// <param name="name">Name of the number.</param>
    /// <returns>The number, SI.</returns>
    /// <exception cref="KeyNotFoundException">No such default.</exception>
    public double Default(string name) => entries[(CatalogueKind.Default, "house")].Values[name].Value;
}
