using FarmPortfolio.Engine.Lending;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Storage.Kinds;

/// <summary>Years of farms' statements; no study reads them.</summary>
internal sealed class StatementTable() : KindTable<StatementFacts>(ItemKind.Statement, "sm")
{
    /// <inheritdoc/>
    public override bool Studied => false;

    /// <inheritdoc/>
    public override IReadOnlyList<Link> Links { get; } = [new("farm_id", ItemKind.Farm, Bond.GoesWith)];

    /// <inheritdoc/>
    public override IReadOnlyList<Unique> Uniques { get; } = [new(["farm_id", "year"], "ALREADY_THERE", "year", "The farm has a statement of this year already.", "Change that one, or give another year.")];

    /// <inheritdoc/>
    protected override Dictionary<string, object?> Columns(StatementFacts facts, Remarks remarks) => new() { ["farm_id"] = facts.FarmId, ["year"] = (long)facts.Year };

    /// <inheritdoc/>
    protected override IEnumerable<Reference> References(StatementFacts facts) => [new("farmId", ItemKind.Farm, facts.FarmId)];
}

/// <summary>Loan cases; they read a study, and no study reads them.</summary>
internal sealed class LoanCaseTable() : KindTable<LoanCaseFacts>(ItemKind.LoanCase, "lc")
{
    /// <inheritdoc/>
    public override bool Studied => false;

    /// <inheritdoc/>
    public override IReadOnlyList<Link> Links { get; } = [new("farm_id", ItemKind.Farm, Bond.GoesWith), new("house_id", ItemKind.House, Bond.GoesWith)];

    /// <inheritdoc/>
    protected override Dictionary<string, object?> Columns(LoanCaseFacts facts, Remarks remarks) => new(Named(remarks))
    {
        ["farm_id"] = facts.FarmId,
        ["house_id"] = facts.HouseId,
        ["option_id"] = $"{facts.HouseId}~{facts.OptionKey}",
        ["state"] = facts.State.ToString(),
        ["amount_cents"] = facts.AmountCents,
    };

    /// <inheritdoc/>
    protected override IEnumerable<Reference> References(LoanCaseFacts facts) => [new("farmId", ItemKind.Farm, facts.FarmId), new("houseId", ItemKind.House, facts.HouseId)];
}
