using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Studies;

namespace FarmPortfolio.Engine.Tests.Studies;

/// <summary>The kernel and the prices it reads against one number at a time: the same bits, whatever the count of paths, lanes and seasons.</summary>
public class CostKernelTests
{
    private static readonly int[] Months = [3, 5, 6, 9];

    public static TheoryData<string, ContractFacts?> Contracts => new()
    {
        { "the index", null },
        { "indexed", new() { SupplyGroupId = "g", Kind = ContractKind.Indexed, Unit = "gal", AdderUsdPerUnit = 0.4, IndexShare = 0.9 } },
        { "capped for two seasons", new() { SupplyGroupId = "g", Kind = ContractKind.Capped, Unit = "gal", CapUsdPerUnit = 2.1, AdderUsdPerUnit = 0.1, EndsOn = new(2028, 6, 30) } },
        { "half collared", new() { SupplyGroupId = "g", Kind = ContractKind.Collared, Unit = "gal", CapUsdPerUnit = 2.3, FloorUsdPerUnit = 1.6, VolumeShare = 0.5 } },
    };

    [Theory]
    [MemberData(nameof(Contracts), DisableDiscoveryEnumeration = true)]
    public void Every_cell_has_the_bits_of_a_plain_sum(string name, ContractFacts? contract)
    {
        foreach (var (paths, lanes, seasons) in new[] { (1, 1, 1), (5, 4, 3), (37, 9, 7), (64, 12, 15) })
        {
            var block = Block(paths, seasons);
            var tables = Enumerable.Range(0, lanes).Select(Table).ToArray();
            var (terms, faults) = SupplyTerms.Of(contract is null ? [] : [contract], null, FuelKind.Propane, null, 2026, seasons);
            Assert.Empty(faults);
            var (side, prices) = (new LaneTables(tables, Months), new PaidPrices(terms!, Months, seasons));
            var found = new double[side.Lanes * seasons * CostKernel.Stretch];
            CostKernel.Run(side, prices, new ReplicateLayout(block).Index(FuelKind.Propane), block, 0, paths, new double[4 * prices.Length], found);
            for (var cell = 0; cell < lanes * seasons * paths; cell++)
            {
                var (lane, s, p) = (cell / paths / seasons, cell / paths % seasons, cell % paths);
                var expected = Plain(tables[lane], terms!, block, p, s);
                var actual = found[(lane * seasons + s) * CostKernel.Stretch + p];
                Assert.True(BitConverter.DoubleToInt64Bits(expected) == BitConverter.DoubleToInt64Bits(actual), $"{name}, {paths} paths, lane {lane} of {lanes}, season {s} of {seasons}, path {p}: {actual:R}, one number at a time {expected:R}");
            }
        }
    }

    private static double Plain(DemandTable table, SupplyTerms terms, FuturesBlock block, int path, int season)
    {
        var (cell, sum) = (path * block.Seasons + season, 0.0);
        foreach (var m in Months)
        {
            var abc = table.Coefficients.Slice(3 * (12 * block.Winter[cell] + m), 3);
            var demand = Math.Max(0, Math.FusedMultiplyAdd(block.OffsetK[cell], Math.FusedMultiplyAdd(block.OffsetK[cell], abc[2], abc[1]), abc[0]));
            sum = Math.FusedMultiplyAdd(terms.PriceOf(12 * season + m).At(block.Price(FuelKind.Propane)[12 * cell + m]), demand, sum);
        }

        return sum;
    }

    private static FuturesBlock Block(int paths, int seasons)
    {
        var block = new FuturesBlock(0, paths, seasons);
        for (var c = 0; c < paths * seasons; c++)
        {
            block.Winter[c] = (byte)(3 * Noise.Uniform(1, NoisePurpose.WinterPlace, 1, c, 0));
            block.OffsetK[c] = Noise.Normal(1, NoisePurpose.Offset, 1, c, 0);
            for (var m = 0; m < 12; m++)
            {
                block.Price(FuelKind.Propane)[12 * c + m] = 0.03 + 0.08 * Noise.Uniform(1, NoisePurpose.LongFactor, 1, c, m);
            }
        }

        return block;
    }

    /// <summary>Three winters in which some months' demand falls below 0 at some offsets.</summary>
    private static DemandTable Table(int lane) => new(3, [.. Enumerable.Range(0, 3 * 36).Select(i => (i % 3 == 0 ? 900 : i % 3 == 1 ? -400 : 20) * Noise.Uniform(1, NoisePurpose.LossOwn, 1, lane, i))], new(new Dictionary<string, double>(), new Dictionary<string, double>(), 0, 0));
}
