using System.Data.Common;
using Dapper;
using FarmPortfolio.Engine.Funding;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Storage.Kinds;

/// <summary>Funding rounds.</summary>
internal sealed class FundingRoundTable() : KindTable<FundingRoundFacts>(ItemKind.FundingRound, "fo")
{
    /// <inheritdoc/>
    public override bool Studied => false;

    /// <inheritdoc/>
    public override IReadOnlyList<Unique> Uniques { get; } = [Unique.Name()];

    /// <inheritdoc/>
    protected override Dictionary<string, object?> Columns(FundingRoundFacts facts, Remarks remarks) => new(Named(remarks))
    {
        ["state"] = facts.State.ToString(),
        ["budget_cents"] = (long)Math.Round(100 * facts.Rules.BudgetUsd),
    };
}

/// <summary>Awards, with their steps as rows.</summary>
internal sealed class AwardTable() : KindTable<AwardFacts>(ItemKind.Award, "aw")
{
    /// <inheritdoc/>
    public override bool Studied => false;

    /// <inheritdoc/>
    public override string? NeverDeleted => "An award is not deleted: what was promised stays on record. Give its money back instead, with the reason.";

    /// <summary>What a decision gave stays; what was entered by hand can be taken back.</summary>
    public override bool IsKept(DbConnection db, DbTransaction transaction, string id) =>
        db.ExecuteScalar<long>("SELECT count(*) FROM award WHERE id = @id AND decision_id IS NOT NULL", new { id }, transaction) > 0;

    /// <inheritdoc/>
    public override IReadOnlyList<Link> Links { get; } =
        [new("round_id", ItemKind.FundingRound, Bond.Holds), new("farm_id", ItemKind.Farm, Bond.Holds), new("house_id", ItemKind.House, Bond.Holds)];

    /// <inheritdoc/>
    public override void WriteParts(DbConnection db, DbTransaction transaction, string id, string? facts)
    {
        db.Execute("DELETE FROM milestone WHERE award_id = @id", new { id }, transaction);
        if (facts is not null)
        {
            db.Execute("INSERT INTO milestone (award_id, kind, due_on, done_on) VALUES (@id, @Kind, @Due, @Done)",
                CanonicalJson.Read<AwardFacts>(facts).Milestones.Select(m => new { id, Kind = m.Kind.ToString(), Due = Text(m.DueOn), Done = Text(m.DoneOn) }), transaction);
        }
    }

    /// <inheritdoc/>
    protected override Dictionary<string, object?> Columns(AwardFacts facts, Remarks remarks) => new()
    {
        ["decision_id"] = facts.DecisionId,
        ["round_id"] = facts.RoundId,
        ["farm_id"] = facts.FarmId,
        ["house_id"] = facts.HouseId,
        ["option_id"] = $"{facts.HouseId}~{facts.OptionKey}",
        ["state"] = facts.State,
        ["grant_cap_cents"] = facts.GrantCapCents,
        ["grant_share"] = facts.GrantShare,
    };

    /// <inheritdoc/>
    protected override IEnumerable<Reference> References(AwardFacts facts) =>
        [new("roundId", ItemKind.FundingRound, facts.RoundId), new("farmId", ItemKind.Farm, facts.FarmId), new("houseId", ItemKind.House, facts.HouseId)];
}
