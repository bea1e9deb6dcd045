using System.Buffers.Binary;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace FarmPortfolio.Engine.Funding;

/// <summary>A drawn lot that anybody can draw again: the first eight bytes of SHA-256 over "seed house~option", most significant first; the smallest wins.</summary>
public static class Lot
{
    /// <summary>The lot of an option.</summary>
    /// <param name="seed">Seed on record.</param>
    /// <param name="houseId">House.</param>
    /// <param name="optionKey">Option.</param>
    /// <returns>Its number.</returns>
    public static ulong Of(long seed, string houseId, string optionKey) =>
        BinaryPrimitives.ReadUInt64BigEndian(SHA256.HashData(Encoding.UTF8.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{seed} {houseId}~{optionKey}"))));
}
