using System.Security.Cryptography;
using System.Text;
using System.Text.Json;

namespace FarmPortfolio.Engine.Studies;

/// <summary>Checksum of a study's results: every unit's, what was left out, the distributions of the whole, and the sums by path and season.</summary>
internal static class ResultHash
{
    private static readonly JsonSerializerOptions Plain = new() { IncludeFields = true, NumberHandling = System.Text.Json.Serialization.JsonNumberHandling.AllowNamedFloatingPointLiterals };

    /// <summary>The checksum.</summary>
    /// <param name="result">Result.</param>
    /// <param name="units">Its units, in order.</param>
    /// <param name="sums">Sums.</param>
    /// <returns>SHA-256 in 64 hex digits.</returns>
    public static string Of(StudyResult result, IEnumerable<UnitResult> units, StudySums sums)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData(JsonSerializer.SerializeToUtf8Bytes(result with { Options = [], UnitsKnown = 0, DiscountRate = null, ResultSha256 = string.Empty, SavingByPath = [] }, Plain));
        foreach (var unit in units)
        {
            hash.AppendData(Encoding.UTF8.GetBytes(unit.ContentSha256));
        }

        for (var f = FuelKind.NaturalGas; f <= FuelKind.Electricity; f++)
        {
            hash.AppendData(sums.Bytes(f));
        }

        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }
}
