using FarmPortfolio.Engine.Units;
using static FarmPortfolio.Engine.Retrofits.CatalogueTable;
using static FarmPortfolio.Engine.Retrofits.ValueStatus;

namespace FarmPortfolio.Engine.Retrofits;

/// <summary>Numbers that a study and the catalogue share.</summary>
internal static class HeatDefaults
{
    internal const double CarryOver = 0.3;
    internal const double PurgeVolumesPerDay = 1;
    internal const double LossLevel = 1.10;
    internal const double AirChangesSdLn = 0.35;
    internal const double FilmSdLn = 0.15;
}

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
                P("airChangesSdLn", "1", HeatDefaults.AirChangesSdLn),
                V("filmSdLn", "1", HeatDefaults.FilmSdLn, null, null, Computed, "film physics, 0.81 to 1.03 against the handbook's 0.70 Btu/h ft2 F"),
                P("gradeBSd", "1", 0.15),
                P("gradeCSd", "1", 0.30),
                P("firmQuoteSd", "1", 0.07),
                P("budgetQuoteSd", "1", 0.20),
                P("catalogueQuoteSd", "1", 0.30)),
        },
        new()
        {
            Kind = CatalogueKind.Default,
            Code = "study",
            Title = "What a study takes of every house's heat unless its assumptions say otherwise",
            Values = Values(
                P("carryOver", "1", HeatDefaults.CarryOver, 0, 0.5),
                P("purgeVolumesPerDay", "1/d", HeatDefaults.PurgeVolumesPerDay, 0, 3),
                V("lossLevel", "1", HeatDefaults.LossLevel, 0.9, 1.3, Computed, "film physics, 0.81 to 1.03 against the handbook's 0.70 Btu/h ft2 F"),
                M("wind20Mph", "1", 1.04),
                M("wind30Mph", "1", 1.12)),
        },
    ];
}
