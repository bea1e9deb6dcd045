using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Storage.Kinds;

/// <summary>A co-op's own catalogue entries, which lie over the built-in ones.</summary>
internal sealed class CatalogueEntryTable() : KindTable<CatalogueFacts>(ItemKind.CatalogueEntry, "ce")
{
    /// <inheritdoc/>
    public override IReadOnlyList<Unique> Uniques { get; } = [new(["kind", "code"], "ALREADY_THERE", "code", "The co-op has an entry of its own for it already.", "Change that entry.")];

    /// <inheritdoc/>
    protected override Dictionary<string, object?> Columns(CatalogueFacts facts, Remarks remarks) => new() { ["kind"] = facts.Kind.ToString(), ["code"] = facts.Code };
}

/// <summary>The options of a house, one set a house.</summary>
internal sealed class OptionSetTable() : KindTable<OptionSetFacts>(ItemKind.OptionSet, "os")
{
    /// <inheritdoc/>
    public override IReadOnlyList<Link> Links { get; } = [new("house_id", ItemKind.House, Bond.GoesWith)];

    /// <inheritdoc/>
    public override IReadOnlyList<Unique> Uniques { get; } = [new(["house_id"], "ALREADY_THERE", "houseId", "The house has its options already.", "Change those.")];

    /// <inheritdoc/>
    protected override Dictionary<string, object?> Columns(OptionSetFacts facts, Remarks remarks) => new() { ["house_id"] = facts.HouseId };

    /// <inheritdoc/>
    protected override IEnumerable<Reference> References(OptionSetFacts facts) => [new("houseId", ItemKind.House, facts.HouseId)];
}

/// <summary>Suppliers' quotes.</summary>
internal sealed class QuoteTable() : KindTable<QuoteFacts>(ItemKind.Quote, "q")
{
    /// <inheritdoc/>
    public override IReadOnlyList<Link> Links { get; } = [new("farm_id", ItemKind.Farm, Bond.GoesWith)];

    /// <inheritdoc/>
    protected override Dictionary<string, object?> Columns(QuoteFacts facts, Remarks remarks) => new()
    {
        ["farm_id"] = facts.FarmId,
        ["quoted_on"] = Text(facts.QuotedOn),
        ["valid_until_on"] = Text(facts.ValidUntilOn),
        ["firmness"] = facts.Firmness.ToString(),
    };

    /// <inheritdoc/>
    protected override IEnumerable<Reference> References(QuoteFacts facts) =>
        [new("farmId", ItemKind.Farm, facts.FarmId), .. facts.Lines.Select(l => l.HouseId).Distinct(StringComparer.Ordinal).Select(h => new Reference("lines", ItemKind.House, h))];
}
