using System.Security.Cryptography;
using System.Text.Json;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Studies;

namespace FarmPortfolio.Engine.Tests.Studies;

/// <summary>Holds the figures of a small study to the bit: stored results are used again only while nothing moves them.</summary>
public class NumbersVersionTests
{
    private const int Version = 5;
    private static readonly JsonSerializerOptions Fields = new() { IncludeFields = true };

    [Theory]
    [InlineData(PathSampling.Plain, "31d0eaba23ce08cf2929f65963e2796bf86653a21de80fada7970f23f23a8e4c")]
    [InlineData(PathSampling.Sobol, "9255e8f9badb38c2a1d04f836021ce66b0ca27f1a33e5c021d2c690b345775f6")]
    public void A_bit_that_moves_raises_the_version(PathSampling sampling, string digest)
    {
        var (outcome, faults) = StudyRun.Run(SmallPortfolio.Of(change: s => s with { Sampling = sampling }), new StudyMeans(2), null, TestContext.Current.CancellationToken);
        Assert.Empty(faults);
        var found = Digest(outcome!);
        Assert.True(
            digest == found && StudyRun.NumbersVersion == Version,
            $"The figures of a small study have the checksum {found}, and at version {Version} of the numbers it was {digest}. Raise StudyRun.NumbersVersion (now {StudyRun.NumbersVersion}), or stored units of before would be mixed with new ones; then write the version and the checksums of both samplings here.");
    }

    /// <summary>Checksum of the figures alone, not of what the units are named by: options, fuel of the whole, and the sums by path and season.</summary>
    private static string Digest(StudyOutcome outcome)
    {
        var result = outcome.Result;
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData(JsonSerializer.SerializeToUtf8Bytes((result.Options, result.CostBySeason, result.CostByFuel, result.CostByUnit, result.OnePath), Fields));
        for (var fuel = FuelKind.NaturalGas; fuel <= FuelKind.Electricity; fuel++)
        {
            hash.AppendData(outcome.Sums.Bytes(fuel));
        }

        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }
}
