using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Engine.Units;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Engine.Tests.Studies;

/// <summary>Two houses on propane, two made-up winters, 4 x 64 futures.</summary>
internal static class SmallPortfolio
{
    public static Portfolio Of(int houses = 2, double priceFactor = 1, double colderK = 0, Func<ScenarioSetFacts, ScenarioSetFacts>? change = null)
    {
        var station = new WeatherStationFacts { LatitudeDeg = 44, LongitudeDeg = -73, ElevationM = 100 };
        var years = new[] { 2015, 2016 }.ToDictionary(s => s, s => WeatherYears.FromDaily(station, s, Days(s, colderK)));
        var set = new ScenarioSetFacts { FirstSeason = 2026, SeasonCount = 12, ReplicateCount = 4, PathCount = 64, Seed = 5 };
        return new()
        {
            Set = change?.Invoke(set) ?? set,
            Catalogue = Catalogue.BuiltIn,
            Farms = new Dictionary<string, FarmFacts> { ["f"] = new() { WeatherStationId = "w" } },
            Houses = Enumerable.Range(0, houses).ToDictionary(i => $"h{i}", i => new HouseFacts
            {
                FarmId = "f",
                DrawKey = 100 + i,
                Shape = HouseShape.Hoop,
                WidthM = 30 * Us.FootM,
                LengthM = (96 - 10 * i) * Us.FootM,
                HeatingPlanCode = "spring",
                Supplies = [new("g")],
                FilmDueYear = 2028,
                Heaters = [new("power", FuelKind.Propane, 130, null, new DateOnly(2020, 1, 1))],
            }),
            SupplyGroups = new Dictionary<string, SupplyGroupFacts> { ["g"] = new() { FarmId = "f", Fuel = FuelKind.Propane, Kind = SupplyKind.Tank } },
            FuelRecords = new Dictionary<string, FuelRecordFacts>(),
            Contracts = new Dictionary<string, ContractFacts>(),
            Options = Enumerable.Range(0, houses).ToDictionary(i => $"h{i}", _ => (IReadOnlyList<OptionFacts>)[new("foam-now", ["foam"]), new("curtain-now", ["curtain"]), new("foam-seal-now", ["foam", "seal"]), new("curtain-foam-now", ["curtain", "foam"])]),
            Quotes = new Dictionary<string, IReadOnlyList<QuoteFacts>>(),
            Stations = new Dictionary<string, StationWinters> { ["w"] = new(station, years) },
            Prices = new[] { FuelKind.NaturalGas, FuelKind.Propane, FuelKind.FuelOil, FuelKind.Electricity }.ToDictionary(f => f, f => Series(f, f == FuelKind.Propane ? priceFactor : 1)),
        };
    }

    private static PriceSeriesFacts Series(FuelKind fuel, double factor) => new()
    {
        Fuel = fuel,
        Market = PriceMarket.Retail,
        Class = fuel == FuelKind.Electricity ? PriceClass.Electricity : PriceClass.RetailFuel,
        Unit = HeatingValues.UnitsOf(fuel)[0],
        FirstMonthOn = new(2016, 1, 1),
        UsdPerUnit = [.. Enumerable.Range(0, 120).Select(i => (double?)(factor * (2 + 0.3 * Math.Sin(i * 0.37) + 0.1 * Math.Sin(i * 1.7))))],
    };

    private static double[] Days(int season, double colderK) => [.. Enumerable.Range(0, SeasonCalendar.Days(season)).SelectMany(d =>
    {
        var mean = 7 + 14 * Math.Cos(2 * Math.PI * (d - 20) / 365) + 4 * Math.Sin(d * 0.31 + season) - colderK;
        return new[] { mean - 5, mean + 5 };
    })];
}
