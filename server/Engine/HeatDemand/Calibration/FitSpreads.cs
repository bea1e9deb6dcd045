using FarmPortfolio.Engine.Retrofits;

namespace FarmPortfolio.Engine.HeatDemand.Calibration;

/// <summary>What is held of houses before their bills are read.</summary>
/// <param name="GradeB">Spread of a house's heat with a poor record, relative.</param>
/// <param name="GradeC">Spread of a house's heat without one, relative.</param>
/// <param name="AirLn">Spread of ln N, the air changes, where they are not measured.</param>
/// <param name="FilmLn">Spread of the logarithm of the films' U-value.</param>
public sealed record FitSpreads(double GradeB = 0.15, double GradeC = 0.30, double AirLn = HeatDefaults.AirChangesSdLn, double FilmLn = HeatDefaults.FilmSdLn)
{
    /// <summary>As the catalogue has them.</summary>
    /// <param name="catalogue">Catalogue.</param>
    /// <returns>The spreads.</returns>
    public static FitSpreads Of(Catalogue catalogue) => new(catalogue.Default("gradeBSd"), catalogue.Default("gradeCSd"), catalogue.Default("airChangesSdLn"), catalogue.Default("filmSdLn"));
}
