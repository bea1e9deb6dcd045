namespace FarmPortfolio.Engine.Lending;

/// <summary>
/// What is short is drawn: first on the operating line, then on the reserve, and what is left is carried over unpaid; a later season's surplus pays it back.
/// Sums drawn bear the loan's own rate. When they exceed line and reserve the loan is in default, and the balance at that season's start is lost at the lender's
/// flat share, of which the guarantor bears its part pro rata. No surplus is saved up.
/// </summary>
internal sealed class Shortfall
{
    private Shortfall(int paths) => (GreatestUsd, DefaultSeason, LossUsd, Missed) = (new double[paths], new int[paths], new double[paths], new uint[paths]);

    /// <summary>Greatest sum carried over after the line, by path.</summary>
    public double[] GreatestUsd { get; }

    /// <summary>Season of the loan in which it defaults, from 0; -1 = never.</summary>
    public int[] DefaultSeason { get; }

    /// <summary>The lender's loss after the guarantee, by path, not discounted.</summary>
    public double[] LossUsd { get; }

    /// <summary>A bit a season of the loan: the savings alone miss the payment.</summary>
    public uint[] Missed { get; }

    /// <summary>Follows every path.</summary>
    /// <param name="loan">Terms.</param>
    /// <param name="money">Money.</param>
    /// <param name="schedule">What is due.</param>
    /// <returns>What is short.</returns>
    public static Shortfall Of(LoanCaseFacts loan, LoanMoney money, LoanSchedule schedule)
    {
        var found = new Shortfall(money.Paths);
        var (line, most) = (loan.OperatingLineCents / 100.0, (loan.OperatingLineCents + loan.ReserveCents) / 100.0);
        for (var p = 0; p < money.Paths; p++)
        {
            var drawn = 0.0;
            found.DefaultSeason[p] = -1;
            for (var t = 0; t < loan.TermYears; t++)
            {
                var (due, at) = (schedule.Seasons[t].ServiceUsd, t * money.Paths + p);
                found.Missed[p] |= money.NetUsd[at] < due ? 1u << t : 0;
                var left = money.CapacityUsd is { } capacity ? capacity[at] - money.OtherServiceUsd - due : money.NetUsd[at] - due;
                drawn = Math.Max(0, drawn * (1 + loan.RateNow) - left);
                found.GreatestUsd[p] = Math.Max(found.GreatestUsd[p], drawn - line);
                if (drawn > most && found.DefaultSeason[p] < 0)
                {
                    found.DefaultSeason[p] = t;
                    found.LossUsd[p] = (1 - loan.GuaranteeShare) * loan.LossGivenDefault * schedule.Seasons[t].OpeningUsd;
                }
            }
        }

        return found;
    }
}
