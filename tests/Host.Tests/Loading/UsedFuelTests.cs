using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Engine.Units;
using FarmPortfolio.Host.Loading;
using FarmPortfolio.Host.Storage;
using FarmPortfolio.Host.Storage.Items;

namespace FarmPortfolio.Host.Tests.Loading;

/// <summary>A winter's fuel in the sheet of farms and houses.</summary>
public class UsedFuelTests
{
    private const string Head = "farm,house,width (ft),length (ft),fuel,tank or meter";

    [Fact]
    public void Rows_of_one_tank_are_added_up_and_each_fuel_takes_its_own_unit()
    {
        var (items, faults) = Planned($"{Head},used last winter,unit used\nAlder,h1,30,96,propane,tank,\"1,204.5\",gallons\nAlder,h2,30,96,propane,tank,800,gal\nAlder,h3,30,96,propane,tank,,\n"
            + "Rook,h1,30,96,gas,,1500,therms\nSedge,h1,30,96,pellets,,9,tons\nTeal,h1,30,96,electricity,,40000,kWh\nWren,h1,30,96,oil,,120,MMBtu\n");
        Assert.Empty(faults);
        var lines = items.Select(i => i.Facts).OfType<FuelRecordFacts>().Select(r => Assert.Single(r.Entries)).ToList();
        Assert.Equal([(2004.5, "gal"), (1500, "therm"), (9, "ton"), (40000, "kWh"), (120, "MMBtu")], lines.Select(l => (l.Quantity, l.Unit)));
        Assert.All(lines, l => Assert.Equal((FuelEntryKind.Total, new DateOnly(2025, 7, 1), new DateOnly(2026, 6, 30)), (l.Kind, l.FromOn, l.ToOn)));
        Assert.Equal(2004.5 * HeatingValues.KwhPerUnit(FuelKind.Propane, "gal")!.Value, lines[0].KwhFuel, 1e-9);
    }

    [Theory]
    [InlineData("used last winter (gal)")]
    [InlineData("\"Fuel used, gal\"")]
    [InlineData("used_last_winter [Gallons]")]
    public void The_head_tells_the_unit(string head) => Assert.Equal((1250, "gal"), Used($"{Head},{head}\nAlder,h1,30,96,propane,,1250\n"));

    [Fact]
    public void A_row_of_units_under_the_head_tells_it_too() => Assert.Equal((1250, "therm"), Used("farm,house,width,length,fuel,used last winter\n,,ft,ft,,therm\nAlder,h1,30,96,gas,1250\n"));

    [Theory]
    [InlineData("2023-24", 2023)]
    [InlineData("2023/2024", 2023)]
    [InlineData("1999-00", 1999)]
    public void The_winter_may_be_told(string winter, int season)
    {
        var (items, faults) = Planned($"{Head},used (gal),winter used\nAlder,h1,30,96,propane,,1250,{winter}\n");
        Assert.Empty(faults);
        Assert.Equal(new DateOnly(season, 7, 1), Assert.Single(items.Select(i => i.Facts).OfType<FuelRecordFacts>()).Entries[0].FromOn);
    }

    [Fact]
    public void A_unit_told_nowhere_is_asked_for_even_where_the_sheet_is_said_to_be_in_feet()
    {
        var loaded = Read("farm,house,width,length,fuel,used last winter\nAlder,h1,30,96,propane,1250\n", si: false);
        Assert.Null(loaded.Value);
        var fault = Assert.Single(loaded.Faults);
        Assert.Equal(("UNIT_NOT_TOLD", 6), (fault.Code, fault.Column));
        Assert.Contains("used last winter (gal)", fault.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("NOT_A_NUMBER", 7, "propane", "much", "gal", "")]
    [InlineData("NOT_A_NUMBER", 7, "propane", "1.204.5", "gal", "")]
    [InlineData("OUT_OF_RANGE", 7, "propane", "-1250", "gal", "")]
    [InlineData("OUT_OF_RANGE", 7, "propane", "0", "gal", "")]
    [InlineData("UNIT_NOT_TOLD", 8, "propane", "1250", "", "")]
    [InlineData("UNKNOWN_UNIT", 8, "propane", "1250", "barrels", "")]
    [InlineData("UNKNOWN_UNIT", 7, "propane", "1250", "therm", "")]
    [InlineData("UNKNOWN_UNIT", 7, "electricity", "1250", "gal", "")]
    [InlineData("NOT_A_WINTER", 9, "propane", "1250", "gal", "2024")]
    [InlineData("NOT_A_WINTER", 9, "propane", "1250", "gal", "2024-26")]
    [InlineData("IN_FUTURE", 7, "propane", "1250", "gal", "2026-27")]
    public void What_cannot_be_is_named_by_line_and_column_and_leaves_the_row_out(string code, int column, string fuel, string used, string unit, string winter)
    {
        var (items, faults) = Planned($"{Head},used last winter,unit used,winter used\nAlder,good,30,96,oil,,900,gal,\nRook,bad,30,96,{fuel},,{used},{unit},{winter}\n");
        var fault = Assert.Single(faults);
        Assert.Equal((code, 3, column), (fault.Code, fault.Line, fault.Column));
        Assert.Contains("The row is left out.", fault.Remedy, StringComparison.Ordinal);
        Assert.Equal("good", Assert.Single(items, i => i.Kind == ItemKind.House).Remarks.Name);
        Assert.Single(items, i => i.Kind == ItemKind.FuelRecord);
    }

    [Theory]
    [InlineData("TWO_UNITS", "1250,gal,", "40000,kWh,")]
    [InlineData("TWO_WINTERS", "1250,gal,", "1250,gal,2023-24")]
    public void Houses_of_one_tank_are_told_alike(string code, string first, string second)
    {
        var (items, faults) = Planned($"{Head},used last winter,unit used,winter used\nAlder,h1,30,96,propane,tank,{first}\nAlder,h2,30,96,propane,tank,{second}\n");
        Assert.Equal((code, 3, 7), (Assert.Single(faults).Code, faults[0].Line, faults[0].Column));
        Assert.Single(items, i => i.Kind == ItemKind.House);
    }

    [Theory]
    [InlineData("125", "kWh", 1)]
    [InlineData("125000", "gal", 1)]
    [InlineData("2600", "gal", 0)]
    [InlineData("39000", "gal", 0)]
    public void A_use_that_the_floor_cannot_have_burned_is_asked_about_and_not_kept(string used, string unit, int asked)
    {
        // 125 kWh over 268 m2 is half a kWh a square metre, 125,000 gal are 12,500: a slip of the unit, a nought too many
        var (items, faults) = Planned($"{Head},used last winter,unit used\nAlder,h1,30,96,propane,tank,{used},{unit}\n");
        Assert.Equal(asked, faults.Count(f => f is { Code: "ABSURD_USE", Line: 2, Column: 7 } && f.Message.Contains("sq ft", StringComparison.Ordinal)));
        Assert.Equal(asked, faults.Count);
        Assert.Equal(1 - asked, items.Count(i => i.Kind == ItemKind.FuelRecord));
        Assert.Single(items, i => i.Kind == ItemKind.House);
    }

    [Fact]
    public void A_tank_with_a_record_keeps_it()
    {
        var farm = new Item<FarmFacts>("f", 1, string.Empty, string.Empty, new(), new("Alder"), string.Empty, "c");
        var tank = new Item<SupplyGroupFacts>("sg", 1, string.Empty, string.Empty, new() { FarmId = "f", Fuel = FuelKind.Propane, Kind = SupplyKind.Tank }, new("tank"), string.Empty, "c");
        var (items, faults) = Planned($"{Head},used last winter (gal)\nAlder,h1,30,96,propane,tank,1250\n", new([farm], [], [tank], [], ["sg"]));
        Assert.Equal(("ALREADY_THERE", 2, 7), (Assert.Single(faults).Code, faults[0].Line, faults[0].Column));
        Assert.Empty(items);
    }

    private static (double, string) Used(string text)
    {
        var (items, faults) = Planned(text);
        Assert.Empty(faults);
        var entry = Assert.Single(items.Select(i => i.Facts).OfType<FuelRecordFacts>()).Entries[0];
        return (entry.Quantity, entry.Unit);
    }

    private static (IReadOnlyList<ItemToSave> Items, IReadOnlyList<Fault> Faults) Planned(string text, KnownFarms? known = null)
    {
        var loaded = Read(text);
        var plan = new FarmsPlan(known ?? new([], [], [], [], []), Catalogue.BuiltIn, new Ids(new SecondOfNovember()), 2026, "s.csv");
        plan.Add(loaded.Value?.All ?? []);
        return (plan.Items, [.. loaded.Faults, .. plan.Faults]);
    }

    private sealed class SecondOfNovember : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => new(2026, 11, 2, 12, 0, 0, TimeSpan.Zero);
    }

    private static Loaded<HouseRows> Read(string text, bool? si = null)
    {
        using var source = new SourceText(new StringReader(text), "s.csv");
        return HouseSheet.Read(source, Catalogue.BuiltIn, si);
    }
}
