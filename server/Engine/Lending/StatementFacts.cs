namespace FarmPortfolio.Engine.Lending;

/// <summary>One year of a farm's statements: the lines that repayment capacity is made of. Shown to the farm and its lender only.</summary>
public sealed record StatementFacts
{
    /// <summary>Farm.</summary>
    public required string FarmId { get; init; }

    /// <summary>Calendar or tax year.</summary>
    public required int Year { get; init; }

    /// <summary>Net farm income, cents; negative = a loss.</summary>
    public required long NetFarmIncomeCents { get; init; }

    /// <summary>Income from off the farm, cents.</summary>
    public long OffFarmIncomeCents { get; init; }

    /// <summary>Depreciation, cents.</summary>
    public long DepreciationCents { get; init; }

    /// <summary>Interest on term debt, cents.</summary>
    public long TermInterestCents { get; init; }

    /// <summary>Family living, cents.</summary>
    public long FamilyLivingCents { get; init; }

    /// <summary>Income taxes, cents.</summary>
    public long IncomeTaxesCents { get; init; }

    /// <summary>Heating paid in the year, in the farm's expenses, cents: what the houses' cost on a path is set against.</summary>
    public required long HeatingCents { get; init; }

    /// <summary>Principal and interest due in a year on term debt, this loan not among it, cents.</summary>
    public long TermDebtServiceCents { get; init; }

    /// <summary>What is wrong with the figures.</summary>
    /// <returns>Faults; empty = none.</returns>
    public IReadOnlyList<Fault> Check()
    {
        const long most = 100_000_000_00;
        var faults = new List<Fault>();
        if (Year is < 1990 or > 2100)
        {
            faults.Add(new("OUT_OF_RANGE", "year", $"{Year} is no year of a statement.", "Give the year of the statement, such as 2025."));
        }

        foreach (var (field, cents, least, what) in new[]
        {
            ("netFarmIncomeUsd", NetFarmIncomeCents, -most, "net farm income"), ("offFarmIncomeUsd", OffFarmIncomeCents, 0, "off-farm income"), ("depreciationUsd", DepreciationCents, 0, "depreciation"),
            ("termInterestUsd", TermInterestCents, 0, "interest on term debt"), ("familyLivingUsd", FamilyLivingCents, 0, "family living"), ("incomeTaxesUsd", IncomeTaxesCents, 0, "income taxes"),
            ("heatingUsd", HeatingCents, 0, "heating"), ("termDebtServiceUsd", TermDebtServiceCents, 0, "term debt service"),
        })
        {
            if (cents < least || cents > most)
            {
                faults.Add(new("OUT_OF_RANGE", field, FormattableString.Invariant($"{cents / 100.0:#,0} is no {what} of a farm's year."), least < 0 ? "Give dollars of the year; a loss with a minus." : "Give dollars of the year, 0 or more."));
            }
        }

        if (TermInterestCents > TermDebtServiceCents && faults.Count == 0)
        {
            faults.Add(new("OUT_OF_ORDER", "termDebtServiceUsd", "The interest on term debt is more than the whole of its service.", "Give principal and interest due in a year on all term debt."));
        }

        return faults;
    }
}
