using FarmPortfolio.Engine;
using FarmPortfolio.Host.Loading;

namespace FarmPortfolio.Host.Tests.Loading;

/// <summary>Monthly normals of an invented inland place: twelve months or none, each once, in one unit.</summary>
public class MonthlyNormalsTests
{
    private static readonly double[] F = [19.4, 22.1, 31.5, 44.8, 56.9, 65.9, 70.9, 69.2, 61.4, 49.1, 38.2, 26.4];
    private static readonly string[] Names = ["January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"];

    [Theory]
    [InlineData("month,mean temperature (F)", null, "Fahrenheit, by the head")]
    [InlineData("Month,TAVG", null, "Fahrenheit, by the range of the months")]
    [InlineData("month,mean", "F", "Fahrenheit, as you said")]
    public void Fahrenheit_is_told_by_the_head_the_range_or_the_user(string head, string? asked, string words)
    {
        var loaded = Read(Text(head), asked);
        Assert.Empty(loaded.Faults);
        Assert.Equal(12, loaded.Rows);
        Assert.Equal(words, loaded.Value!.UnitWords);
        Assert.All(F.Zip(loaded.Value.MonthlyMeanC), m => Assert.Equal((m.First - 32) / 1.8, m.Second, 1e-9));
        Assert.Null(loaded.Value.DailySpanK);
    }

    [Fact]
    public void Rows_may_stand_in_any_order_by_name_or_number_with_the_years_own_row()
    {
        var rows = Enumerable.Range(0, 12).Reverse().Select(m => $"{(m % 2 == 0 ? (m + 1).ToString(System.Globalization.CultureInfo.InvariantCulture) : Names[m][..3].ToUpperInvariant())};{F[m]}");
        var loaded = Read("Month;Average temperature (F)\r\n" + string.Join("\r\n", rows) + "\r\nAnnual;46.3\r\n");
        Assert.Empty(loaded.Faults);
        Assert.Equal((19.4 - 32) / 1.8, loaded.Value!.MonthlyMeanC[0], 1e-9);
        Assert.Equal((26.4 - 32) / 1.8, loaded.Value.MonthlyMeanC[11], 1e-9);
    }

    [Fact]
    public void Highest_and_lowest_give_the_mean_and_the_span_of_a_day()
    {
        var loaded = Read(Text("month,mean max (F),mean min (F)", m => $"{Names[m]},{F[m] + 9},{F[m] - 9}"));
        Assert.Empty(loaded.Faults);
        Assert.Equal(10, loaded.Value!.DailySpanK!.Value, 1e-9);
        Assert.Equal((70.9 - 32) / 1.8, loaded.Value.MonthlyMeanC[6], 1e-9);
    }

    [Theory]
    [InlineData("month,mean temperature (C)", null, 1, 2)]
    [InlineData("month,mean temperature", "C", null, null)]
    public void Fahrenheit_in_a_celsius_column_is_said_by_its_range(string head, string? asked, int? line, int? column)
    {
        var loaded = Read(Text(head), asked);
        Assert.Null(loaded.Value);
        var fault = Assert.Single(loaded.Faults);
        Assert.Equal(("WRONG_UNIT", line, column), (fault.Code, fault.Line, fault.Column));
        Assert.Contains("these are degrees Fahrenheit", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Celsius_in_a_fahrenheit_column_too() =>
        Assert.Contains("these are degrees Celsius", Assert.Single(Read(Text("month,mean temperature (F)", m => $"{Names[m]},{(F[m] - 32) / 1.8:0.0}")).Faults, f => f.Code == "WRONG_UNIT").Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("C", 7)]
    [InlineData("C", 1)]
    [InlineData("F", 7)]
    [InlineData("F", 10)]
    public void One_month_in_the_other_unit_is_named_and_its_neighbours_are_not(string unit, int month)
    {
        string Value(int m) => ((unit == "F") == (m + 1 != month) ? F[m] : (F[m] - 32) / 1.8).ToString("0.0", System.Globalization.CultureInfo.InvariantCulture);
        var loaded = Read(Text($"month,mean ({unit})", m => $"{Names[m]},{Value(m)}"));
        Assert.Null(loaded.Value);
        var fault = Assert.Single(loaded.Faults);
        Assert.Equal(("MIXED_UNIT", month + 1, 2), (fault.Code, fault.Line, fault.Column));
        Assert.StartsWith(Names[month - 1], fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_slip_of_the_point_is_named()
    {
        var fault = Assert.Single(Read(Text("month,mean (F)", m => $"{Names[m]},{(m == 4 ? 5.69 : F[m])}")).Faults);
        Assert.Equal(("OUT_OF_LINE", 6, 2), (fault.Code, fault.Line, fault.Column));
    }

    [Fact]
    public void A_month_that_is_missing_doubled_or_none_is_named_and_nothing_is_read()
    {
        var loaded = Read(Text("month,mean (F)", m => m switch { 2 => "Febuary,31.5", 8 => "August,61.4", _ => $"{Names[m]},{F[m]}" }));
        Assert.Null(loaded.Value);
        Assert.Equal([("NOT_A_MONTH", 4, 1), ("DOUBLED", 10, 1), ("MISSING_MONTH", 13, null)], loaded.Faults.Select(f => (f.Code, f.Line, f.Column)));
        Assert.Contains("March, September are not there", loaded.Faults[2].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_empty_month_is_said_with_line_and_column()
    {
        var loaded = Read(Text("month,mean (F)", m => $"{Names[m]},{(m == 3 ? string.Empty : F[m])}"));
        Assert.Null(loaded.Value);
        Assert.Equal(("MISSING", 5, 2), (Assert.Single(loaded.Faults).Code, loaded.Faults[0].Line, loaded.Faults[0].Column));
    }

    [Fact]
    public void Degree_days_are_held_against_the_means_and_leave_nothing_out()
    {
        // what the means lead to by the formula, in Fahrenheit days below 65 F, and one month far off
        double[] days = [1414, 1201, 1039, 609, 283, 87, 33, 50, 162, 498, 804, 1197];
        var sound = Read(Text("month,mean (F),heating degree days (F)", m => $"{Names[m]},{F[m]},{days[m]}"));
        Assert.Empty(sound.Faults);
        Assert.True(sound.Value!.DegreeDaysLookedAt);
        var off = Read(Text("month,mean (F),HDD", m => $"{Names[m]},{F[m]},{(m == 0 ? 785 : days[m])}"));
        var fault = Assert.Single(off.Faults);
        Assert.Equal(("DEGREE_DAYS_DIFFER", 2, 3), (fault.Code, fault.Line, fault.Column));
        Assert.False(off.LeavesOut);
        Assert.NotNull(off.Value);
    }

    [Fact]
    public void A_file_of_normals_among_the_records_is_told_where_it_belongs()
    {
        using var reader = new StringReader(Text("month,mean temperature (F)"));
        Assert.Equal("NORMALS", Assert.Single(WeatherFile.Read(reader, "n.csv").Faults).Code);
    }

    [Fact]
    public void An_unknown_unit_and_a_file_without_a_head_are_refused()
    {
        Assert.Equal("UNKNOWN_UNIT", Assert.Single(Read(Text("month,mean"), "K").Faults).Code);
        Assert.Equal("NO_HEAD", Assert.Single(Read("some words\nand more\n").Faults).Code);
        Assert.Equal("UNIT_UNKNOWN", Assert.Single(Read(Text("month,mean", m => $"{Names[m]},{F[m] * 10}")).Faults).Code);
    }

    private static string Text(string head, Func<int, string>? row = null) =>
        head + "\n" + string.Concat(Enumerable.Range(0, 12).Select(m => (row?.Invoke(m) ?? FormattableString.Invariant($"{Names[m]},{F[m]}")) + "\n"));

    private static Loaded<NormalsRecord> Read(string text, string? unit = null)
    {
        using var reader = new StringReader(text);
        return MonthlyNormals.Read(reader, "normals.csv", unit);
    }
}
