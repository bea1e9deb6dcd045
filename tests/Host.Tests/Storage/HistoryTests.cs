using Dapper;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Tests.Storage;

public sealed class HistoryTests : IDisposable
{
    private readonly TemporaryRegister register = new();

    public void Dispose() => register.Dispose();

    [Fact]
    public void Revisions_differ_field_by_field_facts_before_remarks()
    {
        var house = register.HouseNow();
        register.Save("a", ItemKind.House, "h_a", 1, house.Facts with { WidthM = 10.5, RidgeM = 4, Surfaces = [new(SurfacePart.Roof, "singlefilm", new DateOnly(2024, 9, 1))] }, "long house");
        var (now, before) = (register.History.At(Viewer.Local, "h_a")!, register.History.At(Viewer.Local, "h_a", 1)!);
        Assert.Equal(
            [
                new FieldDifference("surfaces[Roof].coveringCode", "surfaces Roof, covering code", "doublefilm", "singlefilm", true),
                new FieldDifference("widthM", "width (m)", "9.144", "10.5", true),
                new FieldDifference("ridgeM", "ridge (m)", null, "4", true),
                new FieldDifference("name", "name", "house 1", "long house", false),
            ], FieldDifferences.Of(before.Facts, before.Remarks, now.Facts, now.Remarks));
    }

    [Fact]
    public void A_member_put_into_a_list_does_not_shift_the_others()
    {
        const string left = """{"options":[{"key":"a","life":1},{"key":"c","life":3}]}""";
        const string right = """{"options":[{"key":"a","life":1},{"key":"b","life":2},{"key":"c","life":3}]}""";
        Assert.Equal(["options[b].key", "options[b].life"], FieldDifferences.Of(left, null, right, null).Select(d => d.Field));
        Assert.Empty(FieldDifferences.Of(left, "{}", left, "{}"));
    }

    [Fact]
    public void A_long_record_is_told_as_one_difference()
    {
        var left = $"{{\"usdPerUnit\":[{string.Join(',', Enumerable.Range(0, 300))}]}}";
        var right = $"{{\"usdPerUnit\":[{string.Join(',', Enumerable.Range(0, 302).Select(i => i == 7 ? 999 : i))}]}}";
        var difference = Assert.Single(FieldDifferences.Of(left, null, right, null));
        Assert.Equal(("300 values, 1 of them different", "302 values, 3 of them different"), (difference.Left, difference.Right));
    }

    [Fact]
    public void History_is_paged_newest_first_and_tells_who_when_what()
    {
        for (var i = 1; i <= 5; i++)
        {
            register.Save("a", ItemKind.House, "h_a", i, TemporaryRegister.House("a") with { WidthM = 9 + i }, "house 1");
        }

        var all = register.History.History(Viewer.Local, "h_a");
        Assert.Equal([6L, 5, 4, 3, 2, 1], all.Select(r => r.Revision));
        Assert.Equal([4L, 3], register.History.History(Viewer.Local, "h_a", 2, before: 5).Select(r => r.Revision));
        Assert.All(all, r => Assert.Equal(("this machine", 24), (r.By, r.AtUtc.Length)));
        var changes = register.History.Changes(Viewer.Local, "a", 3);
        Assert.Equal(3, changes.Count);
        Assert.Equal(changes[2].Seq - 1, register.History.Changes(Viewer.Local, "a", 1, before: changes[2].Seq)[0].Seq);
        Assert.Equal([changes[1].Seq, changes[0].Seq], register.History.ChangesAfter(Viewer.Local, "a", changes[2].Seq).Select(c => c.Seq));
    }

    [Fact]
    public async Task The_feed_wakes_whoever_waits()
    {
        var waiting = register.Feed.Next;
        Assert.False(waiting.IsCompleted);
        register.Save("a", ItemKind.House, "h_a", 1, TemporaryRegister.House("a") with { WidthM = 8 }, "house 1");
        await waiting.WaitAsync(TimeSpan.FromSeconds(60));
    }

    [Fact]
    public void Blobs_that_nothing_uses_are_swept_and_the_others_stay()
    {
        register.Blobs.Save(Viewer.Local, [1, 2, 3]);
        Assert.Equal(0, register.Blobs.Sweep(Viewer.Local));
        Assert.Equal(1, register.Blobs.Sweep(Viewer.Program));
        register.Items.Delete(Viewer.Local, "f_b", 1, "d1");
        Assert.NotNull(register.Items.Delete(Viewer.Local, "ws_b", 1, "d2").ChangeId);
        Assert.Equal(0, register.Blobs.Sweep(Viewer.Program));
    }

    [Fact]
    public void A_file_of_the_first_shape_is_brought_to_the_newest_with_all_its_items()
    {
        var old = Path.Combine(Path.GetDirectoryName(register.Path)!, "old.db");
        var first = new Database(old, n => string.CompareOrdinal(n, "0003") < 0);
        using (var db = first.Open())
        {
            var farm = CanonicalJson.Write(new FarmFacts { RelatedKey = "kin" });
            db.Execute(
                """
                INSERT INTO coop (id, name, last_seq) VALUES ('c', 'old', 1);
                INSERT INTO change (id, coop_id, seq, at_utc, account_id, said, request_id) VALUES ('ch', 'c', 1, '2026-01-01T00:00:00.000Z', 'local', 'x', 'r');
                INSERT INTO revision VALUES ('f_1', 1, 'ch', 1, @farm, '{"name":"Old farm"}', @sha);
                INSERT INTO head VALUES ('f_1', 'c', 'farm', 1, @sha, 1);
                INSERT INTO farm (id, coop_id, live, name, name_key) VALUES ('f_1', 'c', 1, 'Old farm', 'old farm');
                """, new { farm, sha = CanonicalJson.Sha256(farm) });
        }

        var now = new Database(old);
        using var again = now.Open();
        Assert.Equal(("old farm", "kin"), again.QuerySingle<(string, string)>("SELECT name_key, related_key FROM farm"));
        Assert.Equal("Old farm", new ItemStore(now, new(TimeProvider.System), new()).Find<FarmFacts>(Viewer.Local, ItemKind.Farm, "f_1")!.Remarks.Name);
        Assert.Equal("ok", again.QuerySingle<string>("PRAGMA integrity_check"));
        Assert.Empty(again.Query("PRAGMA foreign_key_check"));
    }
}
