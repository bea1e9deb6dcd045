using System.Collections.Concurrent;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Units;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Published.Heat;

/// <summary>
/// The 30 x 96 ft semicircle house of the checks: U 0.70, one air change an hour, perimeter 0.8 Btu/h ft F, 60 F by night and 65 F by day, useful sun
/// 0.65 x 0.60 of the floor's, no carry-over, no purge; movables by dark alone, with no temperature rule, no delay and no light lost, unless a check sets them.
/// </summary>
internal sealed record SemicircleHouse
{
    private static readonly ConcurrentDictionary<(string Place, bool Cosine), IReadOnlyList<WeatherYear>> Records = new();
    private static readonly string[] Codes = ["foam", "curtain", "blanket", "irfilm", "seal", "kneewall", "endwalls", "perimeter", "secondfilm", "condensing", "service", "openlater", "setback"];

    /// <summary>Central Park, or the same record 12 F colder at 44.5 N.</summary>
    public string Place { get; init; } = "north";

    public string Plan { get; init; } = "winter-long";

    public double UValue { get; init; } = 0.70;

    public double AirChanges { get; init; } = 1;

    public double? NightF { get; init; }

    public double? DayF { get; init; }

    public double CarryOver { get; init; }

    public double Purge { get; init; }

    public double? OutputKbtuH { get; init; }

    public double CurtainFt { get; init; } = 7;

    public CurtainShape? CurtainShape { get; init; }

    public string Covering { get; init; } = "doublefilm";

    public double LengthFt { get; init; } = 96;

    public double WidthFt { get; init; } = 30;

    public double? RidgeFt { get; init; }

    /// <summary>Retrofits joined by +; empty = as it stands.</summary>
    public string Parts { get; init; } = string.Empty;

    /// <summary>Own numbers, "code.name" in SI.</summary>
    public IReadOnlyDictionary<string, double> Physics { get; init; } = new Dictionary<string, double>();

    /// <summary>Whether the days are shaped by the cosine, as in the script that the expected values come from.</summary>
    public bool Cosine { get; init; }

    public IReadOnlyList<WeatherYear> Years => Records.GetOrAdd((Place, Cosine), key => key.Place switch
    {
        "nyc" => CentralPark.Years(cosine: key.Cosine),
        "hudson-mild" => CentralPark.Years(41.3, 5, key.Cosine),
        "hudson-cold" => CentralPark.Years(41.3, 8, key.Cosine),
        _ => CentralPark.Years(44.5, 12, key.Cosine),
    });

    public static double RValue(double us) => us * Us.RValue;

    public SemicircleHouse With(string parts, params (string Name, double Value)[] physics) =>
        this with { Parts = parts, Physics = new Dictionary<string, double>(Physics.Concat(physics.Select(p => KeyValuePair.Create(p.Name, p.Value))).DistinctBy(p => p.Key)) };

    public HouseModel House()
    {
        var catalogue = Catalogue.BuiltIn.With([Own("doublefilm", 0.65, UValue), Own("singlefilm", 0.65, null)]);
        var plan = catalogue.Find(CatalogueKind.HeatingPlan, Plan)!.Periods;
        var facts = new HouseFacts
        {
            FarmId = "f",
            DrawKey = 1,
            Shape = HouseShape.Hoop,
            WidthM = WidthFt * Us.FootM,
            LengthM = LengthFt * Us.FootM,
            RidgeM = RidgeFt * Us.FootM,
            AirChangesPerHour = AirChanges,
            CurtainHeightM = CurtainFt * Us.FootM,
            CurtainShape = CurtainShape,
            HeatingPeriods = [.. plan.Select(p => p with { NightC = NightF is { } n ? Us.C(n) : p.NightC, DayC = DayF is { } d ? Us.C(d) : p.DayC })],
            Heaters = OutputKbtuH is { } output ? [new("power", Engine.FuelKind.Propane, output * 1000 * Us.BtuKwh / 0.8, 0.8)] : [],
            Surfaces = [new(SurfacePart.Roof, Covering), new(SurfacePart.EndWalls, Covering)],
        };
        var (model, faults) = HouseModels.Of(facts, catalogue, new HeatSettings(CarryOver, Purge, 1), 2024);
        Assert.Empty(faults);
        return model!;
    }

    public OptionModel Option()
    {
        var house = House();
        if (Parts.Length == 0)
        {
            return OptionModels.AsItStands(house);
        }

        var physics = new Dictionary<string, double>(Physics);
        foreach (var code in Codes)
        {
            physics.TryAdd(code + ".lightLost", 0);
        }

        foreach (var code in new[] { "foam", "curtain", "blanket" })
        {
            physics.TryAdd(code + ".onBelowC", double.PositiveInfinity);
            physics.TryAdd(code + ".closeBelowWPerM2", 0);
            physics.TryAdd(code + ".delayHours", 0);
            physics.TryAdd(code + ".closing", 0);
        }

        var (option, faults) = OptionModels.Of(house, new("check", Parts.Split('+'), Overrides: new() { Physics = physics }));
        Assert.Empty(faults);
        return option!;
    }

    public IReadOnlyList<SeasonHeat> Seasons()
    {
        var option = Option();
        return [.. Years.Select(y => HeatBalance.Season(option, y))];
    }

    /// <summary>Mean heat of a season, million Btu.</summary>
    public double HeatMmbtu() => Seasons().Average(s => s.TotalKwh) / Us.MmbtuKwh;

    /// <summary>Saving against the same house without the parts, per cent.</summary>
    public double SavingPct() => 100 * (1 - HeatMmbtu() / (this with { Parts = string.Empty }).HeatMmbtu());

    private static CatalogueFacts Own(string code, double solar, double? uValue) => new()
    {
        Kind = CatalogueKind.Covering,
        Code = code,
        Title = "as in the check",
        Values = new Dictionary<string, CatalogueValue>(uValue is { } u
            ? [KeyValuePair.Create("solar", new CatalogueValue(solar, "1")), KeyValuePair.Create("uValue", new CatalogueValue(u * Us.UValue, "W/m2K"))]
            : [KeyValuePair.Create("solar", new CatalogueValue(solar, "1"))]),
    };
}
