using static FarmPortfolio.Engine.Retrofits.ValueStatus;

namespace FarmPortfolio.Engine.Retrofits;

/// <summary>Short ways to write the built-in catalogue in the units of its sources.</summary>
internal static class CatalogueTable
{
    internal static KeyValuePair<string, CatalogueValue> V(string name, string unit, double value, double? low, double? high, ValueStatus status, string? source = null, double factor = 1) =>
        new(name, new(value * factor, unit, low * factor, high * factor, status, source ?? (status == CommonPractice ? "common practice, no source" : null)));

    internal static KeyValuePair<string, CatalogueValue> P(string name, string unit, double value, double? low = null, double? high = null, double factor = 1) =>
        V(name, unit, value, low, high, CommonPractice, null, factor);

    internal static KeyValuePair<string, CatalogueValue> M(string name, string unit, double value, double? low = null, double? high = null, double factor = 1) =>
        V(name, unit, value, low, high, FromMemory, "from memory", factor);

    internal static IReadOnlyDictionary<string, CatalogueValue> Values(params KeyValuePair<string, CatalogueValue>[] values) =>
        new SortedDictionary<string, CatalogueValue>(values.ToDictionary(v => v.Key, v => v.Value), StringComparer.Ordinal);
}
