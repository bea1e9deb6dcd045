namespace FarmPortfolio.Engine.Lending;

/// <summary>Cash of the work in one month, the borrower's side.</summary>
/// <param name="Month">1 = the first July.</param>
/// <param name="AtOnceUsd">Outlay and fees paid, against loan and grant.</param>
/// <param name="SavingUsd">Saving of a middling season that falls in the month.</param>
/// <param name="PaidUsd">Payment to the lender.</param>
/// <param name="OwnUsd">The borrower's money out since the start; negative = more came in.</param>
public readonly record struct CashMonth(int Month, double AtOnceUsd, double SavingUsd, double PaidUsd, double OwnUsd);

/// <summary>Cash month by month of the first two years: outlay in the first July, the grant when it is paid, payments by the schedule, savings of the middle season by the month's share of a winter's heat.</summary>
public static class LoanCash
{
    /// <summary>Months shown.</summary>
    public const int Months = 24;

    /// <summary>The months of a case.</summary>
    /// <param name="loan">Terms.</param>
    /// <param name="outlayUsd">Outlay.</param>
    /// <param name="savingUsd">Middle saving by season of the loan.</param>
    /// <param name="loadShare">Share of a winter's heat by month, July first.</param>
    /// <returns>Months, at most <see cref="Months"/>.</returns>
    public static IReadOnlyList<CashMonth> Of(LoanCaseFacts loan, double outlayUsd, IReadOnlyList<double> savingUsd, IReadOnlyList<double> loadShare)
    {
        var schedule = LoanSchedule.Of(loan, loan.AmountUsd).Months;
        var (cash, own) = (new List<CashMonth>(), 0.0);
        for (var m = 1; m <= Math.Min(Months, schedule.Count); m++)
        {
            var atOnce = (m == 1 ? outlayUsd + loan.FeeCents / 100.0 - loan.AmountUsd : 0) - (m == Math.Max(1, loan.GrantMonths) ? loan.GrantCents / 100.0 : 0);
            var saving = savingUsd[(m - 1) / 12] * loadShare[(m - 1) % 12];
            own += atOnce + schedule[m - 1].PaidUsd - saving;
            cash.Add(new(m, atOnce, saving, schedule[m - 1].PaidUsd, own));
        }

        return cash;
    }
}
