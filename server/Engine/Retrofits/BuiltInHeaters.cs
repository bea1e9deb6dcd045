using static FarmPortfolio.Engine.Retrofits.CatalogueTable;
using static FarmPortfolio.Engine.Retrofits.ValueStatus;

namespace FarmPortfolio.Engine.Retrofits;

/// <summary>Heaters: seasonal efficiency on the higher heating value, life, price.</summary>
internal static class BuiltInHeaters
{
    private const double PerKbtuH = 1 / 0.29307107;

    internal static IEnumerable<CatalogueFacts> All =>
    [
        Heater("gravity", "Gravity-vented unit heater", M("seasonalEfficiency", "1", 0.65, 0.60, 0.72), P("renewalUsdPerKw", "$/kW input", 11, 8, 16, PerKbtuH)),
        Heater("power", "Power-vented unit heater", M("seasonalEfficiency", "1", 0.78, 0.75, 0.80), P("renewalUsdPerKw", "$/kW input", 14, 10, 20, PerKbtuH)),
        Heater("separated", "Separated-combustion unit heater", M("seasonalEfficiency", "1", 0.80, 0.78, 0.82), P("renewalUsdPerKw", "$/kW input", 16, 11, 22, PerKbtuH)),
        Heater("condensing", "Condensing unit heater", V("seasonalEfficiency", "1", 0.92, 0.90, 0.95, Read, "UMass Extension, Upgrading the greenhouse heating system (93 %)"), P("renewalUsdPerKw", "$/kW input", 22, 15, 35, PerKbtuH)),
        Heater("oilfurnace", "Oil furnace", M("seasonalEfficiency", "1", 0.77, 0.70, 0.82), P("renewalUsdPerKw", "$/kW input", 15, 10, 22, PerKbtuH)),
        Heater("resistance", "Electric resistance heater", P("seasonalEfficiency", "1", 1.0), P("renewalUsdPerKw", "$/kW input", 10, 6, 18, PerKbtuH)),
        Heater("heatpump", "Air-source heat pump, resistance in deep cold", P("seasonalEfficiency", "1", 2.3, 1.8, 2.8), P("renewalUsdPerKw", "$/kW input", 100, 60, 160, PerKbtuH)),
        Heater("pellet", "Wood pellet heater", V("seasonalEfficiency", "1", 0.80, 0.70, 0.85, Read, "OSU Extension, Lincoln County (80 %)"),
            V("renewalUsdPerKw", "$/kW input", 52, 35, 75, Read, "Callahan and Grubinger 2015, UVM: $13,000 for 250,000 Btu/h", PerKbtuH)),
    ];

    private static CatalogueFacts Heater(string code, string title, params KeyValuePair<string, CatalogueValue>[] values) => new()
    {
        Kind = CatalogueKind.Heater,
        Code = code,
        Title = title,
        Values = Values([.. values, P("lifeYears", "a", 15, 12, 18)]),
        Cautions = ["Flue, fuel and electrical work by licensed trades and to the local code; a carbon monoxide alarm in every heated house."],
    };
}
