using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Fuel;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Storage.Kinds;

/// <summary>Tanks and meters.</summary>
internal sealed class SupplyGroupTable() : KindTable<SupplyGroupFacts>(ItemKind.SupplyGroup, "sg")
{
    /// <inheritdoc/>
    public override IReadOnlyList<Link> Links { get; } = [new("farm_id", ItemKind.Farm, Bond.GoesWith)];

    /// <inheritdoc/>
    public override IReadOnlyList<Unique> Uniques { get; } = [Unique.Name("farm_id")];

    /// <inheritdoc/>
    protected override Dictionary<string, object?> Columns(SupplyGroupFacts facts, Remarks remarks) => new(Named(remarks))
    {
        ["farm_id"] = facts.FarmId,
        ["fuel"] = facts.Fuel.ToString(),
        ["kind"] = facts.Kind.ToString(),
        ["tank_size_l"] = facts.TankSizeL,
    };

    /// <inheritdoc/>
    protected override IEnumerable<Reference> References(SupplyGroupFacts facts) => [new("farmId", ItemKind.Farm, facts.FarmId)];
}

/// <summary>Deliveries and bills, one record a supply group.</summary>
internal sealed class FuelRecordTable() : KindTable<FuelRecordFacts>(ItemKind.FuelRecord, "fr")
{
    /// <inheritdoc/>
    public override IReadOnlyList<Link> Links { get; } = [new("supply_group_id", ItemKind.SupplyGroup, Bond.GoesWith)];

    /// <inheritdoc/>
    public override IReadOnlyList<Unique> Uniques { get; } =
        [new(["supply_group_id"], "ALREADY_THERE", "supplyGroupId", "The tank or meter has a fuel record already.", "Add the lines to that record.")];

    /// <inheritdoc/>
    protected override Dictionary<string, object?> Columns(FuelRecordFacts facts, Remarks remarks) => new()
    {
        ["supply_group_id"] = facts.SupplyGroupId,
        ["first_on"] = facts.Entries.Count > 0 ? Text(facts.Entries.Min(e => e.FromOn)) : null,
        ["last_on"] = facts.Entries.Count > 0 ? Text(facts.Entries.Max(e => e.ToOn)) : null,
        ["entry_count"] = (long)facts.Entries.Count,
        ["held_count"] = (long)facts.Entries.Count(e => e.Held is not null),
    };

    /// <inheritdoc/>
    protected override IEnumerable<Reference> References(FuelRecordFacts facts) => [new("supplyGroupId", ItemKind.SupplyGroup, facts.SupplyGroupId)];
}

/// <summary>Contracts.</summary>
internal sealed class ContractTable() : KindTable<ContractFacts>(ItemKind.Contract, "ct")
{
    /// <inheritdoc/>
    public override IReadOnlyList<Link> Links { get; } =
        [new("supply_group_id", ItemKind.SupplyGroup, Bond.GoesWith), new("price_series_id", ItemKind.PriceSeries, Bond.Holds)];

    /// <inheritdoc/>
    protected override Dictionary<string, object?> Columns(ContractFacts facts, Remarks remarks) => new()
    {
        ["supply_group_id"] = facts.SupplyGroupId,
        ["price_series_id"] = facts.PriceSeriesId,
        ["kind"] = facts.Kind.ToString(),
        ["standing"] = facts.Standing.ToString(),
        ["starts_on"] = Text(facts.StartsOn),
        ["ends_on"] = Text(facts.EndsOn),
    };

    /// <inheritdoc/>
    protected override IEnumerable<Reference> References(ContractFacts facts)
    {
        yield return new("supplyGroupId", ItemKind.SupplyGroup, facts.SupplyGroupId);
        if (facts.PriceSeriesId is { } series)
        {
            yield return new("priceSeriesId", ItemKind.PriceSeries, series);
        }

        if (facts.RollsIntoContractId is { } next)
        {
            yield return new("rollsIntoContractId", ItemKind.Contract, next);
        }
    }
}
