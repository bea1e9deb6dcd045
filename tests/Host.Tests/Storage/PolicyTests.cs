using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Weather;
using FarmPortfolio.Host.Accounts;
using FarmPortfolio.Host.Storage.Items;
using FarmPortfolio.Host.Storage.Kinds;

namespace FarmPortfolio.Host.Tests.Storage;

public sealed class PolicyTests : IDisposable
{
    private static readonly Viewer OfA = new("ann", "Ann", ViewerRole.Manager, ["a"]);
    private static readonly Viewer Member = new("gil", "Gil", ViewerRole.Grower, ["a"], ["f_other"]);
    private readonly TemporaryRegister register = new(awarded: true);

    public static IEnumerable<TheoryDataRow<string>> Kinds => KindTables.All.Select(t => new TheoryDataRow<string>(t.Kind));

    public void Dispose() => register.Dispose();

    [Theory, MemberData(nameof(Kinds))]
    public void A_viewer_of_one_co_op_sees_nothing_of_another(string kind)
    {
        var id = KindTables.Of(kind).Prefix + "_b";
        Assert.Empty(register.Items.All<object>(OfA, "b", kind));
        Assert.Null(register.Items.Find<object>(OfA, kind, id));
        Assert.Empty(register.Items.Some<object>(OfA, kind, [id]));
        Assert.Null(register.Items.Where(OfA, id));
        Assert.Empty(register.Items.GoingWith(OfA, id));
        Assert.Empty(register.History.History(OfA, id));
        Assert.Null(register.History.At(OfA, id));
        Assert.Single(register.Items.All<object>(Viewer.Local, "b", kind));
        Assert.NotEmpty(register.History.History(Viewer.Local, id));
        foreach (var link in KindTables.Of(kind).Links)
        {
            Assert.Empty(register.Items.PointingAt<object>(OfA, kind, link.Column, [KindTables.Of(link.Target).Prefix + "_b"]));
            Assert.NotEmpty(register.Items.PointingAt<object>(Viewer.Local, kind, link.Column, [KindTables.Of(link.Target).Prefix + "_b"]));
        }
    }

    [Fact]
    public void A_viewer_of_one_co_op_writes_nothing_of_another_and_cannot_tell_what_is_there()
    {
        var change = register.History.Changes(Viewer.Local, "b", 1)[0].Id;
        var before = register.Revisions();
        var house = TemporaryRegister.House("b");
        Assert.Equal("NOT_FOUND", Assert.Single(register.Save("b", ItemKind.House, "h_b", 1, house, "x", OfA).Faults).Code);
        Assert.Equal(Told(register.Save("a", ItemKind.House, "h_none", 1, TemporaryRegister.House("a"), "x", OfA)), Told(register.Save("a", ItemKind.House, "h_b", 1, TemporaryRegister.House("a"), "x", OfA)));
        Assert.Equal(Told(register.Items.Delete(OfA, "h_none", 1, "d1")), Told(register.Items.Delete(OfA, "h_b", 1, "d2")));
        Assert.Equal(Told(register.Items.Undo(OfA, "ch_none", "u1")), Told(register.Items.Undo(OfA, change, "u2")));
        Assert.Empty(register.History.Changes(OfA, "b", 10));
        Assert.Equal(0, register.History.LastSeq(OfA, "b"));
        Assert.Null(register.History.Find(OfA, change));
        Assert.Empty(register.History.Of(OfA, change));
        Assert.Equal(before, register.Revisions());
        Assert.Equal(["a"], register.Coops.All(OfA).Select(c => c.Id));
        var sha = register.Items.Find<WeatherStationFacts>(Viewer.Local, ItemKind.WeatherStation, "ws_b")!.Facts.Seasons[0].Sha256;
        Assert.Null(register.Blobs.Read(OfA, sha));
        Assert.NotNull(register.Blobs.Read(Viewer.Local, sha));
    }

    [Fact]
    public void Shared_records_are_read_by_all_and_written_by_the_program_alone()
    {
        var series = new Engine.Fuel.PriceSeriesFacts { Fuel = Engine.FuelKind.Propane, Market = Engine.Fuel.PriceMarket.Retail, Class = Engine.Fuel.PriceClass.RetailFuel, Unit = "gal", FirstMonthOn = new(2020, 1, 1), UsdPerUnit = [2.5] };
        Assert.Equal("NOT_ALLOWED", Assert.Single(register.Save(Policy.Shared, ItemKind.PriceSeries, "ps_s", null, series, "s").Faults).Code);
        Assert.NotNull(register.Save(Policy.Shared, ItemKind.PriceSeries, "ps_s", null, series, "s", Viewer.Program).ChangeId);
        Assert.NotNull(register.Items.Find<object>(OfA, ItemKind.PriceSeries, "ps_s"));
        Assert.Equal(2, register.Items.All<object>(OfA, "a", ItemKind.PriceSeries).Count);
    }

    [Fact]
    public void A_grower_sees_and_writes_the_own_farm_alone()
    {
        register.Save("a", ItemKind.Farm, "f_other", null, new FarmFacts { WeatherStationId = "ws_a" }, "Gil's farm");
        Assert.Equal("f_other", Assert.Single(register.Items.All<FarmFacts>(Member, "a", ItemKind.Farm)).Id);
        Assert.Empty(register.Items.All<object>(Member, "a", ItemKind.House));
        Assert.Empty(register.Items.All<object>(Member, "a", ItemKind.OptionSet));
        Assert.Empty(register.Items.All<object>(Member, "a", ItemKind.FuelRecord));
        Assert.Single(register.Items.All<object>(Member, "a", ItemKind.WeatherStation));
        Assert.Empty(register.History.History(Member, "h_a"));
        Assert.Empty(register.History.Changes(Member, "a", 10));
        var before = register.Revisions();
        Assert.NotEmpty(register.Save("a", ItemKind.House, "h_a", 1, TemporaryRegister.House("a"), "x", Member).Faults);
        Assert.NotEmpty(register.Save("a", ItemKind.House, null, null, TemporaryRegister.House("a") with { DrawKey = 1 }, "x", Member).Faults);
        Assert.NotEmpty(register.Save("a", ItemKind.Farm, null, null, new FarmFacts(), "x", Member).Faults);
        Assert.NotEmpty(register.Save("a", ItemKind.WeatherStation, "ws_a", 1, new WeatherStationFacts { LatitudeDeg = 1, LongitudeDeg = 1, ElevationM = 1 }, "x", Member).Faults);
        Assert.Equal(before, register.Revisions());
        Assert.NotNull(register.Save("a", ItemKind.House, null, null, TemporaryRegister.House("a") with { DrawKey = 1, FarmId = "f_other", Supplies = [] }, "own", Member).ChangeId);
    }

    [Fact]
    public void A_lender_writes_nothing()
    {
        var lender = new Viewer("lee", "Lee", ViewerRole.Lender, ["a"]);
        Assert.Equal("NOT_ALLOWED", Assert.Single(register.Save("a", ItemKind.House, "h_a", 1, TemporaryRegister.House("a"), "x", lender).Faults).Code);
    }

    private static string Told(SaveOutcome outcome) => string.Join('|', outcome.Faults) + outcome.ConflictItemId;
}
