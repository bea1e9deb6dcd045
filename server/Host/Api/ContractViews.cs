using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>A step of a price by monthly volume.</summary>
[Name("VolumeTier")]
public sealed record VolumeTierView(double FromUnits, double AdderUsdPerUnit);

/// <summary>How a tank or meter pays, or an offer.</summary>
[Name("Contract")]
public sealed class ContractView(Item<ContractFacts> item)
{
    /// <summary>Identifier.</summary>
    [Id] public string Id => item.Id;

    /// <summary>Revision.</summary>
    public int Revision => (int)item.Revision;

    /// <summary>Name.</summary>
    public string? Name => item.Remarks.Name;

    /// <summary>Kind.</summary>
    public ContractKind Kind => item.Facts.Kind;

    /// <summary>In force or offered.</summary>
    public ContractStanding Standing => item.Facts.Standing;

    /// <summary>Unit of its prices.</summary>
    public string Unit => item.Facts.Unit;

    /// <summary>Fixed price or price of the block, US dollars a unit.</summary>
    public double? PriceUsdPerUnit => item.Facts.PriceUsdPerUnit;

    /// <summary>What price or cap is over the index of July, agreed anew each season, US dollars a unit.</summary>
    public double? OverIndexUsdPerUnit => item.Facts.OverIndexUsdPerUnit;

    /// <summary>Cap, US dollars a unit.</summary>
    public double? CapUsdPerUnit => item.Facts.CapUsdPerUnit;

    /// <summary>Floor, US dollars a unit.</summary>
    public double? FloorUsdPerUnit => item.Facts.FloorUsdPerUnit;

    /// <summary>a of a + b x index, US dollars a unit; null = 0.</summary>
    public double? AdderUsdPerUnit => item.Facts.AdderUsdPerUnit;

    /// <summary>b of a + b x index; null = 1.</summary>
    public double? IndexShare => item.Facts.IndexShare;

    /// <summary>Block a season, units.</summary>
    public double? BlockUnits => item.Facts.BlockUnits;

    /// <summary>Month in which the block is paid, 1 to 12.</summary>
    public int? BlockPaidMonth => item.Facts.BlockPaidMonth;

    /// <summary>What becomes of an unused block.</summary>
    public LeftoverRule? Leftover => item.Facts.Leftover;

    /// <summary>Spread of what is paid about a + b x index, US dollars a unit, drawn once a season; null = none told.</summary>
    public double? ScatterUsdPerUnit => item.Facts.ScatterUsdPerUnit;

    /// <summary>Share of an unused block that is billed.</summary>
    public double? BilledShare => item.Facts.BilledShare;

    /// <summary>Least units a season.</summary>
    public double? MinimumTakeUnits => item.Facts.MinimumTakeUnits;

    /// <summary>First day.</summary>
    public DateOnly? StartsOn => item.Facts.StartsOn;

    /// <summary>Last day.</summary>
    public DateOnly? EndsOn => item.Facts.EndsOn;

    /// <summary>Charge a month, US dollars.</summary>
    public double? MonthlyFeeUsd => item.Facts.MonthlyFeeUsd;

    /// <summary>Fee a season, US dollars.</summary>
    public double? SeasonFeeUsd => item.Facts.SeasonFeeUsd;

    /// <summary>Charge a delivery, US dollars.</summary>
    public double? DeliveryFeeUsd => item.Facts.DeliveryFeeUsd;

    /// <summary>Units a delivery.</summary>
    public double? UnitsPerDelivery => item.Facts.UnitsPerDelivery;

    /// <summary>Tank rent a year, US dollars.</summary>
    public double? TankRentUsdPerYear => item.Facts.TankRentUsdPerYear;

    /// <summary>Demand charge, US dollars a kW.</summary>
    public double? DemandUsdPerKw => item.Facts.DemandUsdPerKw;

    /// <summary>Mean over peak load.</summary>
    public double? LoadFactor => item.Facts.LoadFactor;

    /// <summary>Share of the volume; null = all.</summary>
    public double? VolumeShare => item.Facts.VolumeShare;

    /// <summary>Days a season without supply.</summary>
    public double? InterruptedDays => item.Facts.InterruptedDays;

    /// <summary>Steps by monthly volume.</summary>
    public IEnumerable<VolumeTierView> Tiers => item.Facts.Tiers.Select(t => new VolumeTierView(t.FromUnits, t.AdderUsdPerUnit));

    /// <summary>The price series it follows; null = the fuel's index.</summary>
    [Id] public string? PriceSeriesId => item.Facts.PriceSeriesId;

    /// <summary>The contract it rolls into; null = the index.</summary>
    [Id] public string? RollsIntoContractId => item.Facts.RollsIntoContractId;
}
