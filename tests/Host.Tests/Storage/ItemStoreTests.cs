using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage.Items;
using FarmPortfolio.Host.Storage.Kinds;

namespace FarmPortfolio.Host.Tests.Storage;

public sealed class ItemStoreTests : IDisposable
{
    private readonly TemporaryRegister register = new();

    public void Dispose() => register.Dispose();

    [Fact]
    public void A_house_is_saved_and_read_as_it_was()
    {
        var saved = register.Save("a", ItemKind.House, null, null, TemporaryRegister.House("a") with { DrawKey = 5, FilmGapM = 0.1 + 0.2 }, "  house\u00a02 ");
        var house = register.Items.Find<HouseFacts>(Viewer.Local, ItemKind.House, Assert.Single(saved.Ids))!;
        Assert.StartsWith("h_", house.Id, StringComparison.Ordinal);
        Assert.Equal((1, 0.1 + 0.2, "this machine", "a"), (house.Revision, house.Facts.FilmGapM, house.ChangedBy, house.CoopId));
    }

    [Fact]
    public void Of_two_saves_from_one_revision_one_wins_and_the_other_keeps_nothing()
    {
        var house = register.HouseNow();
        Assert.NotNull(register.Save("a", ItemKind.House, house.Id, house.Revision, house.Facts with { WidthM = 10 }, "house 1").ChangeId);
        var before = register.Revisions();
        var late = register.Save("a", ItemKind.House, house.Id, house.Revision, house.Facts with { WidthM = 11 }, "house 1");
        Assert.Equal((null, house.Id), (late.ChangeId, late.ConflictItemId));
        Assert.Equal(before, register.Revisions());
        Assert.Equal(10, register.HouseNow().Facts.WidthM);
    }

    [Fact]
    public async Task Of_many_saves_at_once_from_one_revision_exactly_one_wins()
    {
        var house = register.HouseNow();
        var seq = register.History.LastSeq(Viewer.Local, "a");
        var outcomes = await Task.WhenAll(Enumerable.Range(0, 16).Select(i => Task.Run(() => register.Save("a", ItemKind.House, house.Id, house.Revision, house.Facts with { WidthM = 9 + i * 0.1 }, "house 1"))));
        Assert.Single(outcomes, o => o.ChangeId is not null);
        Assert.All(outcomes.Where(o => o.ChangeId is null), o => Assert.Equal(house.Id, o.ConflictItemId));
        Assert.Equal(seq + 1, register.History.LastSeq(Viewer.Local, "a"));
        Assert.Equal(house.Revision + 1, register.HouseNow().Revision);
    }

    [Fact]
    public async Task A_repeated_request_adds_nothing_and_answers_as_the_first_time()
    {
        var facts = TemporaryRegister.House("a") with { DrawKey = 6 };
        var outcomes = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => Task.Run(() => register.Save("a", ItemKind.House, null, null, facts, "house 9", request: "once"))));
        Assert.Single(outcomes.Select(o => (o.ChangeId, string.Join(' ', o.Ids))).Distinct());
        Assert.Equal(2, register.Items.All<HouseFacts>(Viewer.Local, "a", ItemKind.House).Count);
        Assert.Equal("REQUEST_USED", Assert.Single(register.Save("b", ItemKind.House, null, null, TemporaryRegister.House("b") with { DrawKey = 7 }, "house 9", request: "once").Faults).Code);
    }

    [Theory]
    [InlineData("house 1")]
    [InlineData("  HOUSE   1 ")]
    public void A_name_is_taken_among_live_siblings(string name)
    {
        var taken = register.Save("a", ItemKind.House, null, null, TemporaryRegister.House("a") with { DrawKey = 8 }, name);
        var fault = Assert.Single(taken.Faults);
        Assert.Equal(("NAME_TAKEN", "name"), (fault.Code, fault.Field));
        Assert.Null(taken.ChangeId);
        Assert.Empty(register.Items.Delete(Viewer.Local, "h_a", 1, "d").Faults);
        Assert.NotNull(register.Save("a", ItemKind.House, null, null, TemporaryRegister.House("a") with { DrawKey = 8 }, name).ChangeId);
    }

    [Fact]
    public void Two_houses_may_exchange_names_in_one_change_and_back_again()
    {
        register.Save("a", ItemKind.House, "h_a2", null, TemporaryRegister.House("a") with { DrawKey = 9 }, "house 2");
        var facts = TemporaryRegister.House("a");
        var swapped = register.Items.Save(Viewer.Local, "a", "exchanged", "swap", [new(ItemKind.House, "h_a", 1, facts, new("house 2")), new(ItemKind.House, "h_a2", 1, facts with { DrawKey = 9 }, new("house 1"))]);
        Assert.Empty(swapped.Faults);
        Assert.Empty(register.Items.Undo(Viewer.Local, swapped.ChangeId!, "back").Faults);
        Assert.Equal("house 1", register.HouseNow().Remarks.Name);
    }

    [Theory]
    [InlineData("f_none", "sg_a", "farmId")]
    [InlineData("f_b", "sg_a", "farmId")]
    [InlineData("sg_a", "sg_a", "farmId")]
    [InlineData("f_a", "sg_b", "supplies")]
    public void What_an_item_points_at_must_be_of_its_co_op_and_kind(string farm, string group, string field)
    {
        var before = register.Revisions();
        var refused = register.Save("a", ItemKind.House, null, null, TemporaryRegister.House("a") with { DrawKey = 10, FarmId = farm, Supplies = [new(group)] }, "house 3");
        var fault = Assert.Single(refused.Faults);
        Assert.Equal(("NOT_FOUND", field), (fault.Code, fault.Field));
        Assert.Equal(before, register.Revisions());
    }

    [Fact]
    public void A_farm_goes_with_all_that_hangs_on_it_as_one_change_and_comes_back_by_one_undo()
    {
        // uses of a blob are counted by revision, and undoing adds one
        IEnumerable<string> Rows() => register.QueryRows().Where(r => !r.StartsWith("blob_use", StringComparison.Ordinal));
        var (heads, rows) = (register.Heads(), Rows().ToList());
        Assert.Equal(["ct_a", "ev_a", "f_a", "fr_a", "h_a", "lc_a", "os_a", "q_a", "sg_a", "sm_a", "tr_a"], register.Items.GoingWith(Viewer.Local, "f_a").Select(g => g.Id).Order(StringComparer.Ordinal));
        var deleted = register.Items.Delete(Viewer.Local, "f_a", 1, "delete");
        Assert.Empty(deleted.Faults);
        Assert.Equal(11, register.History.Find(Viewer.Local, deleted.ChangeId!)!.ItemCount);
        Assert.Empty(register.Items.All<FarmFacts>(Viewer.Local, "a", ItemKind.Farm));
        Assert.Null(register.Items.Find<HouseFacts>(Viewer.Local, ItemKind.House, "h_a"));
        Assert.Empty(register.Items.Undo(Viewer.Local, deleted.ChangeId!, "undo").Faults);
        Assert.Equal(heads, register.Heads());
        Assert.Equal(rows, Rows());
    }

    [Theory]
    [InlineData("ws_a", "Amber farm")]
    [InlineData("sg_a", "house 1")]
    [InlineData("ps_a", "index")]
    public void What_others_need_is_not_deleted(string id, string user)
    {
        var before = register.Heads();
        var fault = Assert.Single(register.Items.Delete(Viewer.Local, id, 1, "delete").Faults);
        Assert.Equal("IN_USE", fault.Code);
        Assert.Contains(user, fault.Message, StringComparison.Ordinal);
        Assert.Equal(before, register.Heads());
    }

    [Fact]
    public void A_deletion_from_an_old_revision_is_a_conflict()
    {
        var house = register.HouseNow();
        register.Save("a", ItemKind.House, house.Id, 1, house.Facts with { WidthM = 10 }, "house 1");
        Assert.Equal("h_a", register.Items.Delete(Viewer.Local, "h_a", 1, "delete").ConflictItemId);
        Assert.NotNull(register.Items.Find<HouseFacts>(Viewer.Local, ItemKind.House, "h_a"));
    }

    [Fact]
    public void What_is_deleted_is_changed_by_nobody_until_the_deletion_is_undone()
    {
        Assert.NotNull(register.Items.Delete(Viewer.Local, "h_a", 1, "delete").ChangeId);
        Assert.Equal("h_a", register.Save("a", ItemKind.House, "h_a", 1, TemporaryRegister.House("a"), "house 1").ConflictItemId);
        Assert.Equal("DELETED", Assert.Single(register.Save("a", ItemKind.House, "h_a", 2, TemporaryRegister.House("a"), "house 1").Faults).Code);
        Assert.Equal("NOT_FOUND", Assert.Single(register.Save("a", ItemKind.House, "h_unknown", 1, TemporaryRegister.House("a"), "house 1").Faults).Code);
    }

    [Fact]
    public void Query_tables_written_anew_are_the_same_row_by_row()
    {
        register.Items.Delete(Viewer.Local, "h_b", 1, "delete");
        register.Save("a", ItemKind.Award, "aw_a", null, TemporaryRegister.Award("a"), "award");
        var house = register.HouseNow();
        register.Save("a", ItemKind.House, "h_a", 1, house.Facts with { WidthM = 10, FilmDueYear = 2028 }, "long house");
        var before = register.QueryRows();
        Assert.Contains(before, r => r.Contains("long house", StringComparison.Ordinal));
        using (var db = register.Database.Open())
        using (var transaction = db.BeginTransaction())
        {
            QueryTables.Rebuild(db, transaction);
            transaction.Commit();
        }

        Assert.Equal(before, register.QueryRows());
        Assert.All(KindTables.All, t => Assert.Contains(before, r => r.StartsWith(t.Kind + ":", StringComparison.Ordinal)));
    }

    [Fact]
    public void Nothing_that_is_done_changes_or_takes_away_a_revision()
    {
        var seen = register.Revisions();
        void Check()
        {
            var now = register.Revisions();
            Assert.Empty(seen.Except(now));
            seen = now;
        }

        register.Save("a", ItemKind.House, "h_a", 1, TemporaryRegister.House("a") with { WidthM = 8 }, "house one");
        Check();
        var deleted = register.Items.Delete(Viewer.Local, "f_a", 1, "d1");
        Check();
        register.Items.Undo(Viewer.Local, deleted.ChangeId!, "u1");
        Check();
        Assert.True(register.History.History(Viewer.Local, "h_a").Count >= 4);
    }
}
