namespace FarmPortfolio.Engine.Lending;

/// <summary>Something that may go wrong, each laid in the direction that hurts one of the covers.</summary>
public enum StressKind
{
    /// <summary>Nothing: as drawn.</summary>
    AsDrawn,

    /// <summary>Fuel 40 % cheaper in the loan's first two winters, both the warmest recorded: little is saved.</summary>
    CheapAndMild,

    /// <summary>Fuel twice as dear in the loan's first two winters, both the coldest recorded: the farm's bill is highest.</summary>
    DearAndHard,

    /// <summary>The index 3 points higher from the first reset on.</summary>
    RateUp,

    /// <summary>Half the fuel saved, running costs as they are.</summary>
    HalfTheSaving,

    /// <summary>The grant is refused and lent on top.</summary>
    GrantRefused,

    /// <summary>The margin of sales 15 % lower in every season.</summary>
    MarginDown,
}

/// <summary>What a case comes to under one stress.</summary>
/// <param name="Kind">Stress.</param>
/// <param name="Applies">Whether it touches this case: a fixed rate does not follow an index, no grant can be refused.</param>
/// <param name="Project">Cover by the savings.</param>
/// <param name="Farm">Cover by the farm; null without statements.</param>
/// <param name="DefaultShare">Share of futures in default.</param>
/// <param name="LossUsd">The lender's mean loss after the guarantee.</param>
public sealed record LoanStress(StressKind Kind, bool Applies, Cover Project, Cover? Farm, double DefaultShare, double LossUsd)
{
    /// <summary>Factor on prices where fuel is cheap; common practice, no source.</summary>
    public const double CheapFactor = 0.6;

    /// <summary>Factor on prices where fuel is dear; common practice, no source.</summary>
    public const double DearFactor = 2;

    /// <summary>Winters of either; common practice, no source.</summary>
    public const int Winters = 2;

    /// <summary>Rise of an index; common practice, no source.</summary>
    public const double AddedRate = 0.03;

    /// <summary>Change of the margin of sales; common practice, no source.</summary>
    public const double MarginChange = -0.15;

    /// <summary>A case under a stress that needs no other futures than the basis'.</summary>
    /// <param name="basis">What it is judged on: for cheap and dear fuel, on those futures.</param>
    /// <param name="kind">Stress.</param>
    /// <returns>What it comes to.</returns>
    public static LoanStress Of(LoanBasis basis, StressKind kind)
    {
        var (loan, replicates) = (basis.Loan, basis.Set.ReplicateCount);
        var grant = loan.GrantCents / 100.0;
        var change = kind switch
        {
            StressKind.RateUp => new LoanChange(AddedRatePerYear: AddedRate),
            StressKind.HalfTheSaving => new(SavingFactor: 0.5),
            StressKind.GrantRefused => new(AddedAmountUsd: grant),
            StressKind.MarginDown => new(MarginChange: MarginChange),
            _ => new LoanChange(),
        };
        var applies = kind switch
        {
            StressKind.RateUp => loan.RateKind == RateKind.Indexed && loan.ResetMonths < 12 * loan.TermYears,
            StressKind.GrantRefused => loan.GrantCents > 0,
            StressKind.MarginDown => basis.Capacity is not null,
            _ => true,
        };
        var (money, schedule) = (LoanMoney.Of(basis, change), LoanSchedule.Of(loan, loan.AmountUsd + change.AddedAmountUsd, change.AddedRatePerYear));
        var shortfall = Shortfall.Of(loan, money, schedule);
        return new(
            kind, applies, LoanAnswer.ProjectOf(loan, money, schedule, replicates), LoanAnswer.FarmOf(loan, money, schedule, replicates),
            Shares.Of(money.Paths, replicates, p => shortfall.DefaultSeason[p] >= 0).Share, shortfall.LossUsd.Sum() / money.Paths);
    }
}
