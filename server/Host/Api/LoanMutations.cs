using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Lending;
using FarmPortfolio.Host.Storage.Items;
using FarmPortfolio.Host.Studies;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>A part of what secures a loan, US dollars.</summary>
public sealed record CollateralPartInput(string What, double WorthUsd, DateOnly? AsOfOn);

/// <summary>Something that the borrower undertakes.</summary>
public sealed record CovenantInput(string Words, DateOnly? DueOn);

/// <summary>Terms of a loan to save; what is left out is as usual. Shares 0 to 1, money in US dollars.</summary>
public sealed record LoanTermsInput(
    [property: Id] string HouseId, string OptionKey, double AmountUsd, int TermYears, LoanState? State, double? DownPaymentUsd, double? GrantUsd, int? GrantMonths, double? FeeUsd, bool? FeeInAmount, RateKind? RateKind,
    double? RatePerYear, double? IndexPerYear, double? MarginPerYear, int? ResetMonths, LoanPayments? Payments, int? DeferralMonths, DeferredInterest? DeferredInterest, double? GuaranteeShare, double? RequiredProjectCover,
    double? RequiredFarmCover, double? OperatingLineUsd, double? ReserveUsd, double? LossGivenDefault, bool? DrawsMargin, double? MarginSd, double? CapacityGrowthPerYear)
{
    internal LoanCaseFacts Facts(string farmId)
    {
        var usual = new LoanCaseFacts { FarmId = farmId, HouseId = HouseId, OptionKey = OptionKey, AmountCents = LoanMoneyFields.Cents(AmountUsd), TermYears = TermYears };
        return usual with
        {
            State = State ?? usual.State,
            DownPaymentCents = LoanMoneyFields.Cents(DownPaymentUsd ?? 0),
            GrantCents = LoanMoneyFields.Cents(GrantUsd ?? 0),
            GrantMonths = GrantMonths ?? usual.GrantMonths,
            FeeCents = LoanMoneyFields.Cents(FeeUsd ?? 0),
            FeeInAmount = FeeInAmount ?? usual.FeeInAmount,
            RateKind = RateKind ?? usual.RateKind,
            RatePerYear = RatePerYear ?? 0,
            IndexPerYear = IndexPerYear ?? 0,
            MarginPerYear = MarginPerYear ?? 0,
            ResetMonths = ResetMonths ?? usual.ResetMonths,
            Payments = Payments ?? usual.Payments,
            DeferralMonths = DeferralMonths ?? 0,
            DeferredInterest = DeferredInterest ?? usual.DeferredInterest,
            GuaranteeShare = GuaranteeShare ?? 0,
            RequiredProjectCover = RequiredProjectCover ?? usual.RequiredProjectCover,
            RequiredFarmCover = RequiredFarmCover ?? usual.RequiredFarmCover,
            OperatingLineCents = LoanMoneyFields.Cents(OperatingLineUsd ?? 0),
            ReserveCents = LoanMoneyFields.Cents(ReserveUsd ?? 0),
            LossGivenDefault = LossGivenDefault ?? usual.LossGivenDefault,
            DrawsMargin = DrawsMargin ?? usual.DrawsMargin,
            MarginSd = MarginSd ?? usual.MarginSd,
            CapacityGrowthPerYear = CapacityGrowthPerYear,
        };
    }
}

/// <summary>A loan case to save; no id = a new one. Collateral and covenants that are left out stay as they are.</summary>
public sealed record SaveLoanCaseInput([property: Id] string? Id, int? ExpectedRevision, [property: Id] string RequestId, string? Name, string? Note, LoanTermsInput Terms, bool? CheckOnly, IEnumerable<CollateralPartInput>? Collateral = null, IEnumerable<CovenantInput>? Covenants = null);

/// <summary>What came of saving or checking a loan case.</summary>
public sealed record LoanCasePayload([property: Id] string? CaseId, [property: Id] string? ChangeId, bool Conflict, IEnumerable<FaultView> Faults, IEnumerable<FaultView> Warnings, LoanAnswerView? Answer);

/// <summary>A year of a farm's statements to save, US dollars; no id = a new one.</summary>
public sealed record SaveStatementInput(
    [property: Id] string? Id, int? ExpectedRevision, [property: Id] string RequestId, [property: Id] string FarmId, int Year, double NetFarmIncomeUsd, double? OffFarmIncomeUsd, double? DepreciationUsd, double? TermInterestUsd,
    double? FamilyLivingUsd, double? IncomeTaxesUsd, double HeatingUsd, double? TermDebtServiceUsd);

/// <summary>Money of forms in cents.</summary>
internal static class LoanMoneyFields
{
    /// <summary>Whole cents; what no amount can be stays out of range, so that a check names it.</summary>
    internal static long Cents(double usd) => double.IsFinite(usd) && Math.Abs(usd) < 1e12 ? (long)Math.Round(usd * 100) : long.MaxValue;
}

/// <summary>Loan cases and statements.</summary>
public sealed partial class Mutation
{
    /// <summary>Saves a loan case, or only checks its terms and answers them.</summary>
    public static LoanCasePayload SaveLoanCase([FromServices] Register register, [FromServices] LendingRuns runs, SaveLoanCaseInput input, CancellationToken cancellationToken = default)
    {
        var known = input.Id is null ? null : register.LoanCases.GetValueOrDefault(input.Id);
        if (input.Id is not null && known is null)
        {
            return Refused(new Fault("NOT_FOUND", "id", "There is no such loan case.", "Reload the page."));
        }

        if (!register.Houses.TryGetValue(input.Terms.HouseId, out var house))
        {
            return Refused(new Fault("NOT_FOUND", "houseId", "There is no such house in this co-op.", "Choose a house of the co-op."));
        }

        if (LoanOptions.Find(register, house.Id, input.Terms.OptionKey) is not { } option)
        {
            return Refused(new Fault("NOT_FOUND", "optionKey", $"{house.Remarks.Name} has no option \"{input.Terms.OptionKey}\".", "Choose one of the options that are studied for the house."));
        }

        var facts = input.Terms.Facts(house.Facts.FarmId) with
        {
            Collateral = input.Collateral is null ? known?.Facts.Collateral ?? [] : [.. input.Collateral.Select(c => new CollateralPart(c.What.Trim(), LoanMoneyFields.Cents(c.WorthUsd), c.AsOfOn))],
            Covenants = input.Covenants is null ? known?.Facts.Covenants ?? [] : [.. input.Covenants.Select(c => new Covenant(c.Words.Trim(), c.DueOn))],
        };
        var faults = LoanChecks.Of(facts).ToList();
        if (faults.Count == 0 && register.NewestOption(house.Id, option.Key) is { } studied && LoanChecks.Horizon(facts, studied.StartSeason, register.NewestResult!.CostBySeason.Count) is { } late)
        {
            faults.Add(late);
        }

        var warnings = faults.Count == 0 ? LoanOptions.Warnings(register, facts).Select(FaultView.Of).ToList() : [];
        if (faults.Count > 0 || input.CheckOnly == true)
        {
            return new(input.Id, null, false, faults.Select(FaultView.Of), warnings, faults.Count == 0 ? LoanOptions.Answer(register, runs, facts, cancellationToken) : null);
        }

        var name = string.IsNullOrWhiteSpace(input.Name) ? known?.Remarks.Name ?? $"{option.Title}, {house.Remarks.Name}" : input.Name.Trim();
        var outcome = register.Items.Save(register.Viewer, register.Coop.Id, $"loan case {name} is {(known is null ? "added" : "changed")}", input.RequestId,
            [new(ItemKind.LoanCase, input.Id, input.ExpectedRevision, facts, (known?.Remarks ?? new()) with { Name = name, Note = string.IsNullOrWhiteSpace(input.Note) ? null : input.Note.Trim() })]);
        return new(outcome.Ids.Count > 0 ? outcome.Ids[0] : input.Id, outcome.ChangeId, outcome.ConflictItemId is not null, outcome.Faults.Select(FaultView.Of), warnings, null);

        LoanCasePayload Refused(Fault fault) => new(input.Id, null, false, [FaultView.Of(fault)], [], null);
    }

    /// <summary>Saves a year of a farm's statements.</summary>
    public static SavePayload SaveStatement([FromServices] Register register, SaveStatementInput input)
    {
        if (!register.Farms.TryGetValue(input.FarmId, out var farm) || (input.Id is not null && register.Statements[input.FarmId].All(s => s.Id != input.Id)))
        {
            return Missing("farm or statement");
        }

        var facts = new StatementFacts
        {
            FarmId = farm.Id,
            Year = input.Year,
            NetFarmIncomeCents = LoanMoneyFields.Cents(input.NetFarmIncomeUsd),
            OffFarmIncomeCents = LoanMoneyFields.Cents(input.OffFarmIncomeUsd ?? 0),
            DepreciationCents = LoanMoneyFields.Cents(input.DepreciationUsd ?? 0),
            TermInterestCents = LoanMoneyFields.Cents(input.TermInterestUsd ?? 0),
            FamilyLivingCents = LoanMoneyFields.Cents(input.FamilyLivingUsd ?? 0),
            IncomeTaxesCents = LoanMoneyFields.Cents(input.IncomeTaxesUsd ?? 0),
            HeatingCents = LoanMoneyFields.Cents(input.HeatingUsd),
            TermDebtServiceCents = LoanMoneyFields.Cents(input.TermDebtServiceUsd ?? 0),
        };
        return facts.Check() is { Count: > 0 } faults
            ? new(null, false, faults.Select(FaultView.Of))
            : Saved(register.Items.Save(register.Viewer, register.Coop.Id, $"statement of {facts.Year} of {farm.Remarks.Name} is {(input.Id is null ? "added" : "changed")}", input.RequestId,
                [new(ItemKind.Statement, input.Id, input.ExpectedRevision, facts, new($"{farm.Remarks.Name}, {facts.Year}"))]));
    }
}
