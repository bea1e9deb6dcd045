using System.Security.Cryptography;
using System.Text.Json;
using System.Text.Json.Serialization;
using FarmPortfolio.Engine.Economics;

namespace FarmPortfolio.Engine.Studies;

/// <summary>What a study found for a unit; kept by its name and used by every study that meets the same unit.</summary>
/// <param name="Sha256">Name of the unit: all that its result depends on.</param>
/// <param name="HouseIds">Its houses.</param>
/// <param name="Options">Results, house by house.</param>
/// <param name="LeftOut">Options left out, and why.</param>
public sealed record UnitResult(string Sha256, IReadOnlyList<string> HouseIds, IReadOnlyList<OptionResult> Options, IReadOnlyList<(string ItemId, Fault Fault)> LeftOut)
{
    private static readonly JsonSerializerOptions Plain = new() { IncludeFields = true, NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals };

    /// <summary>The first season's fuel of all its houses as they stand, charges in; null where an earlier version of the program wrote the result.</summary>
    public Distribution? FirstSeasonUsd { get; init; }

    /// <summary>Checksum of the result's text: equal name, equal checksum, on any machine.</summary>
    [JsonIgnore]
    public string ContentSha256 { get; private init; } = string.Empty;

    /// <summary>The result as text; numbers so that they read back to the same bits.</summary>
    /// <param name="result">Result.</param>
    /// <returns>The result with its checksum, and UTF-8.</returns>
    public static (UnitResult Result, byte[] Text) Write(UnitResult result)
    {
        var text = JsonSerializer.SerializeToUtf8Bytes(result, Plain);
        return (result with { ContentSha256 = Convert.ToHexStringLower(SHA256.HashData(text)) }, text);
    }

    /// <summary>Reads a result.</summary>
    /// <param name="text">What <see cref="Write"/> gave.</param>
    /// <returns>The result with its checksum.</returns>
    /// <exception cref="JsonException">The text is no result of a unit.</exception>
    public static UnitResult Read(ReadOnlySpan<byte> text) =>
        (JsonSerializer.Deserialize<UnitResult>(text, Plain) ?? throw new JsonException("no result")) with { ContentSha256 = Convert.ToHexStringLower(SHA256.HashData(text)) };
}

/// <summary>Keeps units between studies.</summary>
public interface IUnitMemo
{
    /// <summary>A unit's result.</summary>
    /// <param name="sha256">Name of the unit.</param>
    /// <returns>The result; null where it is not at hand.</returns>
    UnitResult? Find(string sha256);

    /// <summary>Takes a unit's result; may be called from several threads at once.</summary>
    /// <param name="result">The result.</param>
    /// <param name="text">Its text.</param>
    void Keep(UnitResult result, byte[] text);
}
