namespace FarmPortfolio.Engine.Lending;

/// <summary>A line of the capacity.</summary>
/// <param name="What">Plain words.</param>
/// <param name="Usd">US dollars a year, with the sign it enters by.</param>
public sealed record CapacityLine(string What, double Usd);

/// <summary>
/// What a farm has in a year to repay term debt: net farm income + off-farm income + depreciation + interest on term debt - family living - income taxes (Farm
/// Financial Standards Council measures as Purdue Extension sets them out), the mean of up to three newest years (7 CFR 763.10 asks three).
/// </summary>
/// <param name="Years">Years it is the mean of, oldest first.</param>
/// <param name="Lines">Line by line.</param>
/// <param name="HeatingUsd">Heating of those years.</param>
/// <param name="TermDebtServiceUsd">Service of other term debt, the newest year's; taken to go on through the term.</param>
public sealed record RepaymentCapacity(IReadOnlyList<int> Years, IReadOnlyList<CapacityLine> Lines, double HeatingUsd, double TermDebtServiceUsd)
{
    /// <summary>Years a lender asks for.</summary>
    public const int YearsAsked = 3;

    /// <summary>Capacity, US dollars a year.</summary>
    public double Usd => Lines.Sum(l => l.Usd);

    /// <summary>Middle of the years.</summary>
    public double MeanYear => Years.Average();

    /// <summary>What the sales leave before heating and before debt: what a bad year of sales takes a share of.</summary>
    public required double MarginBeforeHeatingUsd { get; init; }

    /// <summary>The capacity that statements tell.</summary>
    /// <param name="statements">Statements of one farm.</param>
    /// <returns>The capacity; null without a statement.</returns>
    public static RepaymentCapacity? Of(IEnumerable<StatementFacts> statements)
    {
        var years = statements.OrderByDescending(s => s.Year).Take(YearsAsked).Reverse().ToList();
        if (years.Count == 0)
        {
            return null;
        }

        double Mean(Func<StatementFacts, long> cents) => years.Sum(cents) / 100.0 / years.Count;
        var lines = new[]
        {
            new CapacityLine("net farm income", Mean(s => s.NetFarmIncomeCents)), new("off-farm income", Mean(s => s.OffFarmIncomeCents)), new("depreciation", Mean(s => s.DepreciationCents)),
            new("interest on term debt", Mean(s => s.TermInterestCents)), new("family living", -Mean(s => s.FamilyLivingCents)), new("income taxes", -Mean(s => s.IncomeTaxesCents)),
        };
        return new([.. years.Select(s => s.Year)], lines, Mean(s => s.HeatingCents), years[^1].TermDebtServiceCents / 100.0)
        {
            MarginBeforeHeatingUsd = Math.Max(0, Mean(s => s.NetFarmIncomeCents + s.DepreciationCents + s.TermInterestCents + s.HeatingCents)),
        };
    }
}
