using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Retrofits;

namespace FarmPortfolio.Engine.HeatDemand;

/// <summary>Fills what a house does not say of its heaters.</summary>
public static class HeaterModels
{
    private const int OldAfterYears = 15;
    private const double OldEfficiency = 0.70;

    internal static IReadOnlyList<HeaterModel> Of(HouseFacts house, Catalogue catalogue, int firstSeason, FuelKind fuel, List<DefaultUsed> taken)
    {
        if (house.Heaters.Count > 0)
        {
            return [.. house.Heaters.Select(h => Filled(h, catalogue, firstSeason, taken))];
        }

        var usual = new HeaterFacts(UsualCode(fuel), fuel);
        taken.Add(new("heaters", "heater: " + usual.HeaterCode, catalogue.Value(CatalogueKind.Heater, usual.HeaterCode, "seasonalEfficiency"), "1", "the usual kind for the fuel, common practice"));
        return [Filled(usual, catalogue, firstSeason, null)];
    }

    /// <summary>The usual kind of heater for a fuel, common practice.</summary>
    /// <param name="fuel">Fuel.</param>
    /// <returns>Its code in the catalogue.</returns>
    public static string UsualCode(FuelKind fuel) => fuel switch
    {
        FuelKind.FuelOil => "oilfurnace",
        FuelKind.Electricity => "resistance",
        FuelKind.WoodPellets => "pellet",
        _ => "power",
    };

    /// <summary>Whether a kind of heater can run on a fuel: electric ones and pellet burners on their own alone, the other burners on gas, propane or oil.</summary>
    /// <param name="code">Its code in the catalogue.</param>
    /// <param name="fuel">Fuel.</param>
    /// <returns>False where it cannot; a kind that the co-op made itself takes any.</returns>
    public static bool Takes(string code, FuelKind fuel) => code switch
    {
        "resistance" or "heatpump" => fuel == FuelKind.Electricity,
        "pellet" => fuel == FuelKind.WoodPellets,
        "gravity" or "power" or "separated" or "condensing" or "oilfurnace" => fuel is FuelKind.NaturalGas or FuelKind.Propane or FuelKind.FuelOil,
        _ => true,
    };

    private static HeaterModel Filled(HeaterFacts heater, Catalogue catalogue, int firstSeason, List<DefaultUsed>? taken)
    {
        var life = catalogue.Value(CatalogueKind.Heater, heater.HeaterCode, "lifeYears", 15);
        var usual = catalogue.Value(CatalogueKind.Heater, heater.HeaterCode, "seasonalEfficiency", 0.78);
        var efficiency = heater.SeasonalEfficiency;
        if (efficiency is null)
        {
            var old = heater.Fuel != FuelKind.Electricity && heater.InstalledOn is { } on && firstSeason - on.Year > OldAfterYears;
            efficiency = old ? Math.Min(OldEfficiency, usual) : usual;
            taken?.Add(new("heaters", "seasonal efficiency of the heater", efficiency.Value, "1", old ? "over 15 years old, common practice" : "by kind, from memory"));
        }

        var standard = heater.Fuel switch
        {
            FuelKind.FuelOil => catalogue.Value(CatalogueKind.Heater, "oilfurnace", "seasonalEfficiency", 0.77),
            FuelKind.Electricity or FuelKind.WoodPellets => usual,
            _ => Math.Max(usual, catalogue.Value(CatalogueKind.Heater, "power", "seasonalEfficiency", 0.78)),
        };
        var input = heater.InputKw ?? double.PositiveInfinity;
        var priced = double.IsInfinity(input) ? 75 : input;
        return new(heater.Fuel, efficiency.Value, input * efficiency.Value, HouseModels.NextDue(heater.InstalledOn?.Year, life, firstSeason),
            priced * catalogue.Value(CatalogueKind.Heater, heater.HeaterCode, "renewalUsdPerKw", 48), Math.Max(standard, efficiency.Value));
    }
}
