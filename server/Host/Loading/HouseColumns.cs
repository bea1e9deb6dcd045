namespace FarmPortfolio.Host.Loading;

/// <summary>What a column of the houses' sheet holds.</summary>
internal enum HouseColumn
{
    Farm, Place, Station, Sales, House, Shape, BayRoof, Bays, Width, Length, SideWall, Ridge, Covering, FilmYear, Plan, HeatedFrom, HeatedTo, Night, Day,
    Heater, HeaterYear, Input, Efficiency, Fuel, Supply, TankSize, AirChanges, Installed, Used, UsedUnit, UsedWinter,
}

/// <summary>Columns of the houses' sheet by their names in plain words, and the units that a column may be written in.</summary>
internal static class HouseColumns
{
    private static readonly Dictionary<string, double> Lengths = new(StringComparer.Ordinal) { ["ft"] = 0.3048, ["feet"] = 0.3048, ["foot"] = 0.3048, ["m"] = 1, ["metres"] = 1, ["meters"] = 1 };
    private static readonly Dictionary<string, double> Temperatures = new(StringComparer.Ordinal) { ["f"] = Engine.Units.Us.DegreeK, ["fahrenheit"] = Engine.Units.Us.DegreeK, ["c"] = 1, ["celsius"] = 1 };
    private static readonly Dictionary<string, double> Powers = new(StringComparer.Ordinal)
    {
        ["btu/h"] = Engine.Units.Us.BtuKwh,
        ["btuh"] = Engine.Units.Us.BtuKwh,
        ["kbtu/h"] = 1000 * Engine.Units.Us.BtuKwh,
        ["mbh"] = 1000 * Engine.Units.Us.BtuKwh,
        ["kw"] = 1,
    };

    private static readonly Dictionary<string, double> Volumes = new(StringComparer.Ordinal) { ["gal"] = Engine.Units.Us.GallonL, ["gallons"] = Engine.Units.Us.GallonL, ["l"] = 1, ["litres"] = 1, ["liters"] = 1 };

    // what fuel is sold in: which of them a fuel takes is asked once the fuel is known, and the figure stays as it is written
    private static readonly Dictionary<string, double> Sold = new[]
    {
        "gal", "gals", "gallon", "gallons", "l", "litre", "litres", "liter", "liters", "lb", "lbs", "pound", "pounds", "therm", "therms", "ccf", "mcf", "m3", "mmbtu", "kwh", "ton", "tons",
    }.ToDictionary(u => u, _ => 1.0, StringComparer.Ordinal);

    private static readonly Dictionary<string, double> None = new(StringComparer.Ordinal);

    /// <summary>Names a column goes by; the first is the one in the template.</summary>
    public static IReadOnlyDictionary<HouseColumn, string[]> Names { get; } = new Dictionary<HouseColumn, string[]>
    {
        [HouseColumn.Farm] = ["farm", "member", "farm name"],
        [HouseColumn.Place] = ["place", "town"],
        [HouseColumn.Station] = ["weather station", "station"],
        [HouseColumn.Sales] = ["sales", "sales a year", "sales of a year"],
        [HouseColumn.House] = ["house", "house name", "greenhouse"],
        [HouseColumn.Shape] = ["shape"],
        [HouseColumn.BayRoof] = ["bay roof", "roof of a bay"],
        [HouseColumn.Bays] = ["bays", "number of bays"],
        [HouseColumn.Width] = ["width", "bay width", "width of a bay"],
        [HouseColumn.Length] = ["length"],
        [HouseColumn.SideWall] = ["side wall", "side wall height", "gutter height"],
        [HouseColumn.Ridge] = ["ridge", "ridge height", "height"],
        [HouseColumn.Covering] = ["covering", "roof covering"],
        [HouseColumn.FilmYear] = ["film year", "covering year", "film installed"],
        [HouseColumn.Plan] = ["heating plan", "crop plan"],
        [HouseColumn.HeatedFrom] = ["heated from"],
        [HouseColumn.HeatedTo] = ["heated to"],
        [HouseColumn.Night] = ["night set point", "night"],
        [HouseColumn.Day] = ["day set point", "day"],
        [HouseColumn.Heater] = ["heater", "heater kind"],
        [HouseColumn.HeaterYear] = ["heater year", "heater installed"],
        [HouseColumn.Input] = ["heater input", "input"],
        [HouseColumn.Efficiency] = ["seasonal efficiency", "efficiency"],
        [HouseColumn.Fuel] = ["fuel"],
        [HouseColumn.Supply] = ["tank or meter", "tank", "meter", "supply group"],
        [HouseColumn.TankSize] = ["tank size"],
        [HouseColumn.AirChanges] = ["air changes", "air changes an hour"],
        [HouseColumn.Installed] = ["retrofits installed", "installed"],
        [HouseColumn.Used] = ["used last winter", "fuel used last winter", "fuel used", "used"],
        [HouseColumn.UsedUnit] = ["unit used", "unit of fuel used", "fuel unit"],
        [HouseColumn.UsedWinter] = ["winter used", "winter of use", "winter"],
    };

    /// <summary>Factor to SI of the units a column may be written in, by unit in small letters; empty = a column without one.</summary>
    /// <param name="column">Column.</param>
    /// <returns>Factors.</returns>
    public static IReadOnlyDictionary<string, double> Units(HouseColumn column) => column switch
    {
        HouseColumn.Width or HouseColumn.Length or HouseColumn.SideWall or HouseColumn.Ridge => Lengths,
        HouseColumn.Night or HouseColumn.Day => Temperatures,
        HouseColumn.Input => Powers,
        HouseColumn.TankSize => Volumes,
        HouseColumn.Used => Sold,
        _ => None,
    };

    /// <summary>The unit a column has where the whole sheet is said to be US customary or SI.</summary>
    /// <param name="column">Column.</param>
    /// <param name="si">Whether SI.</param>
    /// <returns>Unit in small letters.</returns>
    public static string Usual(HouseColumn column, bool si) => column switch
    {
        HouseColumn.Night or HouseColumn.Day => si ? "c" : "f",
        HouseColumn.Input => si ? "kw" : "btu/h",
        HouseColumn.TankSize => si ? "l" : "gal",
        HouseColumn.Used => si ? "kwh" : "gal",
        _ => si ? "m" : "ft",
    };

    /// <summary>Whether a word is a unit of some column.</summary>
    /// <param name="word">Word.</param>
    /// <returns>Whether it is.</returns>
    public static bool IsUnit(string word) => Lengths.ContainsKey(Lower(word)) || Temperatures.ContainsKey(Lower(word)) || Powers.ContainsKey(Lower(word)) || Volumes.ContainsKey(Lower(word)) || Sold.ContainsKey(Lower(word));

    /// <summary>A unit in small letters without a degree sign.</summary>
    /// <param name="unit">Unit.</param>
    /// <returns>Small letters.</returns>
    public static string Lower(string unit) => unit.Trim().TrimStart('°').ToLowerInvariant();

    /// <summary>The column of a name; null = none of them.</summary>
    /// <param name="name">Name in plain words.</param>
    /// <returns>The column.</returns>
    public static HouseColumn? Find(string name)
    {
        foreach (var (column, names) in Names)
        {
            if (names.Contains(name, StringComparer.Ordinal))
            {
                return column;
            }
        }

        return null;
    }
}
