using static System.Math;

namespace FarmPortfolio.Engine.Economics;

/// <summary>Measures of worth in closed form: ASTM E917 (discount factors), E1057 (rate of return); 10 CFR 436 subpart A.</summary>
public static class Measures
{
    /// <summary>Present value of a dollar at each year's end for n years: UPV.</summary>
    /// <param name="rate">Discount rate a year.</param>
    /// <param name="years">Years.</param>
    /// <returns>Factor.</returns>
    public static double UniformPresentValue(double rate, int years) => rate == 0 ? years : (1 - Pow(1 + rate, -years)) / rate;

    /// <summary>Adjusted internal rate of return: (1 + r) SIR^(1/n) - 1, savings reinvested at the discount rate; 10 CFR 436.22.</summary>
    /// <param name="rate">Discount rate a year.</param>
    /// <param name="savingsToInvestment">Savings-to-investment ratio; what is below 0 counts as 0.</param>
    /// <param name="years">Years, 1 or more.</param>
    /// <returns>Rate a year; -1 where nothing comes back.</returns>
    public static double AdjustedRateOfReturn(double rate, double savingsToInvestment, int years) => (1 + rate) * Pow(Max(0, savingsToInvestment), 1.0 / years) - 1;
}
