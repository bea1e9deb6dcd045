using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Tests.HeatDemand;
using FarmPortfolio.Engine.Trials;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.Tests.Trials;

/// <summary>Trials made from the program's own model with a known truth and known noise.</summary>
internal sealed record SimulatedTrial
{
    public const double KwhPerUnit = 29.3;

    private static readonly Dictionary<string, double[]> Hours = [];

    public string Retrofit { get; init; } = "curtain";

    /// <summary>True saving over modelled.</summary>
    public double Factor { get; init; } = 0.85;

    /// <summary>Treated house over control as both stand, beyond what the model says.</summary>
    public double Unlike { get; init; } = 1.07;

    /// <summary>Spread of a night, persistent from night to night.</summary>
    public double NightSd { get; init; } = 0.06;

    /// <summary>Lag-one correlation of the nights.</summary>
    public double Persistence { get; init; } = 0.5;

    /// <summary>First five of every fifteen nights idle.</summary>
    public bool IdleNights { get; init; } = true;

    /// <summary>The treated house is kept warmer by this, K.</summary>
    public double WarmerK { get; init; }

    public int Nights { get; init; } = 120;

    public TrialFacts Facts { get; } = Trial();

    public IReadOnlyDictionary<int, WeatherYear> Years { get; } = new Dictionary<int, WeatherYear> { [2012] = TestHouse.Winters[1] };

    public static HouseFacts House { get; } = TestHouse.Facts with { HeatingPlanCode = null, HeatingPeriods = [new(new(10, 1), new(4, 30), 15, 18)], Heaters = [new("power", FuelKind.NaturalGas)] };

    /// <summary>True saving over the nights in use.</summary>
    public double TrueSaving => Factor * ModelledSaving;

    public double ModelledSaving
    {
        get
        {
            var (with, without) = (0.0, 0.0);
            for (var n = 0; n < Nights; n++)
            {
                (with, without) = Idle(n) ? (with, without) : (with + Night(Retrofit, n), without + Night(string.Empty, n));
            }

            return 1 - with / without;
        }
    }

    public List<TrialReading> Readings(int replication)
    {
        var start = new DateTime(2012, 11, 1, 8, 0, 0);
        var readings = new List<TrialReading> { new(0, start, 100, 15, 0, 15, RetrofitState.Idle), new(1, start, 900, 15, 0, 15, RetrofitState.Idle) };
        var (meterC, meterT, ownC, ownT) = (100.0, 900.0, 0.0, 0.0);
        for (var n = 0; n < Nights; n++)
        {
            double Next(double own, int house) => Persistence * own + NightSd * Math.Sqrt(1 - Persistence * Persistence) * Noise.Normal(99, NoisePurpose.LossOwn, replication, 2 * n + house, 1);
            (ownC, ownT) = (Next(ownC, 0), Next(ownT, 1));
            var wind = 0.10 * Noise.Normal(99, NoisePurpose.LossGroup, replication, n, 1);
            var (stands, with) = (Night(string.Empty, n), Night(Retrofit, n));
            var outside = TrialModel.MeanC(Years, start.AddDays(n), start.AddDays(n + 1));
            var lift = Math.Max(1, 16 - outside);
            var treated = Unlike * (Idle(n) ? stands : stands - Factor * (stands - with)) * (1 + WarmerK / lift);
            var efficiency = 0.78;
            meterC += stands * (1 + wind) * (1 + ownC) / efficiency / KwhPerUnit;
            meterT += treated * (1 + wind) * (1 + ownT) / efficiency / KwhPerUnit;
            var state = Idle(n) ? RetrofitState.Idle : RetrofitState.InUse;
            readings.Add(new(0, start.AddDays(n + 1), meterC, 16, outside, 15, RetrofitState.Idle));
            readings.Add(new(1, start.AddDays(n + 1), meterT, 16 + WarmerK, outside, 15, state));
        }

        return readings;
    }

    public TrialReport Report(int replication) => TrialAnalysis.Of(Facts, Readings(replication), Years, Catalogue.BuiltIn, new());

    private bool Idle(int n) => IdleNights && n % 15 < 5;

    private double Night(string retrofit, int n)
    {
        lock (Hours)
        {
            if (!Hours.TryGetValue(retrofit, out var hours))
            {
                var (model, _) = HouseModels.Of(House, Catalogue.BuiltIn, new(), 2012, FuelKind.NaturalGas);
                Hours[retrofit] = hours = HourlyHeat.Season(TestHouse.Option(model!, retrofit), Years[2012], 0);
            }

            var first = 24 * SeasonCalendar.DayIndex(new DateOnly(2012, 11, 1).AddDays(n)) + 8;
            return hours.AsSpan(first, 24).ToArray().Sum() / 1000;
        }
    }

    private static TrialFacts Trial() => new()
    {
        StartsOn = new(2012, 11, 1),
        EndsOn = new(2013, 3, 31),
        ReadingsSha256 = "none",
        Houses =
        [
            new() { Label = "A", Role = TrialRole.Control, House = House, Fuel = FuelKind.NaturalGas, Measure = TrialMeasure.Meter, KwhPerUnit = KwhPerUnit },
            new() { Label = "B", Role = TrialRole.Treated, RetrofitCode = "curtain", House = House, Fuel = FuelKind.NaturalGas, Measure = TrialMeasure.Meter, KwhPerUnit = KwhPerUnit },
        ],
    };
}
