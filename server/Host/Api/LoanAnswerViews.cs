using FarmPortfolio.Engine.Lending;
using FarmPortfolio.Engine.Scenarios;
using FarmPortfolio.Engine.Units;
using FarmPortfolio.Engine.Weather;
using FarmPortfolio.Host.Studies;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>A cover in one season of the loan; no distribution = nothing is due.</summary>
[Name("CoverSeason")]
public sealed record CoverSeasonView(string Season, DistributionView? Cover, double UnderOneShare);

/// <summary>A cover ratio over all futures: the project's or the farm's.</summary>
[Name("Cover")]
public sealed record CoverView(
    IEnumerable<CoverSeasonView> BySeason, DistributionView Worst, double UnderOneShare, double UnderOneHalfWidth, double UnderRequiredShare, double UnderRequiredHalfWidth, IEnumerable<double> LongestRunShare)
{
    internal static CoverView Of(Cover c, int firstSeason) => new(
        c.BySeason.Select((d, t) => new CoverSeasonView(SeasonCalendar.Name(firstSeason + t), d is null ? null : DistributionView.Of(d), c.UnderOneShareBySeason[t])), DistributionView.Of(c.Worst), c.UnderOneShare,
        c.UnderOneHalfWidth, c.UnderRequiredShare, c.UnderRequiredHalfWidth, c.LongestRunShare);
}

/// <summary>What a loan asks in one season, beside what the option asks in it.</summary>
[Name("LoanSeason")]
public sealed record LoanSeasonView(string Season, double ServiceUsd, double InterestUsd, double BalanceUsd, double RunningUsd);

/// <summary>Largest loan at a confidence; null = none, or no statements.</summary>
[Name("LargestLoan")]
public sealed record LargestLoanView(double Confidence, double? ProjectUsd, double? FarmUsd);

/// <summary>What would make the savings pay just so; prices are of the index, over the loan's seasons.</summary>
[Name("LoanBreakEven")]
public sealed record BreakEvenView(double? MiddleMultiple, double? OneInTenMultiple, double ShortShare, double AskedUsd, double ReckonedUsd, string Unit, double? PriceUsdPerUnit, double ReckonedPriceUsdPerUnit, double? PriceUsdPerKwh, double ReckonedPriceUsdPerKwh);

/// <summary>A line of a farm's capacity, US dollars a year with its sign.</summary>
[Name("CapacityLine")]
public sealed record CapacityLineView(string What, double Usd);

/// <summary>What a farm has in a year for term debt.</summary>
[Name("RepaymentCapacity")]
public sealed record CapacityView(IEnumerable<int> Years, int YearsAsked, IEnumerable<CapacityLineView> Lines, double Usd, double HeatingUsd, double TermDebtServiceUsd, double MarginBeforeHeatingUsd)
{
    internal static CapacityView? Of(RepaymentCapacity? c) =>
        c is null ? null : new(c.Years, RepaymentCapacity.YearsAsked, c.Lines.Select(l => new CapacityLineView(l.What, l.Usd)), c.Usd, c.HeatingUsd, c.TermDebtServiceUsd, c.MarginBeforeHeatingUsd);
}

/// <summary>Cash in one month, the borrower's side, middle season.</summary>
[Name("CashMonth")]
public sealed record CashMonthView(int Month, string Name, double AtOnceUsd, double SavingUsd, double PaidUsd, double OwnUsd);

/// <summary>What a case comes to over all futures. Modelled, not a credit score.</summary>
[Name("LoanAnswer")]
public sealed class LoanAnswerView
{
    private readonly LoanBasis basis;
    private readonly OptionSeasons seasons;
    private readonly LoanAnswer answer;
    private readonly (Engine.FuelKind Fuel, double OutlayUsd) option;

    internal LoanAnswerView(LoanBasis basis, OptionSeasons seasons, (Engine.FuelKind Fuel, double OutlayUsd) option) => (this.basis, this.seasons, this.option, answer) = (basis, seasons, option, LoanAnswer.Of(basis));

    private int First => basis.Set.FirstSeason + basis.Net.StartSeason;

    /// <summary>Futures it is read from.</summary>
    public int FuturesCount => basis.Paths;

    /// <summary>Cover by the option's savings alone.</summary>
    public CoverView Project => CoverView.Of(answer.Project, First);

    /// <summary>Cover by the whole farm; null without statements: savings only, not a credit decision.</summary>
    public CoverView? Farm => answer.Farm is { } f ? CoverView.Of(f, First) : null;

    /// <summary>The farm's capacity line by line; null without statements.</summary>
    public CapacityView? Capacity => CapacityView.Of(basis.Capacity);

    /// <summary>Fuel of the whole farm as it stands in the loan's first season.</summary>
    public double FarmHeatingUsd => basis.FarmUsd.AsSpan(basis.Net.StartSeason * basis.Paths, basis.Paths).ToArray().Average();

    /// <summary>What is due season by season.</summary>
    public IEnumerable<LoanSeasonView> Seasons => answer.Schedule.Seasons.Select((s, t) => new LoanSeasonView(SeasonCalendar.Name(First + t), s.ServiceUsd, s.InterestUsd, s.BalanceUsd, basis.Net.SpentUsd[basis.Net.StartSeason + t]));

    /// <summary>The first payment that repays principal, US dollars.</summary>
    public double PaymentUsd => answer.Schedule.Months.FirstOrDefault(m => m.PaidUsd > m.InterestUsd + 0.005).PaidUsd;

    /// <summary>Interest of the whole term.</summary>
    public double InterestUsd => answer.Schedule.Seasons.Sum(s => s.InterestUsd);

    /// <summary>Greatest sum carried over after the operating line.</summary>
    public DistributionView CarriedUsd => DistributionView.Of(answer.CarriedUsd);

    /// <summary>Share of futures in default.</summary>
    public double DefaultShare => answer.DefaultShare;

    /// <summary>Half of its 95 % interval.</summary>
    public double DefaultHalfWidth => answer.DefaultHalfWidth;

    /// <summary>The lender's loss after the guarantee.</summary>
    public DistributionView LossUsd => DistributionView.Of(answer.LossUsd);

    /// <summary>What would make the savings pay just so.</summary>
    public BreakEvenView BreakEven
    {
        get
        {
            var (b, unit) = (answer.BreakEven, HeatingValues.UnitsOf(option.Fuel)[0]);
            var (price, kwh) = (seasons.MeanUsdPerKwh.Skip(basis.Net.StartSeason).Take(basis.Loan.TermYears).Average(), HeatingValues.KwhPerUnit(option.Fuel, unit, basis.Set.HeatingValues())!.Value);
            return new(b.MiddleMultiple, b.OneInTenMultiple, b.ShortShare, b.AskedUsd, b.ReckonedUsd, unit, b.MiddleMultiple * price * kwh, price * kwh, b.MiddleMultiple * price, price);
        }
    }

    /// <summary>Largest loan by confidence, rising.</summary>
    public IEnumerable<LargestLoanView> Largest => answer.Largest.Select(l => new LargestLoanView(l.Confidence, l.ProjectUsd, l.FarmUsd));

    /// <summary>Cash of the first two years.</summary>
    public IEnumerable<CashMonthView> Cash
    {
        get
        {
            var (paths, start) = (basis.Paths, basis.Net.StartSeason);
            var middle = Enumerable.Range(start, basis.Loan.TermYears).Select(s => Engine.Economics.Distribution.Of(basis.Net.NetUsd.AsSpan(s * paths, paths), basis.Set.ReplicateCount).P50).ToList();
            return LoanCash.Of(basis.Loan, option.OutlayUsd, middle, seasons.LoadShare)
                .Select(c => new CashMonthView(c.Month, new DateOnly(First, 7, 1).AddMonths(c.Month - 1).ToString("MMM yyyy", System.Globalization.CultureInfo.InvariantCulture), c.AtOnceUsd, c.SavingUsd, c.PaidUsd, c.OwnUsd));
        }
    }
}

/// <summary>What a case comes to under one stress.</summary>
[Name("LoanStress")]
public sealed record LoanStressView(
    StressKind Kind, bool Applies, double ProjectUnderOneShare, double ProjectWorst, double? FarmUnderOneShare, double? FarmUnderRequiredShare, double? FarmWorst, double DefaultShare, double LossUsd)
{
    internal static LoanStressView Of(LoanStress s) => new(
        s.Kind, s.Applies, s.Project.UnderOneShare, s.Project.Worst.P50, s.Farm?.UnderOneShare, s.Farm?.UnderRequiredShare, s.Farm?.Worst.P50, s.DefaultShare, s.LossUsd);
}
