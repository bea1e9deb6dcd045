namespace FarmPortfolio.Engine.HeatDemand.Calibration;

/// <summary>What the bills say of a house's loss multiplier: heat it really takes / heat reckoned. It takes the place of the spread by data grade.</summary>
/// <param name="Mean">Middle of the multiplier, 1 = as described.</param>
/// <param name="SharedSd">Spread that all houses behind one tank or meter have in common, relative.</param>
/// <param name="OwnSd">Spread of the house's own, relative: a bill fixes the sum of the houses, not each.</param>
/// <param name="Grade">Data grade.</param>
/// <param name="SupplyGroupId">Tank or meter whose bills say so; null = none.</param>
public sealed record LossFit(double Mean, double SharedSd, double OwnSd, DataGrade Grade, string? SupplyGroupId = null)
{
    /// <summary>Middle of the factor on the air changes described: bills fix the heat as a whole, this says how much of it goes by leaks.</summary>
    public double AirFactor { get; init; } = 1;

    /// <summary>Spread of the logarithm of that factor; 0 = measured.</summary>
    public double AirSdLn { get; init; } = Retrofits.HeatDefaults.AirChangesSdLn;

    /// <summary>Spread of the house's multiplier, relative.</summary>
    public double Sd => Math.Sqrt(SharedSd * SharedSd + OwnSd * OwnSd);
}
