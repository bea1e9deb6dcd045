using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Units;
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
    private const double Month = 1.0 / 12;
    private const double ColdGasPerK = 0.04;
    private const double ColdCarry = 0.7;

    private readonly FuturesSpec spec;
    private readonly double[] shortRoot;
    private readonly double[] longRoot;
    private readonly int firstMonth;

    /// <summary>Makes ready to draw.</summary>
    /// <param name="spec">What names the futures.</param>
    /// <exception cref="ArgumentException">The correlations are not positive definite.</exception>
    public Futures(FuturesSpec spec)
    {
        this.spec = spec;
        shortRoot = Correlation.Cholesky(spec.Set.ShortCorrelations ?? Correlation.ShortDefault);
        longRoot = Correlation.Cholesky(spec.Set.LongCorrelations ?? Correlation.LongDefault);
        firstMonth = 12 * spec.Set.FirstSeason + 6;
    }

    /// <summary>What names the futures.</summary>
    public FuturesSpec Spec => spec;

    /// <summary>Draws a replicate.</summary>
    /// <param name="replicate">0 to the set's count less 1.</param>
    /// <returns>The block.</returns>
    public FuturesBlock Draw(int replicate)
    {
        var set = spec.Set;
        var block = new FuturesBlock(replicate, set.PathCount, set.SeasonCount);
        DrawWinters(block);
        var months = MonthSteps();
        var tracks = spec.Fuels.Select(f => new FuelTrack(f, set, firstMonth)).ToArray();
        var z = new double[2 * Correlation.Fuels];
        for (var path = 0; path < set.PathCount; path++)
        {
            var number = replicate * set.PathCount + path;
            var unrest = UnrestOf(number);
            foreach (var track in tracks)
            {
                track.Start();
            }

            var cold = 0.0;
            foreach (var month in months)
            {
                Correlated(number, month, z);
                var index = month - firstMonth;
                if (index >= 0)
                {
                    var winter = block.Winter[path * set.SeasonCount + index / 12];
                    cold = spec.ColdK[winter][index % 12] + ColdCarry * cold;
                }

                for (var f = 0; f < tracks.Length; f++)
                {
                    var extra = f == 0 && set.ColdMonthTerm && tracks[f].Wholesale ? ColdGasPerK * cold : 0;
                    tracks[f].Step(month, unrest, z[f], z[Correlation.Fuels + f], extra, number);
                    if (index >= 0)
                    {
                        block.UsdPerKwh[f][path * set.SeasonCount * 12 + index] = tracks[f].UsdPerKwh(index / 12);
                    }
                }
            }
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
            var unrest = UnrestOf(number);
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

    private double UnrestOf(int number)
    {
        var u = Noise.Uniform(spec.Set.Seed, NoisePurpose.Unrest, 0, number, 0);
        return PriceModel.Unrest[u < 0.25 ? 0 : u < 0.75 ? 1 : 2];
    }

    private int[] MonthSteps()
    {
        var from = spec.Fuels.Min(f => 12 * f.Model.LastMonthOn.Year + f.Model.LastMonthOn.Month - 1) + 1;
        from = Min(from, firstMonth);
        return [.. Enumerable.Range(from, firstMonth + 12 * spec.Set.SeasonCount - from)];
    }

    private void Correlated(int path, int month, double[] z)
    {
        Span<double> raw = stackalloc double[Correlation.Fuels];
        for (var factor = 0; factor < 2; factor++)
        {
            var purpose = factor == 0 ? NoisePurpose.ShortFactor : NoisePurpose.LongFactor;
            var root = factor == 0 ? shortRoot : longRoot;
            for (var pair = 0; pair < 2; pair++)
            {
                var words = Noise.Words(spec.Set.Seed, purpose, pair, path, month);
                raw[2 * pair] = NormalQuantile.At(Philox.Uniform(words.A, words.B));
                raw[2 * pair + 1] = NormalQuantile.At(Philox.Uniform(words.C, words.D));
            }

            for (var i = 0; i < Correlation.Fuels; i++)
            {
                var sum = 0.0;
                for (var j = 0; j <= i; j++)
                {
                    sum += root[i * Correlation.Fuels + j] * raw[j];
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

    /// <summary>One fuel along one path.</summary>
    private sealed class FuelTrack
    {
        private readonly FuelSpec fuel;
        private readonly ScenarioSetFacts set;
        private readonly int lastMonth;
        private readonly double level;
        private readonly double gap;
        private readonly double[] shape = new double[12];
        private readonly double shortDecay;
        private readonly double longDecay;
        private readonly double shortStep;
        private readonly double longStep;
        private readonly double kwhPerUnit;
        private readonly double[] meanShift;
        private readonly double[] growth;
        private readonly double[] caseFactor;
        private readonly double calm;
        private readonly double stormy;
        private double chi;
        private double xi;
        private double residual;
        private double now;
        private double last;
        private double before;
        private double delivered;

        public FuelTrack(FuelSpec fuel, ScenarioSetFacts set, int firstMonth)
        {
            (this.fuel, this.set) = (fuel, set);
            var m = fuel.Model;
            lastMonth = 12 * m.LastMonthOn.Year + m.LastMonthOn.Month - 1;
            var own = set.Prices.FirstOrDefault(p => p.Fuel == fuel.Fuel)?.LevelUsdPerUnit;
            var yearsToFirst = Max(0, firstMonth - lastMonth) * Month;
            (level, gap) = own is { } given ? (Log(given) - m.Growth * yearsToFirst, 0) : (m.Level, m.Gap);
            var mean = m.Shape.Average(Exp);
            for (var i = 0; i < 12; i++)
            {
                shape[i] = m.Shape[i] - Log(mean);
            }

            shortDecay = Exp(-m.ShortReversion * Month);
            longDecay = Exp(-m.LongReversion * Month);
            shortStep = m.ShortVolatility * Sqrt(m.ShortReversion > 0 ? (1 - shortDecay * shortDecay) / (2 * m.ShortReversion) : Month);
            longStep = m.LongVolatility * Sqrt(m.LongReversion > 0 ? (1 - longDecay * longDecay) / (2 * m.LongReversion) : Month);
            kwhPerUnit = HeatingValues.KwhPerUnit(fuel.Fuel, fuel.DeliveredUnit) ?? throw new ArgumentException($"{fuel.Fuel} is not sold by the {fuel.DeliveredUnit}", nameof(fuel));
            var coldTerm = fuel.Fuel == FuelKind.NaturalGas && set.ColdMonthTerm;
            (stormy, calm) = fuel.Wholesale ? (coldTerm ? 1.25 : 1.45, 0.45) : (1, 1);
            meanShift = MeanShifts(firstMonth);
            growth = [.. Enumerable.Range(0, meanShift.Length).Select(i => Exp(m.Growth * i * Month))];
            caseFactor = [.. Enumerable.Range(0, set.SeasonCount).Select(s => set.Shapes.Where(c => c.Fuel is null || c.Fuel == fuel.Fuel)
                .Aggregate(1.0, (f, c) => s >= c.FirstSeason && s - c.FirstSeason < c.SeasonFactors.Count ? f * c.SeasonFactors[s - c.FirstSeason] : f))];
        }

        public bool Wholesale => fuel.Wholesale;

        public void Start()
        {
            (chi, xi, residual) = (gap, 0, 0);
            (now, last, before) = (fuel.LastPrices[0], fuel.LastPrices[1], fuel.LastPrices[2]);
            delivered = fuel.PassThrough is { } p ? p.Constant + p.Now * now + p.Last * last + p.Before * before : now;
        }

        public void Step(int month, double unrest, double z1, double z2, double extra, int path)
        {
            var steps = month - lastMonth;
            if (steps <= 0)
            {
                return;
            }

            var calendar = month % 12;
            chi = shortDecay * chi + unrest * Unrest(calendar) * shortStep * z1;
            xi = longDecay * xi + unrest * longStep * z2;
            (before, last) = (last, now);
            now = Elementary.Exp(level + fuel.Model.Growth * steps * Month + shape[calendar] - meanShift[steps] + xi + chi + extra);
            if (fuel.PassThrough is { ResidualSd: > 0 } through)
            {
                residual = through.ResidualAr * residual +
                    through.ResidualSd * Sqrt(1 - through.ResidualAr * through.ResidualAr) * Noise.Normal(set.Seed, NoisePurpose.RetailResidual, (int)fuel.Fuel, path, month);
            }

            if (fuel.PassThrough is { } p)
            {
                var floor = 0.2 * p.Constant;
                delivered = Max(floor, (p.Constant + residual) * growth[steps] + p.Now * now + p.Last * last + p.Before * before);
            }
            else
            {
                delivered = now;
            }
        }

        public double UsdPerKwh(int season) => delivered * caseFactor[season] / kwhPerUnit;

        private double Unrest(int calendarMonth) => calendarMonth is >= 10 or <= 2 ? stormy : calm;

        private double[] MeanShifts(int firstMonth)
        {
            var count = Max(1, firstMonth + 12 * set.SeasonCount - lastMonth);
            var shifts = new double[count];
            if (set.LevelMeaning == LevelMeaning.Middle)
            {
                return shifts;
            }

            var (vc, vx) = (0.0, 0.0);
            for (var i = 1; i < count; i++)
            {
                var g = Unrest((lastMonth + i) % 12);
                vc = shortDecay * shortDecay * vc + g * g * shortStep * shortStep;
                vx = longDecay * longDecay * vx + longStep * longStep;
                shifts[i] = PriceModel.MeanOverMedian(vc + vx);
            }

            return shifts;
        }
    }
}
