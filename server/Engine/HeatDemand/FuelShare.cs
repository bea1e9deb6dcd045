namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>The part of a house's heat that one heater gives from one tank or meter.</summary>
/// <param name="Fuel">What the heater burns.</param>
/// <param name="HeaterNo">Heater, from 0.</param>
/// <param name="Share">Share of the house's heat, 0 to 1.</param>
/// <param name="Efficiency">Delivered heat / fuel heat over a season.</param>
public readonly record struct FuelShare(FuelKind Fuel, int HeaterNo, double Share, double Efficiency)
{
    /// <summary>Fuel of this part.</summary>
    /// <param name="heatKwh">Heat of the whole house, kWh.</param>
    /// <returns>kWh of fuel, higher heating value.</returns>
    public double FuelKwh(double heatKwh) => Share * heatKwh / Efficiency;

    /// <summary>The parts of a house: one for each of its tanks and meters; the first heater for all where it hangs on none.</summary>
    /// <param name="house">House.</param>
    /// <returns>Parts whose heater is there.</returns>
    public static IReadOnlyList<FuelShare> Of(HouseModel house) => house.Facts.Supplies.Count == 0
        ? [new(house.Heaters[0].Fuel, 0, 1, house.Heaters[0].Efficiency)]
        : [.. house.Facts.Supplies.Where(s => s.HeaterNo >= 0 && s.HeaterNo < house.Heaters.Count).Select(s => new FuelShare(house.Heaters[s.HeaterNo].Fuel, s.HeaterNo, s.Share, house.Heaters[s.HeaterNo].Efficiency))];

    /// <summary>What heat costs a house over all its heaters.</summary>
    /// <param name="house">House.</param>
    /// <param name="heatKwh">Heat of the whole house, kWh.</param>
    /// <param name="usdPerKwh">Price of a kWh of fuel by kind, US dollars; a fuel that is not there costs nothing.</param>
    /// <returns>US dollars.</returns>
    public static double CostUsd(HouseModel house, double heatKwh, IReadOnlyDictionary<FuelKind, double> usdPerKwh) => CostUsd(Of(house), heatKwh, usdPerKwh);

    /// <summary>What heat costs over parts of a house.</summary>
    /// <param name="parts">Parts.</param>
    /// <param name="heatKwh">Heat of the whole house, kWh.</param>
    /// <param name="usdPerKwh">Price of a kWh of fuel by kind, US dollars; a fuel that is not there costs nothing.</param>
    /// <returns>US dollars.</returns>
    public static double CostUsd(IEnumerable<FuelShare> parts, double heatKwh, IReadOnlyDictionary<FuelKind, double> usdPerKwh) => parts.Sum(p => p.FuelKwh(heatKwh) * usdPerKwh.GetValueOrDefault(p.Fuel));
}
