using FarmPortfolio.Engine;

namespace FarmPortfolio.Host.Studies;

/// <summary>Which of the price records that ship with the program a study takes when it is told nothing.</summary>
public static class StarterRecords
{
    /// <summary>The record that futures roll on from where a set of assumptions names none.</summary>
    public static IReadOnlyDictionary<FuelKind, string> Ids { get; } = new Dictionary<FuelKind, string>
    {
        [FuelKind.NaturalGas] = "ps_gas-henry-hub",
        [FuelKind.Propane] = "ps_propane-mont-belvieu",
        [FuelKind.FuelOil] = "ps_oil-new-york-harbor",
        [FuelKind.Electricity] = "ps_electricity-commercial",
    };
}
