using FarmPortfolio.Engine.Units;
using static FarmPortfolio.Engine.Retrofits.CatalogueTable;
using static FarmPortfolio.Engine.Retrofits.ValueStatus;

namespace FarmPortfolio.Engine.Retrofits;

/// <summary>Coverings: whole-surface U by night, light and sun let through, life.</summary>
internal static class BuiltInCoverings
{
    private const string Glazing = "eXtension farm energy, greenhouse glazing";
    private const string Bartok = "Bartok, Insulate to save heat; GM Sept 2011";
    private const string Life = "Bartok, Energy audits identify potential savings";

    private const string Dirt = "Film loses up to 2 % of its light a year by dirt (Greenhouse Grower, Stretching it).";

    internal static IEnumerable<CatalogueFacts> All =>
    [
        Covering("glass", "Single glass", 1, V("uValue", "W/m2K", 1.1, 1.0, 1.2, Read, Glazing, Us.UValue), V("light", "1", 0.88, null, null, Read, "page of a greenhouse makers' association, clean glass"), M("solar", "1", 0.65), P("lifeYears", "a", 25), P("renewalUsdPerM2", "$/m2", 2.0, factor: 1 / Us.SquareFootM2)),
        Covering("singlefilm", "Single film", 1, V("uValue", "W/m2K", 1.15, 1.0, 1.2, Read, Glazing, Us.UValue), M("light", "1", 0.885, 0.87, 0.90), M("solar", "1", 0.70), V("lifeYears", "a", 4, 3, 4, Read, Life), P("renewalUsdPerM2", "$/m2", 0.20, 0.14, 0.30, 1 / Us.SquareFootM2)),
        Covering("doublefilm", "Double film, inflated", 2, V("uValue", "W/m2K", 0.70, 0.6, 0.8, Read, Glazing + "; " + Bartok, Us.UValue), M("light", "1", 0.78, 0.76, 0.80), M("solar", "1", 0.62, 0.55, 0.66), V("lifeYears", "a", 4, 3, 5, Read, Life), P("renewalUsdPerM2", "$/m2", 0.35, 0.25, 0.50, 1 / Us.SquareFootM2)),
        Covering("doublefilm-ir", "Double film, inner one holds heat and sheds drops", 2, V("uValue", "W/m2K", 0.59, 0.50, 0.65, Computed, "computed to give the 12 to 17 % of published audits", Us.UValue), M("light", "1", 0.77, 0.75, 0.79), M("solar", "1", 0.61), V("lifeYears", "a", 4, 3, 5, Read, Life), P("renewalUsdPerM2", "$/m2", 0.37, 0.27, 0.52, 1 / Us.SquareFootM2)),
        Covering("twinwall", "Twin-wall polycarbonate, 8 mm", 0, V("uValue", "W/m2K", 0.62, 0.56, 0.71, Read, Bartok, Us.UValue), V("light", "1", 0.80, 0.78, 0.82, Read, Glazing), M("solar", "1", 0.65), M("lifeYears", "a", 13, 12, 15), P("renewalUsdPerM2", "$/m2", 2.2, 1.6, 3.0, 1 / Us.SquareFootM2)),
        Covering("board", "Wall of board, R 10", 0, V("uValue", "W/m2K", 0.09, null, null, Computed, "1 / (R 10 + film resistances)", Us.UValue), P("light", "1", 0), P("solar", "1", 0), P("lifeYears", "a", 15), P("renewalUsdPerM2", "$/m2", 1.9, 1.2, 3.0, 1 / Us.SquareFootM2)),
    ];

    private static CatalogueFacts Covering(string code, string title, int films, params KeyValuePair<string, CatalogueValue>[] values) => new()
    {
        Kind = CatalogueKind.Covering,
        Code = code,
        Title = title,
        Values = Values([.. values, P("films", "1", films)]),
        Drawbacks = films > 0 && code != "glass" ? [Dirt] : [],
    };
}
