using Dapper;
using FarmPortfolio.Engine.Funding;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage;
using FarmPortfolio.Host.Storage.Items;
using Microsoft.Data.Sqlite;

namespace FarmPortfolio.Host.Tests.Storage;

/// <summary>Decisions are written once, hash to their checksum, name the one before, and nothing changes or deletes them.</summary>
public sealed class DecisionTests : IDisposable
{
    private static readonly Viewer OfA = new("ann", "Ann", ViewerRole.Manager, ["a"]);
    private static readonly Viewer Member = new("gil", "Gil", ViewerRole.Grower, ["a"], ["f_a"]);
    private readonly TemporaryRegister register = new(awarded: true);

    public void Dispose() => register.Dispose();

    [Fact]
    public void Each_body_hashes_to_its_checksum_and_names_the_one_before_within_its_co_op()
    {
        Decide("a", 1);
        Decide("b", 1);
        Decide("a", 2, corrects: register.Decisions.All(Viewer.Local, "a")[0].Id);
        var rows = register.Decisions.All(Viewer.Local, "a");
        Assert.Equal([1L, 2L], rows.Select(r => r.Number));
        Assert.All(rows, r => Assert.Equal(CanonicalJson.Sha256(r.Body), r.BodySha256));
        Assert.Equal((string.Empty, rows[0].BodySha256), (rows[0].PreviousSha256, rows[1].PreviousSha256));
        Assert.Equal(rows[0].BodySha256, rows[1].Decision.PreviousSha256);
        Assert.Equal(rows[0].Id, rows[1].CorrectsId);
        Assert.Equal(CanonicalJson.Write(rows[1].Decision), rows[1].Body);
        Assert.Null(register.Decisions.Broken(Viewer.Local, "a"));
        Assert.Equal(string.Empty, register.Decisions.All(Viewer.Local, "b")[0].PreviousSha256);
    }

    [Fact]
    public void The_database_itself_refuses_to_change_or_delete_one()
    {
        Decide("a", 1);
        using var db = register.Database.Open();
        Assert.Contains("never changed", Assert.Throws<SqliteException>(() => db.Execute("UPDATE decision SET body = '{}'")).Message, StringComparison.Ordinal);
        Assert.Contains("never deleted", Assert.Throws<SqliteException>(() => db.Execute("DELETE FROM decision")).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_text_tampered_with_is_found_out_by_the_chain()
    {
        Decide("a", 1);
        Decide("a", 2, corrects: register.Decisions.All(Viewer.Local, "a")[0].Id);
        using (var db = register.Database.Open())
        {
            db.Execute("DROP TRIGGER decision_never_changes");
            db.Execute("UPDATE decision SET body = replace(body, '\"grantUsd\":5400', '\"grantUsd\":9400') WHERE number = 1");
        }

        Assert.Equal(1, register.Decisions.Broken(Viewer.Local, "a"));
        using (var db = register.Database.Open())
        {
            // with its own checksum mended too, the next one gives it away
            var body = db.QuerySingle<string>("SELECT body FROM decision WHERE number = 1");
            db.Execute("UPDATE decision SET body_sha256 = @sha WHERE number = 1", new { sha = CanonicalJson.Sha256(body) });
        }

        Assert.Equal(2, register.Decisions.Broken(Viewer.Local, "a"));
    }

    [Fact]
    public void No_source_of_the_program_changes_or_deletes_one() =>
        Assert.All(Repository.Files("*.cs", "server").Select(File.ReadAllText), text => Assert.DoesNotMatch("(UPDATE decision\\b|DELETE FROM decision\\b)", text));

    [Fact]
    public void A_study_that_a_decision_names_cannot_be_deleted()
    {
        var study = register.Studies.Add(Viewer.Local, "a", "test").Study;
        Decide("a", 1, study: study.Id);
        using var db = register.Database.Open();
        db.Execute("DELETE FROM study_input");
        Assert.Contains("FOREIGN KEY", Assert.Throws<SqliteException>(() => db.Execute("DELETE FROM study WHERE id = @Id", new { study.Id })).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_decision_is_one_change_with_its_awards_all_or_nothing_and_is_not_undone()
    {
        var before = register.Revisions();
        var wrong = register.Decisions.Decide(Viewer.Local, "a", "decided", "r1", Decision("a"), id => [Round("a", 7), Award("a", id)]);
        Assert.Equal("fo_a", wrong.ConflictItemId);
        Assert.Empty(register.Decisions.All(Viewer.Local, "a"));
        Assert.Equal(before, register.Revisions());

        var done = Decide("a", 1, request: "r2");
        Assert.Equal(done.ChangeId, register.Decisions.Decide(Viewer.Local, "a", "decided", "r2", Decision("a"), id => [Round("a", 1), Award("a", id)]).ChangeId);
        Assert.Single(register.Decisions.All(Viewer.Local, "a"));
        Assert.Equal("DECIDED", Assert.Single(register.Items.Undo(Viewer.Local, done.ChangeId!, "u1").Faults).Code);
        var award = register.Items.All<AwardFacts>(Viewer.Local, "a", ItemKind.Award).Single(a => a.Facts.DecisionId is not null);
        Assert.Equal(register.Decisions.All(Viewer.Local, "a")[0].Id, award.Facts.DecisionId);
    }

    [Fact]
    public void An_award_of_a_decision_is_never_deleted_one_entered_by_hand_is_and_both_keep_their_round_farm_and_house()
    {
        Assert.All(new[] { "fo_a", "f_a", "h_a" }, (id, i) => Assert.Contains(register.Items.Delete(Viewer.Local, id, 1, $"d1{i}").Faults, f => f.Code == "IN_USE"));
        Assert.Empty(register.Items.Delete(Viewer.Local, "aw_a", 1, "d2").Faults);
        Decide("a", 1);
        var award = register.Items.All<AwardFacts>(Viewer.Local, "a", ItemKind.Award).Single(a => a.Facts.DecisionId is not null);
        Assert.Equal("NOT_DELETED", Assert.Single(register.Items.Delete(Viewer.Local, award.Id, award.Revision, "d3").Faults).Code);
        Assert.All(new[] { "f_a", "h_a" }, (id, i) => Assert.Contains(register.Items.Delete(Viewer.Local, id, 1, $"d4{i}").Faults, f => f.Code == "IN_USE"));
    }

    [Fact]
    public void A_viewer_of_one_co_op_reads_and_writes_no_decision_of_another_and_a_member_none_at_all()
    {
        Decide("b", 1);
        Decide("a", 1);
        var id = register.Decisions.All(Viewer.Local, "b")[0].Id;
        Assert.Empty(register.Decisions.All(OfA, "b"));
        Assert.Null(register.Decisions.Find(OfA, id));
        Assert.Null(register.Decisions.Broken(OfA, "b"));
        Assert.NotNull(register.Decisions.Find(Viewer.Local, id));
        var refused = register.Decisions.Decide(OfA, "b", "decided", "x1", Decision("b"), d => [Round("b", 2), Award("b", d)]);
        Assert.Equal("NOT_FOUND", Assert.Single(refused.Faults).Code);
        Assert.Single(register.Decisions.All(Viewer.Local, "b"));

        Assert.Empty(register.Decisions.All(Member, "a"));
        Assert.Null(register.Decisions.Find(Member, register.Decisions.All(Viewer.Local, "a")[0].Id));
        Assert.Empty(register.Items.All<FundingRoundFacts>(Member, "a", ItemKind.FundingRound));
        Assert.NotEmpty(register.Items.All<AwardFacts>(Member, "a", ItemKind.Award));
        Assert.NotEmpty(register.Decisions.Decide(Member, "a", "decided", "x2", Decision("a"), d => [Round("a", 2), Award("a", d)]).Faults);
        Assert.Single(register.Decisions.All(Viewer.Local, "a"));
    }

    private SaveOutcome Decide(string coop, int revision, string? corrects = null, string? study = null, string? request = null)
    {
        var outcome = register.Decisions.Decide(Viewer.Local, coop, "a round is decided", request ?? Guid.NewGuid().ToString(), Decision(coop) with { Kind = corrects is null ? DecisionKind.Round : DecisionKind.Correction, CorrectsId = corrects, StudyId = study }, id => [Round(coop, revision), Award(coop, id)]);
        Assert.Empty(outcome.Faults);
        Assert.Null(outcome.ConflictItemId);
        return outcome;
    }

    private static RoundDecision Decision(string coop) => new()
    {
        RoundId = $"fo_{coop}",
        RoundRevision = 1,
        DecidedOn = new(2026, 3, 10),
        Round = new(),
        Order = [new() { HouseId = $"h_{coop}", FarmId = $"f_{coop}", OptionKey = "curtain-now", Title = "Curtain", Funded = true, GrantUsd = 5400, OutlayUsd = 9000, EligibleUsd = 9000 }],
    };

    private static ItemToSave Round(string coop, int revision) => new(ItemKind.FundingRound, $"fo_{coop}", revision, new FundingRoundFacts { State = RoundState.Decided }, new("round 1"));

    private static ItemToSave Award(string coop, string decision) => new(ItemKind.Award, null, null, TemporaryRegister.Award(coop) with { DecisionId = decision }, new());
}
