using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Economics;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.HeatDemand;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Studies;
using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>A line of what an option costs.</summary>
[Name("LedgerLine")]
public sealed record LineView(string What, double Usd, string? Field, double? Quantity, string? Unit)
{
    /// <summary>From the engine's line.</summary>
    internal static LineView Of(CostLine l) => new(l.What, l.Usd, l.Field, l.Quantity, l.Unit);
}

/// <summary>A renewal spared: season of the study from 0, US dollars of that season.</summary>
[Name("SparedRenewal")]
public sealed record SparedView(int Season, double Usd);

/// <summary>A season's mean over all futures.</summary>
/// <param name="Mean">Mean.</param>
/// <param name="HalfWidth">Half of the 95 % interval of the mean; error of computing only.</param>
[Name("SeasonMean")]
public sealed record SeasonMeanView(double Mean, double HalfWidth)
{
    internal static SeasonMeanView Of(SeasonMean s) => new(s.Mean, s.HalfWidth);
}

/// <summary>A distribution over all futures.</summary>
[Name("Distribution")]
public sealed record DistributionView(double Mean, double HalfWidth, double P5, double P10, double P25, double P50, double P75, double P90, double P95, double MeanOfWorst5Pct)
{
    /// <summary>From the engine's distribution.</summary>
    internal static DistributionView Of(Distribution d) => new(d.Mean, d.HalfWidth, d.P5, d.P10, d.P25, d.P50, d.P75, d.P90, d.P95, d.MeanOfWorst5Pct);
}

/// <summary>Rate of return a year over all futures.</summary>
/// <param name="P10">One future in ten brings less.</param>
/// <param name="P50">Middle.</param>
/// <param name="P90">One future in ten brings more.</param>
[Name("RateOfReturn")]
public sealed record ReturnView(double P10, double P50, double P90)
{
    /// <summary>From the savings-to-investment ratio: the rate rises with it, so the levels of the one are those of the other.</summary>
    internal static ReturnView Of(Distribution ratio, double rate, int years)
    {
        double Rate(double savingsToInvestment) => Measures.AdjustedRateOfReturn(rate, savingsToInvestment, years);
        return new(Rate(ratio.P10), Rate(ratio.P50), Rate(ratio.P90));
    }
}

/// <summary>When the money is back.</summary>
[Name("Payback")]
public sealed record PaybackView(IEnumerable<double> ShareBySeason, double NeverShare, double HalfWidth, int? P10Season, int? P25Season, int? P50Season, int? P75Season, int? P90Season)
{
    /// <summary>From the engine's payback.</summary>
    internal static PaybackView Of(Payback p) => new(p.ShareBySeason, p.NeverShare, p.HalfWidth, p.SeasonOf(0.1), p.SeasonOf(0.25), p.SeasonOf(0.5), p.SeasonOf(0.75), p.SeasonOf(0.9));
}

/// <summary>What a study found for an option.</summary>
[Name("OptionResult")]
public sealed partial class OptionResultView(OptionResult result, double? discountRate)
{
    /// <summary>Outlay, US dollars.</summary>
    public double OutlayUsd => result.OutlayUsd;

    /// <summary>Season of the study before which it is built, from 0.</summary>
    public int StartSeason => result.StartSeason;

    /// <summary>Heat saved a season, kWh.</summary>
    public double HeatSavedKwh => result.HeatSavedKwh;

    /// <summary>Share of the heat saved.</summary>
    public double HeatSavedShare => result.BaseHeatKwh > 0 ? result.HeatSavedKwh / result.BaseHeatKwh : 0;

    /// <summary>Fuel saved a season, kWh.</summary>
    public double FuelSavedKwh => result.FuelSavedKwh;

    /// <summary>Fuel that a switch moves to; null = it stays on its own.</summary>
    public FuelKind? NewFuel => result.NewFuel;

    /// <summary>What it burns of it in a season, kWh; null = it stays on its own fuel.</summary>
    public double? NewFuelKwh => result.NewFuelKwh;

    /// <summary>CO2 a season, kg.</summary>
    public double Co2SavedKg => result.Co2SavedKg;

    /// <summary>Net saving of a season.</summary>
    public DistributionView SavingUsd => DistributionView.Of(result.SavingUsd);

    /// <summary>Net present value.</summary>
    public DistributionView NpvUsd => DistributionView.Of(result.NpvUsd);

    /// <summary>Savings-to-investment ratio; null without outlay.</summary>
    public DistributionView? SavingsToInvestment => result.SavingsToInvestment is { } s ? DistributionView.Of(s) : null;

    /// <summary>Rate of return, savings put away at the study's discount rate (ASTM E1057); null without outlay, or in a study that did not keep its rate.</summary>
    public ReturnView? RateOfReturn => result.SavingsToInvestment is { } s && discountRate is { } rate ? ReturnView.Of(s, rate, result.NetBySeason.Count - result.StartSeason) : null;

    /// <summary>Net saving by season.</summary>
    public IEnumerable<SeasonMeanView> SavingUsdBySeason => result.SavingBySeason.Select(SeasonMeanView.Of);

    /// <summary>Net saving added up, before the outlay.</summary>
    public IEnumerable<DistributionView> NetUsdBySeason => result.NetBySeason.Select(DistributionView.Of);

    /// <summary>Lasting payback.</summary>
    public PaybackView LastingPayback(bool discounted = false) => PaybackView.Of(discounted ? result.LastingDiscounted : result.Lasting);

    /// <summary>First payback.</summary>
    public PaybackView FirstPayback(bool discounted = false) => PaybackView.Of(discounted ? result.FirstDiscounted : result.First);

    /// <summary>Share of futures that lose money over the horizon.</summary>
    public double LossShare => result.LossShare;

    /// <summary>One single future, added up.</summary>
    public IEnumerable<double> OnePathUsdBySeason => result.OnePath;

    /// <summary>What is not counted.</summary>
    public IEnumerable<string> NotCounted => result.Costs.NotCounted;
}

/// <summary>One retrofit or combination for one house.</summary>
[Name("Option")]
public sealed partial class OptionView(Register register, Item<HouseFacts> house, OptionFacts option)
{
    private readonly Lazy<OptionCosts?> costs = new(() => Costs(register, house, option));

    /// <summary>House and key.</summary>
    [Id] public string Id => $"{house.Id}~{option.Key}";

    /// <summary>Key.</summary>
    public string Key => option.Key;

    /// <summary>House.</summary>
    public HouseView House => new(register, house);

    /// <summary>Plain name.</summary>
    public string Title => option.Parts.Count == 0 ? "As it stands" : string.Join("; ", option.Parts.Select(p => Entry(p)?.Title ?? p)) + option.Timing switch { OptionTiming.AtFilmChange => ", at the next film change", OptionTiming.AtHeaterChange => ", when the heater is due", _ => string.Empty };

    /// <summary>Where a switch of fuel moves the house: a tank or meter of the farm, or the monthly index. Null = it stays where it is.</summary>
    public string? MovesTo => FuelSwitch.Of(option.Parts) is { } code
        ? (option.Overrides?.SwitchSupplyGroupId ?? register.Groups.Values.Where(g => g.Facts.FarmId == house.Facts.FarmId && g.Facts.Fuel == FuelSwitch.FuelOf(code)).Select(g => g.Id).Order(StringComparer.Ordinal).FirstOrDefault()) is { } id
            && register.Groups.TryGetValue(id, out var group) ? group.Remarks.Name ?? "unnamed" : "the monthly index"
        : null;

    /// <summary>The tank or meter chosen for a switch of fuel; null = none chosen: the farm's first of the new fuel, else the monthly index.</summary>
    [Id] public string? SwitchSupplyGroupId => option.Overrides?.SwitchSupplyGroupId;

    /// <summary>When it is built.</summary>
    public OptionTiming Timing => option.Timing;

    /// <summary>Codes of its parts.</summary>
    public IEnumerable<string> Parts => option.Parts;

    /// <summary>Whether it has no outlay.</summary>
    public bool IsRunningChange => option.Parts.Count > 0 && costs.Value is { OutlayUsd: 0 };

    /// <summary>Lines of the outlay.</summary>
    public IEnumerable<LineView> Outlay => costs.Value?.Outlay.Select(LineView.Of) ?? [];

    /// <summary>Outlay, US dollars.</summary>
    public double OutlayUsd => costs.Value?.OutlayUsd ?? 0;

    /// <summary>Where the outlay comes from.</summary>
    public string OutlayBasis => costs.Value?.Basis ?? string.Empty;

    /// <summary>Lines of a season's running.</summary>
    public IEnumerable<LineView> Running => costs.Value?.Running.Select(LineView.Of) ?? [];

    /// <summary>Running of a season, US dollars.</summary>
    public double RunningUsd => costs.Value?.RunningUsd ?? 0;

    /// <summary>Renewals of the house's own that it spares after it is built; they stand in the saving.</summary>
    public IEnumerable<SparedView> SparedRenewals => costs.Value is { } c && register.Model(house).Model is { } model
        ? Engine.Studies.SparedRenewals.Of(model, option, c, register.SetFacts).Select(s => new SparedView(s.Season, s.Usd)) : [];

    /// <summary>Drawbacks.</summary>
    public IEnumerable<string> Drawbacks => option.Parts.SelectMany(p => Entry(p)?.Drawbacks ?? []).Distinct();

    /// <summary>Cautions.</summary>
    public IEnumerable<string> Cautions => option.Parts.SelectMany(p => Entry(p)?.Cautions ?? []).Distinct();

    /// <summary>Skills the work asks for.</summary>
    public IEnumerable<string> Skills => option.Parts.SelectMany(p => Entry(p)?.Skills ?? []).Distinct();

    /// <summary>Result in the newest done study.</summary>
    public OptionResultView? Result => register.NewestOption(house.Id, option.Key) is { } r ? new(r, register.NewestResult!.DiscountRate) : null;

    private CatalogueFacts? Entry(string code) => register.Catalogue.Find(CatalogueKind.Retrofit, code);

    private static OptionCosts? Costs(Register register, Item<HouseFacts> house, OptionFacts option)
    {
        if (register.Model(house).Model is not { } model || OptionModels.Of(model, option).Model is not { } physics || register.Middling(house.Facts) is not { } year)
        {
            return null;
        }

        var quotes = register.Quotes.Values.Select(q => q.Facts).Where(q => q.FarmId == house.Facts.FarmId).ToList();
        return OptionCosts.Of(model, register.Farms[house.Facts.FarmId].Facts, option, quotes, register.SetFacts, MovableUses.Of(physics, [year]));
    }
}
