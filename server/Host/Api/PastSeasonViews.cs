using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.HeatDemand.Calibration;
using FarmPortfolio.Engine.Units;
using FarmPortfolio.Engine.Weather;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>A month of a past season: what was bought and paid, what the index was. Index null = not on record.</summary>
[Name("PastMonth")]
public sealed record PastMonthView(string Month, double Units, int Deliveries, double? PaidUsd, double? IndexUsdPerUnit, bool IndexIsTyped);

/// <summary>A line of a bill that would have come; month null = at the season's end.</summary>
[Name("BillLine")]
public sealed record BillLineView(string? Month, string What, double? Quantity, double? UsdPerUnit, double Usd);

/// <summary>What a past season would have cost one way, to the cent; without a total where a fault stops it.</summary>
[Name("PastWay")]
public sealed record PastWayView(
    [property: Id] string Key, string Name, string Unit, double? TotalUsd, IEnumerable<double> MonthsUsd, double SeasonEndUsd, double StillOwnUnits, double CreditUsd, IEnumerable<BillLineView> Lines, IEnumerable<FaultView> Faults)
{
    internal static PastWayView Of(string key, string name, string unit, int season, (PastBill? Bill, IReadOnlyList<Fault> Faults) settled) => new(
        key, name, unit, settled.Bill?.TotalCents / 100.0, settled.Bill is { } bill ? Enumerable.Range(0, 12).Select(m => bill.Cents(m) / 100.0) : [], (settled.Bill?.Cents(null) ?? 0) / 100.0,
        (double)(settled.Bill?.StillOwnUnits ?? 0), (settled.Bill?.CreditCents ?? 0) / 100.0,
        (settled.Bill?.Lines ?? []).Select(l => new BillLineView(l.Month is { } m ? PastBills.MonthName(season, m) : null, l.What, (double?)l.Quantity, (double?)l.UsdPerUnit, l.Cents / 100.0)),
        settled.Faults.Select(FaultView.Of));
}

/// <summary>A past season of a tank or meter by month, under every contract it has or was offered.</summary>
[Name("PastSeason")]
public sealed record PastSeasonView(int Season, string Name, string Unit, string IndexName, IEnumerable<int> Seasons, double? PaidUsd, IEnumerable<PastMonthView> Months, IEnumerable<PastWayView> Ways, IEnumerable<string> Notes);

/// <summary>What past seasons would have cost.</summary>
public sealed partial class SupplyGroupView
{
    /// <summary>A past season settled by month to the cent; no season named = the newest on its tickets and bills. Months of the index, July first, can be typed over the record. Null where nothing is recorded.</summary>
    public PastSeasonView? PastSeason(int? season = null, IReadOnlyList<double?>? indexUsdPerUnit = null)
    {
        var facts = item.Facts;
        if (Record is not { } record)
        {
            return null;
        }

        var past = PastVolumes.Of(facts, record.Facts, register.Behind(item.Id), register.WintersOf(item.Id), register.Heating);
        if (past.Seasons.Count == 0)
        {
            return null;
        }

        var (year, months) = past.Seasons.FirstOrDefault(s => s.Season == season) is { Months: not null } found ? found : past.Seasons[0];
        var settled = new PastSeason
        {
            Season = year,
            Fuel = facts.Fuel,
            Unit = past.Unit,
            Months = months,
            Index = Index(facts.Fuel, past.Unit, year, indexUsdPerUnit),
            StandBy = facts.StandByFuel is { } other ? StandBy(facts, other, past.Unit, year) : [],
            MoneyRatePerYear = register.SetFacts.DiscountRate,
            Heating = register.Heating,
        };
        var mine = register.Contracts.Values.Where(c => c.Facts.SupplyGroupId == item.Id).OrderBy(c => c.Id, StringComparer.Ordinal).ToList();
        var signed = mine.Where(c => c.Facts.Standing == ContractStanding.InForce).ToList();
        // of contracts that follow each other, those that hold when the newest starts
        var newest = signed.Max(c => c.Facts.StartsOn) ?? DateOnly.MinValue;
        var inForce = signed.Where(c => (c.Facts.EndsOn ?? DateOnly.MaxValue) >= newest).ToList();
        PastWayView Way(string key, string name, IReadOnlyList<ContractFacts> together) => PastWayView.Of(key, name, together.Count > 0 ? together[0].Unit : past.Unit, year, PastBills.Of(
            settled, together, id => register.Contracts.GetValueOrDefault(id)?.Facts, c => c.PriceSeriesId is { } own && register.Prices.TryGetValue(own, out var s) ? PastIndex.Of(s.Facts, null, c.Unit, year, values: register.Heating) : null, facts.StandByFuel));
        var ways = new List<PastWayView> { Way("own", inForce.Count > 1 ? "your contracts together" : inForce.Count == 1 ? inForce[0].Remarks.Name ?? "your contract" : "as you buy now, on the index", [.. inForce.Select(c => c.Facts)]) };
        ways.AddRange(mine.Where(c => c.Facts.Standing == ContractStanding.Offered).Select(c => Way(c.Id, c.Remarks.Name ?? "an offer", [c.Facts])));
        // a contract that is the index itself is not told twice
        if (inForce.Count > 0 && Way("index", "the index alone", []) is var index && index.TotalUsd != ways[0].TotalUsd)
        {
            ways.Add(index);
        }

        var paid = months.Where(m => m.PaidCents is not null).Sum(m => m.PaidCents!.Value);
        return new(
            year, SeasonCalendar.Name(year), past.Unit, register.PricesInUse.TryGetValue(facts.Fuel, out var id) ? register.Prices[id].Remarks.Name ?? "the record in use" : "no record of this fuel", past.Seasons.Select(s => s.Season),
            months.Any(m => m.PaidCents is not null) ? paid / 100.0 : null,
            months.Select(m => new PastMonthView(PastBills.MonthName(year, m.Month), (double)m.Units, m.Deliveries, m.PaidCents / 100.0, (double?)settled.Index[m.Month], indexUsdPerUnit is not null && m.Month < indexUsdPerUnit.Count && indexUsdPerUnit[m.Month] is not null)),
            ways, past.Notes);
    }

    private IReadOnlyList<decimal?> Index(FuelKind fuel, string unit, int year, IReadOnlyList<double?>? own) => PastIndex.Of(
        register.PricesInUse.TryGetValue(fuel, out var id) ? register.Prices[id].Facts : null, register.SetFacts.Prices.FirstOrDefault(p => p.Fuel == fuel)?.RetailAdderUsdPerUnit, unit, year, own, register.Heating);

    /// <summary>The stand-by fuel's price for the heat of a unit of the supply, at the same efficiency.</summary>
    private List<decimal?> StandBy(SupplyGroupFacts facts, FuelKind other, string unit, int year)
    {
        var perUnit = (decimal)HeatingValues.KwhPerUnit(facts.Fuel, unit, register.Heating)!.Value;
        return [.. Index(other, "MMBtu", year, null).Select(perMmbtu => perMmbtu is { } usd ? PastBills.Price(usd * perUnit / (decimal)Us.MmbtuKwh) : (decimal?)null)];
    }
}
