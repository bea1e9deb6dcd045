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
        var tracks = Tracks();
        var draws = new double[2 * Correlation.Fuels * months.Length];
        for (var path = 0; path < set.PathCount; path++)
        {
            var number = replicate * set.PathCount + path;
            var unrest = Draw(replicate, path, draws);
            foreach (var track in tracks)
            {
                track.Start();
            }

            Follow(block, path, tracks, unrest, draws);
        }

        block.Pellets = new(() => DrawPellets(block));
        return block;
    }

    /// <summary>Pellets share the unrest of a path and nothing else, so they are drawn apart and only where somebody burns them.</summary>
    private double[] DrawPellets(FuturesBlock block)
    {
        var (set, prices, track) = (spec.Set, new double[12 * block.Paths * block.Seasons], new FuelTrack(spec.Pellets, spec.Set, firstMonth));
        var from = Min(firstMonth, 12 * spec.Pellets.Model.LastMonthOn.Year + spec.Pellets.Model.LastMonthOn.Month);
        for (var path = 0; path < block.Paths; path++)
        {
            var number = block.Replicate * block.Paths + path;
            var unrest = UnrestOf(block.Replicate, path);
            track.Start();
            for (var month = from; month < firstMonth + 12 * block.Seasons; month++)
            {
                track.Step(month, unrest, 0, Noise.Normal(set.Seed, NoisePurpose.PelletFactor, 0, number, month), 0, number);
                if (month >= firstMonth)
                {
                    prices[12 * path * block.Seasons + month - firstMonth] = track.UsdPerKwh((month - firstMonth) / 12);
                }
            }
        }

        return prices;
    }

    private FuelTrack[] Tracks() => [.. spec.Fuels.Select(f => new FuelTrack(f, spec.Set, firstMonth))];

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
            return UnrestOf(replicate, path);
        }

        Span<double> normals = stackalloc double[LeadingComponents.Most];
        for (var c = 0; c < Leading.Count; c++)
        {
            normals[c] = NormalQuantile.At(SobolPoints.Scrambled(set.Seed, replicate, path, c + 1));
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
            : SobolPoints.Scrambled(set.Seed, replicate, path, 0);
        return PriceModel.Unrest[u < 0.25 ? 0 : u < 0.75 ? 1 : 2];
    }

    /// <summary>Carries a path's draws through the months into prices.</summary>
    private void Follow(FuturesBlock block, int path, FuelTrack[] tracks, double unrest, double[] draws)
    {
        var (set, number, cold) = (spec.Set, block.Replicate * block.Paths + path, 0.0);
        Span<double> raw = stackalloc double[2 * Correlation.Fuels];
        Span<double> z = stackalloc double[2 * Correlation.Fuels];
        for (var step = 0; step < months.Length; step++)
        {
            for (var lane = 0; lane < raw.Length; lane++)
            {
                raw[lane] = draws[lane * months.Length + step];
            }

            Correlated(raw, z);
            var index = months[step] - firstMonth;
            if (index >= 0)
            {
                var winter = block.Winter[path * set.SeasonCount + index / 12];
                cold = spec.ColdK[winter][index % 12] + ColdCarry * cold;
            }

            for (var f = 0; f < tracks.Length; f++)
            {
                var extra = f == 0 && set.ColdMonthTerm && tracks[f].Wholesale ? ColdGasPerK * cold : 0;
                tracks[f].Step(months[step], unrest, z[f], z[Correlation.Fuels + f], extra, number);
                if (index >= 0)
                {
                    block.UsdPerKwh[f][path * set.SeasonCount * 12 + index] = tracks[f].UsdPerKwh(index / 12);
                }
            }
        }
    }

    private int[] MonthSteps()
    {
        var from = spec.Fuels.Min(f => 12 * f.Model.LastMonthOn.Year + f.Model.LastMonthOn.Month - 1) + 1;
        from = Min(from, firstMonth);
        return [.. Enumerable.Range(from, firstMonth + 12 * spec.Set.SeasonCount - from)];
    }

    /// <summary>Two correlated draws a fuel: short-term factors, then long-term ones.</summary>
    private void Correlated(ReadOnlySpan<double> raw, Span<double> z)
    {
        for (var factor = 0; factor < 2; factor++)
        {
            var root = factor == 0 ? shortRoot : longRoot;
            for (var i = 0; i < Correlation.Fuels; i++)
            {
                var sum = 0.0;
                for (var j = 0; j <= i; j++)
                {
                    sum += root[i * Correlation.Fuels + j] * raw[factor * Correlation.Fuels + j];
                }

                z[factor * Correlation.Fuels + i] = sum;
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
}
