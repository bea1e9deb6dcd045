using System.Text;
using FarmPortfolio.Engine;
using FarmPortfolio.Engine.Farms;
using FarmPortfolio.Engine.Retrofits;
using FarmPortfolio.Host.Loading;

namespace FarmPortfolio.Host.Tests.Loading;

/// <summary>What sheets look like that come from anywhere: every importer takes it as meant, or says what is wrong and where; nothing is misread without a word.</summary>
public class NastySheetsTests
{
    private const string Houses = "farm,house,width (ft),length (ft),fuel\n";
    private const string Tickets = "date,quantity,unit,kind,total\n";
    private const string Notes = "house,time,what,reading,inside (F),outside (F),state\n";
    private const string Days = "DATE,TMAX (F),TMIN (F)\n";
    private const string Hours = "time,temperature (F)\n";
    private const string Months = "month,price\n";
    private const string Offers = "farm,house,retrofit,material,labour,supplier,date,kind\n";
    private const string Normals = "month,mean temperature (F)\n";

    public static IEnumerable<TheoryDataRow<string>> Kinds => new[] { "houses", "fuel", "notebook", "weather", "hourly", "normals", "prices", "quotes" }.Select(k => new TheoryDataRow<string>(k));

    [Theory, MemberData(nameof(Kinds))]
    public void An_empty_file_and_a_head_alone_say_so_once(string kind)
    {
        var empty = Assert.Single(Read(kind, string.Empty).Faults);
        Assert.Equal(("EMPTY", "nasty.csv"), (empty.Code, empty.File));
        var alone = Assert.Single(Read(kind, HeadOf(kind)).Faults);
        Assert.Contains(alone.Code, new[] { "EMPTY", "NO_HEAD" });
        Assert.NotEmpty(alone.Remedy);
    }

    [Theory, MemberData(nameof(Kinds))]
    public void A_byte_order_mark_crlf_and_semicolons_read_as_plain_text_does(string kind)
    {
        var plain = HeadOf(kind) + RowsOf(kind);
        var other = "\uFEFF" + plain.Replace(",", ";", StringComparison.Ordinal).Replace("\n", "\r\n", StringComparison.Ordinal);
        var (left, right) = (Read(kind, plain), Read(kind, other));
        Assert.Equal(left.Faults.Select(f => (f.Code, f.Line)), right.Faults.Select(f => (f.Code, f.Line)));
        Assert.True(left.Kept && right.Kept, $"{kind}: {left.Kept} {right.Kept}");
        Assert.DoesNotContain(left.Faults, f => f.Line is not null);
    }

    [Theory, MemberData(nameof(Kinds))]
    public void A_column_that_stands_twice_is_said(string kind)
    {
        var head = HeadOf(kind).TrimEnd('\n');
        var last = head.Split(',')[^1];
        var fault = Read(kind, $"{head},{last}\n").Faults.FirstOrDefault(f => f.Code is "DOUBLED" or "TWO_COLUMNS");
        Assert.True(fault is { Line: 1 } && fault.Column == head.Split(',').Length + 1, $"{kind}: {fault}");
    }

    [Fact]
    public void A_thousand_columns_make_one_fault_and_not_a_thousand()
    {
        var many = string.Join(',', Enumerable.Range(0, 1000).Select(i => $"column {i}"));
        foreach (var (kind, row) in new[] { ("houses", "A,h,30,96,propane"), ("fuel", "2024-01-05,300,gal,full,600"), ("quotes", "A,h,curtain,100,50,b,2026-01-05,firm") })
        {
            var loaded = Read(kind, HeadOf(kind).TrimEnd('\n') + "," + many + "\n" + row + new string(',', 1000) + "\n");
            var fault = Assert.Single(loaded.Faults, f => f.Code == "UNKNOWN_COLUMN");
            Assert.Contains("999 more columns", fault.Message, StringComparison.Ordinal);
            Assert.True(loaded.Kept);
        }

        var prices = Assert.Single(Read("prices", "month," + many + "\n").Faults, f => f.Code == "WHICH_COLUMN");
        Assert.True(prices.Message.Length < 400 && prices.Message.Contains("988 more", StringComparison.Ordinal), prices.Message);
    }

    [Theory]
    [InlineData("houses", "A,h,\"30,5\",96,propane\n", "NOT_A_NUMBER", 3)]
    [InlineData("fuel", "2024-01-05,\"412,5\",gal,full,600\n", "NOT_A_NUMBER", 2)]
    [InlineData("fuel", "2024-01-05,\"1,2,3\",gal,full,600\n", "NOT_A_NUMBER", 2)]
    [InlineData("fuel", "2024-01-05,NaN,gal,full,600\n", "NOT_A_NUMBER", 2)]
    [InlineData("fuel", "2024-01-05,Infinity,gal,full,600\n", "NOT_A_NUMBER", 2)]
    [InlineData("fuel", "2024-01-05,1,204.5,gal,full,600\n", "TOO_MANY_CELLS", 6)]
    [InlineData("houses", "A,h,Infinity,96,propane\n", "NOT_A_NUMBER", 3)]
    [InlineData("quotes", "A,h,curtain,Infinity,50,b,2026-01-05,firm\n", "NOT_A_NUMBER", 4)]
    [InlineData("quotes", "A,h,curtain,\"412,5\",50,b,2026-01-05,firm\n", "NOT_A_NUMBER", 4)]
    [InlineData("quotes", "A,h,curtain,1,204.5,50,b,2026-01-05,firm\n", "TOO_MANY_CELLS", 9)]
    [InlineData("weather", "2024-01-05,Infinity,20\n", "NOT_A_NUMBER", 2)]
    [InlineData("weather", "2024-01-05,\"30,5\",20\n", "NOT_A_NUMBER", 2)]
    [InlineData("hourly", "2024-01-05 08:00,-Infinity\n", "NOT_A_NUMBER", 2)]
    [InlineData("normals", "January,\"30,5\"\n", "NOT_A_NUMBER", 2)]
    [InlineData("normals", "January,NaN\n", "NOT_A_NUMBER", 2)]
    [InlineData("normals", "January,30,5\n", "TOO_MANY_CELLS", 3)]
    [InlineData("normals", "13,30.5\n", "NOT_A_MONTH", 1)]
    [InlineData("prices", "2024-01,Infinity\n", "NOT_A_NUMBER", 2)]
    [InlineData("prices", "2024-01,\"2,35\"\n", "NOT_A_NUMBER", 2)]
    [InlineData("prices", "2024-01,-2\n", "NOT_POSITIVE", 2)]
    [InlineData("notebook", "A,2025-11-01,meter,NaN,60,30,idle\n", "NOT_A_NUMBER", 4)]
    public void A_number_that_is_none_is_named_by_line_and_column(string kind, string row, string code, int column)
    {
        var fault = Read(kind, HeadOf(kind) + row).Faults.First(f => f.Line is not null);
        Assert.Equal((code, 2, column), (fault.Code, fault.Line, fault.Column));
    }

    [Fact]
    public void Thousands_in_quotation_marks_are_read()
    {
        using var text = new SourceText(new StringReader(Tickets + "2024-01-05,\"1,204.5\",gal,full,\"$2,400.00\"\n"), "nasty.csv");
        var entry = Assert.Single(FuelSheet.Read(text, FuelKind.Propane, SupplyKind.Tank).Value!.Entries).Entry;
        Assert.Equal((1204.5, 240_000L), (entry.Quantity, entry.TotalCents!.Value));
    }

    [Theory]
    [InlineData("weather", "{0},40,30\n")]
    [InlineData("hourly", "{0} 08:00,40\n")]
    [InlineData("fuel", "{0},300,gal,full,600\n")]
    [InlineData("quotes", "A,h{1},curtain,100,50,b,{0},firm\n")]
    [InlineData("notebook", "A,{0} 08:00,meter,{1},60,30,idle\n")]
    public void Days_before_months_are_refused_whole_for_half_would_be_misread(string kind, string row)
    {
        string Rows(params string[] dates) => string.Concat(dates.Select((d, i) => string.Format(System.Globalization.CultureInfo.InvariantCulture, row, d, i)));
        var mixed = Read(kind, HeadOf(kind) + Rows("05/01/2024", "12/01/2024", "19/01/2024", "26/01/2024"));
        Assert.False(mixed.Kept);
        var fault = Assert.Single(mixed.Faults, f => f.Code == "DAY_FIRST");
        Assert.Equal((4, "nasty.csv"), (fault.Line, fault.File));
        Assert.Contains("05/01/2024", fault.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(Read(kind, HeadOf(kind) + Rows("1/5/2024", "1/12/2024", "1/19/2024")).Faults, f => f.Code == "DAY_FIRST");
    }

    [Theory]
    [InlineData("01/01/2024,2.5\n01/02/2024,2.6\n01/03/2024,2.7\n", false)]
    [InlineData("15/01/2024,2.5\n15/02/2024,2.6\n05/03/2024,2.7\n", false)]
    [InlineData("1/1/2024,2.5\n2/1/2024,2.6\n3/1/2024,2.7\n", true)]
    [InlineData("1/31/2024,2.5\n2/29/2024,2.6\n3/31/2024,2.7\n", true)]
    public void Months_written_day_first_are_refused(string rows, bool kept)
    {
        var loaded = Read("prices", Months + rows);
        Assert.Equal(kept, loaded.Kept);
        Assert.Equal(!kept, loaded.Faults.Any(f => f is { Code: "DAY_FIRST", Line: 2 }));
    }

    [Fact]
    public void Where_no_date_tells_the_order_that_is_said()
    {
        using var text = new SourceText(new StringReader(Tickets + "1/5/2024,300,gal,full,600\n2/7/2024,300,gal,full,600\n"), "nasty.csv");
        var loaded = FuelSheet.Read(text, FuelKind.Propane, SupplyKind.Tank);
        Assert.Empty(loaded.Faults);
        Assert.Contains("1/5/2024 are read month first", Assert.Single(loaded.Notes), StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_break_within_quotation_marks_keeps_the_count_of_lines()
    {
        var loaded = Read("fuel", "date,quantity,unit,note\n2024-01-05,300,gal,\"left by\nthe door\"\n2024-02-05,lots,gal,\n");
        Assert.Equal(("NOT_A_NUMBER", 4), (Assert.Single(loaded.Faults).Code, loaded.Faults[0].Line));
    }

    [Fact]
    public void Letters_that_are_not_in_utf8_are_said_with_their_line()
    {
        using var stream = new MemoryStream(Encoding.Latin1.GetBytes(Houses + "Rio,h,30,96,propane\nR\u00EDo,h,30,96,propane\n"));
        using var text = SourceText.Open(stream, "nasty.csv", 1 << 20);
        var fault = Assert.Single(HouseSheet.Read(text, Catalogue.BuiltIn).Faults);
        Assert.Equal(("NOT_UTF8", 3, 2), (fault.Code, fault.Line, fault.Column));
    }

    [Fact]
    public void Two_hundred_thousand_lines_are_read_whole_or_refused_by_their_number()
    {
        Assert.Contains(Read("fuel", Tickets + Repeat(i => $"{new DateOnly(2000, 1, 1).AddDays(i % 9000):yyyy-MM-dd},300,gal,full,600\n")).Faults, f => f.Code == "TOO_MANY_ROWS");
        Assert.Contains(Read("houses", Houses + Repeat(_ => "A,h,30,96,propane\n")).Faults, f => f.Code == "TOO_MANY_ROWS");
        Assert.Contains(Read("quotes", Offers + Repeat(_ => "A,h,curtain,100,50,b,2026-01-05,firm\n")).Faults, f => f.Code == "TOO_MANY_ROWS");
        var book = Read("notebook", Notes + Repeat(i => $"{(i % 2 == 0 ? "A" : "B")},{new DateTime(2020, 1, 1).AddMinutes(10 * (i / 2)):yyyy-MM-dd HH:mm},meter,,60,30,idle\n"));
        Assert.True(book.Kept);
        var hours = Read("hourly", Hours + Repeat(i => $"{new DateTime(2000, 7, 1).AddHours(i):yyyy-MM-dd HH:mm},{40 + i % 24}\n"));
        Assert.True(hours.Kept);
    }

    private static string Repeat(Func<int, string> row) => string.Concat(Enumerable.Range(0, 200_000).Select(row));

    private static string HeadOf(string kind) => kind switch { "houses" => Houses, "fuel" => Tickets, "notebook" => Notes, "weather" => Days, "hourly" => Hours, "normals" => Normals, "quotes" => Offers, _ => Months };

    private static string RowsOf(string kind) => kind switch
    {
        "houses" => "A,h,30,96,propane\n",
        "fuel" => "2024-01-05,300,gal,full,600\n",
        "notebook" => "A,2025-11-01,meter,1,60,30,idle\nA,2025-11-02,meter,2,60,30,idle\nB,2025-11-01,meter,1,60,30,idle\nB,2025-11-02,meter,3,60,30,in use\n",
        "weather" => "2024-01-05,40,30\n2024-01-06,41,30\n",
        "quotes" => "A,h,curtain,100,50,b,2026-01-05,firm\n",
        "hourly" => string.Concat(Enumerable.Range(0, 24).Select(h => $"2024-01-05 {h:00}:00,40\n")),
        "normals" => "Jan,19.4\nFeb,22.1\nMar,31.5\nApr,44.8\nMay,56.9\nJun,65.9\nJul,70.9\nAug,69.2\nSep,61.4\nOct,49.1\nNov,38.2\nDec,26.4\n",
        _ => string.Concat(Enumerable.Range(1, 12).SelectMany(m => new[] { $"2022-{m:00},2.5\n" })) + string.Concat(Enumerable.Range(1, 12).Select(m => $"2023-{m:00},2.6\n")),
    };

    private static (bool Kept, IReadOnlyList<Fault> Faults) Read(string kind, string content)
    {
        using var text = new SourceText(new StringReader(content), "nasty.csv");
        return kind switch
        {
            "houses" => Of(HouseSheet.Read(text, Catalogue.BuiltIn)),
            "fuel" => Of(FuelSheet.Read(text, FuelKind.Propane, SupplyKind.Tank)),
            "notebook" => Of(NotebookFile.Read(new StringReader(content), "nasty.csv")),
            "normals" => Of(MonthlyNormals.Read(text)),
            "quotes" => Of(QuoteSheet.Read(text, Catalogue.BuiltIn)),
            "prices" => Of(MonthlyPrices.Read(text, null, FuelKind.Propane)),
            _ => Of(WeatherFile.Read(text)),
        };

        static (bool, IReadOnlyList<Fault>) Of<T>(Loaded<T> loaded)
            where T : class => (loaded.Value is not null, loaded.Faults);
    }
}
