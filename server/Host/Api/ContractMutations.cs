using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Host.Storage.Items;
using GraphQL;

namespace FarmPortfolio.Host.Api;

/// <summary>A step of a price by monthly volume.</summary>
public sealed record VolumeTierInput(double FromUnits, double AdderUsdPerUnit);

/// <summary>A contract to save; no id = a new one. What a kind does not use is left empty.</summary>
public sealed record SaveContractInput(
    [property: Id] string? Id, int? ExpectedRevision, [property: Id] string RequestId, [property: Id] string SupplyGroupId, ContractKind Kind, string Unit, string? Name, ContractStanding? Standing, double? PriceUsdPerUnit,
    double? OverIndexUsdPerUnit, double? CapUsdPerUnit, double? FloorUsdPerUnit, double? AdderUsdPerUnit, double? IndexShare, double? ScatterUsdPerUnit, double? BlockUnits, int? BlockPaidMonth, LeftoverRule? Leftover, double? BilledShare,
    double? MinimumTakeUnits, IReadOnlyList<VolumeTierInput>? Tiers, DateOnly? StartsOn, DateOnly? EndsOn, double? MonthlyFeeUsd, double? SeasonFeeUsd, double? DeliveryFeeUsd, double? UnitsPerDelivery, double? TankRentUsdPerYear,
    double? DemandUsdPerKw, double? LoadFactor, double? VolumeShare, double? InterruptedDays, [property: Id] string? RollsIntoContractId, [property: Id] string? PriceSeriesId);

/// <summary>Contracts in force and offers.</summary>
public sealed partial class Mutation
{
    /// <summary>Saves a contract or an offer of a tank or meter.</summary>
    public static SavePayload SaveContract([FromServices] Register register, SaveContractInput input)
    {
        var known = input.Id is null ? null : register.Contracts.GetValueOrDefault(input.Id);
        if ((input.Id is not null && known is null) || !register.Groups.TryGetValue(input.SupplyGroupId, out var group))
        {
            return Missing("contract, tank or meter");
        }

        var facts = Facts(input, known?.Facts);
        var faults = new List<Fault>(ContractChecks.Of(facts, group.Facts.Fuel, group.Facts.StandByFuel));
        if (facts.RollsIntoContractId is { } next && next != input.Id && !(register.Contracts.TryGetValue(next, out var following) && following.Facts.SupplyGroupId == group.Id))
        {
            faults.Add(new("NOT_FOUND", "rollsIntoContractId", "The contract rolls into one that is not this tank's or meter's.", "Choose one of its contracts or offers, or none for the monthly index."));
        }

        if (facts.PriceSeriesId is { } own && (!register.Prices.TryGetValue(own, out var series) || series.Facts.Fuel != group.Facts.Fuel))
        {
            faults.Add(new("NOT_FOUND", "priceSeriesId", "The contract follows a price series that is not there, or one of another fuel.", "Choose a series of the tank's or meter's fuel, or none for the index."));
        }
        else if ((register.Now with { OwnSeries = register.Prices.ToDictionary(p => p.Key, p => p.Value.Facts) }).BasisOf(facts, group.Facts.Fuel).Fault is { } told)
        {
            faults.Add(told);
        }

        var others = register.Contracts.Values.Where(c => c.Id != input.Id && c.Facts.SupplyGroupId == group.Id && c.Facts.Standing == ContractStanding.InForce).Select(c => c.Facts).ToList();
        if (facts.Standing == ContractStanding.InForce && faults.Count == 0)
        {
            faults.AddRange(ContractChecks.Together([.. others, facts]));
        }

        var name = string.IsNullOrWhiteSpace(input.Name) ? known?.Remarks.Name ?? Usual(facts) : input.Name.Trim();
        var said = facts.Standing == ContractStanding.Offered ? $"offer {name} for {group.Remarks.Name} is {(known is null ? "added" : "changed")}" : $"contract of {group.Remarks.Name} is changed";
        return faults.Count > 0
            ? new(null, false, faults.Select(FaultView.Of))
            : Saved(register.Items.Save(register.Viewer, register.Coop.Id, said, input.RequestId, [new(ItemKind.Contract, input.Id, input.ExpectedRevision, facts, (known?.Remarks ?? new()) with { Name = name })]));
    }

    private static ContractFacts Facts(SaveContractInput input, ContractFacts? known) => (known ?? new() { SupplyGroupId = input.SupplyGroupId, Kind = input.Kind, Unit = input.Unit }) with
    {
        SupplyGroupId = input.SupplyGroupId,
        Kind = input.Kind,
        Unit = input.Unit,
        Standing = input.Standing ?? known?.Standing ?? ContractStanding.InForce,
        PriceUsdPerUnit = input.Kind is ContractKind.Fixed or ContractKind.PreBought ? input.PriceUsdPerUnit : null,
        OverIndexUsdPerUnit = input.Kind == ContractKind.Indexed ? null : input.OverIndexUsdPerUnit,
        CapUsdPerUnit = input.Kind is ContractKind.Capped or ContractKind.Collared ? input.CapUsdPerUnit : null,
        FloorUsdPerUnit = input.Kind == ContractKind.Collared ? input.FloorUsdPerUnit : null,
        AdderUsdPerUnit = input.AdderUsdPerUnit,
        IndexShare = input.IndexShare,
        ScatterUsdPerUnit = input.Kind is ContractKind.Fixed or ContractKind.PreBought ? null : input.ScatterUsdPerUnit,
        BlockUnits = input.Kind == ContractKind.Indexed ? null : input.BlockUnits,
        BlockPaidMonth = input.BlockPaidMonth,
        Leftover = input.Kind == ContractKind.PreBought ? input.Leftover : null,
        BilledShare = input.Kind == ContractKind.PreBought ? input.BilledShare : null,
        MinimumTakeUnits = input.MinimumTakeUnits,
        Tiers = [.. (input.Tiers ?? []).Select(t => new VolumeTier(t.FromUnits, t.AdderUsdPerUnit))],
        StartsOn = input.StartsOn,
        EndsOn = input.EndsOn,
        MonthlyFeeUsd = input.MonthlyFeeUsd,
        SeasonFeeUsd = input.SeasonFeeUsd,
        DeliveryFeeUsd = input.DeliveryFeeUsd,
        UnitsPerDelivery = input.UnitsPerDelivery,
        TankRentUsdPerYear = input.TankRentUsdPerYear,
        DemandUsdPerKw = input.DemandUsdPerKw,
        LoadFactor = input.LoadFactor,
        VolumeShare = input.VolumeShare,
        InterruptedDays = input.InterruptedDays,
        RollsIntoContractId = input.RollsIntoContractId,
        PriceSeriesId = input.PriceSeriesId,
    };

    private static string Usual(ContractFacts contract) => contract.Kind switch
    {
        ContractKind.Fixed => "fixed price",
        ContractKind.Capped => "capped",
        ContractKind.Collared => "collared",
        ContractKind.PreBought => "pre-bought block",
        _ => "monthly index",
    };
}
