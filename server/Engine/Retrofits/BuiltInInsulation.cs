using FarmPortfolio.Engine.Units;
using static FarmPortfolio.Engine.Retrofits.CatalogueTable;
using static FarmPortfolio.Engine.Retrofits.ValueStatus;

namespace FarmPortfolio.Engine.Retrofits;

/// <summary>Retrofits that move: what is in place by night and gone by day.</summary>
internal static class BuiltInInsulation
{
    private const double PerFt2 = 1 / Us.SquareFootM2;
    private const string Snow = "Snow: open before and during snowfall so that heat reaches the roof; say who opens it, when, and what alarm wakes him.";

    internal static IEnumerable<CatalogueFacts> All =>
    [
        new()
        {
            Kind = CatalogueKind.Retrofit,
            Code = "foam",
            Title = "Foam between the films, by night",
            Values = Values(
                P("rPerM", "m2K/W per m", 1.0, 0.5, 1.5, Us.RValue / 0.0254),
                V("gapM", "m", 6, 4, 12, Read, "Bartok, GM Sept 2012", 0.0254),
                P("gapR", "m2K/W", 0.75, factor: Us.RValue),
                P("filledShare", "1", 0.90, 0.6, 1.0),
                P("onBelowC", "C", Us.C(45)),
                P("delayHours", "h", 0.5), P("closeBelowWPerM2", "W/m2", 0),
                V("sunThrough", "1", 0.5, 0.35, 0.60, Read, "Aberkani and Gosselin, liquid foam in double film: 40 to 65 % shade"),
                P("lightLost", "1", 0.02, 0, 0.06),
                P("outlayUsd", "$", 2500, 1500, 4000), P("outlayPerFloor", "$/m2", 1.0, 0.6, 2.0, PerFt2),
                P("lifeYears", "a", 10, 6, 12), P("partLifeYears", "a", 5), P("partUsd", "$", 400), P("relayPerFloor", "$/m2", 0.15, 0.1, 0.3, PerFt2),
                P("upkeepUsd", "$/a", 250, 100, 600), P("watchingHours", "h/week", 1.5, 0.5, 4), P("powerKw", "kW", 1.0, 0.6, 1.5),
                V("powerHoursPerNight", "h", 2, 1, 14, Computed, "45 minutes of filling and 15 minutes each three hours: a press account of a college's foam house"),
                P("consumablesUsd", "$/a", 350, 200, 700), P("spaceLost", "1", 0.005, 0, 0.02), P("shadingPerFloor", "$/m2", 0.05, 0, 0.20, PerFt2),
                P("factorMean", "1", 0.85), P("factorSd", "1", 0.20), P("factorFirstSeason", "1", 0.7)),
            Drawbacks =
            [
                "Wants watching every day: leaks, drips, freezing lines, foam that fades.", "Wet or dirty film by day.", "Not a finished commercial product; it is built on the farm.",
                "100 to 300 gallons of soap solution to mix, to keep from freezing and to dump at times.", "A curtain on top of it adds little.", "Not on glass or rigid sheets; a house of one film needs the second film first.",
            ],
            Cautions =
            [
                "A filled roof melts no snow: say who empties it before and during snowfall, and when.",
                "Pump and wiring stand near water: ground-fault protection, a licensed electrician, dry walkways.",
                "Ask the film maker whether the soap harms the film; the films must be sound.",
            ],
            Skills = ["plumbing", "electrical, by a licensed electrician", "daily watching"],
            Needs = ["double-film"],
        },
        new()
        {
            Kind = CatalogueKind.Retrofit,
            Code = "curtain",
            Title = "Night curtain, flat",
            Values = Values(
                M("rValue", "m2K/W", 1.5, 1.0, 2.5, Us.RValue), P("openShare", "1", 0.03, 0, 0.10), P("openConductance", "W/m2K", 6, factor: Us.UValue), P("airFactor", "1", 0.8, 0.7, 1.0),
                P("heightM", "m", 7, 6, 10, Us.FootM), P("onBelowC", "C", Us.C(60)), P("delayHours", "h", 0), M("lightLost", "1", 0.03, 0.02, 0.05),
                P("closeBelowWPerM2", "W/m2", 20, 0, 50), P("sunThrough", "1", 0.4, 0.2, 0.6),
                P("outlayUsd", "$", 1500, 800, 3000), P("outlayPerFloor", "$/m2", 3.0, 2.0, 5.0, PerFt2),
                V("lifeYears", "a", 20, 15, 20, Read, "Greenhouse Grower, retrofitting options (motor 20 years)"), P("partLifeYears", "a", 8, 5, 12), P("partPerFloor", "$/m2", 0.60, 0.4, 1.0, PerFt2),
                P("upkeepUsd", "$/a", 100, 50, 300), P("watchingHours", "h/week", 0.5, 0.2, 1), P("powerKw", "kW", 0.5), P("powerHoursPerNight", "h", 0.2),
                P("consumablesUsd", "$/a", 0), P("spaceLost", "1", 0, 0, 0.01), P("shadingPerFloor", "$/m2", 0.10, 0, 0.25, PerFt2),
                P("factorMean", "1", 0.97), P("factorSd", "1", 0.12)),
            Drawbacks =
            [
                "Takes the room of hanging baskets (up to a tenth of the sales) and some headroom; stands in the heater's throw.", "Takes 3 % of the light even when open.",
                "Damper air below it; open a crack against disease.",
            ],
            Cautions =
            [
                Snow,
                "Fire: flame-resistant cloth, fire breaks, none over burners or their flues.",
                "Open slowly on cold mornings so that cold air does not fall on the crop.",
            ],
            Skills = ["rigging of cables and cloth", "electrical, by a licensed electrician"],
            Excludes = ["blanket"],
        },
        new()
        {
            Kind = CatalogueKind.Retrofit,
            Code = "blanket",
            Title = "Blanket along the roof, by hand",
            Values = Values(
                M("rAdded", "m2K/W", 0.85, 0.5, 1.6, Us.RValue), P("coveredShare", "1", 0.90, 0.7, 0.95), P("openShare", "1", 0.05), P("onBelowC", "C", Us.C(60)), P("lightLost", "1", 0.03, 0.01, 0.05),
                P("closing", "1", 2), P("closeAtH", "h", 17), P("openAtH", "h", 7), P("closeBelowWPerM2", "W/m2", 0), P("sunThrough", "1", 0.4, 0.2, 0.6),
                P("outlayUsd", "$", 0), P("outlayPerFloor", "$/m2", 0.80, 0.5, 1.5, PerFt2), P("lifeYears", "a", 5, 3, 8), P("upkeepUsd", "$/a", 80), P("watchingHours", "h/week", 2.3, 1.5, 4),
                P("spaceLost", "1", 0.01, 0, 0.03), P("factorMean", "1", 0.75), P("factorSd", "1", 0.20)),
            Drawbacks = ["Labour at dawn and dusk.", "Left closed on dull mornings.", "Drips on the cloth."],
            Cautions = [Snow, "Fire: flame-resistant cloth, none over burners or their flues."],
            Skills = ["rigging of cloth", "labour at dawn and dusk"],
            Excludes = ["curtain"],
        },
    ];
}
