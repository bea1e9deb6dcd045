namespace FarmPortfolio.Engine.Units;

/// <summary>A dated set of heating values, higher heating value.</summary>
/// <param name="Name">Name of the set.</param>
/// <param name="Year">Year it is for or was published in: the values move by year.</param>
/// <param name="Source">Who published it, and how it was read.</param>
/// <param name="GasBtuPerCubicFoot">Natural gas, Btu a cubic foot.</param>
/// <param name="PropaneBtuPerGallon">Propane, Btu a gallon.</param>
/// <param name="OilBtuPerGallon">No. 2 oil, Btu a gallon.</param>
/// <param name="PelletsBtuPerTon">Wood pellets, Btu a short ton.</param>
public sealed record HeatingValueSet(string Name, int Year, string Source, double GasBtuPerCubicFoot, double PropaneBtuPerGallon, double OilBtuPerGallon, double PelletsBtuPerTon);

/// <summary>A dated set of emission factors of burning; electricity is the user's own grid's and in none of them.</summary>
/// <param name="Name">Name of the set.</param>
/// <param name="Year">Year it was published in.</param>
/// <param name="Source">Who published it, and how it was read.</param>
/// <param name="GasKgPerMmbtu">Natural gas, kg CO2 a MMBtu.</param>
/// <param name="PropaneKgPerMmbtu">Propane.</param>
/// <param name="OilKgPerMmbtu">No. 2 oil.</param>
/// <param name="WoodKgPerMmbtu">Wood as it leaves the chimney, regrowth not counted; null = the set has none.</param>
public sealed record EmissionSet(string Name, int Year, string Source, double GasKgPerMmbtu, double PropaneKgPerMmbtu, double OilKgPerMmbtu, double? WoodKgPerMmbtu)
{
    /// <summary>CO2 of a MMBtu of fuel.</summary>
    /// <param name="fuel">Fuel.</param>
    /// <returns>kg; null where the set has no factor for it.</returns>
    public double? KgPerMmbtu(FuelKind fuel) => fuel switch
    {
        FuelKind.NaturalGas => GasKgPerMmbtu,
        FuelKind.Propane => PropaneKgPerMmbtu,
        FuelKind.FuelOil => OilKgPerMmbtu,
        FuelKind.WoodPellets => WoodKgPerMmbtu,
        _ => null,
    };

    /// <summary>CO2 of a unit of fuel.</summary>
    /// <param name="fuel">Fuel.</param>
    /// <param name="unit">Unit it is sold in.</param>
    /// <param name="values">Heating values.</param>
    /// <returns>kg; null where the set has no factor or the fuel is not sold in the unit.</returns>
    public double? KgPerUnit(FuelKind fuel, string unit, HeatingValueSet values) => KgPerMmbtu(fuel) * HeatingValues.KwhPerUnit(fuel, unit, values) / Us.MmbtuKwh;
}

/// <summary>The dated sets that the program knows, and which of them it reckons with.</summary>
public static class FuelSets
{
    private const string Pellets = "pellets: OSU Extension, Lincoln County";

    /// <summary>Heating values, oldest first.</summary>
    public static IReadOnlyList<HeatingValueSet> HeatingValues { get; } =
    [
        new("EIA 2012", 2012, $"EIA, Btu conversion factors (2012), read; {Pellets}", 1025, 91333, 138690, 16_500_000),
        new("40 CFR 98", 2016, "40 CFR 98, table C-1 (text of December 2016) and table NN-1 for gas, read; wood as in table C-1", 1026, 91000, 138000, 17_480_000),
        new("EIA 2022", 2022, $"EIA, gas 2022 and distillate 2021, read; propane from a secondary page; {Pellets}", 1036, 91452, 137381, 16_500_000),
    ];

    /// <summary>Emission factors, oldest first.</summary>
    public static IReadOnlyList<EmissionSet> Emissions { get; } =
    [
        new("EIA 2016", 2016, "EIA, carbon dioxide emissions coefficients (2 February 2016), read", 53.07, 63.07, 73.16, null),
        new("40 CFR 98", 2016, "40 CFR 98, table C-1 (text of December 2016), read; wood as in EPA's hub of 2024", 53.06, 62.87, 73.96, 93.80),
    ];

    /// <summary>Heating values that the program reckons with where the assumptions choose none.</summary>
    public static HeatingValueSet HeatingInUse { get; } = HeatingValues[0];

    /// <summary>The heating values of a name.</summary>
    /// <param name="name">Name of the set; null = those in use where nothing is chosen.</param>
    /// <returns>The set; null where there is none of that name.</returns>
    public static HeatingValueSet? HeatingNamed(string? name) => name is null ? HeatingInUse : HeatingValues.FirstOrDefault(h => h.Name == name);

    /// <summary>The emission factors of a name.</summary>
    /// <param name="name">Name of the set; null = those in use where nothing is chosen.</param>
    /// <returns>The set; null where there is none of that name.</returns>
    public static EmissionSet? EmissionsNamed(string? name) => name is null ? EmissionsInUse : Emissions.FirstOrDefault(e => e.Name == name);

    /// <summary>Emission factors that the program reckons with where the assumptions choose none.</summary>
    public static EmissionSet EmissionsInUse { get; } = Emissions[1];
}
