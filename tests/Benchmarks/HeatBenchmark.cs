using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Benchmarks;

/// <summary>
/// The hourly balance of fifteen options of one house at three offsets over sixteen winters: the plain C# loop (one option after the other), a C++ loop with
/// the lanes inside, and the engine's vectors. All three give the same heat, which is checked before the clock starts.
/// </summary>
internal static class HeatBenchmark
{
    private static readonly double[] OffsetsK = [-DemandTable.StepK, 0, DemandTable.StepK];

    private static readonly string[][] Parts =
    [
        [], ["irfilm"], ["seal"], ["kneewall"], ["endwalls"], ["perimeter"], ["foam"], ["foam", "seal"], ["foam", "endwalls"], ["foam", "seal", "endwalls", "perimeter"],
        ["curtain"], ["curtain", "seal"], ["curtain", "irfilm"], ["foam", "curtain"], ["foam", "curtain", "seal"],
    ];

    public static void Run()
    {
        var years = Enumerable.Range(2008, 16).Select(Winter).ToArray();
        var options = Options();
        var groups = LaneGroup.Of(options, OffsetsK);
        var sums = groups.Select(g => new double[12 * g.Lanes]).ToArray();
        var demand = new double[12];
        void Plain()
        {
            foreach (var option in options)
            {
                foreach (var year in years)
                {
                    foreach (var offset in OffsetsK)
                    {
                        HeatBalance.PlainDemand(option, year, offset, demand);
                    }
                }
            }
        }

        void Lanes(Action<LaneGroup, WeatherYear, double[]> season)
        {
            for (var g = 0; g < groups.Length; g++)
            {
                foreach (var year in years)
                {
                    season(groups[g], year, sums[g]);
                }
            }
        }

        void Vectors() => Lanes((g, y, s) => LaneBalance.Season(g, y, s));
        var optionHours = (double)options.Count * OffsetsK.Length * years.Sum(y => y.Hours);
        var plain = Paired.Rate(optionHours, Plain, Vectors);
        Console.WriteLine(FormattableString.Invariant($"{options.Count} options x {OffsetsK.Length} offsets x {years.Length} winters, whole years counted, November to April heated; option-hours a second on one thread:"));
        Console.WriteLine(FormattableString.Invariant($"plain C# loop {plain.Reference:0.00e0}, vectors {plain.Measured:0.00e0}"));
        using var native = NativeHeat.Build();
        if (native is null)
        {
            Console.WriteLine("no g++ here: no native ratio");
        }
        else
        {
            Agree(groups, years, native);
            var rate = Paired.Rate(optionHours, () => Lanes(native.Season), Vectors);
            Console.WriteLine(FormattableString.Invariant($"C++ loop {rate.Reference:0.00e0}, vectors {rate.Measured:0.00e0}"));
            Console.WriteLine(FormattableString.Invariant($"RATIO heat-native {rate.Measured / rate.Reference:0.000}"));
        }

        Console.WriteLine(FormattableString.Invariant($"RATIO heat-plain {plain.Measured / plain.Reference:0.000}"));
    }

    private static List<OptionModel> Options()
    {
        var facts = new HouseFacts
        {
            FarmId = "f",
            DrawKey = 1,
            Shape = HouseShape.Hoop,
            WidthM = 9.1,
            LengthM = 29.3,
            HeatingPlanCode = "winter-long",
            Heaters = [new("power", FuelKind.Propane, 70)],
        };
        var (house, _) = HouseModels.Of(facts, Catalogue.BuiltIn, new(), 2026);
        return [.. Parts.Select(p => OptionModels.Of(house!, new(string.Join('-', p), p)).Model!)];
    }

    /// <summary>An invented winter: a yearly wave and a spell of cold that comes and goes.</summary>
    private static WeatherYear Winter(int season)
    {
        var station = new WeatherStationFacts { LatitudeDeg = 44, LongitudeDeg = -73, ElevationM = 100 };
        var values = new double[2 * SeasonCalendar.Days(season)];
        for (var d = 0; d < values.Length / 2; d++)
        {
            var mean = 7 + 14 * Math.Cos(0.0172 * (d - 20)) + 6 * Math.Sin(0.61 * d + season) * Math.Sin(0.037 * d * (1 + season % 5));
            (values[2 * d], values[2 * d + 1]) = (mean - 5, mean + 5);
        }

        return WeatherYears.FromDaily(station, season, values);
    }

    private static void Agree(LaneGroup[] groups, WeatherYear[] years, NativeHeat native)
    {
        foreach (var group in groups)
        {
            var (ours, theirs) = (new double[12 * group.Lanes], new double[12 * group.Lanes]);
            LaneBalance.Season(group, years[3], ours);
            native.Season(group, years[3], theirs);
            for (var i = 0; i < ours.Length; i++)
            {
                if (Math.Abs(ours[i] - theirs[i]) > 1e-9 * Math.Max(1, ours[i]))
                {
                    throw new InvalidOperationException(FormattableString.Invariant($"the C++ loop reckons {theirs[i]}, the vectors {ours[i]}"));
                }
            }
        }
    }
}
