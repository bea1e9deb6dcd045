using static System.Math;

namespace FarmPortfolio.Engine.Economics;

/// <summary>Measures of worth. ASTM E917 (life-cycle cost), E964 (savings-to-investment), E1057 (rate of return), E1074 (net benefits), E1121 (payback); 10 CFR 436 subpart A.</summary>
public static class Measures
{
    /// <summary>Present value of one dollar after n years: SPV.</summary>
    /// <param name="rate">Discount rate a year.</param>
    /// <param name="years">Years.</param>
    /// <returns>Factor.</returns>
    public static double PresentValueFactor(double rate, double years) => Pow(1 + rate, -years);

    /// <summary>Present value of a dollar at each year's end for n years: UPV.</summary>
    /// <param name="rate">Discount rate a year.</param>
    /// <param name="years">Years.</param>
    /// <returns>Factor.</returns>
    public static double UniformPresentValue(double rate, int years) => rate == 0 ? years : (1 - Pow(1 + rate, -years)) / rate;

    /// <summary>Yearly payment that repays a dollar in n years: UCR.</summary>
    /// <param name="rate">Rate a year.</param>
    /// <param name="years">Years.</param>
    /// <returns>Factor.</returns>
    public static double CapitalRecovery(double rate, int years) => 1 / UniformPresentValue(rate, years);

    /// <summary>Present value of yearly dollars that grow: UPV*, the sum of ((1 + e) / (1 + d))^t.</summary>
    /// <param name="rate">Discount rate d.</param>
    /// <param name="growth">Growth e.</param>
    /// <param name="years">Years.</param>
    /// <returns>Factor.</returns>
    public static double GrowingPresentValue(double rate, double growth, int years) =>
        Abs(rate - growth) < 1e-12 ? years : (1 + growth) / (rate - growth) * (1 - Pow((1 + growth) / (1 + rate), years));

    /// <summary>Present value of yearly sums, each at its year's end.</summary>
    /// <param name="rate">Discount rate.</param>
    /// <param name="yearly">Sums.</param>
    /// <returns>Present value.</returns>
    public static double PresentValue(double rate, ReadOnlySpan<double> yearly)
    {
        var sum = 0.0;
        for (var i = yearly.Length - 1; i >= 0; i--)
        {
            sum = (sum + yearly[i]) / (1 + rate);
        }

        return sum;
    }

    /// <summary>Adjusted internal rate of return: (1 + r) SIR^(1/n) - 1, savings reinvested at the discount rate.</summary>
    /// <param name="rate">Discount rate.</param>
    /// <param name="savingsToInvestment">SIR, above 0.</param>
    /// <param name="years">Years.</param>
    /// <returns>Rate a year.</returns>
    public static double AdjustedRateOfReturn(double rate, double savingsToInvestment, int years) => (1 + rate) * Pow(savingsToInvestment, 1.0 / years) - 1;

    /// <summary>Internal rate of return by bisection.</summary>
    /// <param name="outlay">Outlay at the start.</param>
    /// <param name="yearly">Savings by year.</param>
    /// <returns>Rate a year; NaN where none lies between -99 % and 1000 %.</returns>
    public static double RateOfReturn(double outlay, ReadOnlySpan<double> yearly)
    {
        var (low, high) = (-0.99, 10.0);
        if ((PresentValue(low, yearly) - outlay) * (PresentValue(high, yearly) - outlay) > 0)
        {
            return double.NaN;
        }

        for (var i = 0; i < 200; i++)
        {
            var mid = (low + high) / 2;
            (low, high) = PresentValue(mid, yearly) > outlay ? (mid, high) : (low, mid);
        }

        return (low + high) / 2;
    }

    /// <summary>Real rate of a nominal one.</summary>
    /// <param name="nominal">Nominal rate.</param>
    /// <param name="inflation">Inflation.</param>
    /// <returns>(1 + n) / (1 + i) - 1.</returns>
    public static double RealRate(double nominal, double inflation) => (1 + nominal) / (1 + inflation) - 1;

    /// <summary>Savings-to-investment ratio; ASTM E964.</summary>
    /// <param name="rate">Discount rate.</param>
    /// <param name="outlay">Outlay at the start, above 0.</param>
    /// <param name="yearly">Savings by year.</param>
    /// <returns>Ratio.</returns>
    public static double SavingsToInvestment(double rate, double outlay, ReadOnlySpan<double> yearly) => PresentValue(rate, yearly) / outlay;

    /// <summary>Years until cumulated savings cover the outlay, evenly spread within a year; 10 CFR 436.23 where undiscounted, ASTM E1121 where the savings given are discounted.</summary>
    /// <param name="outlay">Outlay at the start, above 0.</param>
    /// <param name="yearly">Savings by year.</param>
    /// <returns>Years; null = never within the years given.</returns>
    public static double? PaybackYears(double outlay, ReadOnlySpan<double> yearly)
    {
        var sum = 0.0;
        for (var i = 0; i < yearly.Length; i++)
        {
            if (sum + yearly[i] >= outlay)
            {
                return i + (outlay - sum) / yearly[i];
            }

            sum += yearly[i];
        }

        return null;
    }
}
