namespace FarmPortfolio.Engine.Units;

/// <summary>A dated set of heating values on the higher heating value, and emission factors.</summary>
/// <param name="Name">Name of the set.</param>
/// <param name="Source">Who published it and when.</param>
/// <param name="GasBtuPerCubicFoot">Natural gas, Btu a cubic foot.</param>
/// <param name="PropaneBtuPerGallon">Propane, Btu a gallon.</param>
/// <param name="OilBtuPerGallon">No. 2 oil, Btu a gallon.</param>
/// <param name="PelletsBtuPerTon">Wood pellets, Btu a short ton.</param>
public sealed record HeatingValueSet(string Name, string Source, double GasBtuPerCubicFoot, double PropaneBtuPerGallon, double OilBtuPerGallon, double PelletsBtuPerTon);

/// <summary>Units fuel is sold in, as kWh on the higher heating value; emission factors.</summary>
public static class HeatingValues
{
    /// <summary>EIA averages of 2012; pellets by OSU Extension, Lincoln County.</summary>
    public static HeatingValueSet Eia2012 { get; } = new("EIA 2012", "EIA, Btu conversion factors (2012); pellets: OSU Extension, Lincoln County", 1025, 91333, 138690, 16_500_000);

    /// <summary>Later EIA values.</summary>
    public static HeatingValueSet Eia2022 { get; } = new("EIA 2022", "EIA, gas 2022 (1,036 Btu/cf), distillate 2021 (137,381 Btu/gal); propane 91,452 from a secondary page", 1036, 91452, 137381, 16_500_000);

    /// <summary>Units a fuel is sold in.</summary>
    /// <param name="fuel">Fuel.</param>
    /// <returns>Units, the usual one first.</returns>
    public static IReadOnlyList<string> UnitsOf(FuelKind fuel) => fuel switch
    {
        FuelKind.NaturalGas => ["therm", "ccf", "mcf", "m3", "MMBtu", "kWh"],
        FuelKind.Propane => ["gal", "L", "lb", "MMBtu", "kWh"],
        FuelKind.FuelOil => ["gal", "L", "MMBtu", "kWh"],
        FuelKind.Electricity => ["kWh", "MMBtu"],
        FuelKind.WoodPellets => ["ton", "lb", "MMBtu", "kWh"],
        _ => throw new ArgumentOutOfRangeException(nameof(fuel), fuel, "no such fuel"),
    };

    /// <summary>kWh of fuel heat in a unit.</summary>
    /// <param name="fuel">Fuel.</param>
    /// <param name="unit">Unit as people write it: gal, L, lb, therm, ccf, mcf, m3, MMBtu, kWh, ton.</param>
    /// <param name="set">Heating values; null = EIA 2012.</param>
    /// <param name="thermsPerCcf">The bill's own therm factor; null = from the set.</param>
    /// <returns>kWh, or null where the fuel is not sold in that unit.</returns>
    public static double? KwhPerUnit(FuelKind fuel, string unit, HeatingValueSet? set = null, double? thermsPerCcf = null)
    {
        set ??= Eia2012;
        var ccf = (thermsPerCcf ?? set.GasBtuPerCubicFoot / 1000) * 1e5 * Us.BtuKwh;
        return (fuel, unit) switch
        {
            (_, "kWh") => 1,
            (_, "MMBtu") => Us.MmbtuKwh,
            (FuelKind.NaturalGas, "therm") => 1e5 * Us.BtuKwh,
            (FuelKind.NaturalGas, "ccf") => ccf,
            (FuelKind.NaturalGas, "mcf") => 10 * ccf,
            (FuelKind.NaturalGas, "m3") => ccf / (100 * Us.CubicFootM3),
            (FuelKind.Propane, "gal") => set.PropaneBtuPerGallon * Us.BtuKwh,
            (FuelKind.Propane, "L") => set.PropaneBtuPerGallon * Us.BtuKwh / Us.GallonL,
            (FuelKind.Propane, "lb") => set.PropaneBtuPerGallon * Us.BtuKwh / 4.24,
            (FuelKind.FuelOil, "gal") => set.OilBtuPerGallon * Us.BtuKwh,
            (FuelKind.FuelOil, "L") => set.OilBtuPerGallon * Us.BtuKwh / Us.GallonL,
            (FuelKind.WoodPellets, "ton") => set.PelletsBtuPerTon * Us.BtuKwh,
            (FuelKind.WoodPellets, "lb") => set.PelletsBtuPerTon * Us.BtuKwh / 2000,
            _ => null,
        };
    }

    /// <summary>CO2 of burning a kWh of fuel heat, 40 CFR 98 table C-1; electricity at the user's own factor, 0 here; wood counted as printed there.</summary>
    /// <param name="fuel">Fuel.</param>
    /// <returns>kg CO2 a kWh of fuel.</returns>
    public static double Co2KgPerKwh(FuelKind fuel) => KgPerMmbtu(fuel) / Us.MmbtuKwh;

    /// <summary>CO2 of burning a MMBtu of fuel, 40 CFR 98 table C-1 (Dec 2016 text); wood: EPA hub 2024.</summary>
    /// <param name="fuel">Fuel.</param>
    /// <returns>kg CO2 a MMBtu.</returns>
    public static double KgPerMmbtu(FuelKind fuel) => fuel switch
    {
        FuelKind.NaturalGas => 53.06,
        FuelKind.Propane => 62.87,
        FuelKind.FuelOil => 73.96,
        FuelKind.WoodPellets => 93.80,
        _ => 0,
    };
}
