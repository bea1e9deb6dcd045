using FarmPortfolio.Engine.Economics;

namespace FarmPortfolio.Engine.Lending;

/// <summary>What a price would have to do for the savings to pay the loan just so.</summary>
/// <param name="MiddleMultiple">Factor on the fuel saved (on an index: on its price) at which the savings of the term add up to the service, middle future; null = no factor does.</param>
/// <param name="OneInTenMultiple">The same, one future in ten asks more; null = no factor does.</param>
/// <param name="ShortShare">Share of futures whose savings over the whole term are less than the service.</param>
/// <param name="AskedUsd">Fuel to be saved in a season, mean of the term: service and running.</param>
/// <param name="ReckonedUsd">Fuel saved in a season as reckoned, mean of the term and of the futures.</param>
public sealed record BreakEven(double? MiddleMultiple, double? OneInTenMultiple, double ShortShare, double AskedUsd, double ReckonedUsd);

/// <summary>What a case comes to over all futures.</summary>
/// <param name="Schedule">What is due.</param>
/// <param name="Project">Cover by the savings of the option alone.</param>
/// <param name="Farm">Cover by the whole farm; null without statements.</param>
/// <param name="CarriedUsd">Greatest sum carried over after the operating line, by path.</param>
/// <param name="DefaultShare">Share of futures in which the loan defaults.</param>
/// <param name="DefaultHalfWidth">Half of its 95 % interval.</param>
/// <param name="LossUsd">The lender's loss after the guarantee, by path.</param>
/// <param name="BreakEven">What would make the savings pay just so.</param>
/// <param name="Largest">Largest loan by confidence, rising.</param>
public sealed record LoanAnswer(
    LoanSchedule Schedule, Cover Project, Cover? Farm, Distribution CarriedUsd, double DefaultShare, double DefaultHalfWidth, Distribution LossUsd, BreakEven BreakEven, IReadOnlyList<LargestLoan> Largest)
{
    /// <summary>Confidences at which the largest loan is told.</summary>
    public static IReadOnlyList<double> Confidences { get; } = [0.5, 0.6, 0.7, 0.8, 0.85, 0.9, 0.95, 0.97, 0.99];

    /// <summary>Judges a case.</summary>
    /// <param name="basis">What it is judged on.</param>
    /// <returns>The answer.</returns>
    public static LoanAnswer Of(LoanBasis basis)
    {
        var (loan, replicates) = (basis.Loan, basis.Set.ReplicateCount);
        var (money, schedule) = (LoanMoney.Of(basis, new()), LoanSchedule.Of(basis.Loan, basis.Loan.AmountUsd));
        var shortfall = Shortfall.Of(loan, money, schedule);
        var (share, width) = Shares.Of(money.Paths, replicates, p => shortfall.DefaultSeason[p] >= 0);
        return new(
            schedule, ProjectOf(loan, money, schedule, replicates), FarmOf(loan, money, schedule, replicates), Distribution.Of(shortfall.GreatestUsd, replicates, worstIsHigh: true), share, width,
            Distribution.Of(shortfall.LossUsd, replicates, worstIsHigh: true), BreakEvenOf(loan, money, schedule), [.. Confidences.Select(q => LargestOf(loan, money, q))]);
    }

    internal static Cover ProjectOf(LoanCaseFacts loan, LoanMoney money, LoanSchedule schedule, int replicates) =>
        Cover.Of(money.NetUsd, [.. schedule.Seasons.Select(s => s.ServiceUsd)], loan.RequiredProjectCover, replicates);

    internal static Cover? FarmOf(LoanCaseFacts loan, LoanMoney money, LoanSchedule schedule, int replicates) =>
        money.CapacityUsd is { } usd ? Cover.Of(usd, [.. schedule.Seasons.Select(s => s.ServiceUsd + money.OtherServiceUsd)], loan.RequiredFarmCover, replicates) : null;

    private static LargestLoan LargestOf(LoanCaseFacts loan, LoanMoney money, double confidence)
    {
        var perUsd = LoanSchedule.Of(loan, 1).Seasons.Select(s => s.ServiceUsd).ToList();
        double? OverFees(double? usd) => usd is { } u && u > (loan.FeeInAmount ? loan.FeeCents / 100.0 : 0) ? u : null;
        return new(
            confidence, OverFees(LargestLoan.Of(money.NetUsd, perUsd, 0, loan.RequiredProjectCover, confidence)),
            money.CapacityUsd is { } usd ? OverFees(LargestLoan.Of(usd, perUsd, money.OtherServiceUsd, loan.RequiredFarmCover, confidence)) : null);
    }

    private static BreakEven BreakEvenOf(LoanCaseFacts loan, LoanMoney money, LoanSchedule schedule)
    {
        var asked = schedule.Seasons.Sum(s => s.ServiceUsd) + money.SpentUsd.Sum();
        var (multiples, reckoned, below) = (new double[money.Paths], 0.0, 0);
        for (var p = 0; p < money.Paths; p++)
        {
            var gross = 0.0;
            for (var t = 0; t < loan.TermYears; t++)
            {
                gross += money.GrossUsd[t * money.Paths + p];
            }

            (multiples[p], reckoned) = (gross > 0 ? Math.Max(0, asked) / gross : double.MaxValue, reckoned + gross);
            below += gross < asked ? 1 : 0;
        }

        Array.Sort(multiples);
        double? At(double level) => multiples[(int)(level * (multiples.Length - 1))] is var m && m < 1e6 ? m : null;
        return new(At(0.5), At(0.9), (double)below / money.Paths, asked / loan.TermYears, reckoned / money.Paths / loan.TermYears);
    }
}
