using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using FarmPortfolio.Engine.Fuel;

namespace FarmPortfolio.Engine.Scenarios;

/// <summary>One fuel in the futures.</summary>
/// <param name="Fuel">Fuel.</param>
/// <param name="Model">Fitted price.</param>
/// <param name="Wholesale">Whether it has a season of unrest.</param>
/// <param name="PassThrough">How the series reaches the user; null = the series is what is paid.</param>
/// <param name="Unit">Unit of the series.</param>
/// <param name="LastPrices">The record's last three prices, newest first, US dollars a unit.</param>
public sealed record FuelSpec(FuelKind Fuel, PriceModel Model, bool Wholesale, PassThrough? PassThrough, string Unit, IReadOnlyList<double> LastPrices)
{
    /// <summary>Unit of the delivered price.</summary>
    public string DeliveredUnit => PassThrough?.Unit ?? Unit;
}

/// <summary>All that names the futures of a study. Nothing of a farm is in it, so every house meets the same futures.</summary>
public sealed record FuturesSpec
{
    private const double HeatingBaseC = 15;

    /// <summary>Least sum of degrees below the base, over the months of a winter, K.</summary>
    private const double LeastColdK = 1e-3;

    /// <summary>Assumptions, their price case resolved into shapes.</summary>
    public required ScenarioSetFacts Set { get; init; }

    /// <summary>Fuels in the order gas, propane, oil, electricity.</summary>
    public required IReadOnlyList<FuelSpec> Fuels { get; init; }

    /// <summary>Wood pellets, drawn by themselves where they are asked for.</summary>
    public required FuelSpec Pellets { get; init; }

    /// <summary>A fuel.</summary>
    /// <param name="fuel">Fuel.</param>
    /// <returns>As the futures draw it.</returns>
    public FuelSpec Of(FuelKind fuel) => fuel == FuelKind.WoodPellets ? Pellets : Fuels[(int)fuel];

    /// <summary>Season years of the pool of winters.</summary>
    public required IReadOnlyList<int> Pool { get; init; }

    /// <summary>Kelvin each winter's month is below the pool's mean, by winter and month (July first), 0 outside November to March.</summary>
    public required IReadOnlyList<double[]> ColdK { get; init; }

    /// <summary>Winters that every path meets in some seasons whatever is drawn, for stress: place in the pool by season of the study; empty = all are drawn.</summary>
    public IReadOnlyDictionary<int, int> FixedWinters { get; init; } = new Dictionary<int, int>();

    /// <summary>
    /// Degrees that the months of each winter of the pool lie below 15 C, over their mean, above 0: what Sobol points order the weather by. Offsets have no part in it: an assumption about them must not move which winter a path meets.
    /// </summary>
    public required IReadOnlyList<double> Hardness { get; init; }

    /// <summary>Share of a year's heat by month (July first), from the pool's degree days below 15 C: what Sobol points weigh the months by.</summary>
    public required IReadOnlyList<double> LoadShare { get; init; }

    /// <summary>Name of the futures: SHA-256 of all that makes them.</summary>
    /// <returns>64 hex digits.</returns>
    public string Sha256()
    {
        var text = new StringBuilder();
        void Add(string name, params object?[] values) =>
            text.Append(name).Append(' ').AppendJoin(' ', values.Select(v => v is double d ? d.ToString("R", CultureInfo.InvariantCulture) : Convert.ToString(v, CultureInfo.InvariantCulture))).Append('\n');
        Add("horizon", Set.FirstSeason, Set.SeasonCount, Set.ReplicateCount, Set.PathCount, Set.Seed, Set.Sampling, Set.LevelMeaning, Set.ColdMonthTerm);
        if (Set.HeatingValueSet is { } heating)
        {
            Add("heating", heating);
        }

        Add("offset", Set.OffsetK, Set.OffsetTrendKPerYear, Set.OffsetSdK);
        Add("pool", [.. Pool.Cast<object?>()]);
        foreach (var (season, winter) in FixedWinters.OrderBy(f => f.Key))
        {
            Add("fixed", season, winter);
        }

        foreach (var cold in ColdK)
        {
            Add("cold", [.. cold.Cast<object?>()]);
        }

        Add("short", [.. (Set.ShortCorrelations ?? Correlation.ShortDefault).Cast<object?>()]);
        Add("long", [.. (Set.LongCorrelations ?? Correlation.LongDefault).Cast<object?>()]);
        Add("weights", [.. (Set.SamplingWeights ?? []).Cast<object?>()]);
        if (Set.Sampling == PathSampling.Sobol)
        {
            Add("load", [.. LoadShare.Cast<object?>()]);
            Add("hardness", [.. Hardness.Cast<object?>()]);
        }

        foreach (var shape in Set.Shapes)
        {
            Add("shape", [shape.Fuel, shape.FirstSeason, .. shape.SeasonFactors.Cast<object?>()]);
        }

        foreach (var f in Fuels.Append(Pellets))
        {
            var m = f.Model;
            Add("fuel", f.Fuel, f.Wholesale, f.Unit, m.ShortReversion, m.LongReversion, m.LongVolatility, m.ShortVolatility, m.Growth, m.Level, m.Gap, m.LastMonthOn.DayNumber,
                Set.Prices.FirstOrDefault(p => p.Fuel == f.Fuel)?.LevelUsdPerUnit);
            Add("months", [.. m.Shape.Cast<object?>()]);
            Add("last", [.. f.LastPrices.Cast<object?>()]);
            if (f.PassThrough is { } p)
            {
                Add("through", p.Unit, p.Constant, p.Now, p.Last, p.Before, p.ResidualSd, p.ResidualAr);
            }
        }

        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())));
    }

    /// <summary>Puts a spec together.</summary>
    /// <param name="set">Assumptions.</param>
    /// <param name="series">A price series for each fuel that is used.</param>
    /// <param name="pool">Season years all stations share.</param>
    /// <param name="monthMeansC">Mean temperature of each pool winter's months (July first), over the stations.</param>
    /// <param name="fewestWinters">Winters that the pool needs: two, or one where all are made from monthly normals and their spread is said to be missing.</param>
    /// <returns>The spec, null when a fault stops it, and the faults.</returns>
    public static (FuturesSpec? Spec, IReadOnlyList<Fault> Faults) Of(
        ScenarioSetFacts set, IReadOnlyDictionary<FuelKind, PriceSeriesFacts> series, IReadOnlyList<int> pool, IReadOnlyList<double[]> monthMeansC, int fewestWinters = 2)
    {
        var faults = new List<Fault>(ScenarioChecks.Of(set));
        if (pool.Count < fewestWinters)
        {
            faults.Add(new("TOO_FEW_WINTERS", "winterPool", $"The stations share {pool.Count} whole winters.", "Import more seasons, or leave the station with the short record out."));
        }

        var fuels = new List<FuelSpec>();
        foreach (var fuel in new[] { FuelKind.NaturalGas, FuelKind.Propane, FuelKind.FuelOil, FuelKind.Electricity })
        {
            if (!series.TryGetValue(fuel, out var s))
            {
                faults.Add(new("NO_PRICES", "prices", $"There is no price record for {fuel}.", "Import a monthly record, or choose one that ships with the program."));
                continue;
            }

            var (record, recordFaults) = PriceRecord.Of(s);
            faults.AddRange(recordFaults);
            if (record is null)
            {
                continue;
            }

            var own = set.Prices.FirstOrDefault(p => p.Fuel == fuel);
            var wholesale = s.Market == PriceMarket.Wholesale;
            var last = Enumerable.Range(0, 3).Select(i => Math.Exp(record.LogPrices[Math.Max(0, record.LogPrices.Length - 1 - i)])).ToArray();
            fuels.Add(new(fuel, PriceFit.Of(record, s.Class, own), wholesale, wholesale ? PassThrough.Of(fuel, own?.RetailAdderUsdPerUnit) : null, s.Unit, last));
        }

        var pellets = PelletPrices.Of(set, series.GetValueOrDefault(FuelKind.WoodPellets), faults);
        return faults.Count > 0 ? (null, faults) : (new() { Set = Resolved(set, fuels), Fuels = fuels, Pellets = pellets!, Pool = pool, ColdK = Coldness(monthMeansC), LoadShare = Load(monthMeansC), Hardness = HardnessOf(monthMeansC) }, []);
    }

    private static double[] Load(IReadOnlyList<double[]> monthMeansC)
    {
        var degrees = Enumerable.Range(0, 12).Select(m => monthMeansC.Sum(w => Math.Max(0, HeatingBaseC - w[m]))).ToArray();
        var sum = degrees.Sum();
        return [.. degrees.Select(d => sum > 0 ? d / sum : 1.0 / 12)];
    }

    private static double[] HardnessOf(IReadOnlyList<double[]> monthMeansC)
    {
        // a winter without a cold month still counts for something: the order of the paths goes by logarithms
        var degrees = monthMeansC.Select(w => Math.Max(LeastColdK, w.Sum(c => Math.Max(0, HeatingBaseC - c)))).ToArray();
        return [.. degrees.Select(d => d / degrees.Average())];
    }

    private static ScenarioSetFacts Resolved(ScenarioSetFacts set, IReadOnlyList<FuelSpec> fuels) =>
        set.PriceCase is { } named ? set with { Shapes = [.. set.Shapes, .. PriceCases.Shapes(named, set, fuels)], PriceCase = null } : set;

    private static List<double[]> Coldness(IReadOnlyList<double[]> monthMeansC)
    {
        var cold = monthMeansC.Select(_ => new double[12]).ToList();
        for (var m = 4; m <= 8; m++)
        {
            var mean = monthMeansC.Average(w => w[m]);
            for (var w = 0; w < cold.Count; w++)
            {
                cold[w][m] = mean - monthMeansC[w][m];
            }
        }

        return cold;
    }
}
