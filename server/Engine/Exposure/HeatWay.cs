using FarmPortfolio.Engine.Economics;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Exposure;

/// <summary>One way to meet the same heat: a fuel, a heater, a contract.</summary>
/// <param name="Key">Key, steady between calls.</param>
/// <param name="Name">Name in words.</param>
/// <param name="Fuel">Fuel.</param>
/// <param name="Terms">Contract.</param>
/// <param name="FuelPerHeat">kWh of fuel a kWh of heat by winter of the pool and month (July first); one row serves all winters.</param>
/// <param name="Unit">Unit that prices are told in.</param>
/// <param name="StandBy">Fuel that takes over when the supply is cut.</param>
public sealed record HeatWay(string Key, string Name, FuelKind Fuel, SupplyTerms Terms, IReadOnlyList<double[]> FuelPerHeat, string Unit, FuelKind? StandBy = null)
{
    /// <summary>Heating values that <see cref="Unit"/> is turned into kWh by.</summary>
    public HeatingValueSet Heating { get; init; } = FuelSets.HeatingInUse;

    /// <summary>Draws what own prices of <see cref="Terms"/> lie off their lines by; null = nothing is drawn.</summary>
    public OwnPriceNoise? OwnPrices { get; init; }

    /// <summary>A heater of one seasonal efficiency.</summary>
    /// <param name="efficiency">Heat over fuel on the higher heating value.</param>
    /// <returns>Fuel a heat.</returns>
    public static IReadOnlyList<double[]> At(double efficiency) => [[.. Enumerable.Repeat(1 / efficiency, 12)]];
}

/// <summary>What the same heat costs one way, over all futures.</summary>
public sealed class WayCost
{
    private WayCost(HeatWay way, double[] usd, double[] fuelKwh, SeasonCharges mean, int replicates)
    {
        (Way, Usd, FuelKwh, MeanCharges) = (way, usd, fuelKwh, mean);
        Cost = Distribution.Of(usd, replicates, worstIsHigh: true);
        Units = OrderStatistics.Sum(fuelKwh) / fuelKwh.Length / HeatingValues.KwhPerUnit(way.Fuel, way.Unit, way.Heating)!.Value;
    }

    /// <summary>The way.</summary>
    public HeatWay Way { get; }

    /// <summary>Cost of the season by path, US dollars.</summary>
    public double[] Usd { get; }

    /// <summary>Fuel of the season by path, kWh.</summary>
    public double[] FuelKwh { get; }

    /// <summary>The charges, mean of all futures.</summary>
    public SeasonCharges MeanCharges { get; }

    /// <summary>Cost of the season over all futures, US dollars.</summary>
    public Distribution Cost { get; }

    /// <summary>Units used, mean of all futures.</summary>
    public double Units { get; }

    /// <summary>Several tanks or meters as one cost; fuel and unit are those of the first.</summary>
    /// <param name="parts">Costs on the same futures, at least one.</param>
    /// <param name="way">What the sum is called.</param>
    /// <param name="replicates">Equal replicates.</param>
    /// <returns>The sum.</returns>
    public static WayCost Together(IReadOnlyList<WayCost> parts, HeatWay way, int replicates)
    {
        var (usd, fuel) = (new double[parts[0].Usd.Length], new double[parts[0].Usd.Length]);
        for (var p = 0; p < usd.Length; p++)
        {
            foreach (var part in parts)
            {
                usd[p] += part.Usd[p];
                fuel[p] += part.FuelKwh[p];
            }
        }

        return new(way, usd, fuel, parts.Aggregate(new SeasonCharges(), (sum, part) => sum + part.MeanCharges), replicates);
    }

    /// <summary>Settles a season on all futures; seasons before it are settled too, since a block can be carried over.</summary>
    /// <param name="blocks">Futures.</param>
    /// <param name="heat">Heat.</param>
    /// <param name="way">Way.</param>
    /// <param name="season">Season from 0.</param>
    /// <returns>The cost.</returns>
    public static WayCost Of(IReadOnlyList<FuturesBlock> blocks, SameHeat heat, HeatWay way, int season)
    {
        var (usd, fuel) = (new double[heat.Paths], new double[heat.Paths]);
        var sums = new SeasonCharges();
        Span<double> volume = stackalloc double[12];
        Span<double> months = stackalloc double[12];
        var carried = new Carried[Math.Max(1, way.Terms.Parts)];
        var (own, length) = (new double[way.OwnPrices?.Length ?? 0], way.OwnPrices?.SeasonLength ?? 0);
        foreach (var block in blocks)
        {
            var index = block.Price(way.Fuel);
            var standBy = way.StandBy is { } other ? block.Price(other) : [];
            for (var p = 0; p < block.Paths; p++)
            {
                var path = block.Replicate * block.Paths + p;
                carried.AsSpan().Clear();
                way.OwnPrices?.Fill(path, own);
                for (var s = 0; s <= season; s++)
                {
                    var perHeat = way.FuelPerHeat[way.FuelPerHeat.Count == 1 ? 0 : heat.Winter[path * heat.Seasons + s]];
                    var need = heat.Season(path, s);
                    for (var m = 0; m < 12; m++)
                    {
                        volume[m] = need[m] * perHeat[m];
                    }

                    var at = 12 * (p * block.Seasons + s);
                    var charges = way.Terms.Season(s, index.AsSpan(at, 12), volume, standBy.Length > 0 ? standBy.AsSpan(at, 12) : [], carried, months, own.AsSpan(s * length, length));
                    if (s == season)
                    {
                        (usd[path], sums) = (charges.TotalUsd, sums + charges);
                        foreach (var v in volume)
                        {
                            fuel[path] += v;
                        }
                    }
                }
            }
        }

        var n = (double)heat.Paths;
        var mean = new SeasonCharges(
            sums.FuelUsd / n, sums.FeesUsd / n, sums.LeftoverUsd / n, sums.MinimumUsd / n, sums.DemandUsd / n, sums.StandByUsd / n, sums.MoneyUsd / n, sums.LeftoverKwh / n, sums.ShortKwh / n);
        return new(way, usd, fuel, mean, blocks.Count);
    }
}
