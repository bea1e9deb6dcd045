namespace FarmPortfolio.Engine.Economics;

/// <summary>Present values that make up a life-cycle cost; 10 CFR 436.19, ASTM E917. US dollars of the study's start.</summary>
/// <param name="InvestmentUsd">Investment less its residual worth.</param>
/// <param name="UpkeepUsd">Running other than energy.</param>
/// <param name="ReplacementUsd">Replacements less their residual worth.</param>
/// <param name="EnergyUsd">Energy.</param>
public readonly record struct LifeCycleCost(double InvestmentUsd, double UpkeepUsd, double ReplacementUsd, double EnergyUsd)
{
    /// <summary>The sum: 10 CFR 436.19.</summary>
    public double TotalUsd => InvestmentUsd + UpkeepUsd + ReplacementUsd + EnergyUsd;

    /// <summary>Net savings of an alternative: life-cycle cost without it less with it; 10 CFR 436.20.</summary>
    /// <param name="with">The alternative.</param>
    /// <returns>US dollars; above 0 = worth it.</returns>
    public double NetSavingsUsd(LifeCycleCost with) => TotalUsd - with.TotalUsd;

    /// <summary>Savings-to-investment ratio of an alternative; ASTM E964, 10 CFR 436.21 from memory: savings of energy and upkeep over added investment and replacement.</summary>
    /// <param name="with">The alternative.</param>
    /// <returns>Ratio; above 1 = worth it; NaN where nothing is invested.</returns>
    public double SavingsToInvestment(LifeCycleCost with)
    {
        var invested = with.InvestmentUsd + with.ReplacementUsd - InvestmentUsd - ReplacementUsd;
        return invested == 0 ? double.NaN : (EnergyUsd + UpkeepUsd - with.EnergyUsd - with.UpkeepUsd) / invested;
    }
}
