using FarmPortfolio.Engine.Units;
using static FarmPortfolio.Engine.Retrofits.CatalogueTable;
using static FarmPortfolio.Engine.Retrofits.ValueStatus;

namespace FarmPortfolio.Engine.Retrofits;

/// <summary>Numbers that stand in for what is not known of a house.</summary>
internal static class BuiltInDefaults
{
    internal static IEnumerable<CatalogueFacts> All =>
    [
        new()
        {
            Kind = CatalogueKind.Default,
            Code = "house",
            Title = "What is taken where a house does not say",
            Values = Values(
                V("airChangesFilm", "1/h", 1.0, 0.75, 2.0, Read, "Bartok, Save money by reducing air infiltration (1 change an hour)"),
                M("airChangesSingleFilm", "1/h", 1.2, 0.8, 2.0),
                M("airChangesGlass", "1/h", 1.5, 0.75, 4.0),
                M("airChangesTwinwall", "1/h", 0.8, 0.5, 1.2),
                M("perimeter", "W/mK", 0.8, 0.4, 0.8, Us.EdgeValue),
                P("filmGapM", "m", 6, 4, 12, 0.0254),
                P("sunToHeat", "1", 0.60, 0.5, 0.7),
                M("airHeat", "Wh/m3K", 0.018 * Us.BtuKwh * 1000 / Us.CubicFootM3 / Us.DegreeK),
                P("curtainHeightM", "m", 7, 6, 10, Us.FootM),
                P("ventOverDayK", "K", 10, factor: Us.DegreeK),
                P("closeBelowWPerM2", "W/m2", 20, 0, 100),
                P("gradeBSd", "1", 0.15),
                P("gradeCSd", "1", 0.30),
                P("firmQuoteSd", "1", 0.07),
                P("budgetQuoteSd", "1", 0.20),
                P("catalogueQuoteSd", "1", 0.30)),
        },
    ];
}
