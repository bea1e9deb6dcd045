using FarmPortfolio.Engine.Weather;
using FarmPortfolio.Host.Loading;

namespace FarmPortfolio.Host.Tests.Loading;

public class WeatherAndPriceFilesTests
{
    [Fact]
    public void The_Central_Park_record_loads_whole()
    {
        // NOAA GHCN-Daily USW00094728, 2009-01-01 to 2024-02-29, public domain
        using var text = File.OpenText(Path.Combine(AppContext.BaseDirectory, "data", "ghcn-central-park-USW00094728-daily-2009-2024.csv"));
        var loaded = DailyWeather.Read(text, "central park");
        Assert.Empty(loaded.Faults);
        Assert.Equal(5538, loaded.Value!.Days);
        Assert.Contains("Fahrenheit", loaded.Value.UnitWords, StringComparison.Ordinal);
        Assert.All(Enumerable.Range(2009, 14), s => Assert.DoesNotContain(loaded.Value.Seasons[s], double.IsNaN));
    }

    [Fact]
    public void By_station_rows_are_tenths_of_celsius()
    {
        // the row printed in NOAA's readme: 1 January 2014 TMAX -171 = -17.1 C
        using var text = new StringReader("USW00014922,20140101,TMAX,-171,,,W,2400\nUSW00014922,20140101,TMIN,-250,,,W,2400\nUSW00014922,20140101,PRCP,0,,,W,2400\n");
        var loaded = DailyWeather.Read(text, "x");
        Assert.Empty(loaded.Faults);
        var at = 2 * SeasonCalendar.DayIndex(new(2014, 1, 1));
        Assert.Equal(-25.0, loaded.Value!.Seasons[2013][at], 1e-9);
        Assert.Equal(-17.1, loaded.Value.Seasons[2013][at + 1], 1e-9);
    }

    [Theory]
    [InlineData("DATE,TMAX,TMIN\n2020-01-01,40,30\n2020-01-01,41,31\n", "DOUBLED", 3)]
    [InlineData("\uFEFFDATE,TMAX,TMIN\r\n2020-01-01,40,thirty\r\n", "NOT_A_NUMBER", 2)]
    [InlineData("DATE,TMAX,TMIN\n2020-13-01,40,30\n2020-01-02,50,30\n", "NOT_A_DATE", 2)]
    [InlineData("DATE,TMAX,TMIN\n2020-01-01,20,30\n2020-01-02,60,30\n", "MIN_ABOVE_MAX", null)]
    [InlineData("this is no record at all\nnor is this\n", "NO_HEAD", 1)]
    public void A_bad_file_says_what_and_where(string text, string code, int? line)
    {
        using var reader = new StringReader(text);
        var fault = Assert.Single(DailyWeather.Read(reader, "bad.csv").Faults);
        Assert.Equal((code, line, "bad.csv"), (fault.Code, fault.Line, fault.File));
        Assert.NotEmpty(fault.Remedy);
    }

    [Fact]
    public void Garbage_without_a_head_is_given_up_early()
    {
        using var bytes = new MemoryStream(System.Text.Encoding.UTF8.GetBytes(string.Concat(Enumerable.Repeat("garbage,more garbage,yet more\n", 200_000))));
        var position = 0L;
        using var reader = new CountingReader(bytes, p => position = p);
        var loaded = DailyWeather.Read(reader, "garbage");
        Assert.Null(loaded.Value);
        Assert.InRange(position, 1, 128 * 1024);
        Assert.Equal("NO_HEAD", Assert.Single(loaded.Faults).Code);
    }

    [Theory]
    [InlineData("Month,Price\n1997-01,3.45\n1997-02,2.15\n")]
    [InlineData("Series Id,Year,Period,Value\nAPU000072511,1997,M01,3.45\nAPU000072511,1997,M02,2.15\n")]
    [InlineData("\uFEFF1997-01;3.45\r\n1997-02;2.15\r\n")]
    public void Monthly_prices_load_in_every_layout(string text)
    {
        using var reader = new StringReader(text);
        var loaded = MonthlyPrices.Read(reader, "p.csv");
        Assert.Equal(new(1997, 1, 1), loaded.Value!.FirstMonthOn);
        Assert.Equal([3.45, 2.15], loaded.Value.Prices);
        Assert.Equal("SHORT", Assert.Single(loaded.Faults).Code);
    }

    [Theory]
    [InlineData("0", "NOT_POSITIVE")]
    [InlineData("-1", "NOT_POSITIVE")]
    [InlineData("dear", "NOT_A_NUMBER")]
    public void A_price_that_is_none_is_named(string price, string code)
    {
        using var reader = new StringReader($"month,price\n2020-01,1\n2020-02,{price}\n");
        var fault = MonthlyPrices.Read(reader, "p.csv").Faults.Single(f => f.Code != "SHORT");
        Assert.Equal((code, 3, 2), (fault.Code, fault.Line, fault.Column));
    }

    /// <summary>Tells how far a file was read.</summary>
    private sealed class CountingReader(MemoryStream bytes, Action<long> tell) : StreamReader(bytes)
    {
        private readonly MemoryStream bytes = bytes;

        public override int Read(char[] buffer, int index, int count)
        {
            var read = base.Read(buffer, index, count);
            tell(bytes.Position);
            return read;
        }
    }
}
