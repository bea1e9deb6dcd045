using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Lending;
using FarmPortfolio.Host.Storage.Items;
using FarmPortfolio.Host.Studies;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>Terms of a loan. Shares 0 to 1, money in US dollars.</summary>
[Name("LoanTerms")]
public sealed record LoanTermsView(
    [property: Id] string HouseId, string OptionKey, LoanState State, double AmountUsd, double DownPaymentUsd, double GrantUsd, int GrantMonths, double FeeUsd, bool FeeInAmount, RateKind RateKind, double RatePerYear,
    double IndexPerYear, double MarginPerYear, double RateNow, int ResetMonths, int TermYears, LoanPayments Payments, int DeferralMonths, DeferredInterest DeferredInterest, double GuaranteeShare, double RequiredProjectCover,
    double RequiredFarmCover, double OperatingLineUsd, double ReserveUsd, double LossGivenDefault, bool DrawsMargin, double MarginSd, double? CapacityGrowthPerYear)
{
    internal static LoanTermsView Of(LoanCaseFacts f) => new(
        f.HouseId, f.OptionKey, f.State, f.AmountUsd, f.DownPaymentCents / 100.0, f.GrantCents / 100.0, f.GrantMonths, f.FeeCents / 100.0, f.FeeInAmount, f.RateKind, f.RatePerYear, f.IndexPerYear, f.MarginPerYear, f.RateNow,
        f.ResetMonths, f.TermYears, f.Payments, f.DeferralMonths, f.DeferredInterest, f.GuaranteeShare, f.RequiredProjectCover, f.RequiredFarmCover, f.OperatingLineCents / 100.0, f.ReserveCents / 100.0, f.LossGivenDefault,
        f.DrawsMargin, f.MarginSd, f.CapacityGrowthPerYear);
}

/// <summary>A part of what secures a loan.</summary>
[Name("CollateralPart")]
public sealed record CollateralPartView(string What, double WorthUsd, DateOnly? AsOfOn);

/// <summary>Something that the borrower undertakes.</summary>
[Name("Covenant")]
public sealed record CovenantView(string Words, DateOnly? DueOn);

/// <summary>A loan against one option of one house.</summary>
[Name("LoanCase")]
public sealed partial class LoanCaseView(Register register, Item<LoanCaseFacts> item)
{
    private LoanAnswerView? answer;

    /// <summary>Identifier.</summary>
    [Id] public string Id => item.Id;

    /// <summary>Revision.</summary>
    public int Revision => (int)item.Revision;

    /// <summary>Name.</summary>
    public string Name => item.Remarks.Name ?? "unnamed";

    /// <summary>Note.</summary>
    public string? Note => item.Remarks.Note;

    /// <summary>When it was last changed.</summary>
    public string ChangedAt => item.ChangedUtc;

    /// <summary>By whom.</summary>
    public string ChangedBy => item.ChangedBy;

    /// <summary>Terms.</summary>
    public LoanTermsView Terms => LoanTermsView.Of(item.Facts);

    /// <summary>What secures it, part by part.</summary>
    public IEnumerable<CollateralPartView> Collateral => item.Facts.Collateral.Select(c => new CollateralPartView(c.What, c.WorthCents / 100.0, c.AsOfOn));

    /// <summary>Worth of all that secures it; the loss at default stays the lender's own flat figure.</summary>
    public double CollateralUsd => item.Facts.Collateral.Sum(c => c.WorthCents) / 100.0;

    /// <summary>What the borrower undertakes.</summary>
    public IEnumerable<CovenantView> Covenants => item.Facts.Covenants.Select(c => new CovenantView(c.Words, c.DueOn));

    /// <summary>Farm that borrows.</summary>
    public FarmView? Farm => register.Farms.TryGetValue(item.Facts.FarmId, out var f) ? new(register, f) : null;

    /// <summary>House.</summary>
    public HouseView? House => register.Houses.TryGetValue(item.Facts.HouseId, out var h) ? new(register, h) : null;

    /// <summary>What the money pays for; null where the house has the option no longer.</summary>
    public OptionView? Option => LoanOptions.Find(register, item.Facts.HouseId, item.Facts.OptionKey);

    /// <summary>What a lender should look at again.</summary>
    public IEnumerable<FaultView> Warnings => LoanOptions.Warnings(register, item.Facts).Select(FaultView.Of);

    /// <summary>Why there is no answer; null = there is one.</summary>
    public FaultView? Problem([FromServices] LendingRuns runs, CancellationToken cancellationToken = default) =>
        register.Basis(runs, item.Facts, StressKind.AsDrawn, null, cancellationToken).Fault is { } f ? FaultView.Of(f) : null;

    /// <summary>What it comes to on the newest done study; null where there is none.</summary>
    public LoanAnswerView? Answer([FromServices] LendingRuns runs, CancellationToken cancellationToken = default) => answer ??= LoanOptions.Answer(register, runs, item.Facts, cancellationToken);

    /// <summary>What it comes to when something goes wrong, as drawn the first; empty where there is no answer.</summary>
    public IEnumerable<LoanStressView> Stresses([FromServices] LendingRuns runs, CancellationToken cancellationToken = default) =>
        register.Basis(runs, item.Facts, StressKind.AsDrawn, null, cancellationToken).Basis is not { } drawn ? [] : [.. Enum.GetValues<StressKind>().Select(kind =>
        {
            var basis = kind is StressKind.CheapAndMild or StressKind.DearAndHard ? register.Basis(runs, item.Facts, kind, null, cancellationToken).Basis! : drawn;
            return LoanStressView.Of(LoanStress.Of(basis, kind));
        })];
}

/// <summary>Options that loans pay for.</summary>
internal static class LoanOptions
{
    internal static OptionView? Find(Register register, string houseId, string key) =>
        register.Houses.TryGetValue(houseId, out var house) && register.OptionSet(houseId)?.Facts.Options.FirstOrDefault(o => o.Key == key) is { } option ? new(register, house, option) : null;

    internal static IReadOnlyList<Fault> Warnings(Register register, LoanCaseFacts loan)
    {
        var warnings = register.NewestOption(loan.HouseId, loan.OptionKey) is { } option ? LoanChecks.Warnings(loan, option.Costs).ToList() : [];
        var years = register.Statements[loan.FarmId].Count();
        if (years == 0)
        {
            warnings.Add(new("NO_STATEMENTS", null, "The farm gave no statements: savings only, not a credit decision.", "Enter up to three years of statements."));
        }
        else if (years < RepaymentCapacity.YearsAsked)
        {
            warnings.Add(new("FEW_STATEMENTS", null, $"The farm gave {years} of {RepaymentCapacity.YearsAsked} years of statements.", "Ask for the years that lack."));
        }

        return warnings;
    }

    internal static LoanAnswerView? Answer(Register register, LendingRuns runs, LoanCaseFacts loan, CancellationToken cancel) =>
        register.Basis(runs, loan, StressKind.AsDrawn, null, cancel) is ({ } basis, { } seasons, _) && register.NewestOption(loan.HouseId, loan.OptionKey) is { } option ? new(basis, seasons, (option.Fuel, option.OutlayUsd)) : null;
}

/// <summary>One year of a farm's statements, US dollars.</summary>
[Name("Statement")]
public sealed record StatementView(
    [property: Id] string Id, int Revision, int Year, double NetFarmIncomeUsd, double OffFarmIncomeUsd, double DepreciationUsd, double TermInterestUsd, double FamilyLivingUsd, double IncomeTaxesUsd, double HeatingUsd,
    double TermDebtServiceUsd)
{
    internal static StatementView Of(Item<StatementFacts> s) => new(
        s.Id, (int)s.Revision, s.Facts.Year, s.Facts.NetFarmIncomeCents / 100.0, s.Facts.OffFarmIncomeCents / 100.0, s.Facts.DepreciationCents / 100.0, s.Facts.TermInterestCents / 100.0, s.Facts.FamilyLivingCents / 100.0,
        s.Facts.IncomeTaxesCents / 100.0, s.Facts.HeatingCents / 100.0, s.Facts.TermDebtServiceCents / 100.0);
}

/// <summary>What a farm shows its lender.</summary>
public sealed partial class FarmView
{
    /// <summary>Its statements, newest first; shown to the farm and its lender only.</summary>
    public IEnumerable<StatementView> Statements => register.Statements[item.Id].Select(StatementView.Of);

    /// <summary>What its statements leave for term debt; null without a statement.</summary>
    public CapacityView? RepaymentCapacity => CapacityView.Of(Engine.Lending.RepaymentCapacity.Of(register.Statements[item.Id].Select(s => s.Facts)));
}

/// <summary>Loans of a co-op.</summary>
public sealed partial class CoopView
{
    /// <summary>Loan cases, by farm and name.</summary>
    public IEnumerable<LoanCaseView> LoanCases => register.LoanCases.Values
        .OrderBy(c => register.Farms.TryGetValue(c.Facts.FarmId, out var f) ? f.Remarks.Name : c.Facts.FarmId, StringComparer.Ordinal).ThenBy(c => c.Remarks.Name, StringComparer.Ordinal).ThenBy(c => c.Id, StringComparer.Ordinal)
        .Select(c => new LoanCaseView(register, c));
}

/// <summary>Single loan cases.</summary>
public sealed partial class Query
{
    /// <summary>A loan case.</summary>
    public static LoanCaseView? LoanCase([FromServices] Register register, [Id] string id) => register.LoanCases.TryGetValue(id, out var c) ? new(register, c) : null;
}
