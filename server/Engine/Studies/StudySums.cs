using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Engine.Studies;

/// <summary>
/// Fuel of all houses as they stand, by fuel, season and path, in whole micro-dollars: each unit's figure is rounded once, so adding and taking away are
/// exact and any order, thread or machine gives the same bits.
/// </summary>
public sealed class StudySums
{
    private const double Micro = 1e6;
    private const double Exact = 2251799813685248.0;
    private const double Magic = 6755399441055744.0;
    private readonly long[][] byFuel;

    /// <summary>Sums of nothing.</summary>
    /// <param name="cells">Seasons x paths.</param>
    public StudySums(int cells) : this([.. Enumerable.Range(0, FuturesBlock.Fuels).Select(_ => new long[cells])])
    {
    }

    private StudySums(long[][] byFuel) => this.byFuel = byFuel;

    /// <summary>Seasons x paths.</summary>
    public int Cells => byFuel[0].Length;

    /// <summary>Sums of a fuel, season by season a row of paths, micro-dollars.</summary>
    /// <param name="fuel">Fuel.</param>
    /// <returns>The sums.</returns>
    public ReadOnlySpan<long> Of(FuelKind fuel) => byFuel[(int)fuel];

    /// <summary>US dollars of all fuels at a cell.</summary>
    /// <param name="cell">Season x paths + path.</param>
    /// <returns>US dollars.</returns>
    public double Usd(int cell)
    {
        var sum = 0L;
        foreach (var fuel in byFuel)
        {
            sum += fuel[cell];
        }

        return sum / Micro;
    }

    /// <summary>US dollars of one fuel at a cell.</summary>
    /// <param name="fuel">Fuel.</param>
    /// <param name="cell">Season x paths + path.</param>
    /// <returns>US dollars.</returns>
    public double Usd(FuelKind fuel, int cell) => byFuel[(int)fuel][cell] / Micro;

    /// <summary>Adds a unit's dollars, rounding each cell once.</summary>
    /// <param name="fuel">Fuel.</param>
    /// <param name="usd">US dollars by cell.</param>
    /// <param name="sign">1 = add, -1 = take away.</param>
    public void Add(FuelKind fuel, ReadOnlySpan<double> usd, int sign = 1)
    {
        var sum = byFuel[(int)fuel];
        ref var to = ref MemoryMarshal.GetArrayDataReference(sum);
        ref var from = ref MemoryMarshal.GetReference(usd[..sum.Length]);
        for (var c = 0; c < sum.Length; c += 4)
        {
            // adding the magic number rounds to the nearest whole, ties to the even one, as Math.Round does
            if (c + 4 <= sum.Length && Vector256.LoadUnsafe(ref from, (nuint)c) * Vector256.Create(Micro) is var micro && Vector256.LessThanAll(Vector256.Abs(micro), Vector256.Create(Exact)))
            {
                var whole = (micro + Vector256.Create(Magic)).AsInt64() - Vector256.Create(Magic).AsInt64();
                var old = Vector256.LoadUnsafe(ref to, (nuint)c);
                (sign > 0 ? old + whole : old - whole).StoreUnsafe(ref to, (nuint)c);
                continue;
            }

            for (var i = c; i < Math.Min(c + 4, sum.Length); i++)
            {
                sum[i] += sign * (long)Math.Round(usd[i] * Micro);
            }
        }
    }

    /// <summary>Adds other sums.</summary>
    /// <param name="other">Sums of as many cells.</param>
    public void Add(StudySums other)
    {
        for (var f = 0; f < byFuel.Length; f++)
        {
            for (var c = 0; c < byFuel[f].Length; c++)
            {
                byFuel[f][c] += other.byFuel[f][c];
            }
        }
    }

    /// <summary>A copy.</summary>
    /// <returns>Equal sums.</returns>
    public StudySums Copy() => new([.. byFuel.Select(f => f.ToArray())]);

    /// <summary>The sums of a fuel as bytes, little-endian.</summary>
    /// <param name="fuel">Fuel.</param>
    /// <returns>Eight bytes a cell.</returns>
    public byte[] Bytes(FuelKind fuel) => MemoryMarshal.AsBytes<long>(byFuel[(int)fuel]).ToArray();

    /// <summary>Sums from bytes.</summary>
    /// <param name="bytes">By fuel in order, as <see cref="Bytes"/> gave them.</param>
    /// <returns>The sums.</returns>
    public static StudySums From(IReadOnlyList<byte[]> bytes) => new([.. bytes.Select(b => MemoryMarshal.Cast<byte, long>(b).ToArray())]);
}
