using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Tests.Storage;

public sealed class UndoTests : IDisposable
{
    private readonly TemporaryRegister register = new();

    public void Dispose() => register.Dispose();

    [Fact]
    public void Undo_restores_every_hash_and_undo_of_the_undo_too()
    {
        var (before, house) = (register.Heads(), register.HouseNow());
        var change = register.Items.Save(Viewer.Local, "a", "wider, and a new one", "c1",
            [new(ItemKind.House, "h_a", 1, house.Facts with { WidthM = 12 }, new("wide")), new(ItemKind.House, "h_new", null, house.Facts with { DrawKey = 3 }, new("new"))]);
        var after = register.Heads();
        var undone = register.Items.Undo(Viewer.Local, change.ChangeId!, "u1");
        Assert.Empty(undone.Faults);
        Assert.Equal(before, register.Heads().Where(h => !h.StartsWith("h_new ", StringComparison.Ordinal)));
        Assert.Null(register.Items.Find<HouseFacts>(Viewer.Local, ItemKind.House, "h_new"));
        Assert.Equal("house 1", register.HouseNow().Remarks.Name);
        Assert.Empty(register.Items.Undo(Viewer.Local, undone.ChangeId!, "u2").Faults);
        Assert.Equal(after, register.Heads());
        Assert.Equal("wide", register.HouseNow().Remarks.Name);
    }

    [Fact]
    public void What_was_laid_on_top_is_named()
    {
        var first = register.Save("a", ItemKind.House, "h_a", 1, TemporaryRegister.House("a") with { WidthM = 10 }, "house 1");
        var second = register.Save("a", ItemKind.House, "h_a", 2, TemporaryRegister.House("a") with { WidthM = 11 }, "house 1");
        var fault = Assert.Single(register.Items.Undo(Viewer.Local, first.ChangeId!, "u1").Faults);
        var seq = register.History.Find(Viewer.Local, second.ChangeId!)!.Seq;
        Assert.Equal("LAID_ON_TOP", fault.Code);
        Assert.Contains($"change {seq}", fault.Remedy, StringComparison.Ordinal);
        Assert.Empty(register.Items.Undo(Viewer.Local, second.ChangeId!, "u2").Faults);
        Assert.Contains("change", Assert.Single(register.Items.Undo(Viewer.Local, first.ChangeId!, "u3").Faults).Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void An_added_farm_is_not_undone_from_under_its_houses()
    {
        var farm = register.Save("a", ItemKind.Farm, "f_new", null, new FarmFacts(), "Copper farm");
        register.Save("a", ItemKind.House, "h_new", null, TemporaryRegister.House("a") with { FarmId = "f_new", DrawKey = 4 }, "house 1");
        var fault = Assert.Single(register.Items.Undo(Viewer.Local, farm.ChangeId!, "u1").Faults);
        Assert.Equal("IN_USE", fault.Code);
        Assert.NotNull(register.Items.Find<FarmFacts>(Viewer.Local, ItemKind.Farm, "f_new"));
    }

    [Fact]
    public void An_undo_asked_twice_is_done_once()
    {
        var change = register.Save("a", ItemKind.House, "h_a", 1, TemporaryRegister.House("a") with { WidthM = 10 }, "house 1");
        var first = register.Items.Undo(Viewer.Local, change.ChangeId!, "same");
        var second = register.Items.Undo(Viewer.Local, change.ChangeId!, "same");
        Assert.Equal(first.ChangeId, second.ChangeId);
        Assert.Equal(3, register.HouseNow().Revision);
    }

    [Fact]
    public void A_change_that_is_not_there_cannot_be_undone() => Assert.Equal("NOT_FOUND", Assert.Single(register.Items.Undo(Viewer.Local, "ch_none", "u").Faults).Code);
}
