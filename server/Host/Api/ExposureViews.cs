using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Exposure;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Units;
using FarmPortfolio.Engine.Weather;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>What the same heat costs one way, in one season, over all futures.</summary>
[Name("HeatWay")]
public sealed record HeatWayView(
    [property: Id] string Key, string Name, FuelKind Fuel, string Unit, bool IsOwn, bool IsReckoned, DistributionView CostUsd, double UsdPerMmbtu, double Units, double LessUsd, double LessHalfWidthUsd, double? BreakEvenUsdPerUnit,
    double HeaterUsd, double FeesUsd, double LeftoverUsd, double MinimumUsd, double DemandUsd, double StandByUsd)
{
    internal static HeatWayView Of(WayCost cost, double heatKwh, OtherWay? other = null) => new(
        cost.Way.Key, cost.Way.Name, cost.Way.Fuel, cost.Way.Unit, other is null, other?.IsReckoned ?? false, DistributionView.Of(cost.Cost), cost.Cost.Mean / (heatKwh / Us.MmbtuKwh), cost.Units,
        other?.LessUsd.Mean ?? 0, other?.LessUsd.HalfWidth ?? 0, other?.BreakEvenUsdPerUnit, other?.HeaterUsd ?? 0, cost.MeanCharges.FeesUsd, cost.MeanCharges.LeftoverUsd, cost.MeanCharges.MinimumUsd,
        cost.MeanCharges.DemandUsd, cost.MeanCharges.StandByUsd);
}

/// <summary>One dear season and what made it so.</summary>
[Name("DearSeason")]
public sealed record DearSeasonView(double Usd, DearBecause Because, string WinterName, double HeatAgainstMiddlePct, double PriceAgainstMiddlePct);

/// <summary>What an option takes off a season's cost.</summary>
[Name("TailCut")]
public sealed record TailCutView(string Key, string Title, int Houses, DistributionView CostUsd, double MeanOffUsd, double TailOffUsd, double YearlyUsd, double? BreakEvenUsdPerUnit);

/// <summary>A season's heating against the cash set aside.</summary>
[Name("CashAtRisk")]
public sealed record CashAtRiskView(double CashUsd, double OverShare, double MeanShortUsd, double ShortOneInTwentyUsd);

/// <summary>What heating a farm's houses can cost in a season.</summary>
[Name("Exposure")]
public sealed record ExposureView(
    string Name, string Season, FuelKind Fuel, DistributionView HeatKwh, double MiddlePriceUsdPerUnit, double FairFixedUsdPerUnit, IEnumerable<HeatWayView> Ways, double PriceShare, double WinterShare, double BothShare,
    IEnumerable<DearSeasonView> Dear, CashAtRiskView? Cash, IEnumerable<TailCutView> Options, IEnumerable<string> LeftOut, string HeatingValues);

/// <summary>Useful heat on three fuels in a past year.</summary>
[Name("HeatCostYear")]
public sealed record HeatCostYearView(int Year, int Months, double GasUsdPerMmbtu, double PropaneUsdPerMmbtu, double OilUsdPerMmbtu, double PropaneOverGas, double OilOverGas);

/// <summary>The whole co-op's season, and what spreading over fuels gives.</summary>
[Name("JointExposure")]
public sealed record JointExposureView(double MeanUsd, double P95Usd, double PartsOverMeanUsd, double OverMeanUsd, double SpreadingGivesUsd, IEnumerable<FuelPartView> Fuels);

/// <summary>One fuel's part of the co-op's season.</summary>
[Name("FuelPart")]
public sealed record FuelPartView(FuelKind Fuel, int Houses, double MeanUsd, double P95Usd);

/// <summary>What can be asked of fuel.</summary>
public sealed partial class Query
{
    private const double UsualPropaneMargin = 1.60;

    /// <summary>What heating a farm's houses, or one house, can cost in a season: as bought now, on every fuel and contract, with every option. Null where nothing can be reckoned.</summary>
    /// <exception cref="ExecutionError">The season is none of the assumptions.</exception>
    public static ExposureView? Exposure(
        [FromServices] Register register, [FromServices] Host.Studies.FuturesShelf shelf, [Id] string? farmId = null, [Id] string? houseId = null, int season = 0, double? cashUsd = null, CancellationToken cancellationToken = default)
    {
        var houses = register.Houses.Values.Where(h => houseId is null ? h.Facts.FarmId == farmId : h.Id == houseId).OrderBy(h => h.Id, StringComparer.Ordinal).ToList();
        var portfolio = register.Now;
        if (houses.Count == 0 || Engine.Studies.StudyFutures.Of(portfolio).Futures is not { } futures)
        {
            return null;
        }

        // a house burns what its bills say, here as in a study; only the tanks and meters asked for are fitted
        var groups = houses.SelectMany(h => h.Facts.Supplies).Select(s => s.SupplyGroupId).ToHashSet(StringComparer.Ordinal);
        portfolio = portfolio with { LossFits = Engine.Studies.LossFits.Of(portfolio with { FuelRecords = portfolio.FuelRecords.Where(r => groups.Contains(r.Key)).ToDictionary(r => r.Key, r => r.Value) }) };
        season = AskedRange.Season(nameof(season), season, portfolio.Set.SeasonCount);
        var contracts = register.Contracts.Values.Select(c => new NamedContract(c.Id, c.Remarks.Name ?? "a contract", c.Facts)).ToList();
        var (exposure, left) = FarmExposure.Of(portfolio, futures, shelf.Blocks(futures, cancellationToken), [.. houses.Select(h => h.Id)], contracts, season);
        var name = houseId is null && register.Farms.TryGetValue(houses[0].Facts.FarmId, out var farm) ? farm.Remarks.Name ?? "unnamed" : houses[0].Remarks.Name ?? "unnamed";
        if (exposure is null)
        {
            return null;
        }

        var heat = exposure.HeatKwh.Mean;
        string Title(string key) => houses.Select(h => (House: h, Option: register.OptionSet(h.Id)?.Facts.Options.FirstOrDefault(o => o.Key == key))).FirstOrDefault(x => x.Option is not null) is { Option: { } option, House: { } house }
            ? new OptionView(register, house, option).Title : key;
        var cash = cashUsd is { } set ? CashAtRisk.Of(exposure.Own, set) : null;
        return new(
            name, SeasonCalendar.Name(portfolio.Set.FirstSeason + season), exposure.Own.Way.Fuel, DistributionView.Of(exposure.HeatKwh), exposure.Own.Cost.P50 / Math.Max(1e-9, exposure.Own.Units), exposure.FairFixedUsdPerUnit,
            [HeatWayView.Of(exposure.Own, heat), .. exposure.Ways.Where(w => w.Cost.Way.Key != "index" || Math.Abs(w.LessUsd.Mean) >= 0.5).Select(w => HeatWayView.Of(w.Cost, heat, w))], exposure.Worst.PriceShare, exposure.Worst.WinterShare, exposure.Worst.BothShare,
            exposure.Worst.Worst.Select(d => new DearSeasonView(d.Usd, d.Because, SeasonCalendar.Name(futures.Pool[d.Winter]), 100 * (d.HeatFactor - 1), 100 * (d.PriceFactor - 1))),
            cash is null ? null : new(cash.CashUsd, cash.OverShare, cash.MeanShortUsd, cash.ShortOneInTwentyUsd),
            exposure.Options.Select(o => new TailCutView(o.Key, Title(o.Key), o.Houses, DistributionView.Of(o.Cost), o.MeanOffUsd, o.TailOffUsd, o.YearlyUsd, o.BreakEvenUsdPerUnit)),
            left.Select(l => $"{(register.Houses.TryGetValue(l.Id, out var h) ? h.Remarks.Name : register.Contracts.TryGetValue(l.Id, out var c) ? c.Remarks.Name : l.Id)}: {l.Fault.Message} {l.Fault.Remedy}").Distinct(), register.Heating.Name);
    }

    /// <summary>Useful heat on propane and oil against natural gas, year by year, from the records that ship.</summary>
    public static IEnumerable<HeatCostYearView> HeatCostHistory([FromServices] Register register) =>
        register.Prices.TryGetValue("ps_gas-commercial", out var gas) && register.Prices.TryGetValue("ps_propane-mont-belvieu", out var propane) && register.Prices.TryGetValue("ps_oil-retail", out var oil)
            ? Engine.Fuel.HeatCostHistory.Of(gas.Facts, propane.Facts, oil.Facts, UsualPropaneMargin, register.Heating)
                .Select(y => new HeatCostYearView(y.Year, y.Months, y.GasUsdPerMmbtu, y.PropaneUsdPerMmbtu, y.OilUsdPerMmbtu, y.PropaneOverGas, y.OilOverGas))
            : [];

    /// <summary>A fuel's record as users would have paid it, in the unit of the price fan.</summary>
    public static IEnumerable<PricePointView> DeliveredHistory([FromServices] Register register, FuelKind fuel) =>
        !register.PricesInUse.TryGetValue(fuel, out var id) ? [] :
            Engine.Fuel.DeliveredHistory.Of(
                    register.Prices[id].Facts,
                    register.Prices[id].Facts.Market == PriceMarket.Wholesale ? PassThrough.Of(fuel, register.SetFacts.Prices.FirstOrDefault(p => p.Fuel == fuel)?.RetailAdderUsdPerUnit) : null)
                .Select(p => new PricePointView(p.Month.ToString("yyyy-MM", System.Globalization.CultureInfo.InvariantCulture), p.UsdPerUnit));

    /// <summary>The co-op's season by fuel and together, from the newest study. Null until there is one.</summary>
    public static JointExposureView? JointExposure([FromServices] Register register)
    {
        if (register.NewestResult is not { CostByFuel.Count: > 0, CostBySeason.Count: > 0 } result)
        {
            return null;
        }

        var all = result.CostBySeason[0];
        var parts = result.CostByFuel.Sum(f => f.Item2.P95 - f.Item2.Mean);
        return new(all.Mean, all.P95, parts, all.P95 - all.Mean, parts - (all.P95 - all.Mean), result.CostByFuel.Select(f => new FuelPartView(f.Item1, f.Item3, f.Item2.Mean, f.Item2.P95)));
    }
}
