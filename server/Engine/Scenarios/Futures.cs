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

    /// <summary>The same as it was drawn, where a stress fixes the winters of some seasons: what is spread along the weather must not move with it.</summary>
    internal byte[] DrawnWinter { get; set; } = [];

    /// <summary>Temperature offset by path and season, K.</summary>
    public double[] OffsetK { get; } = new double[paths * seasons];

    /// <summary>Delivered price by fuel (gas, propane, oil, electricity), then path, season and month: US dollars a kWh of fuel.</summary>
    public double[][] UsdPerKwh { get; } = [.. Enumerable.Range(0, Correlation.Fuels).Select(_ => new double[paths * seasons * 12])];

    /// <summary>Fuels that a block can price.</summary>
    public const int Fuels = Correlation.Fuels + 1;

    /// <summary>Draws the prices of wood pellets when they are first asked for; null = they have none.</summary>
    internal Lazy<double[]>? Pellets { get; set; }

    /// <summary>Prices of a fuel.</summary>
    /// <param name="fuel">Fuel.</param>
    /// <returns>By path, season and month, US dollars a kWh of fuel.</returns>
    /// <exception cref="InvalidOperationException">The block was made without prices of wood pellets.</exception>
    public double[] Price(FuelKind fuel) => fuel == FuelKind.WoodPellets
        ? Pellets?.Value ?? throw new InvalidOperationException("the block was made without prices of wood pellets")
        : UsdPerKwh[(int)fuel];
}

/// <summary>Draws futures, one replicate at a time, the same bits whoever draws them.</summary>
public sealed class Futures
{
    private const double ColdGasPerK = 0.04;
    private const double ColdCarry = 0.7;

    /// <summary>Weight of a season's weather against the one before: paybacks are decided early.</summary>
    private const double WeatherFading = 1 / 1.2;

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
        if (set.Sampling == PathSampling.Sobol)
        {
            SpreadWeather(block);
        }

        FixWinters(block);
        var (tracks, draws, rows) = (Tracks(), new double[LeadingComponents.Rows * months.Length], new PathRows(months.Length));
        for (var path = 0; path < set.PathCount; path++)
        {
            Follow(block, path, tracks, Draw(replicate, path, tracks, draws), draws, rows);
        }

        block.Pellets = new(() => DrawPellets(block));
        return block;
    }

    /// <summary>Pellets share the unrest of a path and nothing else, so they are drawn apart and only where somebody burns them.</summary>
    private double[] DrawPellets(FuturesBlock block)
    {
        var (set, ends) = (spec.Set, firstMonth + 12 * block.Seasons);
        var from = Min(firstMonth, 12 * spec.Pellets.Model.LastMonthOn.Year + spec.Pellets.Model.LastMonthOn.Month);
        var (steps, prices) = (Enumerable.Range(from, ends - from).ToArray(), new double[12 * block.Paths * block.Seasons]);
        var track = new FuelTrack(spec.Pellets, set, firstMonth, steps);
        var (draws, nothing, paid) = (new double[2 * steps.Length], new double[steps.Length], new double[steps.Length]);
        for (var path = 0; path < block.Paths; path++)
        {
            var number = block.Replicate * block.Paths + path;
            for (var i = 0; i < steps.Length; i++)
            {
                draws[steps.Length + i] = Noise.Normal(set.Seed, NoisePurpose.PelletFactor, 0, number, steps[i]);
            }

            track.Follow(UnrestOf(block.Replicate, path), draws, nothing, nothing, paid);
            for (var i = 0; i < 12 * block.Seasons; i++)
            {
                prices[12 * path * block.Seasons + i] = track.UsdPerKwh(i / 12, paid[firstMonth - from + i]);
            }
        }

        return prices;
    }

    private FuelTrack[] Tracks() => [.. spec.Fuels.Select(f => new FuelTrack(f, spec.Set, firstMonth, months))];

    /// <summary>The unrest of a path, and its independent draws: short-term factors, long-term ones, residuals of prices paid, fuel by fuel a row of months.</summary>
    private double Draw(int replicate, int path, FuelTrack[] tracks, double[] draws)
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

        for (var f = 0; f < tracks.Length; f++)
        {
            if (tracks[f].HasResidual)
            {
                Noise.NormalPairs(set.Seed, NoisePurpose.RetailResidual, f, number, months[0], draws.AsSpan((2 * Correlation.Fuels + f) * months.Length, months.Length), []);
            }
        }

        if (set.Sampling == PathSampling.Plain)
        {
            return UnrestOf(replicate, path);
        }

        Span<double> normals = stackalloc double[LeadingComponents.Most];
        for (var c = 0; c < Leading.Count; c++)
        {
            normals[c] = NormalQuantile.At(SobolPoints.Scrambled(set.Seed, replicate, path, SobolPlan.Component(c)));
        }

        Leading.Replace(draws, normals);
        return UnrestOf(replicate, path);
    }

    /// <summary>The unrest of a path, shared by all its fuels.</summary>
    private double UnrestOf(int replicate, int path)
    {
        var set = spec.Set;
        var u = set.Sampling == PathSampling.Plain
            ? Noise.Uniform(set.Seed, NoisePurpose.Unrest, 0, replicate * set.PathCount + path, 0)
            : SobolPoints.Scrambled(set.Seed, replicate, path, SobolPlan.Unrest);
        return PriceModel.Unrest[u < 0.25 ? 0 : u < 0.75 ? 1 : 2];
    }

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
            tracks[f].Follow(unrest, rows.Draws, f == 0 && spec.Set.ColdMonthTerm && tracks[f].Wholesale ? rows.Cold : rows.Nothing, draws.AsSpan((2 * Correlation.Fuels + f) * months.Length, months.Length), rows.Paid);
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
                block.Winter[path * block.Seasons + s] = (byte)(spec.Pool.Count * (place / block.Paths));
                block.OffsetK[path * block.Seasons + s] = set.OffsetK + set.OffsetTrendKPerYear * s + set.OffsetSdK * Noise.Normal(set.Seed, NoisePurpose.Offset, 0, number, s);
            }
        }
    }

    /// <summary>
    /// Hands the weather drawn out anew: the runs of winters with their offsets, from the mildest to the hardest winters, go to the paths in the order of a dimension of the Sobol points. Which run a path
    /// meets has nothing to do with how it was made, so the law of a path's weather stays what it was, independent of prices; hard weather is spread evenly over dear and cheap futures.
    /// </summary>
    private void SpreadWeather(FuturesBlock block)
    {
        var (paths, seasons) = (block.Paths, block.Seasons);
        var (hardness, places) = (new double[paths], new double[paths]);
        for (var p = 0; p < paths; p++)
        {
            var weight = 1.0;
            for (var s = 0; s < seasons; s++, weight *= WeatherFading)
            {
                hardness[p] += weight * spec.Hardness[block.Winter[p * seasons + s]];
            }
        }

        SobolPoints.Fill(spec.Set.Seed, block.Replicate, SobolPlan.Weather, places);
        var (runs, to) = (Enumerable.Range(0, paths).ToArray(), Enumerable.Range(0, paths).ToArray());
        Array.Sort(hardness, runs);
        Array.Sort(places, to);
        var (winter, offset) = (block.Winter.ToArray(), block.OffsetK.ToArray());
        for (var i = 0; i < paths; i++)
        {
            Array.Copy(winter, runs[i] * seasons, block.Winter, to[i] * seasons, seasons);
            Array.Copy(offset, runs[i] * seasons, block.OffsetK, to[i] * seasons, seasons);
        }
    }

    private void FixWinters(FuturesBlock block)
    {
        block.DrawnWinter = spec.FixedWinters.Count == 0 ? block.Winter : [.. block.Winter];
        foreach (var (season, winter) in spec.FixedWinters)
        {
            for (var p = 0; p < block.Paths && season < block.Seasons; p++)
            {
                block.Winter[p * block.Seasons + season] = (byte)winter;
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
