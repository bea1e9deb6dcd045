using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Studies;

namespace FarmPortfolio.Engine.Lending;

/// <summary>What a case is judged on.</summary>
/// <param name="Loan">Terms, already checked.</param>
/// <param name="Net">The option's seasons on every path.</param>
/// <param name="FarmUsd">Fuel of the whole farm as it stands, season by season a row of paths.</param>
/// <param name="Capacity">What the statements tell; null = none are given.</param>
/// <param name="Set">Assumptions of the study.</param>
public sealed record LoanBasis(LoanCaseFacts Loan, SeasonNet Net, double[] FarmUsd, RepaymentCapacity? Capacity, ScenarioSetFacts Set)
{
    /// <summary>Paths of all replicates.</summary>
    public int Paths => Set.ReplicateCount * Set.PathCount;
}

/// <summary>What is other than the terms say, for stress.</summary>
/// <param name="AddedRatePerYear">Rise of an index from the first reset.</param>
/// <param name="SavingFactor">Factor on the fuel saved; running costs stay.</param>
/// <param name="AddedAmountUsd">Lent on top.</param>
/// <param name="MarginChange">Change of the margin of sales in every season, share.</param>
public sealed record LoanChange(double AddedRatePerYear = 0, double SavingFactor = 1, double AddedAmountUsd = 0, double MarginChange = 0);

/// <summary>Money of a case by season of the loan and path: what the savings bring, and what the farm has for all its term debt.</summary>
internal sealed class LoanMoney
{
    private LoanMoney(int paths, double[] net, double[] gross, double[] spent, double[]? capacity, double otherService) =>
        (Paths, NetUsd, GrossUsd, SpentUsd, CapacityUsd, OtherServiceUsd) = (paths, net, gross, spent, capacity, otherService);

    /// <summary>Paths.</summary>
    public int Paths { get; }

    /// <summary>Net saving, season of the loan by season a row of paths.</summary>
    public double[] NetUsd { get; }

    /// <summary>Saving of fuel alone, the same way.</summary>
    public double[] GrossUsd { get; }

    /// <summary>Running and renewals by season.</summary>
    public double[] SpentUsd { get; }

    /// <summary>Capacity for term debt, the same way; null without statements.</summary>
    public double[]? CapacityUsd { get; }

    /// <summary>Service of other term debt a season.</summary>
    public double OtherServiceUsd { get; }

    /// <summary>Puts the money of a case together.</summary>
    /// <param name="basis">What it is judged on.</param>
    /// <param name="change">What is other than told.</param>
    /// <returns>The money.</returns>
    public static LoanMoney Of(LoanBasis basis, LoanChange change)
    {
        var (loan, paths, start) = (basis.Loan, basis.Paths, basis.Net.StartSeason);
        var (net, gross) = (new double[loan.TermYears * paths], new double[loan.TermYears * paths]);
        var spent = basis.Net.SpentUsd.AsSpan(start, loan.TermYears).ToArray();
        for (var t = 0; t < loan.TermYears; t++)
        {
            var row = basis.Net.NetUsd.AsSpan((start + t) * paths, paths);
            for (var p = 0; p < paths; p++)
            {
                gross[t * paths + p] = change.SavingFactor * (row[p] + spent[t]);
                net[t * paths + p] = gross[t * paths + p] - spent[t];
            }
        }

        return new(paths, net, gross, spent, basis.Capacity is { } capacity ? Capacity(basis, change, capacity, net) : null, basis.Capacity?.TermDebtServiceUsd ?? 0);
    }

    /// <summary>
    /// Capacity of the statements before heating, grown to the season as all money is nominal, less what heating and running cost on the path with the option, plus the
    /// season's margin over the usual.
    /// </summary>
    private static double[] Capacity(LoanBasis basis, LoanChange change, RepaymentCapacity capacity, double[] net)
    {
        var (loan, paths, start) = (basis.Loan, basis.Paths, basis.Net.StartSeason);
        var usd = new double[loan.TermYears * paths];
        var (common, own) = (new double[paths], new double[paths]);
        var sd = loan.DrawsMargin ? loan.MarginSd : 0;
        var (ofAll, ofFarm) = (sd * Math.Sqrt(basis.Set.CommonShare), sd * Math.Sqrt(1 - basis.Set.CommonShare));
        for (var t = 0; t < loan.TermYears; t++)
        {
            if (sd > 0)
            {
                Noise.Normals(basis.Set.Seed, NoisePurpose.MarginCommon, 0, 0, start + t, common);
                Noise.Normals(basis.Set.Seed, NoisePurpose.MarginOwn, Noise.Key(loan.FarmId), 0, start + t, own);
            }

            var grown = Math.Pow(1 + (loan.CapacityGrowthPerYear ?? basis.Set.UpkeepGrowth), basis.Set.FirstSeason + start + t - capacity.MeanYear);
            var (beforeHeating, margin) = (grown * (capacity.Usd + capacity.HeatingUsd), grown * capacity.MarginBeforeHeatingUsd);
            var heating = basis.FarmUsd.AsSpan((start + t) * paths, paths);
            for (var p = 0; p < paths; p++)
            {
                usd[t * paths + p] = beforeHeating - (heating[p] - net[t * paths + p]) + margin * (ofAll * common[p] + ofFarm * own[p] + change.MarginChange);
            }
        }

        return usd;
    }
}
