using FarmPortfolio.Engine.Economics;

namespace FarmPortfolio.Engine.Lending;

/// <summary>One month of a loan.</summary>
/// <param name="Month">1 = the first July.</param>
/// <param name="InterestUsd">Interest that the month bears.</param>
/// <param name="PaidUsd">What is paid at its end.</param>
/// <param name="BalanceUsd">Balance after it.</param>
public readonly record struct LoanMonth(int Month, double InterestUsd, double PaidUsd, double BalanceUsd);

/// <summary>One season of a loan, July to June.</summary>
/// <param name="ServiceUsd">Principal and interest paid.</param>
/// <param name="InterestUsd">Of that, interest.</param>
/// <param name="OpeningUsd">Balance at its start.</param>
/// <param name="BalanceUsd">Balance at its end.</param>
public readonly record struct LoanSeason(double ServiceUsd, double InterestUsd, double OpeningUsd, double BalanceUsd);

/// <summary>
/// What a loan asks month by month. Drawn on 1 July before the first season with the option; months are twelfths of a year (30/360); the payment is recomputed at
/// every date from the balance, the rate then and the payments left, so that a reset leaves no balloon (7 CFR 4279.125); without a reset it is the level payment.
/// </summary>
public sealed class LoanSchedule
{
    private const int FirstInterestOnly = 4;
    private const int LastInterestOnly = 9;

    private LoanSchedule(LoanMonth[] months, LoanSeason[] seasons) => (Months, Seasons) = (months, seasons);

    /// <summary>Month by month.</summary>
    public IReadOnlyList<LoanMonth> Months { get; }

    /// <summary>Season by season of the loan.</summary>
    public IReadOnlyList<LoanSeason> Seasons { get; }

    /// <summary>The schedule of a loan.</summary>
    /// <param name="loan">Terms, already checked.</param>
    /// <param name="amountUsd">Amount lent, which may be another than the terms'.</param>
    /// <param name="addedRatePerYear">Rise of the index from the first reset on; a fixed rate does not follow it.</param>
    /// <returns>The schedule; its last balance is 0 to rounding.</returns>
    public static LoanSchedule Of(LoanCaseFacts loan, double amountUsd, double addedRatePerYear = 0)
    {
        var months = new LoanMonth[12 * loan.TermYears];
        var (balance, owed) = (amountUsd, 0.0);
        var left = Enumerable.Range(1, months.Length).Count(m => IsPayment(loan, m));
        for (var m = 1; m <= months.Length; m++)
        {
            var rate = (loan.RateNow + (loan.RateKind == RateKind.Indexed && m > loan.ResetMonths ? addedRatePerYear : 0)) / 12;
            var (interest, paid) = (balance * rate, 0.0);
            if (m <= loan.DeferralMonths && loan.DeferredInterest == DeferredInterest.Added)
            {
                balance += interest;
            }
            else
            {
                owed += interest;
                if (loan.Payments != LoanPayments.Annual || m % 12 == 0)
                {
                    var principal = IsPayment(loan, m) ? Principal(balance, rate * (loan.Payments == LoanPayments.Annual ? 12 : 1), left--) : 0;
                    (paid, balance, owed) = (owed + principal, balance - principal, 0);
                }
            }

            months[m - 1] = new(m, interest, paid, balance);
        }

        return new(months, [.. Enumerable.Range(0, loan.TermYears).Select(s => Season(months, s, amountUsd))]);
    }

    private static double Principal(double balanceUsd, double ratePerPeriod, int left) => left == 1 ? balanceUsd : Amortisation.LevelPaymentUsd(balanceUsd, ratePerPeriod, left) - balanceUsd * ratePerPeriod;

    private static bool IsPayment(LoanCaseFacts loan, int month) => month > loan.DeferralMonths && loan.Payments switch
    {
        LoanPayments.Annual => month % 12 == 0,
        LoanPayments.Seasonal => (month - 1) % 12 + 1 is < FirstInterestOnly or > LastInterestOnly,
        _ => true,
    };

    private static LoanSeason Season(LoanMonth[] months, int season, double amountUsd)
    {
        var (service, interest) = (0.0, 0.0);
        for (var m = 12 * season; m < 12 * (season + 1); m++)
        {
            (service, interest) = (service + months[m].PaidUsd, interest + months[m].InterestUsd);
        }

        return new(service, interest, season == 0 ? amountUsd : months[12 * season - 1].BalanceUsd, months[12 * season + 11].BalanceUsd);
    }
}
