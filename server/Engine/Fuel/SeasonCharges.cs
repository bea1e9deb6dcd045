namespace FarmPortfolio.Engine.Fuel;

/// <summary>What is left of a pre-bought block between seasons.</summary>
/// <param name="Kwh">Fuel that is paid and still to be had, kWh.</param>
/// <param name="Usd">Money that stands with the dealer, US dollars.</param>
public record struct Carried(double Kwh, double Usd);

/// <summary>What a season's fuel costs, charge by charge, US dollars.</summary>
/// <param name="FuelUsd">Fuel used, at the month's price.</param>
/// <param name="FeesUsd">Monthly, season and delivery fees, tank rent.</param>
/// <param name="LeftoverUsd">What an unused block costs: paid and lost, or billed in part; less what is credited from the season before.</param>
/// <param name="MinimumUsd">What is billed for taking less than agreed.</param>
/// <param name="DemandUsd">Demand charge.</param>
/// <param name="StandByUsd">Stand-by fuel on the days without supply.</param>
/// <param name="MoneyUsd">Price of the money from paying a block to using it.</param>
/// <param name="LeftoverKwh">Fuel of the block that was not used, kWh.</param>
/// <param name="ShortKwh">Fuel short of the minimum take, kWh.</param>
public readonly record struct SeasonCharges(
    double FuelUsd, double FeesUsd, double LeftoverUsd, double MinimumUsd, double DemandUsd, double StandByUsd, double MoneyUsd, double LeftoverKwh, double ShortKwh)
{
    /// <summary>All of it.</summary>
    public double TotalUsd => FuelUsd + FeesUsd + LeftoverUsd + MinimumUsd + DemandUsd + StandByUsd + MoneyUsd;

    /// <summary>Adds two.</summary>
    /// <param name="a">One.</param>
    /// <param name="b">The other.</param>
    /// <returns>Their sum.</returns>
    public static SeasonCharges operator +(SeasonCharges a, SeasonCharges b) => new(
        a.FuelUsd + b.FuelUsd, a.FeesUsd + b.FeesUsd, a.LeftoverUsd + b.LeftoverUsd, a.MinimumUsd + b.MinimumUsd, a.DemandUsd + b.DemandUsd, a.StandByUsd + b.StandByUsd,
        a.MoneyUsd + b.MoneyUsd, a.LeftoverKwh + b.LeftoverKwh, a.ShortKwh + b.ShortKwh);

    /// <summary>Adds two.</summary>
    /// <param name="a">One.</param>
    /// <param name="b">The other.</param>
    /// <returns>Their sum.</returns>
    public static SeasonCharges Add(SeasonCharges a, SeasonCharges b) => a + b;
}
