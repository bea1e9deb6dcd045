namespace FarmPortfolio.Engine.Economics;

/// <summary>One period of a loan.</summary>
/// <param name="Period">1 = the first.</param>
/// <param name="InterestUsd">Interest of the period.</param>
/// <param name="PrincipalUsd">What comes off the balance.</param>
/// <param name="BalanceUsd">Balance after the payment.</param>
public readonly record struct LoanPeriod(int Period, double InterestUsd, double PrincipalUsd, double BalanceUsd);

/// <summary>Loans repaid by level payments at each period's end.</summary>
public static class Amortisation
{
    /// <summary>Level payment: amount x rate / (1 - (1 + rate)^-n).</summary>
    /// <param name="amountUsd">Amount lent.</param>
    /// <param name="ratePerPeriod">Rate a period; 0 = without interest.</param>
    /// <param name="periods">Periods, 1 or more.</param>
    /// <returns>US dollars a period.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no period.</exception>
    public static double LevelPaymentUsd(double amountUsd, double ratePerPeriod, int periods)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(periods, 1);
        return amountUsd / Measures.UniformPresentValue(ratePerPeriod, periods);
    }

    /// <summary>The schedule of a loan repaid by level payments.</summary>
    /// <param name="amountUsd">Amount lent.</param>
    /// <param name="ratePerPeriod">Rate a period; 0 = without interest.</param>
    /// <param name="periods">Periods, 1 or more.</param>
    /// <returns>Period by period; the last balance is 0 to rounding.</returns>
    public static IReadOnlyList<LoanPeriod> Schedule(double amountUsd, double ratePerPeriod, int periods)
    {
        var payment = LevelPaymentUsd(amountUsd, ratePerPeriod, periods);
        var (schedule, balance) = (new LoanPeriod[periods], amountUsd);
        for (var i = 0; i < periods; i++)
        {
            var interest = balance * ratePerPeriod;
            balance -= payment - interest;
            schedule[i] = new(i + 1, interest, payment - interest, balance);
        }

        return schedule;
    }
}
