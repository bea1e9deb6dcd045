using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;

namespace FarmPortfolio.Host.Demo;

/// <summary>A house of the demo, in feet as its builder would say it.</summary>
internal sealed record DemoHouse(string Name, HouseShape Shape, double WidthFt, double LengthFt, double? WallFt, double? RidgeFt, int Bays, string Covering, string Plan, string Heater, int HeaterYear, string[] Installed);

/// <summary>What a farm of the demo kept of its fuel.</summary>
internal enum DemoRecords
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>A utility's bills, a few of them estimated.</summary>
    Bills,

    /// <summary>Tickets of full fills.</summary>
    Tickets,

    /// <summary>Tickets that do not tell how full, one of them mistyped.</summary>
    LooseTickets,

    /// <summary>One figure a winter.</summary>
    Totals,
}

/// <summary>A farm of the demo: one tank or meter, its contract, its houses, what it kept of its fuel.</summary>
internal sealed record DemoFarm(string Name, string Place, int Station, int SalesUsd, FuelKind Fuel, double? FixedPrice, DemoRecords Records, DemoHouse[] Houses)
{
    /// <summary>Heat that its houses really take against what one would reckon.</summary>
    public double Truth { get; init; } = 1;

    /// <summary>A house with a second heater on a fuel of its own, and the share of its heat that one gives; null = none.</summary>
    public (string House, FuelKind Fuel, double Share)? SecondFuel { get; init; }

    /// <summary>Whether a pellet heater is among the options of its houses.</summary>
    public bool Pellets { get; init; }

    /// <summary>A dwelling on the same tank or meter, kWh of fuel a day; 0 = none.</summary>
    public double DwellingKwhPerDay { get; init; }
}

/// <summary>The invented co-op Fernbrook Growers: fourteen farms, forty houses, in places that do not exist.</summary>
internal static class DemoFarms
{
    /// <summary>Name of the co-op.</summary>
    public const string Coop = "Fernbrook Growers";

    /// <summary>Stations: name, latitude, height in metres, mean of the year, half swing.</summary>
    public static (string Name, double Latitude, double ElevationM, double MeanC, double SwingK)[] Stations { get; } =
    [
        ("Upper Bracken", 44.6, 310, 5.6, 14.6), ("Stonemill", 43.6, 190, 7.2, 14.0), ("Lake Tarrow", 43.0, 105, 8.6, 13.2),
    ];

    /// <summary>Farms.</summary>
    public static DemoFarm[] All { get; } =
    [
        new("Alder Reach", "Upper Bracken", 0, 210_000, FuelKind.Propane, null, DemoRecords.Tickets,
            [Hoop("house 1", 30, 96, "spring"), Hoop("house 2", 30, 96, "spring"), Hoop("house 3", 26, 96, "bedding-early", "singlefilm")]) { DwellingKwhPerDay = 75 },
        new("Barrow Fields", "Upper Bracken", 0, 95_000, FuelKind.Propane, null, DemoRecords.None, [Hoop("house 1", 30, 72, "spring"), Hoop("house 2", 14, 48, "overwinter")]),
        new("Cold Ash", "Upper Bracken", 0, 640_000, FuelKind.FuelOil, null, DemoRecords.Totals,
            [Gothic("house 1", 30, 144, "winter-long"), Gothic("house 2", 30, 144, "bedding-early"), Gothic("house 3", 35, 96, "bedding-early"), Gable("propagation", 24, 60, "winter-long", "twinwall")]),
        new("Dunmoor Gardens", "Stonemill", 1, 330_000, FuelKind.NaturalGas, null, DemoRecords.Bills, [Hoop("house 1", 30, 96, "spring"), Hoop("house 2", 30, 96, "winter-long"), Gable("glasshouse", 28, 80, "winter-long", "glass")]),
        new("Eddy Bank", "Stonemill", 1, 48_000, FuelKind.Propane, 2.45, DemoRecords.None, [Hoop("house 1", 26, 72, "bedding-late"), Hoop("house 2", 26, 72, "greens")]),
        new("Foxglove Rise", "Stonemill", 1, 1_450_000, FuelKind.NaturalGas, null, DemoRecords.Bills,
            [Bays("range 1", 5, 24, 182, "winter-long"), Bays("range 2", 3, 30, 144, "bedding-early"), Gothic("house 7", 30, 120, "bedding-early"), Gothic("house 8", 30, 120, "bedding-early")]) { Truth = 1.36 },
        new("Gorse Hollow", "Stonemill", 1, 120_000, FuelKind.FuelOil, null, DemoRecords.None, [Hoop("house 1", 30, 96, "tomato-early"), Hoop("house 2", 30, 96, "tomato-early"), Hoop("house 3", 20, 96, "greens")]) { Pellets = true },
        new("Hither Dell", "Lake Tarrow", 2, 270_000, FuelKind.NaturalGas, 0.98, DemoRecords.Bills, [Hoop("house 1", 30, 96, "poinsettia"), Hoop("house 2", 30, 96, "spring"), Hoop("house 3", 30, 96, "bedding-early", "doublefilm", "seal")]),
        new("Ivy Landing", "Lake Tarrow", 2, 185_000, FuelKind.Propane, null, DemoRecords.Tickets, [Gothic("house 1", 30, 96, "tomato-early"), Gothic("house 2", 30, 96, "tomato-early"), Hoop("house 3", 30, 96, "spring", "doublefilm", "kneewall")]),
        new("Juniper Lot", "Lake Tarrow", 2, 38_000, FuelKind.Propane, null, DemoRecords.None, [Hoop("house 1", 21, 60, "bedding-late", "singlefilm")]),
        new("Kestrel Piece", "Lake Tarrow", 2, 520_000, FuelKind.NaturalGas, null, DemoRecords.None, [Bays("range", 4, 21, 96, "lettuce"), Gothic("house 5", 30, 96, "bedding-early"), Gothic("house 6", 30, 96, "bedding-early")]) { SecondFuel = ("range", FuelKind.Propane, 0.2) },
        new("Linden Spur", "Upper Bracken", 0, 74_000, FuelKind.Electricity, null, DemoRecords.Bills, [Hoop("nursery", 14, 48, "bedding-late"), Gable("propagation", 16, 40, "bedding-early", "twinwall")]),
        new("Marsh End", "Stonemill", 1, 155_000, FuelKind.Propane, null, DemoRecords.LooseTickets, [Hoop("house 1", 30, 96, "spring"), Hoop("house 2", 30, 96, "spring", "doublefilm", "curtain"), Hoop("house 3", 30, 48, "overwinter")]),
        new("Nettle Croft", "Lake Tarrow", 2, 410_000, FuelKind.FuelOil, 3.60, DemoRecords.None,
            [Gothic("house 1", 35, 144, "bedding-early"), Gothic("house 2", 35, 144, "spring"), Hoop("house 3", 30, 96, "winter-long"), Hoop("house 4", 30, 96, "spring")]),
    ];

    private static DemoHouse Hoop(string name, double w, double l, string plan, string covering = "doublefilm", params string[] installed) =>
        new(name, HouseShape.Hoop, w, l, null, null, 1, covering, plan, "power", 2014, installed);

    private static DemoHouse Gothic(string name, double w, double l, string plan) => new(name, HouseShape.GothicArch, w, l, 5, 5 + 0.37 * w, 1, "doublefilm", plan, "power", 2012, []);

    private static DemoHouse Gable(string name, double w, double l, string plan, string covering) => new(name, HouseShape.Gable, w, l, 7, 7 + 0.26 * w, 1, covering, plan, "gravity", 2006, []);

    private static DemoHouse Bays(string name, int bays, double w, double l, string plan) => new(name, HouseShape.GutterConnected, w, l, 10, 10 + 0.25 * w, bays, "doublefilm", plan, "power", 2015, []);
}
