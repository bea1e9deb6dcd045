namespace FarmPortfolio.Engine.Units;

/// <summary>Units fuel is sold in, as kWh on the higher heating value; emission factors.</summary>
public static class HeatingValues
{
    /// <summary>Units a fuel is sold in.</summary>
    /// <param name="fuel">Fuel.</param>
    /// <returns>Units, the usual one first.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such fuel.</exception>
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
    /// <param name="set">Heating values; null = those in use where nothing is chosen.</param>
    /// <param name="thermsPerCcf">The bill's own therm factor; null = from the set.</param>
    /// <returns>kWh, or null where the fuel is not sold in that unit.</returns>
    public static double? KwhPerUnit(FuelKind fuel, string unit, HeatingValueSet? set = null, double? thermsPerCcf = null)
    {
        set ??= FuelSets.HeatingInUse;
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

    /// <summary>CO2 of burning a kWh of fuel heat; electricity at the user's own factor, 0 here; wood counted as printed there.</summary>
    /// <param name="fuel">Fuel.</param>
    /// <param name="set">Emission factors; null = those in use where nothing is chosen.</param>
    /// <returns>kg CO2 a kWh of fuel; 0 where the set has no factor.</returns>
    public static double Co2KgPerKwh(FuelKind fuel, EmissionSet? set = null) => ((set ?? FuelSets.EmissionsInUse).KgPerMmbtu(fuel) ?? 0) / Us.MmbtuKwh;
}
