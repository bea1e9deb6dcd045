using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.Tests.HeatDemand;

/// <summary>A plain house and invented winters.</summary>
internal static class TestHouse
{
    public static WeatherStationFacts Station { get; } = new() { LatitudeDeg = 44, LongitudeDeg = -73, ElevationM = 100 };

    public static IReadOnlyList<WeatherYear> Winters { get; } = [.. Enumerable.Range(2011, 3).Select(Winter)];

    public static HouseFacts Facts { get; } = new()
    {
        FarmId = "f",
        DrawKey = 1,
        Shape = HouseShape.Hoop,
        WidthM = 9.1,
        LengthM = 29.3,
        HeatingPlanCode = "winter-long",
        Surfaces = [new(SurfacePart.Roof, "doublefilm"), new(SurfacePart.EndWalls, "doublefilm")],
    };

    public static HouseModel Model(HouseFacts? facts = null, HeatSettings? settings = null)
    {
        var (model, faults) = HouseModels.Of(facts ?? Facts, Catalogue.BuiltIn, settings ?? new(), 2026);
        Assert.Empty(faults);
        return model!;
    }

    public static OptionModel Option(HouseModel house, string parts, params (string Name, double Value)[] physics)
    {
        if (parts.Length == 0)
        {
            return OptionModels.AsItStands(house);
        }

        var (option, faults) = OptionModels.Of(house, new(parts, parts.Split('+'), Overrides: new() { Physics = physics.ToDictionary(p => p.Name, p => p.Value) }));
        Assert.Empty(faults);
        return option!;
    }

    public static double Heat(OptionModel option) => Winters.Sum(y => HeatBalance.Season(option, y).TotalKwh);

    private static WeatherYear Winter(int season)
    {
        var values = new double[2 * SeasonCalendar.Days(season)];
        for (var d = 0; d < values.Length / 2; d++)
        {
            var mean = 7 + 14 * Math.Cos(0.0172 * (d - 20)) + 6 * Math.Sin(0.61 * d + season) * Math.Sin(0.037 * d * (1 + season % 5));
            var half = 5 + 3 * Math.Sin(1.7 * d);
            (values[2 * d], values[2 * d + 1]) = (mean - half, mean + half);
        }

        return WeatherYears.FromDaily(Station, season, values);
    }
}
