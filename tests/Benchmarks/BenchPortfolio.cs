using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Engine.Units;
using FarmPortfolio.Engine.Weather;

namespace FarmPortfolio.Benchmarks;

/// <summary>Any number of invented houses, no two alike, on four fuels at three invented stations, eight options each, 16 winters.</summary>
internal static class BenchPortfolio
{
    private static readonly FuelKind[] Fuels = [FuelKind.NaturalGas, FuelKind.Propane, FuelKind.FuelOil, FuelKind.Electricity];

    private static readonly string[][] Parts = [["foam"], ["curtain"], ["irfilm"], ["seal"], ["foam", "seal"], ["curtain", "seal"], ["endwalls", "kneewall"], ["openlater"]];

    private static readonly Lazy<Dictionary<string, StationWinters>> Stations = new(() => Enumerable.Range(0, 3).ToDictionary(s => $"w{s}", Station));

    public static Portfolio Of(int houses, int replicates = 10, int paths = 1024, PathSampling sampling = PathSampling.Plain) => new()
    {
        Set = new() { FirstSeason = 2026, ReplicateCount = replicates, PathCount = paths, Seed = 11, Sampling = sampling },
        Catalogue = Catalogue.BuiltIn,
        Farms = Enumerable.Range(0, Farms(houses)).ToDictionary(f => $"f{f:0000}", f => new FarmFacts { WeatherStationId = $"w{f % 3}" }),
        Houses = Enumerable.Range(0, houses).ToDictionary(h => $"h{h:00000}", House),
        SupplyGroups = Enumerable.Range(0, Farms(houses)).ToDictionary(f => $"g{f:0000}", f => new SupplyGroupFacts { FarmId = $"f{f:0000}", Fuel = Fuels[f % 4], Kind = SupplyKind.Tank }),
        FuelRecords = new Dictionary<string, FuelRecordFacts>(),
        Contracts = Enumerable.Range(0, Farms(houses)).ToDictionary(f => $"g{f:0000}", Contract),
        Options = Enumerable.Range(0, houses).ToDictionary(h => $"h{h:00000}", h => (IReadOnlyList<OptionFacts>)[.. Parts.Select(p => new OptionFacts(string.Join('-', p) + "-now", p))]),
        Quotes = new Dictionary<string, IReadOnlyList<QuoteFacts>>(),
        Stations = Stations.Value,
        Prices = Fuels.ToDictionary(f => f, Series),
    };

    private static int Farms(int houses) => (houses + 2) / 3;

    private static HouseFacts House(int h) => new()
    {
        FarmId = $"f{h / 3:0000}",
        DrawKey = 1000 + h,
        Shape = (h % 3) switch { 0 => HouseShape.Hoop, 1 => HouseShape.GothicArch, _ => HouseShape.Gable },
        WidthM = (20 + h % 11) * Us.FootM,
        LengthM = (48 + h % 49) * Us.FootM,
        HeatingPlanCode = (h % 2) == 0 ? "bedding-early" : "greens",
        Supplies = [new($"g{h / 3:0000}")],
        FilmDueYear = 2027 + h % 4,
        Heaters = [new((h / 3 % 4) switch { 2 => "oilfurnace", 3 => "resistance", _ => "power" }, Fuels[h / 3 % 4], 130, null, new DateOnly(2012 + h % 12, 1, 1))],
    };

    private static ContractFacts Contract(int f) => (f % 3) == 0
        ? new() { SupplyGroupId = $"g{f:0000}", Kind = ContractKind.Fixed, Unit = HeatingValues.UnitsOf(Fuels[f % 4])[0], PriceUsdPerUnit = (1.1 + 0.1 * (f % 7)) * (Fuels[f % 4] == FuelKind.Electricity ? 0.1 : 1), EndsOn = new(2028, 6, 30) }
        : new() { SupplyGroupId = $"g{f:0000}", Kind = ContractKind.Indexed, Unit = HeatingValues.UnitsOf(Fuels[f % 4])[0], AdderUsdPerUnit = 0.01 * (f % 5) };

    private static StationWinters Station(int number)
    {
        var facts = new WeatherStationFacts { LatitudeDeg = 43 + number, LongitudeDeg = -73, ElevationM = 150 };
        return new(facts, Enumerable.Range(2008, 16).ToDictionary(s => s, s => WeatherYears.FromDaily(facts, s, Days(s, number))));
    }

    private static double[] Days(int season, int station) => [.. Enumerable.Range(0, SeasonCalendar.Days(season)).SelectMany(d =>
    {
        var mean = 8 - station + 13 * Math.Cos(2 * Math.PI * (d - 20) / 365) + 4 * Math.Sin(d * 0.31 + season) + 2 * Math.Sin(d * 1.3 + 2 * season + station);
        return new[] { mean - 5, mean + 5 };
    })];

    private static PriceSeriesFacts Series(FuelKind fuel) => new()
    {
        Fuel = fuel,
        Market = fuel == FuelKind.Electricity ? PriceMarket.Retail : PriceMarket.Wholesale,
        Class = fuel == FuelKind.Electricity ? PriceClass.Electricity : PriceClass.WholesaleFuel,
        Unit = fuel == FuelKind.NaturalGas ? "MMBtu" : HeatingValues.UnitsOf(fuel)[0],
        FirstMonthOn = new(2006, 1, 1),
        UsdPerUnit = [.. Enumerable.Range(0, 240).Select(i => (double?)((fuel == FuelKind.NaturalGas ? 3.5 : fuel == FuelKind.Electricity ? 0.12 : 1.2) * (1 + 0.2 * Math.Sin(i * 0.17) + 0.1 * Math.Sin(i * 1.7))))],
    };
}
