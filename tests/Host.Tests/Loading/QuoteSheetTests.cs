using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Host.Loading;

namespace FarmPortfolio.Host.Tests.Loading;

/// <summary>Sheets of quotes as builders and managers write them. Parts of a quote and kinds: common practice, no source.</summary>
public class QuoteSheetTests
{
    private const string Head = "farm,house,retrofit,quantity,unit price,material,labour,freight,once per visit,eligible,supplier,date,valid until,kind\n";

    [Fact]
    public void Rows_give_money_by_its_parts()
    {
        var row = Assert.Single(Read(Head + "Alder Reach,house 1,curtain,2880,1.25,,\"$1,800.50\",250,,no,a builder,5/12/2026,2026-08-31,Firm\n").Value!.All);
        Assert.Equal([("material", 360_000L), ("labour", 180_050L), ("freight", 25_000L)], row.Parts);
        Assert.Equal(("curtain", false, QuoteFirmness.Firm, new DateOnly(2026, 5, 12), (DateOnly?)new DateOnly(2026, 8, 31)), (row.RetrofitCode, row.Eligible, row.Firmness, row.QuotedOn, row.ValidUntilOn));
    }

    [Fact]
    public void A_retrofit_goes_by_its_title_too_and_heads_by_other_words_in_any_order()
    {
        var title = Catalogue.BuiltIn.Find(CatalogueKind.Retrofit, "foam")!.Title;
        var row = Assert.Single(Read($"Kind;Quoted on;Measure;Member;House;Labor (usd);Materials ($)\nbudget;2026-05-12;{title};Alder Reach;house 1;100;900\n").Value!.All);
        Assert.Equal(("foam", QuoteFirmness.Budget, true), (row.RetrofitCode, row.Firmness, row.Eligible));
        Assert.Equal([("material", 90_000L), ("labour", 10_000L)], row.Parts);
    }

    [Fact]
    public void The_sheet_to_fill_in_reads_without_a_fault()
    {
        var loaded = Read(QuoteSheet.Template());
        Assert.Empty(loaded.Faults);
        Assert.Single(loaded.Value!.All);
    }

    [Theory]
    [InlineData("A,house 1,curtain,,,100,,,,,,2026-05-12,,", "EMPTY", "kind", 14)]
    [InlineData("A,house 1,curtain,,,100,,,,,,2026-05-12,,binding", "UNKNOWN_WORD", "kind", 14)]
    [InlineData("A,house 1,tarpaulin,,,100,,,,,,2026-05-12,,firm", "UNKNOWN_CODE", "retrofit", 3)]
    [InlineData("A,house 1; house 2,curtain,,,100,,,,,,2026-05-12,,firm", "SEVERAL", "house", 2)]
    [InlineData("A,,curtain,,,100,,,,,,2026-05-12,,firm", "EMPTY", "house", 2)]
    [InlineData("A,house 1,curtain,,,100,,,,,,,,firm", "NO_DATE", "date", 12)]
    [InlineData("A,house 1,curtain,,,100,,,,,,in May,,firm", "BAD_DATE", "date", 12)]
    [InlineData("A,house 1,curtain,,,100,,,,,,2026-05-12,2026-04-30,firm", "OUT_OF_ORDER", "until", 13)]
    [InlineData("A,house 1,curtain,,,-100,,,,,,2026-05-12,,firm", "OUT_OF_RANGE", "material", 6)]
    [InlineData("A,house 1,curtain,,,\"412,5\",,,,,,2026-05-12,,firm", "NOT_A_NUMBER", "material", 6)]
    [InlineData("A,house 1,curtain,10,,,,,,,,2026-05-12,,firm", "EMPTY", "unit price", 5)]
    [InlineData("A,house 1,curtain,10,20,300,,,,,,2026-05-12,,firm", "DIFFERS", "material", 6)]
    [InlineData("A,house 1,curtain,,,0,,,,,,2026-05-12,,firm", "NO_MONEY", "material", 6)]
    [InlineData("A,house 1,curtain,,,100,,,,perhaps,,2026-05-12,,firm", "UNKNOWN_WORD", "eligible", 10)]
    public void A_wrong_row_is_left_out_and_told_by_line_and_column(string row, string code, string field, int column)
    {
        var loaded = Read(Head + "A,house 9,seal,,,50,,,,,,2026-05-12,,firm\n" + row + "\n");
        var fault = Assert.Single(loaded.Faults);
        Assert.Equal((code, field, 3, column), (fault.Code, fault.Field, fault.Line, fault.Column));
        Assert.NotEmpty(fault.Remedy);
        Assert.Equal("house 9", Assert.Single(loaded.Value!.All).House);
    }

    [Theory]
    [InlineData("house,retrofit,material\nh,curtain,5\n", "NO_HEAD")]
    [InlineData(Head, "EMPTY")]
    [InlineData(Head + "A,house 1,curtain,,,100,,,,,,31/05/2026,,firm\nA,house 2,curtain,,,100,,,,,,05/03/2026,,firm\n", "DAY_FIRST")]
    public void A_file_that_cannot_be_told_gives_nothing(string text, string code)
    {
        var loaded = Read(text);
        Assert.Contains(loaded.Faults, f => f.Code == code);
        Assert.True(loaded.Value is null or { All.Count: 0 });
    }

    private static Loaded<QuoteRows> Read(string text) => QuoteSheet.Read(new SourceText(new StringReader(text), "quotes.csv"), Catalogue.BuiltIn);
}
