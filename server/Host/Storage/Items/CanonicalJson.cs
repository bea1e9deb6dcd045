using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;

namespace FarmPortfolio.Host.Storage.Items;

/// <summary>One way to write a fact: keys in ordinal order, nulls left out, shortest numbers, NFC text, no blanks.</summary>
public static class CanonicalJson
{
    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        IncludeFields = true,
        Converters = { new JsonStringEnumConverter() },
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
    };

    /// <summary>Writes a value.</summary>
    /// <param name="value">Facts or remarks.</param>
    /// <returns>Canonical text.</returns>
    public static string Write(object value) => (Sorted(JsonSerializer.SerializeToNode(value, value.GetType(), Options)) ?? new JsonObject()).ToJsonString(Options).Normalize(NormalizationForm.FormC);

    /// <summary>Reads a value.</summary>
    /// <typeparam name="T">Facts or remarks.</typeparam>
    /// <param name="text">Text written by <see cref="Write"/>.</param>
    /// <returns>The value.</returns>
    public static T Read<T>(string text) => JsonSerializer.Deserialize<T>(text, Options)!;

    /// <summary>Hash of a text.</summary>
    /// <param name="text">Text.</param>
    /// <returns>SHA-256 in 64 hex digits.</returns>
    public static string Sha256(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    private static JsonNode? Sorted(JsonNode? node) => node switch
    {
        JsonObject o => new JsonObject(o.Where(p => p.Value is not null).OrderBy(p => p.Key, StringComparer.Ordinal).Select(p => KeyValuePair.Create(p.Key, Sorted(p.Value)))),
        JsonArray a => new JsonArray([.. a.Select(Sorted)]),
        _ => node?.DeepClone(),
    };
}
