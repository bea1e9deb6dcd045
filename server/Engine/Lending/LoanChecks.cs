using FarmPortfolio.Engine.Economics;
using FarmPortfolio.Engine.Units;

namespace FarmPortfolio.Engine.Lending;

/// <summary>What is wrong with the terms of a case, and what a lender should look at again.</summary>
public static class LoanChecks
{
    /// <summary>Highest guarantee: 7 CFR 762.129.</summary>
    public const double MostGuaranteed = 0.90;

    private const long MostCents = 50_000_000_00;
    private const double PartOfOutlay = 0.20;
    private const double SmallPart = 0.01;

    /// <summary>Faults of the terms alone.</summary>
    /// <param name="loan">Terms.</param>
    /// <returns>Faults; empty = none.</returns>
    public static IReadOnlyList<Fault> Of(LoanCaseFacts loan)
    {
        var faults = new List<Fault>();
        void Money(string field, long cents, string what, long least = 0)
        {
            if (cents < least || cents > MostCents)
            {
                faults.Add(new("OUT_OF_RANGE", field, FormattableString.Invariant($"{what} of ${cents / 100.0:#,0.##} is outside ${least / 100.0:0} to $50,000,000."), "Give dollars, such as 18600."));
            }
        }

        void Range(string field, double value, double low, double high, string what, string remedy, double scale = 1, string unit = "")
        {
            if (!(value >= low && value <= high))
            {
                faults.Add(new("OUT_OF_RANGE", field, FormattableString.Invariant($"{what} of {ShortFigure.Of(value * scale, "0.##")}{unit} is outside {low * scale:0.##}{unit} to {high * scale:0.##}{unit}."), remedy));
            }
        }

        Money("amountUsd", loan.AmountCents, "An amount", 100_00);
        Money("downPaymentUsd", loan.DownPaymentCents, "A down payment");
        Money("grantUsd", loan.GrantCents, "A grant");
        Money("feeUsd", loan.FeeCents, "A fee");
        Money("operatingLineUsd", loan.OperatingLineCents, "An operating line");
        Money("reserveUsd", loan.ReserveCents, "A reserve");
        if (loan.FeeCents > loan.AmountCents && faults.Count == 0)
        {
            faults.Add(new("FEE_OVER_AMOUNT", "feeUsd", "The fees are more than the amount lent.", "Give dollars of fees, less than the amount."));
        }

        if (loan.RateKind == RateKind.Fixed)
        {
            Range("ratePerYear", loan.RatePerYear, 0, 0.30, "A rate", "Give the nominal rate a year in per cent, such as 7.5.", 100, " %");
        }
        else
        {
            Range("indexPerYear", loan.IndexPerYear, -0.02, 0.25, "An index", "Give the index now in per cent, such as 4.3.", 100, " %");
            Range("marginPerYear", loan.MarginPerYear, 0, 0.20, "A margin", "Give the margin over the index in per cent, such as 3.", 100, " %");
            Range("ratePerYear", loan.RateNow, 0, 0.30, "A rate", "Index and margin together are the rate now.", 100, " %");
            Range("resetMonths", loan.ResetMonths, 3, 120, "A reset every so many months", "Give 3 months or more; a rate set anew more often than each quarter is not lawful for guaranteed loans.");
        }

        Range("termYears", loan.TermYears, 1, 30, "A term in years", "Give whole years, such as 7.");
        Range("deferralMonths", loan.DeferralMonths, 0, 36, "A deferral in months", "Give months without principal, at most 36; 12 = to the end of the first season.");
        if (loan.TermYears is >= 1 and <= 30 && loan.DeferralMonths is > 0 and <= 36 && loan.DeferralMonths > 12 * (loan.TermYears - 1))
        {
            faults.Add(new("OUT_OF_ORDER", "deferralMonths", "The deferral leaves less than a year to repay.", "Shorten the deferral or lengthen the term."));
        }

        Range("grantMonths", loan.GrantMonths, 0, 24, "A grant after so many months", "Give months from July until the grant is paid, at most 24.");
        Range("guaranteeShare", loan.GuaranteeShare, 0, MostGuaranteed, "A guarantee", "A guarantor bears at most 90 % of a loss.", 100, " %");
        Range("requiredProjectCover", loan.RequiredProjectCover, 0.5, 3, "A project cover", "Give the cover asked of the savings, such as 1.00.");
        Range("requiredFarmCover", loan.RequiredFarmCover, 0.5, 3, "A farm cover", "Give the cover asked of the farm, such as 1.25.");
        Range("lossGivenDefault", loan.LossGivenDefault, 0, 1, "A loss at default", "Give the part of the balance that is lost, in per cent.", 100, " %");
        Range("capacityGrowthPerYear", loan.CapacityGrowthPerYear ?? 0, -0.10, 0.15, "A growth of the farm's income", "Give the nominal growth a year in per cent, or leave it empty for the study's.", 100, " %");
        for (var i = 0; i < loan.Collateral.Count; i++)
        {
            var part = loan.Collateral[i];
            Money(FormattableString.Invariant($"collateral.{i}.worthUsd"), part.WorthCents, "A worth of collateral");
            if (string.IsNullOrWhiteSpace(part.What))
            {
                faults.Add(new("EMPTY", $"collateral.{i}.what", $"Part {i + 1} of the collateral has no name.", "Say what it is, such as the tractor or the land under the house."));
            }
        }

        for (var i = 0; i < loan.Covenants.Count; i++)
        {
            if (string.IsNullOrWhiteSpace(loan.Covenants[i].Words))
            {
                faults.Add(new("EMPTY", $"covenants.{i}.words", $"Covenant {i + 1} has no words.", "Say what the borrower undertakes, or leave the line out."));
            }
        }

        Range("marginSd", loan.MarginSd, 0, 1, "A spread of the margin", "Give the spread of a season's margin in per cent, such as 15.", 100, " %");
        return faults;
    }

    /// <summary>Fault of a term that the study does not reach to the end of.</summary>
    /// <param name="loan">Terms.</param>
    /// <param name="startSeason">Season of the study in which it starts.</param>
    /// <param name="seasons">Seasons that the study reckons.</param>
    /// <returns>The fault; null = none.</returns>
    public static Fault? Horizon(LoanCaseFacts loan, int startSeason, int seasons) => startSeason + loan.TermYears <= seasons ? null
        : new("OUT_OF_RANGE", "termYears", $"The term ends after season {startSeason + loan.TermYears}, and the study reckons {seasons}.", $"Give at most {Math.Max(1, seasons - startSeason)} years, or lengthen the study's horizon.");

    /// <summary>What a lender should look at again: life of the parts, money that is not covered, a quote that has run out.</summary>
    /// <param name="loan">Terms.</param>
    /// <param name="costs">Costs of the option.</param>
    /// <returns>Warnings; empty = none.</returns>
    public static IReadOnlyList<Fault> Warnings(LoanCaseFacts loan, OptionCosts costs)
    {
        var warnings = new List<Fault>();
        if (costs.LifeYears > 0 && loan.TermYears > costs.LifeYears)
        {
            warnings.Add(new("TERM_OVER_LIFE", "termYears", FormattableString.Invariant($"The loan runs {loan.TermYears} years and its parts last {costs.LifeYears:0.#}, weighted by cost."), "A loan should not outlive what it pays for."));
        }
        else if (costs.Renewals.Where(r => !r.WithFilm && r.EveryYears > 0 && r.EveryYears < loan.TermYears && r.Usd > PartOfOutlay * costs.OutlayUsd).MinBy(r => r.EveryYears) is { } part)
        {
            warnings.Add(new("PART_DIES_FIRST", "termYears", FormattableString.Invariant($"A part of ${part.Usd:#,0}, over a fifth of the outlay, lasts {part.EveryYears:0.#} years and the loan runs {loan.TermYears}."), "Its renewal is in the savings; a shorter term or a reserve for it would be prudent."));
        }

        var uses = costs.OutlayUsd + loan.FeeCents / 100.0;
        var gap = uses - (loan.AmountCents + loan.DownPaymentCents + loan.GrantCents) / 100.0;
        if (Math.Abs(gap) > Math.Max(1, SmallPart * uses))
        {
            warnings.Add(gap > 0
                ? new("NOT_COVERED", "downPaymentUsd", FormattableString.Invariant($"${gap:#,0} of outlay and fees is covered by nothing."), "Raise the loan, the grant or the down payment.")
                : new("OVER_COVERED", "amountUsd", FormattableString.Invariant($"${-gap:#,0} more is raised than outlay and fees ask."), "Lower the loan, or say what the rest is for."));
        }

        if (costs.QuoteExpired)
        {
            warnings.Add(new("QUOTE_EXPIRED", null, "A quote behind the outlay has run out; it is raised by 1 % a month, at most 20 %.", "Ask for a new one before lending."));
        }

        return warnings;
    }
}
