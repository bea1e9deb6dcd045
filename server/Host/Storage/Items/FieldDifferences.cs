using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace FarmPortfolio.Host.Storage.Items;

/// <summary>A field that differs between two texts of an item.</summary>
/// <param name="Field">Path of the field: widthM, surfaces[Roof].coveringCode.</param>
/// <param name="Title">The same in plain words, with the unit.</param>
/// <param name="Left">Value on the left; null = not there.</param>
/// <param name="Right">Value on the right; null = not there.</param>
/// <param name="Moves">Whether it can move a number: a fact, not a remark.</param>
public sealed record FieldDifference(string Field, string Title, string? Left, string? Right, bool Moves);

/// <summary>Compares two texts of an item field by field.</summary>
public static class FieldDifferences
{
    /// <summary>Lists of plain numbers longer than this are told as one difference.</summary>
    private const int LongList = 24;

    // what tells the members of a list apart, so that one put in the middle does not shift the rest
    private static readonly string[] Keys = ["key", "part", "fuel", "season", "code", "heaterCode", "supplyGroupId", "fromOn", "houseId", "what"];

    private static readonly (string Suffix, string Unit)[] Units =
    [
        ("UsdPerKwh", "$/kWh"), ("UsdPerUnit", "$ a unit"), ("UsdPerHour", "$/h"), ("UsdPerYear", "$ a year"), ("UsdPerM2", "$/m2"), ("WPerMK", "W/mK"), ("KwhPerDay", "kWh a day"),
        ("KwhPerYear", "kWh a year"), ("PerYear", "a year"), ("PerHour", "an hour"), ("PerDay", "a day"), ("PerWeek", "a week"), ("Cents", "cents"), ("Usd", "$"), ("Kwh", "kWh"), ("Kw", "kW"), ("M2", "m2"),
        ("Deg", "degrees"), ("Pct", "%"), ("M", "m"), ("C", "C"), ("K", "K"), ("L", "L"),
    ];

    // fields whose own words would not say what they are
    private static readonly Dictionary<string, string> Titles = new(StringComparer.Ordinal)
    {
        ["relatedKey"] = "shared word of farms under one owner",
        ["memberSinceOn"] = "member since",
        ["groups"] = "groups in rounds",
    };

    /// <summary>Compares facts and remarks.</summary>
    /// <param name="leftFacts">Facts on the left; null = deleted or not there.</param>
    /// <param name="leftRemarks">Remarks on the left.</param>
    /// <param name="rightFacts">Facts on the right.</param>
    /// <param name="rightRemarks">Remarks on the right.</param>
    /// <returns>Differences, facts first.</returns>
    public static IReadOnlyList<FieldDifference> Of(string? leftFacts, string? leftRemarks, string? rightFacts, string? rightRemarks) =>
        [.. Compare(leftFacts, rightFacts, moves: true), .. Compare(leftRemarks, rightRemarks, moves: false)];

    private static IEnumerable<FieldDifference> Compare(string? left, string? right, bool moves)
    {
        if (left == right)
        {
            return [];
        }

        var (l, r) = (Flat(left), Flat(right));
        return l.Keys.Concat(r.Keys.Where(k => !l.ContainsKey(k))).Select(k => (Key: k, Left: l.GetValueOrDefault(k), Right: r.GetValueOrDefault(k)))
            .Where(d => d.Left != d.Right).Select(d => new FieldDifference(d.Key, Title(d.Key), Short(d.Left, d.Right), Short(d.Right, d.Left), moves));
    }

    private static Dictionary<string, string> Flat(string? text)
    {
        var fields = new Dictionary<string, string>(StringComparer.Ordinal);
        if (text is not null)
        {
            Add(JsonNode.Parse(text), string.Empty, fields);
        }

        return fields;
    }

    private static void Add(JsonNode? node, string path, Dictionary<string, string> fields)
    {
        switch (node)
        {
            case JsonObject o:
                foreach (var (key, value) in o)
                {
                    Add(value, path.Length == 0 ? key : $"{path}.{key}", fields);
                }

                break;
            case JsonArray a when a.All(x => x is null or JsonValue):
                if (a.Count > 0)
                {
                    fields[path] = string.Join(", ", a.Select(Plain));
                }

                break;
            case JsonArray a:
                var seen = new Dictionary<string, int>(StringComparer.Ordinal);
                for (var i = 0; i < a.Count; i++)
                {
                    var name = a[i] is JsonObject member && Keys.FirstOrDefault(member.ContainsKey) is { } key ? Plain(member[key]) : (i + 1).ToString(CultureInfo.InvariantCulture);
                    seen[name] = seen.GetValueOrDefault(name) + 1;
                    Add(a[i], $"{path}[{(seen[name] == 1 ? name : $"{name} #{seen[name]}")}]", fields);
                }

                break;
            case null:
                break;
            default:
                fields[path] = Plain(node);
                break;
        }
    }

    private static string Plain(JsonNode? node) => node switch
    {
        null => "missing",
        JsonValue v when v.GetValueKind() == JsonValueKind.String => v.GetValue<string>(),
        JsonValue v when v.GetValueKind() == JsonValueKind.True => "yes",
        JsonValue v when v.GetValueKind() == JsonValueKind.False => "no",
        _ => node.ToJsonString(),
    };

    private static string? Short(string? value, string? other)
    {
        var parts = value?.Split(", ");
        if (parts is not { Length: > LongList })
        {
            return value;
        }

        var others = other?.Split(", ") ?? [];
        var differ = parts.Where((p, i) => i >= others.Length || others[i] != p).Count();
        return string.Create(CultureInfo.InvariantCulture, $"{parts.Length} values, {differ} of them different");
    }

    // surfaces[Roof].coveringCode -> surfaces Roof, covering code; widthM -> width (m)
    private static string Title(string path) => Titles.GetValueOrDefault(path) ?? string.Join(", ", path.Split('.').Select(part =>
    {
        var bracket = part.IndexOf('[', StringComparison.Ordinal);
        var (name, member) = bracket < 0 ? (part, string.Empty) : (part[..bracket], " " + part[(bracket + 1)..].TrimEnd(']'));
        var unit = Units.FirstOrDefault(u => name.Length > u.Suffix.Length && name.EndsWith(u.Suffix, StringComparison.Ordinal) && (char.IsLower(name[^(u.Suffix.Length + 1)]) || char.IsDigit(name[^(u.Suffix.Length + 1)])));
        return Words(unit.Suffix is null ? name : name[..^unit.Suffix.Length]) + member + (unit.Unit is null ? string.Empty : $" ({unit.Unit})");
    }));

    private static string Words(string name)
    {
        var words = new StringBuilder();
        foreach (var c in name)
        {
            if (char.IsUpper(c) && words.Length > 0)
            {
                words.Append(' ');
            }

            words.Append(char.ToLowerInvariant(c));
        }

        return words.ToString();
    }
}
