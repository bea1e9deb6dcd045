using FarmPortfolio.Engine.Farms;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>Whether the tanks and meters of a house give what its heaters burn.</summary>
public static class SupplyChecks
{
    /// <summary>All that is wrong between heaters and supplies.</summary>
    /// <param name="house">House.</param>
    /// <param name="fuelOf">Fuel of a tank or meter of the house's farm; null = there is none.</param>
    /// <returns>Faults; empty = they fit.</returns>
    public static IReadOnlyList<Fault> Of(HouseFacts house, Func<string, FuelKind?> fuelOf)
    {
        var faults = new List<Fault>();
        var usual = house.Supplies.Count > 0 ? fuelOf(house.Supplies[0].SupplyGroupId) : null;
        foreach (var supply in house.Supplies)
        {
            if (fuelOf(supply.SupplyGroupId) is not { } fuel)
            {
                faults.Add(new("NO_SUPPLY", "supplies", "The house hangs on a tank or meter that is not its farm's.", "Choose a tank or meter of its farm."));
                continue;
            }

            var burns = supply.HeaterNo >= 0 && supply.HeaterNo < house.Heaters.Count ? house.Heaters[supply.HeaterNo].Fuel : house.Heaters.Count == 0 ? usual : null;
            if (burns is { } needed && needed != fuel)
            {
                faults.Add(new("FUEL_MISMATCH", "supplies", $"Heater {supply.HeaterNo + 1} burns {needed} and its tank or meter gives {fuel}.", $"Choose a tank or meter with {needed}, or a heater that burns {fuel}."));
            }

            if (!(supply.Share is >= 0 and <= 1))
            {
                faults.Add(new("OUT_OF_RANGE", "supplies", $"A tank or meter is said to give {100 * supply.Share:0.#} % of the heat.", "Give shares between 0 and 100 % that add up to 100 %."));
            }
        }

        if (house.Supplies.GroupBy(s => (s.SupplyGroupId, s.HeaterNo)).Any(g => g.Count() > 1))
        {
            faults.Add(new("DOUBLED", "supplies", "A tank or meter stands twice for the same heater.", "Name each once, with its whole share."));
        }

        return faults;
    }
}
