using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>A tank bank or meter with what hangs on it.</summary>
[Name("SupplyGroup")]
public sealed partial class SupplyGroupView(Register register, Item<SupplyGroupFacts> item)
{
    /// <summary>Identifier.</summary>
    [Id] public string Id => item.Id;

    /// <summary>Revision.</summary>
    public int Revision => (int)item.Revision;

    /// <summary>Name.</summary>
    public string Name => item.Remarks.Name ?? "unnamed";

    /// <summary>Farm.</summary>
    public FarmView Farm => new(register, register.Farms[item.Facts.FarmId]);

    /// <summary>Fuel.</summary>
    public FuelKind Fuel => item.Facts.Fuel;

    /// <summary>Tank or meter.</summary>
    public SupplyKind Kind => item.Facts.Kind;

    /// <summary>Size of the tanks, litres.</summary>
    public double? TankSizeL => item.Facts.TankSizeL;

    /// <summary>What else hangs on it.</summary>
    public IEnumerable<string> OtherUses => item.Facts.OtherUses.Select(u => u.What);

    /// <summary>All its contracts, in force and offered, by name.</summary>
    public IEnumerable<ContractView> Contracts => register.Contracts.Values.Where(c => c.Facts.SupplyGroupId == item.Id).OrderBy(c => c.Facts.Standing).ThenBy(c => c.Remarks.Name, StringComparer.Ordinal).Select(c => new ContractView(c));

    /// <summary>Use that does not follow the weather, kWh of fuel a day.</summary>
    public double? BaseUseKwhPerDay => item.Facts.BaseUseKwhPerDay;

    /// <summary>Therms a hundred cubic feet on its bills.</summary>
    public double? ThermsPerCcf => item.Facts.ThermsPerCcf;

    /// <summary>Houses it feeds.</summary>
    public IEnumerable<HouseView> Houses => register.Houses.Values.Where(h => h.Facts.Supplies.Any(s => s.SupplyGroupId == item.Id)).OrderBy(h => h.Remarks.Name, StringComparer.Ordinal).Select(h => new HouseView(register, h));

    /// <summary>The contract in force; null = the monthly index.</summary>
    public ContractView? Contract => register.Contracts.Values.FirstOrDefault(c => c.Facts.SupplyGroupId == item.Id && c.Facts.Standing == ContractStanding.InForce) is { } c ? new(c) : null;

    /// <summary>Lines of its fuel record.</summary>
    public int RecordedLines => Record?.Facts.Entries.Count ?? 0;

    /// <summary>First day of its fuel record.</summary>
    public DateOnly? RecordedFromOn => Record is { Facts.Entries: { Count: > 0 } e } ? e.Min(x => x.FromOn) : null;

    /// <summary>Last day of its fuel record.</summary>
    public DateOnly? RecordedToOn => Record is { Facts.Entries: { Count: > 0 } e } ? e.Max(x => x.ToOn) : null;

    private Item<FuelRecordFacts>? Record => register.Records.Values.FirstOrDefault(r => r.Facts.SupplyGroupId == item.Id);
}

/// <summary>A line of a quote.</summary>
[Name("QuoteLine")]
public sealed record QuoteLineView([property: Id] string HouseId, string RetrofitCode, double Usd, string Category, bool Eligible);

/// <summary>A supplier's quote.</summary>
[Name("Quote")]
public sealed class QuoteView(Item<QuoteFacts> item)
{
    /// <summary>Identifier.</summary>
    [Id] public string Id => item.Id;

    /// <summary>Revision.</summary>
    public int Revision => (int)item.Revision;

    /// <summary>Who quoted.</summary>
    public string? Supplier => item.Remarks.Supplier;

    /// <summary>Date.</summary>
    public DateOnly QuotedOn => item.Facts.QuotedOn;

    /// <summary>Last day it holds.</summary>
    public DateOnly? ValidUntilOn => item.Facts.ValidUntilOn;

    /// <summary>Firm, budget or catalogue.</summary>
    public QuoteFirmness Firmness => item.Facts.Firmness;

    /// <summary>Lines.</summary>
    public IEnumerable<QuoteLineView> Lines => item.Facts.Lines.Select(l => new QuoteLineView(l.HouseId, l.RetrofitCode, l.Cents / 100.0, l.Category, l.Eligible));
}

/// <summary>What one season's fuel costs behind one tank or meter, or behind those that feed a house together.</summary>
[Name("FarmBill")]
public sealed record FarmBillView([property: Complexity(1, 2)] IEnumerable<SupplyGroupView> Supplies, IEnumerable<string> HouseIds, double FloorAreaM2, DistributionView Usd);

/// <summary>What a farm has beside its houses.</summary>
public sealed partial class FarmView
{
    /// <summary>Its fuel in the first season of the newest study, bill by bill; empty where no study has reckoned it.</summary>
    [Complexity(1, 3)]
    public IEnumerable<FarmBillView> Bills => (register.NewestResult?.CostByUnit ?? []).Select(u => (u, Houses: u.HouseIds.Where(id => register.Houses.TryGetValue(id, out var h) && h.Facts.FarmId == item.Id).ToList())).Where(u => u.Houses.Count > 0).Select(u => new FarmBillView(
        u.Houses.SelectMany(id => register.Houses[id].Facts.Supplies).Select(s => s.SupplyGroupId).Distinct().Where(register.Groups.ContainsKey).Select(id => new SupplyGroupView(register, register.Groups[id])),
        u.Houses,
        u.Houses.Sum(id => register.Houses[id].Facts is var h ? h.Bays * h.WidthM * h.LengthM : 0),
        DistributionView.Of(u.u.FirstSeasonUsd)));

    /// <summary>Its option of the newest study that is worth most over the horizon, in the middle future, of those that need an outlay; null where none is worth anything.</summary>
    public OptionView? WorthMost
    {
        get
        {
            var best = Own.SelectMany(h => (register.OptionSet(h.Id)?.Facts.Options ?? []).Select(o => (House: h, Option: o, Result: register.NewestOption(h.Id, o.Key))))
                .Where(o => o.Result is { OutlayUsd: > 0, NpvUsd.P50: > 0 }).OrderByDescending(o => o.Result!.NpvUsd.P50).FirstOrDefault();
            return best.Result is null ? null : new(register, best.House, best.Option);
        }
    }

    /// <summary>Sales of a year, US dollars.</summary>
    public double? SalesUsd => item.Facts.SalesCents / 100.0;

    /// <summary>Wage, US dollars an hour; null = the study's.</summary>
    public double? WageUsdPerHour => item.Facts.WageUsdPerHour;

    /// <summary>Electricity, US dollars a kWh; null = the study's.</summary>
    public double? ElectricityUsdPerKwh => item.Facts.ElectricityUsdPerKwh;

    /// <summary>Its tanks and meters.</summary>
    public IEnumerable<SupplyGroupView> SupplyGroups => register.Groups.Values.Where(g => g.Facts.FarmId == item.Id).OrderBy(g => g.Remarks.Name, StringComparer.Ordinal).Select(g => new SupplyGroupView(register, g));

    /// <summary>Its quotes, newest first.</summary>
    public IEnumerable<QuoteView> Quotes => register.Quotes.Values.Where(q => q.Facts.FarmId == item.Id).OrderByDescending(q => q.Facts.QuotedOn).Select(q => new QuoteView(q));
}

/// <summary>Single tanks and meters.</summary>
public sealed partial class Query
{
    /// <summary>A tank or meter.</summary>
    public static SupplyGroupView? SupplyGroup([FromServices] Register register, [Id] string id) => register.Groups.TryGetValue(id, out var g) ? new(register, g) : null;
}
