namespace FarmPortfolio.Engine.Lending;

/// <summary>How a loan's rate is told.</summary>
public enum RateKind
{
    /// <summary>One rate for the whole term.</summary>
    Fixed,

    /// <summary>An index and a margin over it, set anew at each reset.</summary>
    Indexed,
}

/// <summary>When a loan is paid.</summary>
public enum LoanPayments
{
    /// <summary>Level payments each month.</summary>
    Monthly,

    /// <summary>One payment a year at the end of June, after the spring sales.</summary>
    Annual,

    /// <summary>Interest alone from October to March, level payments from April to September.</summary>
    Seasonal,
}

/// <summary>What becomes of interest while the principal is deferred.</summary>
public enum DeferredInterest
{
    /// <summary>It is paid as it falls due.</summary>
    Paid,

    /// <summary>It is added to the balance month by month.</summary>
    Added,
}

/// <summary>Where a case stands.</summary>
public enum LoanState
{
    /// <summary>Asked for.</summary>
    Asked,

    /// <summary>Lent.</summary>
    Lent,

    /// <summary>Declined; not in the book.</summary>
    Declined,
}

/// <summary>A part of what secures a loan.</summary>
/// <param name="What">What it is.</param>
/// <param name="WorthCents">What it is worth, cents.</param>
/// <param name="AsOfOn">Day of that worth; null = not told.</param>
public sealed record CollateralPart(string What, long WorthCents, DateOnly? AsOfOn = null);

/// <summary>Something that the borrower undertakes, in the lender's words.</summary>
/// <param name="Words">Words.</param>
/// <param name="DueOn">Day by which it is to be shown; null = none.</param>
public sealed record Covenant(string Words, DateOnly? DueOn = null);

/// <summary>A loan against one option of one house: its terms, and what the lender asks of it.</summary>
public sealed record LoanCaseFacts
{
    /// <summary>Farm that borrows.</summary>
    public required string FarmId { get; init; }

    /// <summary>House.</summary>
    public required string HouseId { get; init; }

    /// <summary>Key of the option that the money pays for.</summary>
    public required string OptionKey { get; init; }

    /// <summary>Where it stands.</summary>
    public LoanState State { get; init; } = LoanState.Asked;

    /// <summary>Amount lent, cents, the fee in it where it is financed.</summary>
    public required long AmountCents { get; init; }

    /// <summary>The borrower's own money at the start, cents.</summary>
    public long DownPaymentCents { get; init; }

    /// <summary>Grant expected, cents.</summary>
    public long GrantCents { get; init; }

    /// <summary>Months from July until the grant is paid, mostly after installation; common practice, no source.</summary>
    public int GrantMonths { get; init; } = 6;

    /// <summary>Fees of lender and guarantor, cents.</summary>
    public long FeeCents { get; init; }

    /// <summary>Whether the fees are part of the amount; else the borrower pays them at the start.</summary>
    public bool FeeInAmount { get; init; } = true;

    /// <summary>How the rate is told.</summary>
    public RateKind RateKind { get; init; } = RateKind.Fixed;

    /// <summary>Nominal rate a year of a fixed loan, share.</summary>
    public double RatePerYear { get; init; }

    /// <summary>Index now of an indexed loan, share a year.</summary>
    public double IndexPerYear { get; init; }

    /// <summary>Margin over the index, share a year.</summary>
    public double MarginPerYear { get; init; }

    /// <summary>Months between resets of an indexed loan; 7 CFR 4279.125 allows a quarter at the shortest.</summary>
    public int ResetMonths { get; init; } = 12;

    /// <summary>Term, whole years from the July before the first season with the option.</summary>
    public required int TermYears { get; init; }

    /// <summary>When it is paid.</summary>
    public LoanPayments Payments { get; init; } = LoanPayments.Monthly;

    /// <summary>Months in which no principal falls due.</summary>
    public int DeferralMonths { get; init; }

    /// <summary>What becomes of interest in them.</summary>
    public DeferredInterest DeferredInterest { get; init; } = DeferredInterest.Paid;

    /// <summary>Share of a loss that a guarantor bears, at most 0.90 (7 CFR 762.129).</summary>
    public double GuaranteeShare { get; init; }

    /// <summary>Cover asked of the savings alone; common practice, no source.</summary>
    public double RequiredProjectCover { get; init; } = 1.00;

    /// <summary>Cover asked of the whole farm; common practice, no source.</summary>
    public double RequiredFarmCover { get; init; } = 1.25;

    /// <summary>Operating line that a shortfall draws on first, cents.</summary>
    public long OperatingLineCents { get; init; }

    /// <summary>Reserve set aside for the loan, cents.</summary>
    public long ReserveCents { get; init; }

    /// <summary>Loss over balance at a default: the lender's own flat figure, for which no source is known.</summary>
    public double LossGivenDefault { get; init; } = 0.5;

    /// <summary>Whether the margin of the farm's sales is drawn.</summary>
    public bool DrawsMargin { get; init; } = true;

    /// <summary>Spread of that margin, sd of a season as a share; common practice, no source.</summary>
    public double MarginSd { get; init; } = 0.15;

    /// <summary>Nominal growth of the farm's income and living before heating, share a year; null = that of wages and upkeep in the study.</summary>
    public double? CapacityGrowthPerYear { get; init; }

    /// <summary>What secures the loan, part by part.</summary>
    public IReadOnlyList<CollateralPart> Collateral { get; init; } = [];

    /// <summary>What the borrower undertakes.</summary>
    public IReadOnlyList<Covenant> Covenants { get; init; } = [];

    /// <summary>Rate now, share a year.</summary>
    public double RateNow => RateKind == RateKind.Fixed ? RatePerYear : IndexPerYear + MarginPerYear;

    /// <summary>Amount, US dollars.</summary>
    public double AmountUsd => AmountCents / 100.0;
}
