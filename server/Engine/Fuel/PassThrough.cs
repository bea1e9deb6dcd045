namespace FarmPortfolio.Engine.Fuel;

/// <summary>
/// Retail price from the wholesale prices of this month and the two before: a + b0 s(t) + b1 s(t-1) + b2 s(t-2) + residual. The constant grows with
/// the level; the residual is an AR(1). Least squares on public records (EIA, BLS), see the method page on prices.
/// </summary>
/// <param name="Unit">Unit of the retail price.</param>
/// <param name="Constant">a, US dollars a retail unit.</param>
/// <param name="Now">b0.</param>
/// <param name="Last">b1.</param>
/// <param name="Before">b2.</param>
/// <param name="ResidualSd">Standard deviation of the residual, US dollars a retail unit.</param>
/// <param name="ResidualAr">Autocorrelation of the residual, a month.</param>
/// <param name="Words">How it reads on a page.</param>
public sealed record PassThrough(string Unit, double Constant, double Now, double Last, double Before, double ResidualSd, double ResidualAr, string Words)
{
    /// <summary>How a wholesale price reaches a user.</summary>
    /// <param name="fuel">Fuel.</param>
    /// <param name="adderUsdPerUnit">The user's own constant; null = fitted or common practice.</param>
    /// <returns>The pass-through.</returns>
    public static PassThrough Of(FuelKind fuel, double? adderUsdPerUnit = null) => fuel switch
    {
        FuelKind.NaturalGas => new("mcf", adderUsdPerUnit ?? 5.80, 0.237, 0.302, 0.281, 0.62, 0.84, "commercial gas from Henry Hub, fitted on EIA 2009 to 2022, n 161, R2 0.62"),
        FuelKind.FuelOil => new("gal", adderUsdPerUnit ?? 1.046, 0.808, 0.141, 0, 0.171, 0.96, "retail No. 2 oil from New York Harbor, fitted on BLS and EIA 2009 to 2022"),
        FuelKind.Propane => new("gal", adderUsdPerUnit ?? 1.60, 0.6, 0.4, 0, 0, 0, "wholesale and a dealer's margin, six tenths this month and the rest the next; common practice, no source"),
        _ => new("kWh", adderUsdPerUnit ?? 0, 1, 0, 0, 0, 0, "as recorded"),
    };
}
