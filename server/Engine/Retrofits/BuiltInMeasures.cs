using FarmPortfolio.Engine.Units;
using static FarmPortfolio.Engine.Retrofits.CatalogueTable;
using static FarmPortfolio.Engine.Retrofits.ValueStatus;

namespace FarmPortfolio.Engine.Retrofits;

/// <summary>Retrofits that stay: film, sealing, boards, heaters.</summary>
internal static class BuiltInMeasures
{
    private const double PerFt2 = 1 / Us.SquareFootM2;
    private const string Monoxide = "Less air for burners: sealed-combustion or ducted air, and a carbon monoxide alarm.";
    private const string Board = "Cover foam board against sun and fire; keep rodents out.";
    private const string Flue = "Flue, condensate and fuel work by licensed trades and to the local code; a carbon monoxide alarm.";

    internal static IEnumerable<CatalogueFacts> All =>
    [
        Retrofit("irfilm", "Inner film that holds heat and sheds drops", ["Little gain where the inner film is wet anyway.", "Cheap only when the film is due; before that both films are renewed early."], ["Re-covering is work at a height: calm weather, two people or more, safe ladders."], ["re-covering"], ["double-film"], [],
            V("uFactor", "1", 0.59 / 0.70, 0.56 / 0.70, 0.65 / 0.70, Computed, "U 0.70 to 0.59, to give the 12 to 17 % of published audits"), P("lightLost", "1", 0.005, 0, 0.01),
            V("premiumPerCover", "$/m2", 0.02, 0.015, 0.025, Read, "Bartok, Energy audits; Wisconsin Extension, Heat loss", PerFt2), P("earlyPerCover", "$/m2", 0.35, 0.25, 0.50, PerFt2),
            V("lifeYears", "a", 4, 3, 5, Read, "Bartok, Energy audits identify potential savings"), P("factorMean", "1", 0.80), P("factorSd", "1", 0.20)),
        Retrofit("seal", "Doors, shutters and roll-ups sealed", ["Fades by a tenth a year.", "Damper air."], [Monoxide], ["handiwork"], [], [],
            P("airFactor", "1", 0.67, 0.5, 0.85), P("outlayUsd", "$", 600, 200, 1500), P("lifeYears", "a", 5, 3, 8), P("upkeepUsd", "$/a", 50), P("watchingHours", "h/week", 0.1), P("consumablesUsd", "$/a", 20),
            P("factorMean", "1", 0.70), P("factorSd", "1", 0.25), P("fadePerYear", "1", 0.10)),
        Retrofit("kneewall", "Knee walls boarded, 3 ft", ["Shades low crops."], [Board], ["carpentry"], [], [],
            V("rAdded", "m2K/W", 10, 5, 13, Read, "Wisconsin Extension, Heat loss (2 in board)", Us.RValue), P("wallHeightM", "m", 3, factor: Us.FootM), P("includesEnds", "1", 0), P("lightLost", "1", 0, 0, 0.01),
            P("outlayPerKneeWall", "$/m2", 1.90, 1.2, 3.0, PerFt2), P("lifeYears", "a", 12, 8, 20), P("upkeepUsd", "$/a", 20), P("factorMean", "1", 0.85), P("factorSd", "1", 0.15)),
        Retrofit("endwalls", "End walls insulated, four fifths", ["Takes side light."], [Board], ["carpentry"], [], [],
            P("rAdded", "m2K/W", 8, 5, 13, Us.RValue), P("endShare", "1", 0.8), P("lightLost", "1", 0.01, 0, 0.03),
            P("outlayPerEndWall", "$/m2", 1.90, 1.2, 3.0, PerFt2), P("lifeYears", "a", 12, 8, 20), P("upkeepUsd", "$/a", 20), P("factorMean", "1", 0.85), P("factorSd", "1", 0.15)),
        Retrofit("perimeter", "Edge of the floor insulated, 2 ft down", ["A trench; mind drains and wires."], ["Call before digging; shore or slope a trench."], ["trenching"], [], [],
            M("edgeFactor", "1", 0.5, 0.375, 0.625), P("outlayPerPerimeter", "$/m", 4, 2.5, 8, 1 / Us.FootM), P("lifeYears", "a", 20), P("factorMean", "1", 0.8), P("factorSd", "1", 0.3)),
        Retrofit("condensing", "Condensing heater", ["Condensate must drain and not freeze."], [Flue, "Size it after insulation, but keep a margin for snow melt and failure."], ["gas fitting, flue and condensate by licensed trades"], ["gas"], [],
            V("efficiency", "1", 0.92, 0.90, 0.95, Read, "UMass Extension, Upgrading the greenhouse heating system (93 %)"), P("outlayPerInputKw", "$/kW", 22, 15, 35, 1 / 0.29307107), P("lifeYears", "a", 15, 12, 18), P("upkeepUsd", "$/a", 120), P("consumablesUsd", "$/a", 30),
            P("factorMean", "1", 0.90), P("factorSd", "1", 0.10)),
        Retrofit("service", "Heater serviced, electronic thermostat", ["A heater that was well kept gains little."], [Flue], ["heating technician"], [], [],
            P("efficiencyAdded", "1", 0.03, 0.01, 0.06), P("swingK", "K", 1, 0, 3, Us.DegreeK), P("outlayUsd", "$", 300, 150, 600), P("lifeYears", "a", 10), V("upkeepUsd", "$/a", 100, null, null, Read, "Bartok, Oct 2018"),
            P("factorMean", "1", 0.5), P("factorSd", "1", 0.25)),
        Retrofit("secondfilm", "Second film and a blower", ["Takes a tenth of the light."], ["Blower wiring by a licensed electrician, with ground-fault protection."], ["re-covering", "electrical, by a licensed electrician"], ["single-film"], [],
            V("uValue", "W/m2K", 0.70, 0.6, 0.8, Read, "eXtension farm energy, greenhouse glazing", Us.UValue), P("airFactor", "1", 0.67), M("lightLost", "1", 0.10, 0.06, 0.12),
            P("outlayUsd", "$", 150), P("outlayPerCover", "$/m2", 0.30, 0.2, 0.45, PerFt2), P("lifeYears", "a", 4), P("upkeepUsd", "$/a", 40), P("watchingHours", "h/week", 0.1),
            V("alwaysPowerKw", "kW", 0.045, 0.030, 0.075, Computed, "45 W at all hours"), P("factorMean", "1", 0.90), P("factorSd", "1", 0.10)),
        Running("openlater", "Open two weeks later", ["Two weeks of early sales."], P("startLaterDays", "d", 14)),
        Running("setback", "Night set point 2 F lower", ["Slower crop; ask how much."], P("nightLowerK", "K", 2, factor: Us.DegreeK)),
        Running("closehouse", "Close the house through the cold half", ["No crop from it in December, January and February."], P("closedFromMonth", "month", 12), P("closedToMonth", "month", 2)),
    ];

    private static CatalogueFacts Retrofit(
        string code, string title, string[] drawbacks, string[] cautions, string[] skills, string[] needs, string[] excludes, params KeyValuePair<string, CatalogueValue>[] values) => new()
        {
            Kind = CatalogueKind.Retrofit,
            Code = code,
            Title = title,
            Drawbacks = drawbacks,
            Cautions = cautions,
            Skills = skills,
            Needs = needs,
            Excludes = excludes,
            Values = Values(values),
        };

    private static CatalogueFacts Running(string code, string title, string[] drawbacks, params KeyValuePair<string, CatalogueValue>[] values) => new()
    {
        Kind = CatalogueKind.Retrofit,
        Code = code,
        Title = title,
        Drawbacks = drawbacks,
        Values = Values([.. values, P("running", "1", 1), P("factorMean", "1", 1.0), P("factorSd", "1", 0.05)]),
    };
}
