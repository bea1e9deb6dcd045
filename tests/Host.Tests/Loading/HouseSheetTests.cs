using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Host.Loading;

namespace FarmPortfolio.Host.Tests.Loading;

public class HouseSheetTests
{
    [Fact]
    public void Heads_in_any_order_with_units_in_the_head()
    {
        var rows = Sound("length (ft),Farm,house,WIDTH (ft),night set point (F),heated from,heated to,fuel\n96,Alder Reach,house 1,30,60,15 Feb,5/31,LP gas\n");
        var row = Assert.Single(rows);
        Assert.Equal((9.144, 29.2608), (row.WidthM, row.LengthM), (a, b) => Math.Abs(a.Item1 - b.Item1) < 1e-9 && Math.Abs(a.Item2 - b.Item2) < 1e-9);
        Assert.Equal(FuelKind.Propane, row.Fuel);
        Assert.Equal((new MonthDay(2, 15), new MonthDay(5, 31)), (row.Period!.From, row.Period.To));
        Assert.Equal((60 - 32) / 1.8, row.Period.NightC, 1e-9);
    }

    [Fact]
    public void A_row_of_units_under_the_head_a_byte_order_mark_and_crlf()
    {
        var row = Assert.Single(Sound("\uFEFFfarm;house;width;length;tank size;fuel\r\n;;m;m;l;\r\nAlder;h1;9;29;3785;propane\r\n"));
        Assert.Equal((9.0, 29.0, 3785.0), (row.WidthM, row.LengthM, row.TankSizeL));
    }

    [Fact]
    public void Units_said_for_the_whole_sheet() => Assert.Equal(9.144, Assert.Single(Sound("farm,house,width,length,fuel\nA,h,30,96,oil\n", si: false)).WidthM, 1e-9);

    [Theory]
    [InlineData("9.1,29", false, 1)]
    [InlineData("30,96", false, 0)]
    [InlineData("9.1,29", true, 0)]
    public void Metres_among_feet_are_asked_about_and_the_row_stands(string size, bool si, int asked)
    {
        var loaded = Read($"farm,house,width,length,fuel\nA,h,{size},oil\n", si);
        Assert.Single(loaded.Value!.All);
        Assert.Equal(asked, loaded.Faults.Count(f => f.Code == "LIKE_METRES" && f.Line == 2));
    }

    [Fact]
    public void A_unit_that_is_told_nowhere_is_asked_for()
    {
        var loaded = Read("farm,house,width,length,fuel\nA,h,30,96,oil\n");
        Assert.Null(loaded.Value);
        Assert.Equal(["width", "length"], loaded.Faults.Where(f => f.Code == "UNIT_NOT_TOLD").Select(f => f.Field));
    }

    [Theory]
    [InlineData("A,h,thirty,96,propane", "NOT_A_NUMBER", 3)]
    [InlineData("A,h,,96,propane", "EMPTY", 3)]
    [InlineData(",h,30,96,propane", "EMPTY", 1)]
    [InlineData("A,h,30,96,coal", "UNKNOWN_WORD", 5)]
    public void A_bad_cell_is_named_by_line_and_column_and_the_good_rows_stay(string bad, string code, int column)
    {
        var loaded = Read($"farm,house,width (ft),length (ft),fuel\nA,good,30,96,propane\n{bad}\n");
        Assert.Equal("good", Assert.Single(loaded.Value!.All).House);
        var fault = Assert.Single(loaded.Faults);
        Assert.Equal((code, 3, column), (fault.Code, fault.Line, fault.Column));
        Assert.False(string.IsNullOrWhiteSpace(fault.Remedy));
    }

    [Fact]
    public void A_house_named_twice_is_taken_once()
    {
        var loaded = Read("farm,house,width (ft),length (ft),fuel\nA,h 1,30,96,propane\na,H  1,20,48,propane\n");
        Assert.Equal(30 * 0.3048, Assert.Single(loaded.Value!.All).WidthM, 1e-9);
        Assert.Equal("DOUBLED", Assert.Single(loaded.Faults).Code);
    }

    [Fact]
    public void A_text_without_a_farm_column_is_no_sheet() => Assert.Equal("NO_HEAD", Assert.Single(Read("a,b\n1,2\n").Faults).Code);

    [Fact]
    public void The_empty_sheet_reads_back() => Assert.Equal("Example Farm", Assert.Single(Sound(HouseSheet.Template())).Farm);

    [Theory]
    [InlineData("alder reach", "alder reech", true)]
    [InlineData("alder reach", "alder reach", false)]
    [InlineData("house 1", "house 2", false)]
    [InlineData("ash", "asp", false)]
    public void Near_names(string left, string right, bool near) => Assert.Equal(near, HouseWords.Near(left, right));

    private static IReadOnlyList<HouseRow> Sound(string text, bool? si = null)
    {
        var loaded = Read(text, si);
        Assert.Empty(loaded.Faults);
        return loaded.Value!.All;
    }

    private static Loaded<HouseRows> Read(string text, bool? si = null)
    {
        using var source = new SourceText(new StringReader(text), "sheet.csv");
        return HouseSheet.Read(source, Catalogue.BuiltIn, si);
    }
}
