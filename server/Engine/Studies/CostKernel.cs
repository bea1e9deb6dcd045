using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using FarmPortfolio.Engine.Scenarios;

namespace FarmPortfolio.Engine.Studies;

/// <summary>
/// The inner loop of a study: for every path and season the sum over months of price x max(0, a + b o + c o^2), for all options of a house at once.
/// Lanes are options and every fused step is explicit, so vectors of any width give the same bits.
/// </summary>
internal static class CostKernel
{
    private const int Tile = 64;

    /// <summary>Cost of the heat of one replicate as if the heater were perfect, US dollars.</summary>
    /// <param name="table">Demand, a lane an option.</param>
    /// <param name="block">The replicate.</param>
    /// <param name="index">Index of the fuel by path, season and month, US dollars a kWh of fuel.</param>
    /// <param name="price">What is paid over the index.</param>
    /// <param name="paths">Paths of all replicates: the length of a season's row in <paramref name="into"/>.</param>
    /// <param name="into">By lane: season by season a row of paths; as many as are wanted.</param>
    public static void Run(LaneTable table, FuturesBlock block, double[] index, LinearPrice price, int paths, ReadOnlySpan<double[]> into)
    {
        var (months, seasons, lanes) = (table.Months, block.Seasons, table.Lanes);
        var row = 3 * months.Length * lanes;
        var paid = new double[Tile * seasons * Math.Max(1, months.Length)];
        var sums = new double[Tile * lanes];
        for (var from = 0; from < block.Paths; from += Tile)
        {
            var count = Math.Min(Tile, block.Paths - from);
            Paid(index.AsSpan(from * seasons * 12, count * seasons * 12), price, months, seasons, paid);
            for (var s = 0; s < seasons; s++)
            {
                for (var p = 0; p < count && months.Length > 0; p++)
                {
                    var cell = (from + p) * seasons + s;
                    Sum(ref table.Coefficients[block.Winter[cell] * row], ref paid[(p * seasons + s) * months.Length], months.Length, lanes, block.OffsetK[cell], ref sums[p * lanes]);
                }

                var at = s * paths + block.Replicate * block.Paths + from;
                for (var lane = 0; lane < into.Length; lane++)
                {
                    var to = into[lane].AsSpan(at, count);
                    for (var p = 0; p < to.Length; p++)
                    {
                        to[p] = sums[p * lanes + lane];
                    }
                }
            }
        }
    }

    private static void Paid(ReadOnlySpan<double> index, LinearPrice price, int[] months, int seasons, double[] paid)
    {
        var at = 0;
        for (var cell = 0; cell < index.Length / 12; cell++)
        {
            var first = cell % seasons * 12;
            foreach (var m in months)
            {
                paid[at++] = price.UsdPerKwh(index[12 * cell + m], first + m);
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Sum(ref double coefficients, ref double paid, int months, int lanes, double offsetK, ref double sums)
    {
        for (var lane = 0; lane < lanes; lane += 8)
        {
            ref var c = ref Unsafe.Add(ref coefficients, lane);
            if (Vector512.IsHardwareAccelerated)
            {
                var (o, sum) = (Vector512.Create(offsetK), Vector512<double>.Zero);
                for (var m = 0; m < months; m++)
                {
                    var slope = Vector512.FusedMultiplyAdd(o, Vector512.LoadUnsafe(ref c, (nuint)(2 * lanes)), Vector512.LoadUnsafe(ref c, (nuint)lanes));
                    var demand = Vector512.MaxNative(Vector512.FusedMultiplyAdd(o, slope, Vector512.LoadUnsafe(ref c)), Vector512<double>.Zero);
                    sum = Vector512.FusedMultiplyAdd(Vector512.Create(Unsafe.Add(ref paid, m)), demand, sum);
                    c = ref Unsafe.Add(ref c, 3 * lanes);
                }

                sum.StoreUnsafe(ref sums, (nuint)lane);
            }
            else
            {
                Half(ref c, ref paid, months, lanes, offsetK).StoreUnsafe(ref sums, (nuint)lane);
                Half(ref Unsafe.Add(ref c, 4), ref paid, months, lanes, offsetK).StoreUnsafe(ref sums, (nuint)lane + 4);
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Half(ref double c, ref double paid, int months, int lanes, double offsetK)
    {
        var (o, sum) = (Vector256.Create(offsetK), Vector256<double>.Zero);
        for (var m = 0; m < months; m++)
        {
            var slope = Vector256.FusedMultiplyAdd(o, Vector256.LoadUnsafe(ref c, (nuint)(2 * lanes)), Vector256.LoadUnsafe(ref c, (nuint)lanes));
            var demand = Vector256.MaxNative(Vector256.FusedMultiplyAdd(o, slope, Vector256.LoadUnsafe(ref c)), Vector256<double>.Zero);
            sum = Vector256.FusedMultiplyAdd(Vector256.Create(Unsafe.Add(ref paid, m)), demand, sum);
            c = ref Unsafe.Add(ref c, 3 * lanes);
        }

        return sum;
    }
}
