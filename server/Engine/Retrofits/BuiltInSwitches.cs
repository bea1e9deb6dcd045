using static FarmPortfolio.Engine.Retrofits.CatalogueTable;
using static FarmPortfolio.Engine.Retrofits.ValueStatus;

namespace FarmPortfolio.Engine.Retrofits;

/// <summary>Heaters on another fuel: what they cost, how well they burn; the price is that of the tank, meter or index they move to.</summary>
internal static class BuiltInSwitches
{
    private const double PerKbtuH = 1 / 0.29307107;
    private const string Flue = "Flue, fuel and electrical work by licensed trades and to the local code; a carbon monoxide alarm in every heated house.";
    private const string Panel = "Wiring and panel by a licensed electrician, with ground-fault protection near water; ask the utility for the service size.";

    internal static IEnumerable<CatalogueFacts> All =>
    [
        Switch("togas", "Natural gas heater", ["Only where a line is at hand; the connection can cost more than the heater."], [Flue, "Ask the utility what the line and the meter cost."], ["gas fitting by licensed trades"],
            M("efficiency", "1", 0.78, 0.75, 0.80), P("outlayPerInputKw", "$/kW", 14, 10, 20, PerKbtuH), P("outlayUsd", "$", 1500, 500, 8000), P("factorMean", "1", 0.98), P("factorSd", "1", 0.05)),
        Switch("topropane", "Propane heater", ["A tank on the ground, filled by truck."], [Flue], ["gas fitting by licensed trades"],
            M("efficiency", "1", 0.78, 0.75, 0.80), P("outlayPerInputKw", "$/kW", 14, 10, 20, PerKbtuH), P("outlayUsd", "$", 500, 0, 2500), P("factorMean", "1", 0.98), P("factorSd", "1", 0.05)),
        Switch("topellets", "Wood pellet heater, the old one as back-up", ["Ash, fuel storage, dust; a power cut stops it.", "The old heater stays and must be kept up."], [Flue, "Keep pellets dry and away from the burner."], ["heating technician"],
            V("efficiency", "1", 0.80, 0.70, 0.85, Read, "OSU Extension, Lincoln County (80 %)"), V("outlayPerInputKw", "$/kW", 52, 35, 75, Read, "Callahan and Grubinger 2015, UVM: $13,000 for 250,000 Btu/h", PerKbtuH),
            P("upkeepUsd", "$/a", 400, 200, 800), P("watchingHours", "h/week", 2, 1, 4), P("powerKwhPerYear", "kWh/a", 200, 50, 500), P("spaceLost", "1", 0.005), P("keepsOld", "1", 1), P("factorMean", "1", 0.95), P("factorSd", "1", 0.15)),
        Switch("toresistance", "Electric resistance heater", ["Dear where power is dear; mind the demand charge."], [Panel], ["electrical, by a licensed electrician"],
            P("efficiency", "1", 1.0), P("outlayPerInputKw", "$/kW", 10, 6, 18, PerKbtuH), P("outlayUsd", "$", 1500, 500, 6000), P("factorMean", "1", 1.0), P("factorSd", "1", 0.02)),
        Switch("toheatpump", "Air-source heat pump, resistance in deep cold", ["Gives least when it is coldest; must be thawed.", "Heat by outside temperature, see the method."], [Panel], ["refrigeration and electrical, by licensed trades"],
            M("efficiency", "1", 2.3, 1.8, 2.8), P("copFactor", "1", 1.0, 0.8, 1.15), P("outlayPerInputKw", "$/kW", 100, 60, 160, PerKbtuH), P("outlayUsd", "$", 2000, 500, 8000), P("upkeepUsd", "$/a", 150, 80, 300), P("factorMean", "1", 0.95), P("factorSd", "1", 0.10)),
    ];

    private static CatalogueFacts Switch(string code, string title, string[] drawbacks, string[] cautions, string[] skills, params KeyValuePair<string, CatalogueValue>[] values) => new()
    {
        Kind = CatalogueKind.Retrofit,
        Code = code,
        Title = title,
        Drawbacks = drawbacks,
        Cautions = cautions,
        Skills = skills,
        Needs = ["other-fuel"],
        Excludes = [.. FuelSwitch.Codes.Where(c => c != code), "condensing", "service"],
        Values = Values([.. values, P("lifeYears", "a", 15, 12, 18)]),
    };
}
