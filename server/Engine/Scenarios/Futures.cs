using FarmPortfolio.Engine.Fuel;
using static System.Math;

namespace FarmPortfolio.Engine.Scenarios;

/// <summary>One replicate of futures: a winter, an offset and twelve prices a fuel for every path and season.</summary>
/// <param name="replicate">Number of the replicate.</param>
/// <param name="paths">Paths.</param>
/// <param name="seasons">Seasons.</param>
public sealed class FuturesBlock(int replicate, int paths, int seasons)
{
    /// <summary>Number of the replicate.</summary>
    public int Replicate { get; } = replicate;

    /// <summary>Paths.</summary>
    public int Paths { get; } = paths;

    /// <summary>Seasons.</summary>
    public int Seasons { get; } = seasons;

    /// <summary>Index into the pool of winters, by path and season.</summary>
    public byte[] Winter { get; } = new byte[paths * seasons];

    /// <summary>Temperature offset by path and season, K.</summary>
    public double[] OffsetK { get; } = new double[paths * seasons];

    /// <summary>Delivered price by fuel (gas, propane, oil, electricity), then path, season and month: US dollars a kWh of fuel.</summary>
    public double[][] UsdPerKwh { get; } = [.. Enumerable.Range(0, Correlation.Fuels).Select(_ => new double[paths * seasons * 12])];

    /// <summary>Prices of a fuel; pellets have none yet.</summary>
    /// <param name="fuel">Fuel.</param>
    /// <returns>By path, season and month, US dollars a kWh of fuel.</returns>
    public double[] Price(FuelKind fuel) => UsdPerKwh[(int)fuel];
}

/// <summary>Draws futures, one replicate at a time, the same bits whoever draws them.</summary>
public sealed class Futures
{
    private const double ColdGasPerK = 0.04;
    private const double ColdCarry = 0.7;

    private readonly FuturesSpec spec;
    private readonly double[] shortRoot;
    private readonly double[] longRoot;
    private readonly int firstMonth;
    private readonly int[] months;
    private readonly Lazy<LeadingComponents> leading;

    /// <summary>Makes ready to draw.</summary>
    /// <param name="spec">What names the futures.</param>
    /// <exception cref="ArgumentException">The correlations are not positive definite.</exception>
    public Futures(FuturesSpec spec)
    {
        this.spec = spec;
        shortRoot = Correlation.Cholesky(spec.Set.ShortCorrelations ?? Correlation.ShortDefault);
        longRoot = Correlation.Cholesky(spec.Set.LongCorrelations ?? Correlation.LongDefault);
        firstMonth = 12 * spec.Set.FirstSeason + 6;
        months = MonthSteps();
        leading = new(() => LeadingComponents.Of(spec, Tracks(), [shortRoot, longRoot], firstMonth, months));
    }

    /// <summary>What names the futures.</summary>
    public FuturesSpec Spec => spec;

    /// <summary>The components that Sobol points stand for.</summary>
    internal LeadingComponents Leading => leading.Value;

    /// <summary>Draws a replicate.</summary>
    /// <param name="replicate">0 to the set's count less 1.</param>
    /// <returns>The block.</returns>
    public FuturesBlock Draw(int replicate)
    {
        var set = spec.Set;
        var block = new FuturesBlock(replicate, set.PathCount, set.SeasonCount);
        DrawWinters(block);
        var (tracks, draws, rows) = (Tracks(), new double[2 * Correlation.Fuels * months.Length], new PathRows(months.Length));
        for (var path = 0; path < set.PathCount; path++)
        {
            Follow(block, path, tracks, Draw(replicate, path, draws), draws, rows);
        }

        return block;
    }

    private FuelTrack[] Tracks() => [.. spec.Fuels.Select(f => new FuelTrack(f, spec.Set, firstMonth, months))];

    /// <summary>The unrest of a path, and its independent draws: short-term factors then long-term ones, fuel by fuel a row of months.</summary>
    private double Draw(int replicate, int path, double[] draws)
    {
        var (set, number) = (spec.Set, replicate * spec.Set.PathCount + path);
        for (var factor = 0; factor < 2; factor++)
        {
            var purpose = factor == 0 ? NoisePurpose.ShortFactor : NoisePurpose.LongFactor;
            for (var pair = 0; pair < 2; pair++)
            {
                var at = (factor * Correlation.Fuels + 2 * pair) * months.Length;
                Noise.NormalPairs(set.Seed, purpose, pair, number, months[0], draws.AsSpan(at, months.Length), draws.AsSpan(at + months.Length, months.Length));
            }
        }

        if (set.Sampling == PathSampling.Plain)
        {
            return Unrest(Noise.Uniform(set.Seed, NoisePurpose.Unrest, 0, number, 0));
        }

        Span<double> normals = stackalloc double[LeadingComponents.Most];
        for (var c = 0; c < Leading.Count; c++)
        {
            normals[c] = NormalQuantile.At(SobolPoints.Scrambled(set.Seed, replicate, path, c + 1));
        }

        Leading.Replace(draws, normals);
        return Unrest(SobolPoints.Scrambled(set.Seed, replicate, path, 0));
    }

    private static double Unrest(double u) => PriceModel.Unrest[u < 0.25 ? 0 : u < 0.75 ? 1 : 2];

    /// <summary>Carries a path's draws through the months into prices.</summary>
    private void Follow(FuturesBlock block, int path, FuelTrack[] tracks, double unrest, double[] draws, PathRows rows)
    {
        var seasons = spec.Set.SeasonCount;
        var ahead = months.Length - 12 * seasons;
        var cold = 0.0;
        for (var i = ahead; i < months.Length; i++)
        {
            cold = spec.ColdK[block.Winter[path * seasons + (i - ahead) / 12]][(i - ahead) % 12] + ColdCarry * cold;
            rows.Cold[i] = ColdGasPerK * cold;
        }

        for (var f = 0; f < tracks.Length; f++)
        {
            Correlated(draws, f, rows.Draws);
            tracks[f].Follow(unrest, rows.Draws, f == 0 && spec.Set.ColdMonthTerm && tracks[f].Wholesale ? rows.Cold : rows.Nothing, block.Replicate * block.Paths + path, rows.Paid);
            var prices = block.UsdPerKwh[f].AsSpan(path * seasons * 12, seasons * 12);
            for (var i = 0; i < prices.Length; i++)
            {
                prices[i] = tracks[f].UsdPerKwh(i / 12, rows.Paid[ahead + i]);
            }
        }
    }

    private int[] MonthSteps()
    {
        var from = spec.Fuels.Min(f => 12 * f.Model.LastMonthOn.Year + f.Model.LastMonthOn.Month - 1) + 1;
        from = Min(from, firstMonth);
        return [.. Enumerable.Range(from, firstMonth + 12 * spec.Set.SeasonCount - from)];
    }

    /// <summary>A fuel's correlated draws: short-term by month, then long-term.</summary>
    private void Correlated(double[] draws, int fuel, double[] correlated)
    {
        Array.Clear(correlated);
        for (var factor = 0; factor < 2; factor++)
        {
            var root = factor == 0 ? shortRoot : longRoot;
            var to = correlated.AsSpan(factor * months.Length, months.Length);
            for (var j = 0; j <= fuel; j++)
            {
                var (weight, from) = (root[fuel * Correlation.Fuels + j], (factor * Correlation.Fuels + j) * months.Length);
                for (var i = 0; i < to.Length; i++)
                {
                    to[i] += weight * draws[from + i];
                }
            }
        }
    }

    /// <summary>Per season a keyed order of the paths; winter = floor(winters x (place + u) / paths): every winter is met equally often.</summary>
    private void DrawWinters(FuturesBlock block)
    {
        var set = spec.Set;
        var order = new int[block.Paths];
        for (var s = 0; s < block.Seasons; s++)
        {
            for (var i = 0; i < order.Length; i++)
            {
                order[i] = i;
            }

            for (var i = order.Length - 1; i > 0; i--)
            {
                var u = Noise.Uniform(set.Seed, NoisePurpose.WinterOrder, block.Replicate, i, s);
                var j = (int)(u * (i + 1));
                (order[i], order[j]) = (order[j], order[i]);
            }

            for (var path = 0; path < block.Paths; path++)
            {
                var number = block.Replicate * block.Paths + path;
                var place = order[path] + Noise.Uniform(set.Seed, NoisePurpose.WinterPlace, 0, number, s);
                block.Winter[path * block.Seasons + s] = (byte)(int)(spec.Pool.Count * (place / block.Paths));
                block.OffsetK[path * block.Seasons + s] = set.OffsetK + set.OffsetTrendKPerYear * s + set.OffsetSdK * Noise.Normal(set.Seed, NoisePurpose.Offset, 0, number, s);
            }
        }
    }

    /// <summary>Rows of months that one path after the other uses.</summary>
    private sealed class PathRows(int months)
    {
        public double[] Draws { get; } = new double[2 * months];

        public double[] Cold { get; } = new double[months];

        public double[] Nothing { get; } = new double[months];

        public double[] Paid { get; } = new double[months];
    }
}
