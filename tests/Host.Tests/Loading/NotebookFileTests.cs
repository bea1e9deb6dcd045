using FarmPortfolio.Engine.Trials;
using FarmPortfolio.Host.Loading;

namespace FarmPortfolio.Host.Tests.Loading;

public class NotebookFileTests
{
    private const string Head = "house,time,what,reading,inside (F),outside (F),state\n";

    private static Loaded<Notebook> Read(string text, string? unit = null) => NotebookFile.Read(new StringReader(text), "notebook.csv", unit);

    [Fact]
    public void Long_rows_are_read_with_units_turned()
    {
        var loaded = Read(Head + "A,2025-11-01 08:00,meter,100,60,32,idle\nB,2025-11-01 08:00,meter,900,61,32,idle\nA,2025-11-02 08:00,meter,\"1,012.5\",59,14,idle\nB,2025-11-02 08:00,meter,905,60,14,in use\n");
        Assert.Empty(loaded.Faults);
        Assert.Equal(["A", "B"], loaded.Value!.Houses.Select(h => h.Label));
        Assert.Equal([false, true], loaded.Value.Houses.Select(h => h.EverInUse));
        var last = loaded.Value.Readings[^1];
        Assert.Equal((1, 905.0, RetrofitState.InUse, new DateTime(2025, 11, 2, 8, 0, 0)), (last.House, last.Value, last.State, last.At));
        Assert.Equal(-10, last.OutsideC, 10);
        Assert.Equal(1012.5, loaded.Value.Readings[1].Value);
    }

    [Fact]
    public void A_wide_sheet_is_turned_to_the_same_readings()
    {
        var wide = Read("time,A meter (therm),A inside (F),B meter (therm),B inside (F),B state,outside (F)\n2025-11-01 08:00,100,60,900,61,idle,32\n2025-11-02 08:00,112,59,905,60,in use,14\n");
        var rows = Read(Head.Replace("reading", "reading (therm)", StringComparison.Ordinal) + "A,2025-11-01 08:00,meter,100,60,32,idle\nA,2025-11-02 08:00,meter,112,59,14,idle\nB,2025-11-01 08:00,meter,900,61,32,idle\nB,2025-11-02 08:00,meter,905,60,14,in use\n");
        Assert.Empty(wide.Faults);
        Assert.Equal(rows.Value!.Readings, wide.Value!.Readings);
        Assert.Equal(["therm", "therm"], wide.Value.Houses.Select(h => h.Unit));
    }

    [Fact]
    public void The_template_reads_without_a_fault() => Assert.Empty(Read(NotebookFile.Template).Faults);

    [Fact]
    public void A_missed_reading_stays_empty_and_is_not_filled()
    {
        var loaded = Read(Head + "A,2025-11-01,meter,100,60,32,idle\nA,2025-11-02,meter,,60,30,idle\nA,2025-11-03,meter,130,60,28,idle\nB,2025-11-01,meter,9,60,32,idle\n");
        Assert.Empty(loaded.Faults);
        Assert.True(double.IsNaN(loaded.Value!.Readings[1].Value));
        Assert.Contains(loaded.Notes, n => n.Contains("8 in the morning", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("A,2025-11-02 08:00,meter,120,60,30,idle\nA,2025-11-01 08:00,meter,130,60,30,idle\n", "TIME_BACKWARDS", 3)]
    [InlineData("A,2025-11-01 08:00,meter,120,60,30,idle\nA,2025-11-01 08:00,meter,130,60,30,idle\n", "DOUBLED", 3)]
    [InlineData("A,2025-11-01 08:00,meter,120,60,30,idle\nA,2025-11-02 08:00,meter,12,60,30,idle\n", "NEW_SEGMENT", 3)]
    [InlineData("A,yesterday,meter,120,60,30,idle\n", "NOT_A_TIME", 2)]
    [InlineData("A,2025-11-01 08:00,meter,lots,60,30,idle\n", "NOT_A_NUMBER", 2)]
    [InlineData("A,2025-11-01 08:00,meter,-4,60,30,idle\n", "OUT_OF_RANGE", 2)]
    [InlineData("A,2025-11-01 08:00,meter,120,60,30,sleeping\n", "UNKNOWN_STATE", 2)]
    [InlineData("A,2025-11-01 08:00,meter,120,60,30,closed\n", "UNKNOWN_STATE", 2)]
    [InlineData("A,2025-11-01 08:00,meter,120,60,30,on\n", "UNKNOWN_STATE", 2)]
    [InlineData("A,2025-11-01 08:00,meter,\"412,5\",60,30,idle\n", "NOT_A_NUMBER", 2)]
    [InlineData("A,2025-11-01 08:00,meter,1,204.5,60,30,idle\n", "TOO_MANY_CELLS", 2)]
    [InlineData("A,2025-11-01 08:00,thermometer,120,60,30,idle\n", "UNKNOWN_MEASURE", 2)]
    [InlineData(",2025-11-01 08:00,meter,120,60,30,idle\n", "EMPTY", 2)]
    [InlineData("A,2025-11-01 08:00,meter,120,60,30,idle\nA,2025-11-02 08:00,burner hours,121,60,30,idle\n", "TWO_MEASURES", 3)]
    public void What_cannot_be_is_named_with_its_line(string rows, string code, int line)
    {
        var fault = Read(Head + rows).Faults.First(f => f.Code == code && f.Line is not null);
        Assert.Equal((line, "notebook.csv"), (fault.Line, fault.File));
        Assert.NotEmpty(fault.Remedy);
    }

    [Fact]
    public void Celsius_in_a_Fahrenheit_column_is_detected_by_range_and_nothing_is_turned()
    {
        var loaded = Read(Head + "A,2025-11-01 08:00,meter,100,15.5,0,idle\nA,2025-11-02 08:00,meter,110,15.9,-4,idle\nB,2025-11-01 08:00,meter,9,60,32,idle\nB,2025-11-02 08:00,meter,19,60,25,idle\n");
        var fault = Assert.Single(loaded.Faults);
        Assert.Equal(("LOOKS_LIKE_C", 2, 5), (fault.Code, fault.Line, fault.Column));
        Assert.Contains("House A", fault.Message, StringComparison.Ordinal);
        Assert.Null(loaded.Value);
        Assert.Equal("LOOKS_LIKE_F", Assert.Single(Read(Head.Replace("(F)", "(C)", StringComparison.Ordinal) + "A,2025-11-01,meter,1,60,3,idle\nA,2025-11-02,meter,2,60,3,idle\nB,2025-11-01,meter,1,15,3,idle\nB,2025-11-02,meter,2,16,3,idle\n").Faults).Code);
    }

    [Theory]
    [InlineData("60", "200", "60", "outside", 6, "an outside temperature of 200 F cannot be", "-60 C (-76 F) to 57 C (135 F)")]
    [InlineData("190", "30", "60", "inside", 5, "an inside temperature of 190 F cannot be", "-30 C (-22 F) to 60 C (140 F)")]
    [InlineData("60", "30", "160", "setPoint", 7, "a set point of 160 F cannot be", "-5 C (23 F) to 45 C (113 F)")]
    public void A_temperature_that_cannot_be_counts_as_missing_and_is_named(string inside, string outside, string set, string field, int column, string message, string remedy)
    {
        const string With = "house,time,what,reading,inside (F),outside (F),set point (F),state\n";
        var loaded = Read(With + $"A,2025-11-01,meter,1,60,30,60,idle\nA,2025-11-02,meter,2,{inside},{outside},{set},idle\nB,2025-11-01,meter,1,60,30,60,idle\nB,2025-11-02,meter,3,60,30,60,idle\n");
        var fault = Assert.Single(loaded.Faults);
        Assert.Equal(("OUT_OF_RANGE", field, 3, column), (fault.Code, fault.Field, fault.Line, fault.Column));
        Assert.Contains(message, fault.Message, StringComparison.Ordinal);
        Assert.Contains(remedy, fault.Remedy, StringComparison.Ordinal);
        var reading = loaded.Value!.Readings[1];
        Assert.True(double.IsNaN(field == "inside" ? reading.InsideC : field == "outside" ? reading.OutsideC : reading.SetPointC));
        Assert.Equal(2, reading.Value);
    }

    [Fact]
    public void States_are_three_and_an_empty_one_is_said()
    {
        var loaded = Read(Head + "A,2025-11-01,meter,1,60,30,\nA,2025-11-02,meter,2,60,30,Idle\nB,2025-11-01,meter,1,60,30,forgotten\nB,2025-11-02,meter,3,60,30,IN USE\n");
        Assert.Empty(loaded.Faults);
        Assert.Equal([RetrofitState.Idle, RetrofitState.Idle, RetrofitState.Broken, RetrofitState.InUse], loaded.Value!.Readings.Select(r => r.State));
        Assert.Contains(loaded.Notes, n => n.Contains("taken as idle", StringComparison.Ordinal));
    }

    [Fact]
    public void A_text_without_a_head_says_what_a_head_is() => Assert.Contains("house, time", Read("one,two\n1,2\n").Faults[0].Remedy, StringComparison.Ordinal);
}
