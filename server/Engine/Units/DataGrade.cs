namespace FarmPortfolio.Engine;

/// <summary>How well a house's heat is known.</summary>
public enum DataGrade
{
    /// <summary>Metered intervals over a full heating season that the model meets.</summary>
    A,

    /// <summary>Season totals, or intervals that the model does not meet.</summary>
    B,

    /// <summary>No fuel record.</summary>
    C,
}
